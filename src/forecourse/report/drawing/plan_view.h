#pragma once

#include <string>
#include <vector>

#include "forecourse/report/drawing/plan.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::report::drawing {

/// The plan with the flows of one state. A pump without a position of its own stands at its tank.
[[nodiscard]] Plan plan_of(const site::Site& site, const studies::FlowState& state, const std::string& id);

/// What has no position and is therefore not on the plan: names.
[[nodiscard]] std::vector<std::string> without_position(const site::Site& site);

/// How to read the plan and what is not on it; sentences.
[[nodiscard]] std::vector<std::string> plan_remarks(const site::Site& site);

/// The plan as a figure with its table, or one sentence that says why there is none.
[[nodiscard]] std::string plan_figure(const site::Site& site, const studies::FlowState& state, const std::string& id);

}  // namespace forecourse::report::drawing
