#pragma once

#include "forecourse/site/pipe.h"

namespace forecourse::site {

/// A liquid sensor in a sump.
struct SumpSensor {
  Name id;  ///< by which an interlock calls it
  SourceSpan where{};
  Maybe<Length> height;  ///< above the sump's floor, where it trips
  Name kind;             ///< "float", "optical" or "other"
  Fact tells_fuel_from_water;
  std::optional<Date> tested;
};

/// Where a line or conduit enters a sump.
struct EntrySeal {
  Name id;
  SourceSpan where{};
  Maybe<Length> height;  ///< of its lower edge above the sump's floor
  Fact tight;
  Maybe<Area> opening;  ///< through which it leaks, where it does not hold
  std::optional<Date> tested;
};

/// A test of a sump or a spill container with water: how it was made, and what came out.
struct LiquidTest {
  SourceSpan where{};
  Maybe<Length> below_top;   ///< the water when the test began
  Maybe<Length> above_seal;  ///< the water above the highest penetration or seam
  Maybe<Duration> settled;   ///< until the first reading
  Maybe<Duration> waited;    ///< from the first reading to the last
  Maybe<Length> change;      ///< of the level between the two, without a sign
  Fact boots_fitted;         ///< the test boots were fitted
};

/// A tank sump or a dispenser sump (under-dispenser containment).
struct Sump {
  SourceSpan where{};
  Name kind;                      ///< "tapered", "box" or "round"
  std::optional<Position> floor;  ///< inside, two horizontal sizes
  std::optional<Position> top;    ///< inside, two horizontal sizes
  Maybe<Length> diameter;         ///< for a round one
  Maybe<Length> depth;
  Maybe<Ratio> parts_share;     ///< share of the room taken by parts
  Maybe<Length> sensor_height;  ///< above the floor
  Maybe<Length> lowest_seal;    ///< lowest entry seal above the floor
  Maybe<Length> floor_elevation;
  Maybe<Volume> volume;  ///< up to the brim, entered instead of sizes
  std::optional<SumpSensor> sensor;
  std::vector<EntrySeal> seals;
  Fact tight;
  Fact double_wall;
  Fact open_to_view;  ///< can be looked into, and reached, without taking things apart
  std::optional<Date> tested;
  std::optional<Date> monitored;         ///< both walls were last found tight
  std::optional<Date> monitoring_ended;  ///< day from which its walls are watched no more
  std::optional<Date> repaired;
  std::optional<LiquidTest> liquid_test;  ///< the last
  std::vector<Name> listed_to;            ///< standards that a laboratory listed it to
};

}  // namespace forecourse::site
