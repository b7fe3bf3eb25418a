#pragma once

#include <vector>

#include "forecourse/studies/incident/setup/make_case.h"

namespace forecourse::studies {

/// The states of the shear valve at an end and of what works through it: upper poppet, fusible link, crack trip; those
/// that the incident's kind meets. One "absent" where there is no shear valve.
[[nodiscard]] std::vector<BarrierState> valve_states(const Scene& scene, const EndGround& end);

}  // namespace forecourse::studies
