#pragma once

#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::checks {

/// For each pump that a stronger one holds shut in some state of the result: whether a bypass lets a little flow back
/// to the tank, so that its liquid does not warm. No clause is known that asks for it: common practice.
/// Unknown stays not determined. A lag pump that its control starts only above its opening flow is not held shut.
[[nodiscard]] std::vector<Finding> check_pumps(const site::Site& site, const studies::FlowResult& result);

}  // namespace forecourse::checks
