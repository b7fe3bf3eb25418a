#pragma once

#include <cstddef>

namespace forecourse {

/// A number of a place, run or hose as the index of a list.
///
/// \pre `i` is not negative
[[nodiscard]] constexpr std::size_t at(int i) { return static_cast<std::size_t>(i); }

}  // namespace forecourse
