#include "forecourse/report/checks/checks_report.h"
#include "forecourse/report/findings.h"
#include "forecourse/report/html/page.h"
#include "forecourse/report/html/parts.h"

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
  html::Page page;
  page.station = site.name.empty() ? "Station without a name" : site.name.text;
  page.study = "Checks";
  page.cells = {{"Station", site.name.text}, {"Study", "checks"}};
  if (!facts.texts.empty()) page.cells.emplace_back("Site file", facts.texts.front().name);
  if (!facts.date.empty()) page.cells.emplace_back("Date", facts.date);
  page.cells.emplace_back("Units", site.display == site::Display::us ? "US customary" : "SI");
  page.cells.emplace_back("Made with", "forecourse " + result.version);
  page.caution = checks_cautions().front();
  page.body = checks_section(result, site.display);
  std::vector<std::string> warnings;
  for (const Diagnostic& warning : result.warnings) warnings.push_back(warning.message);
  if (!warnings.empty()) page.body += html::heading(2, "Warnings") + html::list(warnings);
  page.body += html::heading(2, "Cautions") + html::list(checks_cautions());
  if (!facts.command.empty()) {
    page.body += html::heading(2, "Run it again") + html::paragraph(facts.command, "command");
  }
  return html::page(page);
}

}  // namespace forecourse::report
