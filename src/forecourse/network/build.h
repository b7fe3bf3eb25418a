#pragma once

#include "forecourse/network/piping_system.h"
#include "forecourse/site/site.h"

namespace forecourse::network {

/// The piping of a station as networks to solve: one system for each stretch of piping that hangs together.
/// A system that lacks something that matters has `problems` and no graph; the others are still built.
[[nodiscard]] StationNetwork build_network(const site::Site& site);

}  // namespace forecourse::network
