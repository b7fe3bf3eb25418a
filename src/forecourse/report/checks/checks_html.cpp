#include "forecourse/report/checks/checks_report.h"
#include "forecourse/report/checks/mends_report.h"
#include "forecourse/report/findings.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/study_page.h"

namespace forecourse::report {

std::string checks_section(const checks::CheckResult& result, site::Display display) {
  if (result.sets.empty()) return {};
  std::string out = html::heading(2, "Checks");
  out += html::paragraph(
      "Of the findings, " + count_by_state(all_findings(result)) + ". " + clauses_in_words(result) +
      " Close: the limit is met by less than the spread of uncertain values, or by less than 2 % of it where none is "
      "stated. Not determined is never a pass.");
  for (const checks::FindingSet& set : result.sets) {
    const std::string note = set.edition.empty() ? count_by_state(set.findings) + "." : set.edition + ".";
    out += findings_table(set.title, note, set.findings, display);
  }
  return out;
}

std::string checks_report(const checks::CheckResult& result, const site::Site& site, const ChecksFacts& facts) {
  std::string body = checks_section(result, site.display);
  if (facts.mends) body += mends_section(*facts.mends, site.display);
  return study_page("Checks", "checks", checks_caution(result), body,
                    {result.version, result.defaults, result.warnings, checks_cautions(result)}, site,
                    {facts.date, facts.command, facts.texts});
}

}  // namespace forecourse::report
