#include "forecourse/site/rules/read_rule_set.h"

#include <stdexcept>

#include "forecourse/site/rules/fields_rule_set.h"
#include "forecourse/site/text/document.h"
#include "forecourse/site/text/table_reader.h"

namespace forecourse::site {
namespace {

void tell_missing(const ReadRun& run, const Name& name, SourceSpan where, std::string what, std::string hint) {
  if (name.empty()) run.error(where, std::move(what), std::move(hint));
}

void tell_missing(const ReadRun& run, const RuleSet& set) {
  for (const Requirement& one : set.requirements) {
    tell_missing(run, one.words, one.where, "the requirement has no words", "write what it asks in a sentence");
    tell_missing(run, one.figure, one.where, "the requirement has no figure",
                 "write figure = \"hose-length\", or another that `forecourse checks --figures` lists");
  }
}

}  // namespace

Parsed<RuleSet> read_rule_set(std::string_view text, std::uint32_t text_index) {
  Parsed<Document> document = read_document(text, text_index);
  Parsed<RuleSet> result;
  result.diagnostics = std::move(document.diagnostics);
  std::vector<SourceSpan> half_read = std::move(document.value.half_read);
  std::vector<SourceSpan> uncertain;
  const ReadRun run{text, result.diagnostics, half_read, uncertain, document.value.complete};
  result.value.where = {text_index, 0, 0};
  TableReader reader(document.value.root, run);
  fields(reader, result.value);
  reader.finish();
  tell_missing(run, result.value);
  return result;
}

const std::vector<RuleSet>& built_in_rule_sets() {
  static const std::vector<RuleSet> all = [] {
    std::vector<RuleSet> out;
    for (const std::string_view text : rule_set_texts()) {
      Parsed<RuleSet> read = read_rule_set(text);
      if (!read.ok()) throw std::logic_error("a rule set of our own: " + read.diagnostics.front().message);
      out.push_back(std::move(read.value));
    }
    return out;
  }();
  return all;
}

}  // namespace forecourse::site
