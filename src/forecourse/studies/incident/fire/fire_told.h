#pragma once

#include "forecourse/studies/incident/setup/make_case.h"

namespace forecourse::studies {

/// Whether the gas at the link, as entered or as the fire has it, is too cool to part it.
[[nodiscard]] bool link_never_parts(const Scene& scene);

/// Orders of magnitude of a fire under a dispenser, and when its fusible link parts.
/// Wind and the lack of air in a pit are left out; no distance is derived from it.
/// \param with    the run in which the link acts, null if there is none
/// \param without the run in which it does not
[[nodiscard]] FireTold fire_told(const Scene& scene, Inputs& inputs, const IncidentRun* with,
                                 const IncidentRun* without);

}  // namespace forecourse::studies
