#include "forecourse/checks/vapor_checks.h"
#include "forecourse/report/vapor/vapor_report.h"
#include "forecourse/server/answers/wants/incident_request.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/study_answers.h"
#include "forecourse/studies/read_options.h"

namespace forecourse::server {

using report::Json;

Json vapor_answer(const Asked& asked) {
  WantReader want(asked.want, vapor_members);
  const auto temperature =
      studies::read_option<Temperature>("temperature", want.text("temperature"), studies::Asker::page);
  const site::Date on = read_day(want);
  const OpenedSite& opened = asked.shared.opened(read_units(want));
  if (!want.good()) return want.problem();
  if (!temperature.ok()) return refused(temperature.diagnostics);
  if (!opened.problem.is_null()) return opened.problem;
  studies::VaporOptions options;
  if (temperature.value) options.temperature = temperature.value->likely.si();
  studies::VaporResult result = studies::study_vapor(opened.site, options, asked.context);
  result.warnings.insert(result.warnings.begin(), opened.warnings.begin(), opened.warnings.end());
  const std::vector<checks::Finding> findings = checks::check_vapor(opened.site, result, on);
  return {{"document", report::vapor_document(result, {{}, {}, opened.texts, findings, {}})}};
}

}  // namespace forecourse::server
