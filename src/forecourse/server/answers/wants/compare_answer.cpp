#include "forecourse/decide/compare/compare.h"
#include "forecourse/report/compare/compare_json.h"
#include "forecourse/server/answers/wants/flow_request.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/study_answers.h"
#include "forecourse/site/edit.h"
#include "forecourse/site/editing/differences.h"
#include "forecourse/site/read.h"

namespace forecourse::server {
namespace {

using report::Json;

std::string trimmed(const std::string& text) {
  const std::size_t first = text.find_first_not_of(" \t");
  return first == std::string::npos ? std::string() : text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

/// The text of B: that of A with values changed, each written "path=value".
std::string changed_text(const std::string& text, const std::vector<std::string>& sets, WantReader& want) {
  std::string out = text;
  for (const std::string& set : sets) {
    const std::size_t equals = set.find('=');
    if (equals == std::string::npos) {
      want.refuse("'" + set + "' has no '='", "write line.trunk.bore=3 in");
      continue;
    }
    Parsed<std::string> changed =
        site::set_everywhere(out, trimmed(set.substr(0, equals)), trimmed(set.substr(equals + 1)));
    if (!changed.ok()) want.refuse(changed.diagnostics.front().message, changed.diagnostics.front().hint);
    out = std::move(changed.value);
  }
  return out;
}

/// How B is told: "A with line.trunk.bore=3 in".
std::string label_of_b(const std::vector<std::string>& sets) {
  std::string out = "A";
  for (const std::string& set : sets) out += (out == "A" ? " with " : ", ") + set;
  return out;
}

/// Only sets that name hoses; all, one each and alone are always compared.
decide::CompareOptions options_of(const studies::FlowOptions& flow) {
  decide::CompareOptions options;
  options.flow.keep_flow = flow.keep_flow;
  options.flow.open_sets = flow.open_sets;
  return options;
}

}  // namespace

Json compare_answer(const Asked& asked) {
  WantReader want(asked.want, compare_members);
  const std::vector<std::string> sets = want.texts("sets");
  if (sets.empty()) want.refuse("what is other in B is not said", "give \"sets\": [\"line.trunk.bore=3 in\"]");
  const studies::FlowTexts texts = read_flow_want(want);
  const std::string b_text = changed_text(asked.text, sets, want);
  OpenedSite a = asked.shared.opened(read_units(want));
  if (!want.good()) return want.problem();
  if (!a.problem.is_null()) return a.problem;
  Parsed<site::Site> b = site::read_site(b_text, 1);
  if (!b.ok()) return refused(b.diagnostics);
  if (Json none = without_hose(a.site); !none.is_null()) return none;
  const Parsed<studies::FlowOptions> flow = studies::read_flow_options(texts, a.site, studies::Asker::page);
  if (!flow.ok()) return refused(flow.diagnostics);
  const decide::CompareOptions options = options_of(flow.value);
  const std::vector<Diagnostic> problems = decide::check_options(a.site, b.value, options);
  if (has_error(problems)) return refused(problems);
  decide::Comparison comparison = decide::compare(a.site, b.value, options, asked.context);
  std::vector<Diagnostic>& warnings = comparison.a.flow.warnings;
  warnings.insert(warnings.begin(), b.diagnostics.begin(), b.diagnostics.end());
  warnings.insert(warnings.begin(), a.warnings.begin(), a.warnings.end());
  comparison.changed = site::differing_values(asked.text, b_text);
  a.texts.push_back({label_of_b(sets), b_text});
  const report::CompareFacts facts{asked.file, label_of_b(sets), {}, {}, a.texts, {}};
  return {{"document", report::compare_document(comparison, a.site.display, facts)}};
}

}  // namespace forecourse::server
