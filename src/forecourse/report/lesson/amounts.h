#pragma once

#include <optional>
#include <string>

#include "forecourse/lesson/told.h"
#include "forecourse/report/units.h"

namespace forecourse::report {

/// A value of a lesson as printed, with its unit: "12.25 gpm", "95.0 %", "3.5 h". A value that is not there is a dash.
[[nodiscard]] std::string shown(std::optional<double> value, lesson::Quantity quantity, site::Display display,
                                Glyphs glyphs = Glyphs::unicode);

/// The same of two ends: "0.46 to 0.59 gal"; one value where both are shown alike.
[[nodiscard]] std::string shown(const lesson::Ends& range, lesson::Quantity quantity, site::Display display,
                                Glyphs glyphs = Glyphs::unicode);

/// A number of a page: its range where it has one, else its value; empty where it has none.
[[nodiscard]] std::string shown(const lesson::Number& number, site::Display display, Glyphs glyphs = Glyphs::unicode);

}  // namespace forecourse::report
