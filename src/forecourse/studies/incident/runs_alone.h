#pragma once

#include "forecourse/studies/incident/incident.h"

namespace forecourse::studies {

/// The same as study_incident, without drawing uncertain inputs: the ranges are those of the barriers alone. For who
/// shows a run, and wants it at once.
[[nodiscard]] IncidentResult incident_runs_alone(const site::Site& site, const IncidentOptions& options,
                                                 const Context& context = {});

}  // namespace forecourse::studies
