#pragma once

#include "forecourse/studies/incident/release/told_run.h"
#include "forecourse/studies/incident/setup/make_case.h"

namespace forecourse::studies {

/// A vehicle that drives off with the nozzle: when the hose is tight, which limit the pull reaches first, and what
/// escapes then.
struct DriveOffOutcome {
  DriveOffTold told;
  /// Runs to be told, with their names: the breakaway parts and both ends shut; one end stays open; the hose fails or
  /// the nozzle comes out, where their pulls are known and could be reached first; the dispenser goes over, with its
  /// shear valves acting and without.
  std::vector<IncidentRun> runs;
};
[[nodiscard]] DriveOffOutcome drive_off(const Scene& scene, Inputs& inputs, const release::Names& names,
                                        const Context& context);

}  // namespace forecourse::studies
