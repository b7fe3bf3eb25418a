#pragma once

#include <string>

#include "forecourse/studies/incident/incident.h"

namespace forecourse::report {

/// The scene at chosen moments, courses over one time axis, the barrier table as bars, and, after a Monte Carlo, how
/// often more escapes than an amount. HTML; empty where there is nothing to draw.
[[nodiscard]] std::string incident_drawings(const studies::IncidentResult& result, const site::Site& site,
                                            std::size_t number);

}  // namespace forecourse::report
