#pragma once

#include <optional>
#include <string>

#include "forecourse/lesson/told.h"
#include "forecourse/report/units.h"

namespace forecourse::report {

/// A value of a lesson as printed, with its unit: "12.25 gpm", "95.0 %", "3.5 h". A value that is not there is a dash.
[[nodiscard]] std::string shown(std::optional<double> value, lesson::Quantity quantity, site::Display display,
                                Glyphs glyphs = Glyphs::unicode);

}  // namespace forecourse::report
