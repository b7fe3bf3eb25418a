#pragma once

#include "forecourse/network/solve.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::studies {

/// What one system's solved state says of its hoses, pumps, places and lines.
[[nodiscard]] SystemFlow system_flow(const site::Site& site, const network::PipingSystem& system,
                                     const network::SystemState& state, std::optional<double> keep_flow);

}  // namespace forecourse::studies
