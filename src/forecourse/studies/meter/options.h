#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/studies/day.h"
#include "forecourse/studies/meter/limits.h"

namespace forecourse::studies {

/// What a product costs: a plain number for each volume, in whatever the user calls it.
struct MeterPrice {
  std::string product;   ///< empty: every product without a price of its own
  double price = 0.0;    ///< for each m3
  std::string currency;  ///< the user's word; empty: none was written
};

/// What a hose sells in a year.
struct YearlyVolume {
  std::string hose;     ///< empty: every hose without one of its own
  double volume = 0.0;  ///< [m3]
};

struct MeterOptions {
  std::string hose;                 ///< empty: every meter
  std::optional<Day> from;          ///< first day of the ledger's period
  std::optional<Day> to;            ///< its last; provings behind it are left out
  std::optional<double> expansion;  ///< [1/K] of measures that tell none of their own
  std::vector<MeterPrice> prices;
  std::vector<YearlyVolume> yearly;
  std::vector<MeterLimit> limits;  ///< the user's own, beside the published ones
};

}  // namespace forecourse::studies
