#pragma once

#include <optional>

#include "forecourse/base/api_units.h"

namespace forecourse::parts {

// Rules and tests of vapor recovery while tanks are filled (stage I). See docs/theory/vapor-losses.md.

/// Which part of the federal rule asks of a station, by its monthly throughput of gasoline.
enum class ThroughputTier { below_10000, from_10000, from_100000 };

/// Tier of a monthly throughput: the sum of 365 days over 12.
/// \param per_month [m3], >= 0
/// \return [1]
/// \error none
/// \source [cfr_63_cccccc, 63.11111, 63.11132]
[[nodiscard]] ThroughputTier throughput_tier(double per_month);

/// Reid vapor pressure from which a fuel is gasoline by the rule: 27.6 kPa [Pa].
/// \source [cfr_63_cccccc, 63.11132]
inline constexpr double gasoline_reid_limit = 27.6e3;

/// Largest gap between the farthest point of the opening of a fill and the tank's bottom [m].
/// \source [cfr_63_cccccc, 63.11117(b)]
inline constexpr double fill_gap_until_2006 = meters_from_inches(12.0);  ///< installed on or before 9 November 2006
inline constexpr double fill_gap_since = meters_from_inches(6.0);

/// Tanks below these capacities are exempt [m3].
/// \source [cfr_63_cccccc, 63.11117(c), 63.11118(c)]
inline constexpr double submerged_fill_exempt = cubic_meters_from_gallons(250.0);
inline constexpr double balance_exempt_until_2008 =
    cubic_meters_from_gallons(2000.0);  ///< built before 10 January 2008
inline constexpr double balance_exempt_since = cubic_meters_from_gallons(250.0);

/// Settings of pressure/vacuum valves, pressure differences [Pa], the vacuum without a sign.
/// \source [cfr_63_cccccc, table 1 (1)(g)]
inline constexpr double least_vent_pressure = pascal_from_inches_of_water(2.5);
inline constexpr double largest_vent_pressure = pascal_from_inches_of_water(6.0);
inline constexpr double least_vent_vacuum = pascal_from_inches_of_water(6.0);
inline constexpr double largest_vent_vacuum = pascal_from_inches_of_water(10.0);

/// Leak of all pressure/vacuum valves of a site together, at 2 in of water of pressure and 4 in of vacuum [m3/s].
/// \source [cfr_63_cccccc, table 1 (1)(g)]
inline constexpr double site_pressure_leak = cubic_meters_per_second_from_cubic_feet_per_hour(0.17);
inline constexpr double site_vacuum_leak = cubic_meters_per_second_from_cubic_feet_per_hour(0.63);
/// Leak of one such valve in California, at the same pressures [m3/s].
/// \source [vr_101, exhibit 3]
inline constexpr double valve_pressure_leak = cubic_meters_per_second_from_cubic_feet_per_hour(0.05);
inline constexpr double valve_vacuum_leak = cubic_meters_per_second_from_cubic_feet_per_hour(0.21);

/// A static pressure test of the room above the fuel, begun at 2 in of water and read after 5 minutes.
struct StaticTest {
  double ullage = 0.0;  ///< [m3], > 0
  int nozzles = 1;      ///< that the room serves: all of them where tanks are manifolded
};

/// Constant of the exponent by the count of nozzles.
struct StaticTestConstant {
  double gallons = 0.0;
  bool read = true;  ///< false: the one legible scan breaks the pattern, and the value of the pattern is taken
};

/// \return constant of a count of nozzles [US gal]
/// \error that of 7 to 12 nozzles is doubtful: the scan prints 571.614, the pattern of the others gives 531.614
/// \source [tp_201_3, equation], read in a scan of an executive order
[[nodiscard]] StaticTestConstant static_test_constant(int nozzles);

/// Least pressure that must be left at the end of a static pressure test: 2 exp(-c/v).
/// \return above the atmosphere [Pa]
/// \error none for one to six nozzles, by the federal rule
/// \source [tp_201_3, equation]; [cfr_63_cccccc, table 1 (1)(h)] for one to six nozzles
[[nodiscard]] double static_test_target(const StaticTest& test);

/// What was measured while a tank was filled with vapor going back to the tanker.
struct EfficiencyTest {
  double vented = 0.0;             ///< volume that left through the vent [m3]
  double vapor_temperature = 0.0;  ///< of it [K]
  double loaded = 0.0;             ///< volume of fuel [m3], > 0
  double barometer = 0.0;          ///< absolute [Pa]
};

/// Efficiency of stage I: share of the displaced vapor that did not leave by the vent.
/// \return [1]
/// \error none by the source
/// \source [njac_7_27b, 3.16]
[[nodiscard]] double stage_one_efficiency(const EfficiencyTest& test);

}  // namespace forecourse::parts
