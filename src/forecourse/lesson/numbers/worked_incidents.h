#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/studies/incident/incident.h"

namespace forecourse::lesson {

/// An incident of the station, worked out; or why it is not.
struct WorkedIncident {
  studies::IncidentResult result;
  std::vector<std::string> command;  ///< that prints the same, without the site
  std::string reason;                ///< why there is no result, and what to enter; empty: there is one
};

/// Incidents at parts of one station, each worked out when it is first asked for.
class WorkedIncidents {
 public:
  WorkedIncidents(const site::Site& site, const Context& context) : site_(site), context_(context) {}

  [[nodiscard]] const WorkedIncident& of(studies::IncidentKind kind, const std::string& at);

 private:
  [[nodiscard]] WorkedIncident run(studies::IncidentKind kind, const std::string& at) const;

  const site::Site& site_;
  const Context& context_;
  std::map<std::pair<studies::IncidentKind, std::string>, WorkedIncident> runs_;
};

}  // namespace forecourse::lesson
