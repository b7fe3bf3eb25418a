// SOURCE: closed form
#include "forecourse/parts/escape/closing_law.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <vector>

namespace forecourse::parts {
namespace {

const ClosingLaw snapped = full_flow_for(0.1);
const ClosingLaw even = steady_stroke(0.02, 0.05);
const ClosingLaw bent{0.01, {{0.03, 0.9}, {0.05, 0.2}, {0.05, 0.1}, {0.2, 0.0}}};  // drops at once at 0.05 s

std::vector<ClosingLaw> all_laws() {
  const std::vector<StrokePoint> curve{{0.0, 40.0}, {0.5, 38.0}, {0.9, 12.0}, {1.0, 0.0}};
  return {snapped, even, bent, std::get<ClosingLaw>(stroke_with_curve(0.005, 0.06, curve))};
}

// The volume between constant pressures, over the full flow: the middle of many short steps.
double volume_by_steps(const ClosingLaw& law, double share_of_loss) {
  const int steps = 200000;
  const double step = shut_time(law) / steps;
  double sum = 0.0;
  for (int i = 0; i < steps; ++i) {
    const double open = opening(law, (i + 0.5) * step);
    sum += step / std::sqrt(1.0 - share_of_loss + throttled_loss(share_of_loss, open));
  }
  return sum;
}

TEST(ClosingLaw, IsOpenBeforeAndShutAfter) {
  for (const ClosingLaw& law : all_laws()) {
    EXPECT_EQ(fault_of(law), std::nullopt);
    EXPECT_EQ(opening(law, -1.0), 1.0);
    EXPECT_EQ(opening(law, 0.0), 1.0);
    EXPECT_EQ(opening(law, shut_time(law)), 0.0);
    EXPECT_EQ(opening(law, 100.0), 0.0);
  }
  EXPECT_EQ(opening(snapped, 0.0999), 1.0);
}

TEST(ClosingLaw, NeverOpensAgain) {
  for (const ClosingLaw& law : all_laws()) {
    double before = 1.0;
    for (double t = 0.0; t < 0.3; t += 1e-4) {
      const double open = opening(law, t);
      EXPECT_LE(open, before);
      EXPECT_GE(open, 0.0);
      before = open;
    }
  }
}

TEST(ClosingLaw, GoesStraightBetweenPoints) {
  EXPECT_NEAR(opening(even, 0.02 + 0.0125), 0.75, 1e-14);
  EXPECT_NEAR(opening(bent, 0.01 + 0.015), 0.95, 1e-14);
  EXPECT_NEAR(opening(bent, 0.01 + 0.04), 0.55, 1e-14);
  EXPECT_NEAR(opening(bent, 0.01 + 0.05), 0.1, 1e-14);
}

TEST(ClosingLaw, StrokeWithACurveTakesItsShares) {
  const std::vector<StrokePoint> curve{{0.0, 40.0}, {0.5, 30.0}, {1.0, 0.0}};
  const auto law = std::get<ClosingLaw>(stroke_with_curve(0.01, 0.1, curve));
  EXPECT_NEAR(opening(law, 0.06), 0.75, 1e-14);
  EXPECT_NEAR(opening(law, 0.085), 0.375, 1e-14);
  EXPECT_NEAR(shut_time(law), 0.11, 1e-15);
}

TEST(ClosingLaw, EquivalentTimeOfTheDeviceAloneIsTheIntegral) {
  EXPECT_DOUBLE_EQ(equivalent_time(snapped), 0.1);
  EXPECT_DOUBLE_EQ(equivalent_time(even), 0.02 + 0.025);
  EXPECT_DOUBLE_EQ(equivalent_time(bent), 0.01 + 0.95 * 0.03 + 0.55 * 0.02 + 0.05 * 0.15);
}

// An even stroke against a way that takes all but r of the loss: delay + stroke / (1 + sqrt r).
TEST(ClosingLaw, EquivalentTimeOfAnEvenStrokeInAWay) {
  for (const double r : {0.0, 0.01, 0.25, 1.0}) {
    EXPECT_NEAR(equivalent_time(even, r), 0.02 + 0.05 / (1.0 + std::sqrt(r)), 1e-15);
  }
}

TEST(ClosingLaw, EquivalentTimeAgreesWithStepByStep) {
  for (const ClosingLaw& law : all_laws()) {
    for (const double share : {0.05, 0.4, 1.0}) {
      // First order of the step at the edges where the opening jumps, far smaller elsewhere.
      EXPECT_NEAR(equivalent_time(law, share) / volume_by_steps(law, share), 1.0, 2e-5);
    }
  }
}

TEST(ClosingLaw, TheRestOfTheWayMakesItLonger) {
  for (const ClosingLaw& law : all_laws()) {
    double before = equivalent_time(law, 1.0);
    for (const double share : {0.5, 0.1, 0.01, 0.0}) {
      EXPECT_GE(equivalent_time(law, share), before);
      before = equivalent_time(law, share);
    }
    EXPECT_NEAR(before, shut_time(law), 1e-15);
  }
}

TEST(ClosingLaw, ThrottledLossGoesWithTheSquare) {
  EXPECT_EQ(throttled_loss(2.0, 1.0), 2.0);
  EXPECT_DOUBLE_EQ(throttled_loss(2.0, 0.1), 200.0);
  EXPECT_TRUE(std::isinf(throttled_loss(2.0, 0.0)));
}

TEST(ClosingLaw, RefusesFiguresThatMakeNone) {
  const double none = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(fault_of({-0.1, {}}), ClosingFault::negative_time);
  EXPECT_EQ(fault_of({none, {}}), ClosingFault::not_finite);
  EXPECT_EQ(fault_of({0.0, {{0.1, 0.5}}}), ClosingFault::stays_open);
  EXPECT_EQ(fault_of({0.0, {{0.1, 0.5}, {0.2, 0.6}, {0.3, 0.0}}}), ClosingFault::opens_again);
  EXPECT_EQ(fault_of({0.0, {{0.0, 1.1}, {0.3, 0.0}}}), ClosingFault::opens_again);
  EXPECT_EQ(fault_of({0.0, {{0.2, 0.5}, {0.1, 0.0}}}), ClosingFault::time_falls);
  EXPECT_EQ(fault_of({0.0, {{0.2, none}, {0.3, 0.0}}}), ClosingFault::not_finite);
}

TEST(ClosingLaw, RefusesCurvesThatMakeNone) {
  using Curve = std::vector<StrokePoint>;
  const auto fault = [](const Curve& curve) { return std::get<ClosingFault>(stroke_with_curve(0.0, 0.1, curve)); };
  EXPECT_EQ(fault({{0.0, 40.0}}), ClosingFault::too_few_points);
  EXPECT_EQ(fault({{0.1, 40.0}, {1.0, 0.0}}), ClosingFault::not_from_open);
  EXPECT_EQ(fault({{0.0, 0.0}, {1.0, 0.0}}), ClosingFault::not_from_open);
  EXPECT_EQ(fault({{0.0, 40.0}, {1.2, 0.0}}), ClosingFault::beyond_stroke);
  EXPECT_EQ(fault({{0.0, 40.0}, {1.0, 2.0}}), ClosingFault::stays_open);
  EXPECT_EQ(fault({{0.0, 40.0}, {0.5, 41.0}, {1.0, 0.0}}), ClosingFault::opens_again);
  const Curve good{{0.0, 40.0}, {1.0, 0.0}};
  EXPECT_EQ(std::get<ClosingFault>(stroke_with_curve(0.0, -0.1, good)), ClosingFault::negative_time);
}

}  // namespace
}  // namespace forecourse::parts
