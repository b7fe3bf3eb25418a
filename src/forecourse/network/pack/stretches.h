#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/network/piping_system.h"
#include "forecourse/site/site.h"

namespace forecourse::network {

/// A stretch of conduit that holds fuel.
struct Stretch {
  std::string id;                    ///< of the run it belongs to
  std::string part;                  ///< the trade's word: "line", "riser", "curb hose"
  double volume = 0.0;               ///< [m3]
  std::optional<double> compliance;  ///< [m3/Pa] of fuel and wall
  std::string reason;                ///< why it is not determined, and what to enter
  bool behind_dispenser = false;     ///< part of a hose: not of the line
};

/// The stretches of conduit of a system with volume and compliance, in the order of its runs.
[[nodiscard]] std::vector<Stretch> stretches_of(const site::Site& site, const PipingSystem& system);

}  // namespace forecourse::network
