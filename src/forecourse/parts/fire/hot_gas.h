#pragma once

namespace forecourse::parts {

/// Gas that streams past a thing above or beside a fire.
struct HotGas {
  double rise = 0.0;   ///< [K] above the surroundings
  double speed = 0.0;  ///< [m/s], >= 0

  friend bool operator==(const HotGas&, const HotGas&) = default;
};

}  // namespace forecourse::parts
