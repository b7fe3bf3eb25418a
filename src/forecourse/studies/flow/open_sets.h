#pragma once

#include "forecourse/studies/flow/flow.h"

namespace forecourse::studies {

/// Every hose of the station.
[[nodiscard]] OpenSet all_hoses(const site::Site& site);

/// The first hose of each product at each dispenser.
[[nodiscard]] OpenSet one_hose_each(const site::Site& site);

/// The sets asked for: the options', else the file's, else all hoses and one at each dispenser.
[[nodiscard]] std::vector<OpenSet> asked_sets(const site::Site& site, const FlowOptions& options);

}  // namespace forecourse::studies
