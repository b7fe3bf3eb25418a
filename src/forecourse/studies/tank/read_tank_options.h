#pragma once

#include <string>
#include <vector>

#include "forecourse/studies/read_options.h"
#include "forecourse/studies/tank/tank.h"

namespace forecourse::studies {

/// The options of the tank study as they are written; empty: not asked.
struct TankAsked {
  std::string tank;
  std::string depth;
  std::string at;  ///< "fill", "gauge", "pump" or a length from the low end
  std::string step;
  std::string rate;
  std::string room;
  std::vector<std::string> draws;
};

/// The options, or what is wrong with what was written.
[[nodiscard]] Parsed<TankOptions> read_tank_options(const TankAsked& asked, Asker asker);

}  // namespace forecourse::studies
