#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "forecourse/base/quantity_kind.h"
#include "forecourse/site/site.h"

namespace forecourse::decide {

/// Steps in which a value is set by who builds or sets it.
/// \source common practice, no source
enum class Grid {
  eighth,     ///< 1/8 in or 2 mm
  inch,       ///< 1 in or 1 cm
  half_foot,  ///< on plan: 6 in or 10 cm
  gallon,     ///< 1 gal or 5 L, of a container
  order,      ///< 50 gal or 200 L, of a delivery
  hose_flow,  ///< 0.5 gpm or 1 L/min
  drop_flow,  ///< 10 gpm or 50 L/min
  percent,    ///< 1 %
  tenth,      ///< 0.1 %
  hour,       ///< 1 h
  month,      ///< 30 d
  count,      ///< 1
};

/// How a value is written: as the one before it was, else as the station shows its values.
struct Written {
  site::Display display = site::Display::us;
  std::string unit = {};  ///< of the one before; empty: the grid's own
};
[[nodiscard]] Written written_like(std::string_view bytes, site::Display otherwise);

/// One step in SI.
[[nodiscard]] double step_of(Grid grid, site::Display display);

/// A value of a grid as a site file has it: "12 ft 3 in", "5 5/8 in", "3.73 m", "2".
[[nodiscard]] std::string text_on(Grid grid, const Written& as, double si);

/// A value as it stands in a site file, in SI; empty: it is not one amount.
[[nodiscard]] std::optional<double> read_value(Grid grid, std::string_view bytes);

}  // namespace forecourse::decide
