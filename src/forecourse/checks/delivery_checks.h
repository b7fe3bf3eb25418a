#pragma once

#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/studies/delivery/delivery.h"

namespace forecourse::checks {

/// What a delivery, and what it passes, is held against: room in the tank, pressure in the truck while a vapor hose is
/// on, settings of vent valves, height and size of vents, restrictors in them, what shares a vent,
/// and velocities against static charge.
[[nodiscard]] std::vector<Finding> check_delivery(const site::Site& site, const studies::DeliveryResult& result);

}  // namespace forecourse::checks
