// SOURCE: [nureg_1805_sheets, heat release and flame height sheets] [nist_thin_pools, pans on concrete]
#include "forecourse/parts/fire/pool_fire.h"

#include <gtest/gtest.h>

#include <cmath>

#include "support/check_values.h"

namespace forecourse::parts {
namespace {

using test::agrees;
using test::row;

constexpr BurningFuel jet_fuel{"JP-4", 0.051, 43.5e6, 3.6};
constexpr BurningFuel lubricant{"lube oil", 0.039, 46.0e6, 0.7};

double square_meter_from_square_foot(double area) { return area * 0.3048 * 0.3048; }

double heat_of_deep_pool(const BurningFuel& fuel, double area) {
  return heat_release(fuel, deep_pool_rate(fuel, equivalent_diameter(area)), area);
}

TEST(PoolFire, HeatReleaseAgreesWithPublishedSheets) {
  EXPECT_TRUE(agrees(row("FIRE-HRR-JP4"), heat_of_deep_pool(jet_fuel, 0.84) / 1e3));
  const double diesel = heat_of_deep_pool(*find_burning_fuel("diesel"), square_meter_from_square_foot(2545.0));
  EXPECT_TRUE(agrees(row("FIRE-HRR-diesel"), diesel / 1e3));
  EXPECT_TRUE(agrees(row("FIRE-HRR-lube"), heat_of_deep_pool(lubricant, square_meter_from_square_foot(9.0)) / 1e3));
}

TEST(PoolFire, FlameHeightAgreesWithPublishedSheet) {
  const double height = flame_height_heskestad(heat_of_deep_pool(jet_fuel, 0.84), equivalent_diameter(0.84));
  EXPECT_TRUE(agrees(row("FIRE-Hf-JP4"), height));
}

TEST(PoolFire, GasolineAgreesWithASecondComputation) {
  const BurningFuel gasoline = *find_burning_fuel("gasoline");
  for (const double area : {1.0, 10.0}) {
    const auto check = row(area == 1.0 ? "FIRE-gas-1" : "FIRE-gas-10");
    const auto expected = test::parts_of(check.expected);
    const double diameter = equivalent_diameter(area), rate = deep_pool_rate(gasoline, diameter);
    const double heat = heat_release(gasoline, rate, area);
    EXPECT_NEAR(heat / 1e3 / std::stod(expected[0]), 1.0, 1e-6);  // of the row
    EXPECT_NEAR(flame_height_heskestad(heat, diameter) / std::stod(expected[1]), 1.0, 1e-6);
    // The row takes the rate of a very wide pool here.
    EXPECT_NEAR(flame_height_thomas(gasoline.rate_of_large_pool, diameter) / std::stod(expected[2]), 1.0, 1e-6);
    test::count_check(check);
  }
}

// "gasoline-concrete; square pan side 0.3 m; depth 1 mm"
struct ThinPan {
  BurningFuel fuel;
  double diameter = 0.0, depth = 0.0;
};

ThinPan pan_of(const test::CheckRow& check) {
  const auto parts = test::parts_of(check.inputs);
  const double side = *test::number_in(parts[1]);
  return {*find_burning_fuel(parts[0].starts_with("gasoline") ? "gasoline" : "kerosene"),
          equivalent_diameter(side * side), *test::number_in(parts[2])};
}

TEST(PoolFire, DeepPoolRateAgreesWithASecondComputation) {
  for (const auto& check : test::rows_starting("DEEP-")) {
    const auto parts = test::parts_of(check.inputs);
    const double side = *test::number_in(parts[1]);
    EXPECT_TRUE(agrees(check, deep_pool_rate(*find_burning_fuel(parts[0]), equivalent_diameter(side * side))))
        << parts[0];
  }
}

TEST(PoolFire, MeasuredThinLayersLieInTheRange) {
  int seen = 0;
  for (const auto& check : test::rows_starting("THIN-")) {
    const ThinPan pan = pan_of(check);
    const BurningRate range = thin_layer_rate(pan.fuel, pan.diameter);
    EXPECT_GE(check.number(), range.low) << check.id;
    EXPECT_LE(check.number(), range.high) << check.id;
    test::count_check(check);
    ++seen;
  }
  EXPECT_EQ(seen, 17);
}

TEST(PoolFire, ShareOfThinLayersIsTheLowestOfTheRows) {
  double lowest = 1.0, highest = 0.0;
  for (const auto& check : test::rows_starting("THIN-")) {
    const ThinPan pan = pan_of(check);
    if (pan.depth > 1.0 || check.id.find("vinyl") != std::string::npos) continue;
    const double share = check.number() / deep_pool_rate(pan.fuel, pan.diameter);
    lowest = std::min(lowest, share);
    highest = std::max(highest, share);
  }
  EXPECT_NEAR(lowest, 0.283, 0.0005);  // digits of the documentation
  EXPECT_NEAR(highest, 0.369, 0.0005);
  EXPECT_LE(thin_layer_share, lowest);
}

TEST(PoolFire, WiderPoolsBurnFasterUpToALimit) {
  const BurningFuel gasoline = *find_burning_fuel("gasoline");
  EXPECT_EQ(deep_pool_rate(gasoline, 0.0), 0.0);
  EXPECT_LT(deep_pool_rate(gasoline, 0.5), deep_pool_rate(gasoline, 1.0));
  EXPECT_NEAR(deep_pool_rate(gasoline, 50.0), gasoline.rate_of_large_pool, 1e-12);
}

TEST(PoolFire, WideWeakFireHasNoFlameHeightBelowZero) { EXPECT_EQ(flame_height_heskestad(1e3, 10.0), 0.0); }

}  // namespace
}  // namespace forecourse::parts
