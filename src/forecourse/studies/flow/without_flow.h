#pragma once

#include <string>

#include "forecourse/network/solve.h"
#include "forecourse/site/site.h"

namespace forecourse::studies {

/// Why open hoses of a piping give nothing: no pump runs, or none can lift the fuel to them. Empty where neither holds.
[[nodiscard]] std::string why_without_flow(const network::PipingSystem& system, const network::SystemState& state,
                                           site::Display display);

}  // namespace forecourse::studies
