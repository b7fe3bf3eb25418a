#include "forecourse/report/flow/spans/margin_words.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace forecourse::report {

std::vector<MarginRow> margin_rows(const studies::FlowResult& result, site::Display display, Glyphs glyphs) {
  const auto pressure = [&](const std::optional<double>& si) {
    return number(Measure::pressure, display, si.value_or(std::nan("")), glyphs);
  };
  std::vector<MarginRow> rows;
  for (const studies::VaporMargin& margin : result.spans.margins) {
    const std::string temperature =
        margin.temperature ? with_unit(Measure::temperature, display, *margin.temperature, glyphs) : "";
    rows.push_back({margin.system + ", " + margin.place, temperature, pressure(margin.pressure_absolute),
                    pressure(margin.vapor_pressure), pressure(margin.margin), margin.reason});
  }
  return rows;
}

std::string air_in_words(const studies::FlowResult& result, site::Display display, Glyphs glyphs) {
  const auto& margins = result.spans.margins;
  const auto known = std::find_if(margins.begin(), margins.end(), [](const auto& one) { return one.atmospheric; });
  if (known == margins.end()) return {};
  return "Air at " + with_unit(Measure::pressure, display, *known->atmospheric, glyphs) + " absolute, " +
         known->atmospheric_from +
         ". It moves no flow, as the tank and the nozzle both lie open to it; it moves how far the fuel stands from "
         "boiling.";
}

}  // namespace forecourse::report
