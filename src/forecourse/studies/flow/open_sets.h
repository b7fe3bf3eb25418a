#pragma once

#include "forecourse/studies/flow/flow.h"

namespace forecourse::studies {

/// Every hose of the station.
[[nodiscard]] OpenSet all_hoses(const site::Site& site);

/// The first hose of each product at each dispenser.
[[nodiscard]] OpenSet one_hose_each(const site::Site& site);

/// The sets asked for: the options', else the file's, else all hoses and one at each dispenser.
[[nodiscard]] std::vector<OpenSet> asked_sets(const site::Site& site, const FlowOptions& options);

/// What to write instead of an id that is no hose: the hoses of the dispenser it names; empty if it names none.
[[nodiscard]] std::string hoses_offered(const site::Site& site, const std::string& id);

}  // namespace forecourse::studies
