#pragma once

#include <cstddef>

namespace forecourse::studies {

/// How it is known that no other set of open hoses is worse.
enum class Proof {
  argument,     ///< opening a hose cannot raise the flow of another, so it follows without trying the others
  enumeration,  ///< every set was solved
  best_found,   ///< the worst of those tried; a worse one may exist
};

/// How far the worst sets of open hoses are searched before "best found" must do.
struct SearchLimits {
  std::size_t most_sets = 65536;   ///< solved to try them all, where a set costs microseconds: 16 hoses, all different
  std::size_t most_single = 1024;  ///< where each set is solved by itself: blended hoses, controls that switch pumps
};

}  // namespace forecourse::studies
