// SOURCE: closed form; rows DRAIN name the pages that print two of the times
#include "forecourse/parts/escape/draining.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "forecourse/base/constants.h"
#include "support/check_values.h"

namespace forecourse::parts {
namespace {

using test::row;

double circle(double diameter) { return std::numbers::pi / 4.0 * diameter * diameter; }

TEST(Draining, LyingCylinder) {
  const double part = draining_time_lying({1.488, 2.988}, {circle(0.0508), 0.62}, {0.177, 0.0});
  EXPECT_TRUE(agrees(row("DRAIN-horiz"), part));
  const double whole = draining_time_lying({2.438, 6.0}, {circle(0.025), 0.61}, {2.438, 0.0});
  EXPECT_TRUE(agrees(row("DRAIN-horiz-full"), whole, {.absolute = 5e-5}));  // as printed
}

TEST(Draining, UprightTank) {
  // The rows' tolerance; they take 9.81 and 32.2 ft/s2 for gravity.
  EXPECT_TRUE(agrees(row("DRAIN-vert"), draining_time_upright(1.0, {0.01, 0.62}, {2.0, 0.0})));
  const double foot = 0.3048, hole = 5.0 * 0.0254 * 0.0254;
  const double time = draining_time_upright(circle(4.0 * foot), {hole, 1.0}, {6.0 * foot, 2.0 * foot});
  EXPECT_TRUE(agrees(row("DRAIN-vert-2"), time));
}

// The volume that leaves in a short step, at the mean level, is flow times time.
TEST(Draining, AgreesWithStepByStep) {
  const LyingCylinder tank{1.5, 3.0};
  const Orifice hole{1e-4, 0.6};
  double sum = 0.0;
  const int steps = 20000;
  for (int i = 0; i < steps; ++i) {
    const double level = 0.2 + (i + 0.5) * 1.0 / steps;  // from 1.2 m to 0.2 m
    const double surface = 2.0 * tank.length * std::sqrt(level * (tank.diameter - level));
    sum +=
        surface * (1.0 / steps) / (hole.discharge_coefficient * hole.area * std::sqrt(2.0 * standard_gravity * level));
  }
  EXPECT_NEAR(draining_time_lying(tank, hole, {1.2, 0.2}) / sum, 1.0, 1e-9);  // second order of the step
}

TEST(Draining, PartsOfTheWayAdd) {
  const Orifice hole{1e-4, 0.6};
  EXPECT_NEAR(draining_time_upright(2.0, hole, {3.0, 1.0}) + draining_time_upright(2.0, hole, {1.0, 0.5}),
              draining_time_upright(2.0, hole, {3.0, 0.5}), 1e-9);
  EXPECT_EQ(draining_time_lying({1.5, 3.0}, hole, {1.0, 1.0}), 0.0);
}

}  // namespace
}  // namespace forecourse::parts
