#pragma once

#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::checks {

/// What the flow study's result says of the limits on flow: the most a rule lets a hose deliver, and the flow
/// that the user wants kept at every open hose. One finding a hose and limit, over every state in the result; and the
/// findings of `check_pumps`.
///
/// A finding that rests on a default that is not firm is not determined; its value is told as information. With
/// uncertain values, one that is met over their whole spread meets; one that is met with what is likely alone is close,
/// and not determined where the spread of the flow is not known.
[[nodiscard]] std::vector<Finding> check_flow(const site::Site& site, const studies::FlowResult& result);

}  // namespace forecourse::checks
