#pragma once

#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/network/solve.h"
#include "forecourse/site/site.h"

namespace forecourse::studies {

/// Tells of a lead and lag by line pressure that never starts its next pump, however many hoses are open.
///
/// The line pressure falls with every hose that opens, so the state with all of them open is the lowest. Nothing is
/// told of a system with a blended hose, which the other product can throttle, nor where a stronger warning stands.
/// \param all_open  the state of the station with every hose open
[[nodiscard]] std::vector<Diagnostic> waiting_controls(const site::Site& site, const network::StationNetwork& network,
                                                       const network::StationState& all_open);

}  // namespace forecourse::studies
