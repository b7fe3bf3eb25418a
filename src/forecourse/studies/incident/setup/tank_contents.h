#pragma once

#include <string>
#include <variant>

#include "forecourse/network/escape/flow_table.h"
#include "forecourse/parts/tank/tank_volume.h"
#include "forecourse/site/site.h"

namespace forecourse::studies {

/// The shape or chart of a tank; in words why it has none that can be computed.
[[nodiscard]] std::variant<parts::TankVolume, std::string> vessel_of(const site::Tank& tank);

/// Fall of a pitched tank along its length [1]; 0 with a chart, which has it in it.
[[nodiscard]] double pitch_of(const site::Tank& tank);

/// A depth measured at a place along a pitched tank, as that at the middle of its length [m].
/// \param at [m] from the low end; empty: not known, the depth is left as it is
[[nodiscard]] double at_middle(const site::Tank& tank, double depth, std::optional<double> at);

/// What a pump can draw from its tank.
struct Contents {
  double usable = 0.0;      ///< [m3] above the pump's inlet
  network::FlowTable fall;  ///< [Pa] by which the liquid's weight has fallen, against [m3] gone
  bool to_bottom = false;   ///< the height of the inlet is not entered: down to the tank's bottom
};

/// \param density of the liquid [kg/m3]
/// \return in words what is missing, where something is
/// \error that of the fall between its samples: 1e-4 of the depth in a cylinder; none in an upright tank
[[nodiscard]] std::variant<Contents, std::string> contents_for(const site::Site& site, const std::string& pump,
                                                               double density);

}  // namespace forecourse::studies
