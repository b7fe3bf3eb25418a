#pragma once

#include <set>

#include "forecourse/studies/incident/incident.h"
#include "forecourse/studies/incident/setup/inputs.h"

namespace forecourse::studies {

struct OverfillOutcome {
  std::string problem;  ///< what is missing
  OverfillTold told;
  std::vector<IncidentRun> runs;  ///< first with every barrier, then without each
  std::vector<BarrierState> barriers;
  std::vector<std::string> warnings;
  std::vector<DefaultUsed> defaults;  ///< of the pipes between truck and tank
  std::size_t drawn_runs = 0;         ///< with drawn inputs; 0: none is uncertain
  Spread drawn = {};                  ///< [m3] escaped, over these
  Spread drawn_outside = {};          ///< [m3]
};

/// A drop that goes on: alarm, overfill valve, driver, spill container, and what goes where without each.
/// See docs/theory/overfill.md.
[[nodiscard]] OverfillOutcome overfill(const site::Site& site, const IncidentOptions& options,
                                       const site::IncidentRequest& request, Inputs& inputs, const Context& context);

}  // namespace forecourse::studies
