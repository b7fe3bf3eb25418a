#pragma once

#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/studies/delivery/delivery.h"

namespace forecourse::checks {

/// What a delivery is held against: room in the tank, pressure in the truck while a vapor hose is on, velocities
/// against static charge, size of the vents at its rate.
[[nodiscard]] std::vector<Finding> check_drops(const site::Site& site, const studies::DeliveryResult& result);

/// What vents are held against whatever is delivered: their height, restrictors in them, what shares one.
[[nodiscard]] std::vector<Finding> check_vents(const site::Site& site);

/// Both.
[[nodiscard]] std::vector<Finding> check_delivery(const site::Site& site, const studies::DeliveryResult& result);

}  // namespace forecourse::checks
