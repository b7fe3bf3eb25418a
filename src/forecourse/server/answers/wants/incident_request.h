#pragma once

#include "forecourse/report/json_document.h"
#include "forecourse/server/answers/wants/study_answers.h"
#include "forecourse/server/answers/wants/want_reader.h"
#include "forecourse/studies/incident/incident.h"

namespace forecourse::server {

/// The incident of a want, worked out; or why there is none.
struct ToldIncident {  // NOLINT(bugprone-exception-escape): as OpenedSite
  const OpenedSite* opened = nullptr;
  const studies::IncidentResult* result = nullptr;
  report::Json problem;  ///< null: there is one
};

/// Reads "kind" and all that changes an incident from a want that tells or draws one, and works it out. What else the
/// reader was asked for counts too.
[[nodiscard]] ToldIncident told_incident(const Asked& asked, WantReader& want);

/// The day by which tests are judged overdue, the member "on": as written, else today.
[[nodiscard]] site::Date read_day(WantReader& want);

}  // namespace forecourse::server
