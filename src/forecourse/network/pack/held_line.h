#pragma once

#include <optional>
#include <string>

#include "forecourse/network/piping_system.h"
#include "forecourse/site/site.h"

namespace forecourse::network {

/// What holds the line of a system when its pumps have stopped and every hose is shut. Piezometric pressures.
struct HeldLine {
  double decayed = 0.0;           ///< [Pa] once the line has fallen to the lowest liquid
  std::optional<double> held;     ///< [Pa] just after the pump stopped; empty: nothing holds it
  std::string held_by;            ///< "check valve of pump P1", or why nothing holds it
  std::optional<double> shutoff;  ///< [Pa] while the pumps run against shut hoses; empty: no pump runs

  /// [Pa] above the height of the liquid in the tank.
  [[nodiscard]] std::optional<double> held_pressure() const {
    return held ? std::optional(*held - decayed) : std::nullopt;
  }
};

/// The strongest shutoff, or the lowest relief, of pumps that all have check valves; and the strongest shutoff of all.
/// \pre the system has no problems
/// \source closed form
[[nodiscard]] HeldLine held_line(const site::Site& site, const PipingSystem& system);

/// Elevation of the liquid in the tank of a pump [m].
[[nodiscard]] double surface_of(const PipingSystem& system, const PumpPoint& pump);

}  // namespace forecourse::network
