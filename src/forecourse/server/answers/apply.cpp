#include "forecourse/server/answers/answers.h"
#include "forecourse/site/edit.h"
#include "forecourse/site/text/document.h"

namespace forecourse::server {
namespace {

/// A block at the end, with a blank line before it and a line end behind it.
Parsed<std::string> appended(const std::string& text, const std::string& block) {
  const Parsed<site::Document> read = site::read_document(block, 0);
  if (!read.ok()) {
    Diagnostic wrong = read.diagnostics.front();
    wrong.where.reset();  // it lies in the block, not in the file
    return {text, {std::move(wrong)}};
  }
  std::string out = text;
  if (!out.empty() && out.back() != '\n') out += '\n';
  if (!out.empty()) out += '\n';
  out += block;
  if (out.back() != '\n') out += '\n';
  return {std::move(out), {}};
}

Parsed<std::string> one(const std::string& text, const Edit& edit) {
  if (!edit.append.empty()) return appended(text, edit.append);
  if (edit.remove) return site::remove_value(text, edit.path);
  if (edit.value) return site::set_value(text, edit.path, *edit.value);
  return {text,
          {{Severity::error,
            "an edit of '" + edit.path + "' says nothing",
            std::nullopt,
            "give a value, remove, or a block to append",
            {}}}};
}

}  // namespace

Parsed<std::string> apply(const std::string& text, const std::vector<Edit>& edits) {
  Parsed<std::string> out{text, {}};
  for (const Edit& edit : edits) {
    Parsed<std::string> next = one(out.value, edit);
    out.value = std::move(next.value);
    out.diagnostics.insert(out.diagnostics.end(), next.diagnostics.begin(), next.diagnostics.end());
  }
  if (!out.ok()) out.value = text;
  return out;
}

}  // namespace forecourse::server
