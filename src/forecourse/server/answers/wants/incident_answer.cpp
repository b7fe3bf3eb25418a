#include "forecourse/report/incident/incident_report.h"
#include "forecourse/server/answers/wants/incident_request.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/study_answers.h"
#include "forecourse/studies/incident/incident.h"

namespace forecourse::server {

using report::Json;

Json incident_answer(const Asked& asked) {
  WantReader want(asked.want, incident_members);
  const Parsed<studies::IncidentOptions> options = read_incident_want(want);
  const OpenedSite& opened = asked.shared.opened(read_units(want));
  if (!want.good()) return want.problem();
  if (!options.ok()) return refused(options.diagnostics);
  if (!opened.problem.is_null()) return opened.problem;
  const std::vector<Diagnostic> wrong = studies::check_options(opened.site, options.value);
  if (has_error(wrong)) return refused(wrong);
  const studies::IncidentResult& result =
      asked.shared.incident(opened, incident_key(asked.want), options.value, asked.context);
  return {{"document", report::incident_document(result, {{}, {}, opened.texts, {}, {}})}};
}

}  // namespace forecourse::server
