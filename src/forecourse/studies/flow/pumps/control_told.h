#pragma once

#include <optional>

#include "forecourse/network/system_solver.h"
#include "forecourse/studies/flow/pumps/pump_told.h"

namespace forecourse::studies {

/// What the control of a system makes of its pumps in a solved state; empty if none moves them.
/// A blended hose is told with the throttling of the state, in every step.
[[nodiscard]] std::optional<ControlTold> control_told(const network::PipingSystem& system,
                                                      const network::SystemState& state);

}  // namespace forecourse::studies
