#pragma once

#include <string_view>

namespace forecourse::site {

/// An invented station that uses every table of a site file, for tests of reading and editing.
extern const std::string_view whole_station;

/// A small station: one tank, one pump, two dispensers.
extern const std::string_view small_station;

}  // namespace forecourse::site
