#pragma once

#include "forecourse/studies/flow/worst/set_search.h"

namespace forecourse::studies {

/// Looks for the slowest set of each size where there are too many sets to solve them all; the search keeps what it
/// finds. Hoses are added to several starts and taken away from all, each time the one that makes the slowest hose
/// slowest; then one open hose at a time is swapped for a closed one as long as that helps.
/// About 12 n^2 + 4 n^3 / 6 sets for n hoses with six starts.
/// Where sets are dear and can be estimated, the walks go over estimates, which are lower bounds, and of each size the
/// sets are solved whose estimate is below the slowest one solved; `starts` then does not count.
/// \param starts  hoses that are opened first in turn, those slowest with all open before the others; 1 or more
void descend_to_slowest(SetSearch& search, std::size_t starts);

/// Looks for the greatest flow through a run: from all open, one hose at a time is opened or shut as long as the flow
/// grows. About 30 sets at 16 hoses.
void ascend_to_greatest(SetSearch& search, std::size_t system, std::size_t run);

}  // namespace forecourse::studies
