#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/studies/flow/ladder/ladder.h"
#include "forecourse/studies/flow/worst/set_search.h"

namespace forecourse::studies {

/// What a ladder is asked for.
struct LadderRequest {
  std::vector<std::string> order;   ///< the user's, of any hoses of the station; empty: none
  std::optional<double> keep_flow;  ///< [m3/s]
  SearchLimits limits;
};

/// Worst and spread order of a group, and the user's where it names hoses of the group. The search keeps what it
/// has solved. Empty for a group without hoses.
[[nodiscard]] std::vector<Ladder> ladders(SetSearch& search, const LadderRequest& request);

}  // namespace forecourse::studies
