#pragma once

#include "forecourse/site/records/moment.h"

namespace forecourse::site::records {

/// One step of an incident's time line.
struct IncidentStep {
  Moment at;
  Name part;
  Name what;  ///< in words
};

/// Something that happened: a struck dispenser, a release, a drive-off, an alarm.
struct Incident {
  Moment at;
  Name kind;
  Name part;
  std::vector<IncidentStep> steps;
  std::optional<Volume> released;  ///< as estimated on the spot
  Fact reported;                   ///< to the authority
  Name note;
};

}  // namespace forecourse::site::records
