// SOURCE: [nureg_1805_sheets, point source and solid flame sheets] [nist_pool_fires, radiative fractions]
// SOURCE: [nist_correlation_guide, solid flame radiation heat flux, verification]
#include "forecourse/parts/fire/flame_radiation.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numbers>

#include "forecourse/parts/fire/pool_fire.h"
#include "support/check_values.h"

namespace forecourse::parts {
namespace {

using test::agrees;
using test::row;

TEST(FlameRadiation, PointSourceAgreesWithPublishedSheet) {
  const double distance = 0.5 + 0.5 * equivalent_diameter(0.09);
  EXPECT_TRUE(agrees(row("FIRE-q-pt-100"), point_source_flux(100e3, 0.35, distance) / 1e3));
}

TEST(FlameRadiation, GasolinePointSourceAgreesWithASecondComputation) {
  for (const double area : {1.0, 10.0}) {
    const auto check = row(area == 1.0 ? "FIRE-gas-1" : "FIRE-gas-10");
    const auto expected = test::parts_of(check.expected);
    // The row counts 10 m from the edge of the pool.
    const double flux = point_source_flux(1e3 * std::stod(expected[0]), 0.3, 10.0 + 0.5 * equivalent_diameter(area));
    EXPECT_NEAR(flux / 1e3, std::stod(expected[3]), 1e-6);  // digits of the row
    test::count_check(check);
  }
}

TEST(FlameRadiation, SolidFlameAgreesWithPublishedSheet) {
  const double diameter = equivalent_diameter(0.84);
  const double power = emissive_power(diameter);
  EXPECT_TRUE(agrees(row("FIRE-E-JP4"), power / 1e3));
  const FlameCylinder flame{diameter, row("FIRE-Hf-JP4").number()};
  const auto factor = view_factor(flame, 3.048 + 0.5 * diameter);
  ASSERT_TRUE(factor);
  // The sheet lies 1.7e-5 below its own equation with the sheet's own distances: why was not found.
  const test::Tolerance sheet{.relative = 2e-5};
  EXPECT_TRUE(agrees(row("FIRE-F12-JP4"), *factor, sheet));
  EXPECT_TRUE(agrees(row("FIRE-q-JP4"), power * *factor / 1e3, sheet));
}

TEST(FlameRadiation, LimitedSolidFlameAgreesWithTheExampleOfTheGuide) {
  // 100 kW of propane on 0.09 m2, radiative fraction 0.35: 5.64, 3.51 and 2.40 kW/m2.
  const double diameter = equivalent_diameter(0.09);
  const FlameCylinder flame{diameter, flame_height_heskestad(100e3, diameter)};
  const double power = limited_emissive_power(flame, 35e3);
  EXPECT_LT(power, emissive_power(diameter));
  const double printed[][2] = {{0.50, 5.64}, {0.75, 3.51}, {1.00, 2.40}};
  for (const auto& [distance, flux] : printed) {
    EXPECT_NEAR(power * view_factor(flame, distance).value() / 1e3, flux, 0.005) << distance;  // printed digits
  }
}

TEST(FlameRadiation, MeasuredRadiativeFractionsLieInTheRange) {
  for (const auto& check : test::rows_starting("POOLX-")) {
    EXPECT_GE(check.number() - 0.07, alcohol_radiative_fraction.low - 1e-12) << check.id;
    EXPECT_LE(check.number() + 0.07, alcohol_radiative_fraction.high + 1e-12) << check.id;
    test::count_check(check);
  }
}

TEST(FlameRadiation, FarOffTheFlameIsAFlatPlate) {
  // Far off a surface turned to the flame sees its outline: diameter times height over pi distance squared.
  const double factor = view_factor({1.0, 2.0}, 500.0).value();
  EXPECT_NEAR(factor * std::numbers::pi * 500.0 * 500.0 / 2.0, 1.0, 1e-3);  // its front is nearer: radius/distance
}

TEST(FlameRadiation, FallsWithDistanceAndIsNoneInside) {
  double last = 1.0;
  for (const double distance : {0.51, 0.6, 1.0, 2.0, 5.0, 20.0}) {
    const double here = view_factor({1.0, 2.0}, distance).value();
    EXPECT_LT(here, last);
    EXPECT_GT(here, 0.0);
    last = here;
  }
  EXPECT_FALSE(view_factor({1.0, 2.0}, 0.5));
  EXPECT_FALSE(view_factor({1.0, 2.0}, 0.1));
}

}  // namespace
}  // namespace forecourse::parts
