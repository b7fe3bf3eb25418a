#pragma once

#include <vector>

#include "forecourse/network/piping_system.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/flow/rest/rest_results.h"

namespace forecourse::studies {

/// Every system with all hoses shut: static pressures when the line is held and when it has decayed, what it holds and
/// how it yields, and the time to first flow at each hose when it is held, decayed, or empty.
/// See docs/theory/line-at-rest.md for what is assumed.
[[nodiscard]] std::vector<LineAtRest> lines_at_rest(const site::Site& site, const network::StationNetwork& network);

}  // namespace forecourse::studies
