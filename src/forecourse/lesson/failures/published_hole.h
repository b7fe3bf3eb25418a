#pragma once

#include <string>

#include "forecourse/site/site.h"

namespace forecourse::lesson {

/// A hole through which a line leaks what a leak detector must find, 3 gal/h at 10 psi.
/// \source [cfr_280, 280.44(a)]
struct PublishedHole {
  std::string area;       ///< as the command `incident` takes it; empty: not determined
  std::string problem;    ///< why, and what to enter
  double diameter = 0.0;  ///< [m]
};

/// \param product that leaks
[[nodiscard]] PublishedHole published_hole(const site::Site& site, const std::string& product);

}  // namespace forecourse::lesson
