#include "forecourse/report/kit/kit_report.h"
#include "forecourse/server/answers/wants/handover_told.h"
#include "forecourse/server/answers/wants/opened_site.h"

namespace forecourse::server {

report::Json kit_answer(const Asked& asked) {
  const ToldKit told = told_kit(asked);
  if (!told.problem.is_null()) return told.problem;
  report::ReportFacts facts{{}, {}, told.opened->texts};
  facts.display = told.opened->site.display;
  return {{"document", report::kit_document(told.kit, facts)}};
}

}  // namespace forecourse::server
