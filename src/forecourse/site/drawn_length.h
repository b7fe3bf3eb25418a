#pragma once

#include <optional>

#include "forecourse/base/default_used.h"
#include "forecourse/site/site.h"

namespace forecourse::site {

/// The length that a line without an entered one has on the plan, straight between its ends [m]; empty: its length is
/// entered, or an end of it has no position.
/// \source closed form
[[nodiscard]] std::optional<DefaultUsed> drawn_length(const Site& site, const Line& line);

}  // namespace forecourse::site
