#pragma once

#include <vector>

#include "forecourse/parts/pull/pull_limits.h"
#include "forecourse/studies/incident/setup/make_case.h"

namespace forecourse::studies {

/// The mechanics of a drive-off: when the hose is tight and what the pull reaches first.
struct Pull {
  DriveOffTold told;
  double parts_at = 0.0;  ///< [s] when something gives way: by the hose's stretch where it is known, else once tight
  bool breakaway_acts = false;                   ///< it is listed and not left out
  std::optional<parts::PullLimit> first;         ///< empty: not determined
  std::vector<parts::PullLimit> could_be_first;  ///< by the figures; any limit that is not known could be
};
[[nodiscard]] Pull pull_of(const Scene& scene, Inputs& inputs);

}  // namespace forecourse::studies
