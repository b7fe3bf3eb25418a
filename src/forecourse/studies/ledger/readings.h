#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "forecourse/studies/ledger/amounts.h"

namespace forecourse::studies {

/// What stood in a book on a day: of several tanks the sum.
struct StockReading {
  Day day;
  double hours = 0.0;                 ///< since 1970-01-01, local
  double volume = 0.0;                ///< [m3] fuel
  double deviation = 0.0;             ///< [m3] standard deviation of it; NaN where its volume came without a depth's
  double surface = 0.0;               ///< [m2] liquid surface: volume for each length that a stick is read too high
  std::optional<double> depth;        ///< [m] of a single tank
  std::optional<double> water;        ///< [m3]
  std::optional<double> temperature;  ///< [K] by volume
  SourceSpan where{};
};

/// Standard deviation of a depth read in a tank [m], by what is known: asked, the gauge's, or eighths of an inch.
struct DepthDeviation {
  double value = 0.0;
  bool by_default = false;
};
[[nodiscard]] DepthDeviation depth_deviation(const Stock& stock, const LedgerOptions& options);

/// Standard deviation of a volume that came without a depth [m3]: what the days' over and short scatter by, robust to
/// typos, of which each reading brings its share to two days; no less than rounding to a gallon leaves.
/// \source closed form
[[nodiscard]] double scatter_of_volumes(const std::vector<double>& over_short);

using DipsByTank = std::map<std::string, std::vector<const site::records::Dip*>>;
[[nodiscard]] DipsByTank by_tank(const site::records::Records& records);

/// The readings of a book, one a day, in the order of time. What cannot be used is told: a depth above the tank, a
/// second reading of a day, a day on which one of several tanks was not read, a reading within a drop.
[[nodiscard]] std::vector<StockReading> readings_of(const BookPlan& plan, std::size_t book, const Amounts& amounts,
                                                    const DipsByTank& dips, const LedgerOptions& options, Told& told);

/// Volume of fuel and water to a depth of a stock, where a stick at its place shows it.
[[nodiscard]] double volume_to(const Stock& stock, double depth);
/// What a stick at its place shows of a volume of fuel and water.
[[nodiscard]] double depth_of(const Stock& stock, double volume);

}  // namespace forecourse::studies
