#include "forecourse/report/incident/incident_report.h"
#include "forecourse/server/answers/wants/incident_request.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/study_answers.h"
#include "forecourse/studies/incident/incident.h"

namespace forecourse::server {

using report::Json;

Json incident_answer(const Asked& asked) {
  WantReader want(asked.want, incident_members);
  const ToldIncident told = told_incident(asked, want);
  if (!told.problem.is_null()) return told.problem;
  return {{"document", report::incident_document(*told.result, {{}, {}, told.opened->texts, {}, {}})}};
}

}  // namespace forecourse::server
