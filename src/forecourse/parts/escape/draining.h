#pragma once

#include "forecourse/parts/escape/orifice.h"

namespace forecourse::parts {

/// Two liquid levels above the opening that a vessel drains through.
struct LevelFall {
  double from = 0.0;  ///< [m]
  double to = 0.0;    ///< [m], 0 <= to <= from
};

/// Time to drain a vessel of upright walls through an opening in its floor, open to the air.
///
/// \param surface area of the liquid's surface [m2], > 0
/// \param levels  above the opening [m]
/// \return time [s].
/// \pre the surface is much larger than the opening.
/// \error that of the discharge coefficient.
/// \source closed form
[[nodiscard]] double draining_time_upright(double surface, const Orifice& opening, LevelFall levels);

/// A cylinder that lies level, with flat heads.
struct LyingCylinder {
  double diameter = 0.0;  ///< inside [m], > 0
  double length = 0.0;    ///< inside [m], > 0
};

/// Time to drain a lying cylinder through an opening at its bottom, vented.
///
/// \param levels above the bottom [m], up to the diameter
/// \return time [s].
/// \pre the surface is much larger than the opening: not for the very last of it.
/// \error that of the discharge coefficient; heads that are not flat are left out.
/// \source closed form
[[nodiscard]] double draining_time_lying(const LyingCylinder& tank, const Orifice& opening, LevelFall levels);

}  // namespace forecourse::parts
