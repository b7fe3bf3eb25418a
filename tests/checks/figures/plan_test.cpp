// Distances on plan, against distances worked out by hand.
// SOURCE: closed form
#include "forecourse/checks/figures/plan.h"

#include <gtest/gtest.h>

#include <numbers>

namespace forecourse::checks {
namespace {

constexpr double rounding = 1e-12;  // of doubles of some meters

Outline square(double x, double y, double side) {
  return {{{x, y}, {x + side, y}, {x + side, y + side}, {x, y + side}}, 0.0};
}

Outline at(double x, double y) { return {{{x, y}}, 0.0}; }

TEST(Plan, APointAndASegment) {
  const Outline line{{{0.0, 0.0}, {10.0, 0.0}}, 0.0};
  EXPECT_NEAR(distance(at(5.0, 3.0), line), 3.0, rounding);
  EXPECT_NEAR(distance(at(13.0, 4.0), line), 5.0, rounding);
  EXPECT_NEAR(distance(line, at(-3.0, -4.0)), 5.0, rounding);
}

TEST(Plan, PolygonsApartAndOneInTheOther) {
  EXPECT_NEAR(distance(square(0.0, 0.0, 2.0), square(5.0, 6.0, 1.0)), 5.0, rounding);
  EXPECT_EQ(distance(square(0.0, 0.0, 10.0), square(4.0, 4.0, 1.0)), 0.0);
  EXPECT_EQ(distance(square(4.0, 4.0, 1.0), square(0.0, 0.0, 10.0)), 0.0);
}

/// Neither has a corner in the other.
TEST(Plan, PolygonsThatCross) {
  const Outline across{{{-1.0, 4.0}, {11.0, 4.0}, {11.0, 5.0}, {-1.0, 5.0}}, 0.0};
  EXPECT_EQ(distance(square(0.0, 0.0, 10.0), across), 0.0);
}

TEST(Plan, ARoundTank) {
  Outline tank = at(0.0, 0.0);
  tank.radius = 1.5;
  EXPECT_NEAR(distance(tank, at(3.0, 4.0)), 3.5, rounding);
  EXPECT_EQ(distance(tank, at(1.0, 0.0)), 0.0);
}

site::Maybe<Length> meters(double value) {
  return site::Entered<Length>{Length::from_si(value), Length::from_si(value), Length::from_si(value), {}};
}

/// A tank of 6 m by 2 m, turned by a right angle about its middle.
TEST(Plan, ATankAlongItsAxis) {
  site::Tank tank;
  tank.position = site::Position{Length::from_si(10.0), Length::from_si(0.0), {}};
  site::TankShape shape;
  shape.kind.text = "horizontal-cylinder";
  shape.heads.text = "flat";
  shape.outside_diameter = meters(2.0);
  shape.length = meters(6.0);
  tank.shape = shape;
  EXPECT_FALSE(outline(tank).has_value()) << "without an axis it is not known which way it lies";
  const Angle right = Angle::from_si(std::numbers::pi / 2.0);
  tank.axis = site::Entered<Angle>{right, right, right, {}};
  ASSERT_TRUE(outline(tank).has_value());
  EXPECT_NEAR(distance(*outline(tank), at(0.0, 0.0)), 9.0, rounding);
  EXPECT_NEAR(distance(*outline(tank), at(10.0, 5.0)), 2.0, rounding);
  tank.shape->heads.text = "dished";
  EXPECT_FALSE(outline(tank).has_value()) << "without the depth of its heads its length is not known";
}

}  // namespace
}  // namespace forecourse::checks
