#include "forecourse/checks/flotation_checks.h"
#include "forecourse/report/flotation/flotation_report.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/study_answers.h"
#include "forecourse/server/answers/wants/want_reader.h"
#include "forecourse/studies/flotation/read_flotation_options.h"

namespace forecourse::server {

using report::Json;

Json flotation_answer(const Asked& asked) {
  WantReader want(asked.want, flotation_members);
  const auto options = studies::read_flotation_options(
      {want.text("tank"), want.text("water_level"), want.text("filled"), want.text("factor")}, studies::Asker::page);
  const OpenedSite& opened = asked.shared.opened(read_units(want));
  if (!want.good()) return want.problem();
  if (!options.ok()) return refused(options.diagnostics);
  if (!opened.problem.is_null()) return opened.problem;
  studies::FlotationResult result = studies::study_flotation(opened.site, options.value, asked.context);
  if (!result.errors.empty()) return refused(result.errors);
  result.warnings.insert(result.warnings.begin(), opened.warnings.begin(), opened.warnings.end());
  const std::vector<checks::Finding> findings = checks::check_flotation(result);
  return {{"document", report::flotation_document(result, {{}, {}, opened.texts, findings, {}})}};
}

}  // namespace forecourse::server
