#pragma once

namespace forecourse::parts {

/// What a law of a part answers for one flow: the pressure lost along positive flow and its derivative.
///
/// Pressures are piezometric (elevation taken out), so no law knows how high its part lies.
struct Loss {
  double pressure_loss = 0.0;  ///< [Pa], positive when pressure falls along positive flow
  double slope = 0.0;          ///< d(pressure_loss)/d(flow) [Pa s/m3], >= 0
};

/// Losses of parts in series at one flow add, and so do their slopes.
constexpr Loss operator+(Loss a, Loss b) { return {a.pressure_loss + b.pressure_loss, a.slope + b.slope}; }

}  // namespace forecourse::parts
