#pragma once

#include "forecourse/parts/pull/drive_off.h"
#include "forecourse/studies/incident/setup/make_case.h"

namespace forecourse::studies {

/// The mechanics of a drive-off: when the hose is tight and what the pull reaches first.
struct Pull {
  DriveOffTold told;
  double parts_at = 0.0;  ///< [s] when something gives way: by the hose's stretch where it is known, else once tight
};
[[nodiscard]] Pull pull_of(const Scene& scene, Inputs& inputs);

}  // namespace forecourse::studies
