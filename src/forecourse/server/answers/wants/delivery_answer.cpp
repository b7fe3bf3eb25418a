#include "forecourse/checks/delivery_checks.h"
#include "forecourse/report/delivery/delivery_report.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/study_answers.h"
#include "forecourse/studies/delivery/read_delivery_options.h"

namespace forecourse::server {

using report::Json;

Json delivery_answer(const Asked& asked) {
  WantReader want(asked.want, delivery_members);
  const studies::DeliveryTexts texts{want.text("delivery"), want.text("tank"),    want.text("volume"),
                                     want.text("rate"),     want.text("stop_at"), want.texts("without"),
                                     want.texts("blocked")};
  const Parsed<studies::DeliveryOptions> read = studies::read_delivery_options(texts, studies::Asker::page);
  if (!read.ok()) want.refuse(read.diagnostics.front().message, read.diagnostics.front().hint);
  const OpenedSite& opened = asked.shared.opened(read_units(want));
  if (!want.good()) return want.problem();
  if (!opened.problem.is_null()) return opened.problem;
  const std::vector<Diagnostic> wrong = studies::check_options(opened.site, read.value);
  if (!wrong.empty()) return refused(wrong);
  studies::DeliveryResult result = studies::study_delivery(opened.site, read.value, asked.context);
  const std::vector<checks::Finding> findings = checks::check_delivery(opened.site, result);
  result.warnings.insert(result.warnings.begin(), opened.warnings.begin(), opened.warnings.end());
  return {{"document", report::delivery_document(result, findings, {{}, {}, opened.texts, {}})}};
}

}  // namespace forecourse::server
