// SOURCE: [cfr_63_cccccc, 63.11111 and table 1]; [tp_201_3, equation] worked in a second computation;
// [njac_7_27b, 3.16] worked in a second computation.
#include "forecourse/parts/vapor/stage_one.h"

#include <gtest/gtest.h>

namespace forecourse::parts {
namespace {

double target(double gallons, int nozzles) {
  return static_test_target({cubic_meters_from_gallons(gallons), nozzles}) / pascal_from_inches_of_water(1.0);
}

TEST(StaticPressureTest, TargetsByUllageAndNozzles) {
  constexpr double rounding = 6e-4;  // of three printed decimals
  EXPECT_NEAR(target(1000.0, 6), 1.212, rounding);
  EXPECT_NEAR(target(5000.0, 1), 1.809, rounding);
  EXPECT_NEAR(target(10000.0, 4), 1.902, rounding);
  constexpr double coarse = 6e-3;  // of two
  EXPECT_NEAR(target(500.0, 7), 0.69, coarse);
  EXPECT_NEAR(target(1500.0, 18), 1.37, coarse);
  EXPECT_NEAR(target(2000.0, 24), 1.49, coarse);
  EXPECT_NEAR(target(25000.0, 25), 1.95, coarse);
  EXPECT_FALSE(static_test_constant(8).read);
  EXPECT_TRUE(static_test_constant(6).read);
}

TEST(StageOne, EfficiencyOfTheWorkedVector) {
  const double foot = 0.3048;
  const EfficiencyTest test{20.0 * foot * foot * foot, kelvin_from_fahrenheit(80.0), cubic_meters_from_gallons(8000.0),
                            101325.0};
  // The source takes 460 for the zero of degrees Rankine and 7.481 gal for a cubic foot: 1e-4 of what is vented.
  EXPECT_NEAR(stage_one_efficiency(test), 0.9816, 6e-5);
}

TEST(StageOne, TiersByMonthlyThroughput) {
  const auto tier = [](double gallons) { return throughput_tier(cubic_meters_from_gallons(gallons)); };
  EXPECT_EQ(tier(9999.0), ThroughputTier::below_10000);
  EXPECT_EQ(tier(10000.0), ThroughputTier::from_10000);
  EXPECT_EQ(tier(1200000.0 / 12.0), ThroughputTier::from_100000);  // a sum of 365 days over 12
}

/// Limits in the units in which they are written.
TEST(StageOne, LeakLimitsOfAValveTimesThreeStayWithinASites) {
  EXPECT_LT(3.0 * valve_pressure_leak, site_pressure_leak);
  EXPECT_NEAR(3.0 * valve_vacuum_leak, site_vacuum_leak, 1e-12);
}

}  // namespace
}  // namespace forecourse::parts
