#pragma once

#include <string>

#include "forecourse/network/solve.h"
#include "forecourse/site/site.h"

namespace forecourse::studies {

/// Why open hoses of a piping give nothing: no pump runs, or none can lift the fuel to them. Empty where neither holds.
[[nodiscard]] std::string why_without_flow(const network::PipingSystem& system, const network::SystemState& state,
                                           site::Display display);

/// Why a piping of which no pump runs may give something all the same: the liquid in a tank stands above an open hose,
/// and runs by gravity through a pump that stands. How much is not computed. Empty where that does not hold.
[[nodiscard]] std::string what_gravity_feeds(const network::PipingSystem& system, const network::SystemState& state);

}  // namespace forecourse::studies
