#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "forecourse/base/quantity_kind.h"

namespace forecourse {

/// What is wrong, and other texts that may have been meant. They are offered only if they can be read.
struct QuantityTrouble {
  std::string message;  ///< goes on from "is a length"
  std::size_t begin = 0;
  std::size_t end = 0;
  std::vector<std::string> rewrites;
  std::size_t offered = 1;  ///< at most so many of the rewrites
};

/// Reads a quantity as `read_quantity` does (see unit_text.h), but leaves it to the caller to choose among the
/// rewrites.
[[nodiscard]] std::variant<double, QuantityTrouble> read_or_explain(std::string_view text, const QuantityKind& kind);

}  // namespace forecourse
