#pragma once

#include <string>

#include "forecourse/report/drawing/frame.h"
#include "forecourse/report/drawing/section.h"

namespace forecourse::report::drawing {

/// The profile band: a cell for each stop in the order of the course, with its number, name and live number. A cell
/// without a number says so in words. Each cell is a `<g class="cell">` with its stop and part, for pages on which it
/// is chosen.
[[nodiscard]] std::string band(const Section& section, const Frame& frame);

}  // namespace forecourse::report::drawing
