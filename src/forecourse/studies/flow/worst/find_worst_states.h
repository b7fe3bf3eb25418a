#pragma once

#include "forecourse/studies/flow/worst/set_search.h"
#include "forecourse/studies/flow/worst/worst_states.h"

namespace forecourse::studies {

/// The worst states of one group. What the search has not solved yet is solved here.
[[nodiscard]] WorstStates worst_states(SetSearch& search);

}  // namespace forecourse::studies
