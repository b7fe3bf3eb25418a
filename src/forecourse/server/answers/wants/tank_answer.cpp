#include "forecourse/checks/tank_checks.h"
#include "forecourse/report/tank/tank_report.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/study_answers.h"
#include "forecourse/server/answers/wants/tank_request.h"

namespace forecourse::server {

using report::Json;

Json tank_answer(const Asked& asked) {
  WantReader want(asked.want, tank_members);
  const studies::TankOptions options = read_tank_want(want);
  const OpenedSite& opened = asked.shared.opened(read_units(want));
  if (!want.good()) return want.problem();
  if (!opened.problem.is_null()) return opened.problem;
  const std::vector<Diagnostic> wrong = studies::check_options(opened.site, options);
  if (!wrong.empty()) return refused(wrong);
  studies::TankResult result = studies::study_tank(opened.site, options, asked.context);
  const std::vector<checks::Finding> findings = checks::check_tanks(opened.site, result);
  result.warnings.insert(result.warnings.begin(), opened.warnings.begin(), opened.warnings.end());
  return {{"document", report::tank_document(result, findings, {{}, {}, opened.texts, {}})}};
}

}  // namespace forecourse::server
