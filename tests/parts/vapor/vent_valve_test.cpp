// SOURCE: closed form: straight lines through the points entered
#include "forecourse/parts/vapor/vent_valve.h"

#include <gtest/gtest.h>

#include <vector>

namespace forecourse::parts {
namespace {

TEST(VentValve, ItIsShutToItsSettingAndFollowsItsPoints) {
  const std::vector<CurvePoint> points{{0.01, 900.0}, {0.02, 1050.0}};
  const auto side = std::get<VentValveSide>(vent_valve_side(750.0, points));
  EXPECT_EQ(side.opens_at, 750.0);
  EXPECT_EQ(loss(side, 0.0).pressure_loss, 750.0);
  EXPECT_NEAR(loss(side, 0.01).pressure_loss, 900.0, 1e-9);   // rounding
  EXPECT_NEAR(loss(side, 0.03).pressure_loss, 1200.0, 1e-6);  // straight beyond the last
}

TEST(VentValve, ASettingAloneIsTheLeast) {
  const auto side = std::get<VentValveSide>(vent_valve_side(750.0, {}));
  EXPECT_FALSE(side.curve);
  EXPECT_EQ(loss(side, 0.05).pressure_loss, 750.0);
}

TEST(VentValve, PointsAloneBeginAtNoFlow) {
  const std::vector<CurvePoint> from_rest{{0.0, 700.0}, {0.02, 1050.0}}, from_flow{{0.01, 900.0}, {0.02, 1050.0}};
  EXPECT_EQ(std::get<VentValveSide>(vent_valve_side(std::nullopt, from_rest)).opens_at, 700.0);
  EXPECT_EQ(std::get<CurveFault>(vent_valve_side(std::nullopt, from_flow)).kind, CurveFault::Kind::first_flow_not_zero);
}

TEST(VentValve, ACurveThatFallsIsAFault) {
  const std::vector<CurvePoint> falls{{0.01, 900.0}, {0.02, 800.0}}, below{{0.01, 600.0}, {0.02, 800.0}};
  EXPECT_EQ(std::get<CurveFault>(vent_valve_side(750.0, falls)).kind, CurveFault::Kind::loss_falls);
  EXPECT_EQ(std::get<CurveFault>(vent_valve_side(750.0, below)).kind, CurveFault::Kind::loss_falls);
}

}  // namespace
}  // namespace forecourse::parts
