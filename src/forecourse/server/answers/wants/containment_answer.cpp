#include "forecourse/report/containment/containment_report.h"
#include "forecourse/server/answers/wants/containment_request.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/study_answers.h"

namespace forecourse::server {

using report::Json;

Json containment_answer(const Asked& asked) {
  WantReader want(asked.want, containment_members);
  const studies::ContainmentOptions options = read_containment_want(want);
  const OpenedSite& opened = asked.shared.opened(read_units(want));
  if (!want.good()) return want.problem();
  if (!opened.problem.is_null()) return opened.problem;
  studies::ContainmentResult result = studies::study_containment(opened.site, options, asked.context);
  result.warnings.insert(result.warnings.begin(), opened.warnings.begin(), opened.warnings.end());
  return {{"document", report::containment_document(result, {{}, {}, opened.texts, {}})}};
}

}  // namespace forecourse::server
