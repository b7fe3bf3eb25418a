#pragma once

#include <vector>

#include "forecourse/studies/flow/flow.h"

namespace forecourse::studies {

/// Fills in the ratio that each open blended hose reaches in a state.
void tell_ratios(FlowState& state);

/// A warning for each blended hose that cannot keep its ratio in some state, with the ratio reached; hoses alike in
/// one.
[[nodiscard]] std::vector<Diagnostic> unmet_ratios(const site::Site& site, const std::vector<FlowState>& states);

}  // namespace forecourse::studies
