#pragma once

#include <cstdint>
#include <optional>

#include "forecourse/site/records/records.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/day.h"

namespace forecourse::studies {

/// What is wrong in an invented month, and what scatters. All of it is invented; nothing tells of a real station.
struct PlantedFaults {
  double leak = 0.0;         ///< [m3/s]
  double meter_error = 0.0;  ///< [1] (indicated less true) over true, of every meter
  double warm = 0.0;         ///< [K] by which deliveries are warmer than the tank
  double chart = 0.0;        ///< [m] by which the stick reads too high near the top, falling to 0 at the bottom
  double theft = 0.0;        ///< [m3] gone on day 17
  double typo = 0.0;         ///< [m] added to the reading of day 11
  double water = 0.0;        ///< [m] that the water bottom rises over the month, unread until its end
  double unentered = 0.0;    ///< [m3] of a delivery on day 21 that the book lacks
};

struct InventedScatter {
  double reading = 0.0;   ///< [m] standard deviation of a depth
  double delivery = 0.0;  ///< [1] of a delivery
  double sales = 0.0;     ///< [1] of a day's sales
};

struct InventedMonth {
  Day first;                      ///< of the month
  int days = 30;                  ///< of readings after the first
  double daily_sales = 0.0;       ///< [m3] mean of a day; weekends sell less
  std::optional<double> eighths;  ///< [m] readings are rounded to; empty: not
  bool temperatures = true;       ///< of tank and deliveries are entered
  InventedScatter scatter;
  PlantedFaults faults;
};

/// Records of one tank over a month: a reading each evening, deliveries of 8,000 gal or what the tank has room for,
/// whenever less than two days' sales are left, and a total of each hose each day. The same seed and run give the
/// same month.
///
/// \param tank id of a tank with a shape or a chart, without compartments
[[nodiscard]] site::records::Records invented_month(const site::Site& site, const std::string& tank,
                                                    const InventedMonth& month, std::uint64_t seed, std::uint64_t run);

}  // namespace forecourse::studies
