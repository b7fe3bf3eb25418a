#pragma once

#include "forecourse/studies/incident/setup/make_case.h"

namespace forecourse::studies {

/// Steady figures of each broken end.
[[nodiscard]] std::vector<OpenEnd> open_ends(const Scene& scene, const release::Case& given);

/// How fuel leaves through parts of the full opening of the first end, nothing shut.
[[nodiscard]] std::vector<JetRow> jets(const Scene& scene, const release::Case& given);

/// What line pack and columns change, until the valve is shut; where none acts, in the first 10 s.
[[nodiscard]] std::optional<PackAndColumn> pack_and_column(release::Case given);

/// The pool of a run on the slab.
[[nodiscard]] std::optional<PoolTold> pool_of(const Scene& scene, const IncidentRun& run);

/// A crack's leak at the pressures that matter, and what sees it.
[[nodiscard]] std::optional<CrackTold> crack_told(const Scene& scene);

}  // namespace forecourse::studies
