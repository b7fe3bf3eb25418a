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
  if (set.requirements.empty() && run.diagnostics.empty())
    run.error(set.where, "the rule set asks for nothing", "add a [[requirement]] with id, words and figure");
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
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) {
    result.diagnostics.push_back({Severity::error,
                                  "the file holds no rule set",
                                  SourceSpan{text_index, 0, 0},
                                  "begin with format = 1, then id, title and [[requirement]]",
                                  {}});
    return result;
  }
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
