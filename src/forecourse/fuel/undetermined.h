#pragma once

#include <limits>

namespace forecourse::fuel {

/// What a number is when no law gives it: not a number, so that nothing worked out from it looks determined.
inline constexpr double undetermined = std::numeric_limits<double>::quiet_NaN();

}  // namespace forecourse::fuel
