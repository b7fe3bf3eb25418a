#pragma once

#include "forecourse/studies/containment/containment.h"

namespace forecourse::studies {

/// Where lines meet pumps, branches and dispensers, and what is under each joint.
[[nodiscard]] std::vector<Joint> joints_of(const site::Site& site, const std::vector<ContainedSump>& sumps);

/// Lines with two walls, and where what leaks between them runs by gravity.
[[nodiscard]] std::vector<DrainBack> drain_backs(const site::Site& site, const std::vector<ContainedSump>& sumps);

}  // namespace forecourse::studies
