#pragma once

#include <string>
#include <variant>
#include <vector>

#include "forecourse/base/default_used.h"
#include "forecourse/network/escape/flow_table.h"
#include "forecourse/site/site.h"

namespace forecourse::studies {

/// What a pump can draw from its tank.
struct Contents {
  double usable = 0.0;                ///< [m3] above the pump's inlet
  network::FlowTable fall;            ///< [Pa] by which the liquid's weight has fallen, against [m3] gone
  std::vector<DefaultUsed> defaults;  ///< sizes of heads that were not entered
  bool to_bottom = false;             ///< the height of the inlet is not entered: down to the tank's bottom
};

/// \param density of the liquid [kg/m3]
/// \return in words what is missing, where something is
/// \error that of the fall between its samples: 1e-4 of the level in a lying cylinder; none in an upright tank
[[nodiscard]] std::variant<Contents, std::string> contents_for(const site::Site& site, const std::string& pump,
                                                               double density);

}  // namespace forecourse::studies
