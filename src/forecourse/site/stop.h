#pragma once

namespace forecourse::site {

/// Where a part belongs along the course of the fuel, in its order; the numbers never change. What serves no one place
/// of it belongs to the station.
enum class Stop {
  tanker = 1,
  fill,
  tank,
  pump,
  line,
  sump,
  shear_valve,
  meter,
  hose,
  nozzle,
  vapor,
  station,
};

/// "tanker", "shear valve", "whole station".
[[nodiscard]] const char* word(Stop stop);

}  // namespace forecourse::site
