#pragma once

#include <string>
#include <vector>

#include "forecourse/studies/meter/options.h"
#include "forecourse/studies/read_options.h"

namespace forecourse::studies {

/// The options as they are written; empty: not asked.
struct MeterTexts {
  std::string hose;
  std::string from;  ///< "2026-10-01"
  std::string to;
  std::string expansion;            ///< "0.0000265 1/degF"
  std::vector<std::string> prices;  ///< "3.20 per gal", "regular=3.20 EUR per gal"
  std::vector<std::string> yearly;  ///< "60000 gal", "D1.a=60000 gal"
  std::vector<std::string> limits;  ///< "county=7 in3 per 5 gal", "county=0.6 %", "acceptance: county=3 in3 per 5 gal"
};

/// The options, with all that is wrong with any of them.
[[nodiscard]] Parsed<MeterOptions> read_meter_options(const MeterTexts& texts, Asker asker);

}  // namespace forecourse::studies
