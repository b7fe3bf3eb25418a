#pragma once

#include <string>

#include "forecourse/report/drawing/frame.h"
#include "forecourse/report/drawing/section.h"

namespace forecourse::report::drawing {

/// The profile band: a cell for each stop in the order of the course, with its number, name and live number. A cell
/// without a number says so in words.
[[nodiscard]] std::string band(const Section& section, const Frame& frame);

}  // namespace forecourse::report::drawing
