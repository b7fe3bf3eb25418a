#pragma once

#include <string>
#include <vector>

#include "forecourse/decide/mend/levers.h"

namespace forecourse::decide {

/// Levers of figures that read more than a value of their own part: flows of hoses, drops, overfill devices, lists.
[[nodiscard]] std::vector<Lever> own_levers(const LeverQuestion& question);

/// Moves of a part along both axes of the plan, either way.
/// \param last taken only where no other lever mends it
void add_moves(const std::string& path, const std::string& words, bool last, std::vector<Lever>& out);

}  // namespace forecourse::decide
