#pragma once

#include "forecourse/studies/incident/setup/make_case.h"

namespace forecourse::studies {

/// The barriers that an incident of this kind meets at this place, and whether each is assured.
///
/// A barrier is assured where every proof that it needs is on record: of a shear valve that it is anchored, that its
/// groove lies in the published band about the island's top and that its trip was tested; of a sensor, a leak detector
/// and an emergency stop that they were tested and stop these pumps; of a breakaway its pull, a whip hose and when it
/// was fitted; of a sump that it was found tight. Tests that are due every year are judged by `IncidentOptions::today`.
/// The whole list stands in docs/theory/barriers.md. Of an overfill: none, its own study tells them.
[[nodiscard]] std::vector<BarrierState> barrier_states(const Scene& scene);

/// Greatest distance of a shear groove from the island's top [m].
/// \source [ifc_2018, 2306.7.4] 1/2 in
inline constexpr double groove_band = 0.0127;

}  // namespace forecourse::studies
