#pragma once

#include <string>
#include <vector>

#include "forecourse/report/units.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::report {

/// How far the fuel stands from boiling at one place and temperature, in words. Pressures without their unit.
struct MarginRow {
  std::string place;        ///< "regular, inlet of pump P1"
  std::string temperature;  ///< with its unit; may be empty
  std::string absolute;     ///< at the place
  std::string vapor;        ///< the fuel's own
  std::string margin;
  std::string reason;  ///< why it is not determined and what to enter; empty when it is
};

/// One row for each place and temperature; what is not determined stands once for each place.
[[nodiscard]] std::vector<MarginRow> margin_rows(const studies::FlowResult& result, site::Display display,
                                                 Glyphs glyphs = Glyphs::unicode);

/// Why altitude is about margins and not about flows, and where the pressure of the air comes from; empty without one.
[[nodiscard]] std::string air_in_words(const studies::FlowResult& result, site::Display display,
                                       Glyphs glyphs = Glyphs::unicode);

}  // namespace forecourse::report
