#pragma once

#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/studies/tank/tank.h"

namespace forecourse::checks {

/// For each tank with a fill, where the site is held against the federal rules: whether one of its overfill devices
/// meets one of the three published routes, which are alternatives. Nothing entered is not determined; a device that is
/// not listed does not exist.
[[nodiscard]] std::vector<Finding> check_tanks(const site::Site& site, const studies::TankResult& result);

}  // namespace forecourse::checks
