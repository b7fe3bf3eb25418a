// Every law keeps the same promises: rising, differentiated, continuous through zero, and there and back.
// SOURCE: [colebrook_1939, the transition law]
#include "forecourse/parts/law.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

#include "parts/sweep.h"

namespace forecourse::parts {
namespace {

struct Named {
  std::string name;
  Law law;
};

const std::vector<CurvePoint> losses{{2e-4, 3e3}, {5e-4, 1e4}, {1e-3, 3e4}, {2e-3, 1.1e5}};
const std::vector<CurvePoint> rises{{0.0, 2.1e5}, {2e-3, 1.9e5}, {4e-3, 1.2e5}};

std::vector<Named> every_law() {
  const Pipe pipe{30.0, 0.0525, 4.5e-5, 740.0, 5.0e-4};
  return {{"pipe", pipe_law(pipe)},
          {"pipe with fittings", pipe_law(pipe, from_loss_coefficient(3.0, 0.0525, 740.0))},
          {"quadratic", from_loss_coefficient(3.0, 0.0525, 740.0)},
          {"linear and quadratic", QuadraticLaw{1e6, 1e9}},
          {"curve", std::get<CurveLaw>(curve_law(losses))},
          {"pump from run-out", PumpLaw{.curve = pump_from_runout(2.1e5, 6e-3), .speed_ratio = 0.9, .efficiency = {}}},
          {"pump from points",
           PumpLaw{.curve = std::get<PointCurve>(pump_from_points(rises)), .speed_ratio = 1.0, .efficiency = {}}}};
}

TEST(Law, NeverFalls) {
  for (const auto& [name, law] : every_law()) {
    for (const double flow : test::spread(1e-8, 1e-2, 1000)) EXPECT_GE(loss(law, flow).slope, 0.0) << name;
  }
}

TEST(Law, ValueAndSlopeAreContinuousThroughZero) {
  for (const auto& [name, law] : every_law()) {
    const Loss before = loss(law, -1e-13), at = loss(law, 0.0), after = loss(law, 1e-13);
    // Nothing lost in 1e-13 m3/s, and slopes that differ by no more than the second derivative over it (1e12 at most).
    EXPECT_NEAR(before.pressure_loss, at.pressure_loss, 1e-5) << name;
    EXPECT_NEAR(after.pressure_loss, at.pressure_loss, 1e-5) << name;
    EXPECT_NEAR(before.slope, at.slope, 1.0) << name;
    EXPECT_NEAR(after.slope, at.slope, 1.0) << name;
  }
}

TEST(Law, FlowComesBackFromItsLoss) {
  for (const auto& [name, law] : every_law()) {
    for (const double flow : test::spread(1e-6, 1e-2, 500)) {
      const Loss here = loss(law, flow);
      const double back = flow_at(law, here.pressure_loss);
      // Eight roundings of the largest pressure about, 2.1e5 Pa, seen through the slope.
      EXPECT_NEAR(back, flow, 1e-13 * std::abs(flow) + 8.0 * 3e-11 / here.slope) << name << " " << flow;
    }
  }
}

TEST(Law, NoFlowReachesAPressureOutOfRange) {
  EXPECT_TRUE(
      std::isnan(flow_at(Law{PumpLaw{.curve = PolynomialCurve{{1e5}}, .speed_ratio = 1.0, .efficiency = {}}}, -2e5)));
}

}  // namespace
}  // namespace forecourse::parts
