// SOURCE: [e10_water_text, two points] by the rows PHASE of the check values.
#include "forecourse/fuel/water_uptake.h"

#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/base/api_units.h"
#include "support/check_values.h"

namespace forecourse::fuel {
namespace {

using test::agrees;
using test::row;

constexpr double percent = 100.0;

TEST(WaterUptake, AtThePublishedPoints) {
  EXPECT_TRUE(agrees(row("PHASE-E10-60F"), percent * water_uptake_e10(kelvin_from_fahrenheit(60.0)), {0.05, 0.0}));
  EXPECT_TRUE(agrees(row("PHASE-E10-20F"), percent * water_uptake_e10(kelvin_from_fahrenheit(20.0)), {0.05, 0.0}));
  EXPECT_TRUE(agrees(row("PHASE-slope"), percent * water_uptake_e10_slope(), {0.0, 0.2}));
}

/// A third text gives 0.3 % at 10 degF: the straight line, carried on, agrees; the law does not answer there.
TEST(WaterUptake, IsNotCarriedOnBeyondThem) {
  const double carried = water_uptake_e10(kelvin_from_fahrenheit(20.0)) - water_uptake_e10_slope() * 10.0 / 1.8;
  EXPECT_TRUE(agrees(row("PHASE-E10-10F"), percent * carried, {0.05, 0.0}));
  EXPECT_TRUE(std::isnan(water_uptake_e10(kelvin_from_fahrenheit(10.0))));
  EXPECT_TRUE(std::isnan(water_uptake_e10(kelvin_from_fahrenheit(70.0))));
  EXPECT_TRUE(std::isnan(separation_temperature_e10(0.01)));
}

TEST(WaterUptake, ThereAndBack) {
  for (const double fahrenheit : {20.0, 33.0, 60.0}) {
    const double temperature = kelvin_from_fahrenheit(fahrenheit);
    EXPECT_NEAR(separation_temperature_e10(water_uptake_e10(temperature)), temperature, 1e-9);
  }
}

}  // namespace
}  // namespace forecourse::fuel
