#include "forecourse/checks/rules/period.h"
#include "forecourse/report/checks/checks_report.h"
#include "forecourse/report/checks/mends_report.h"
#include "forecourse/report/findings.h"

namespace forecourse::report {

Json checks_document(const checks::CheckResult& result, const ChecksFacts& facts) {
  JsonDocument out;
  out.study = "checks";
  out.version = result.version;
  out.cautions = checks_cautions(result);
  out.options = {{"on", checks::text(result.today)}};
  out.defaults = result.defaults;
  out.result = {{"by_state", count_by_state(all_findings(result))},
                {"requirements", result.requirements},
                {"clauses_verified", result.verified},
                {"sets", array_of(result.sets, [](const checks::FindingSet& set) {
                   return Json{{"id", set.id},
                               {"title", set.title},
                               {"edition", text_or_null(set.edition)},
                               {"by_state", count_by_state(set.findings)}};
                 })}};
  if (facts.mends) out.cautions.emplace_back(mends_caution);
  if (facts.mends) out.result["mends"] = mends_json(*facts.mends);
  for (const checks::FindingSet& set : result.sets) {
    for (Json& one : findings_json(set.findings, facts.texts)) {
      one["set"] = set.id;
      out.findings.push_back(std::move(one));
    }
  }
  out.warnings = result.warnings;
  return document(out, facts.texts);
}

}  // namespace forecourse::report
