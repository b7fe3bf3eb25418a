// SOURCE: [tp410, loss = K rho v2 / 2] [isa_75_01, definition of the flow coefficient]
#include "forecourse/parts/minor_loss.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "forecourse/base/flow_coefficient.h"
#include "forecourse/parts/loss.h"
#include "parts/sweep.h"

namespace forecourse::parts {
namespace {

const QuadraticLaw laws[] = {{1e6, 0.0}, {0.0, 1e9}, {1e6, 1e9}, {1e-3, 1e11}};

TEST(MinorLoss, IsKVelocityHeads) {
  const double velocity = 2.0, bore = 0.05, area = std::numbers::pi / 4.0 * bore * bore;
  const QuadraticLaw law = from_loss_coefficient(1.5, bore, 740.0);
  EXPECT_NEAR(loss(law, velocity * area).pressure_loss, 1.5 * 740.0 * 2.0, 1e-9);  // 2220 Pa, rounding
  EXPECT_NEAR(loss_coefficient(law, bore, 740.0), 1.5, 1e-14);
}

TEST(MinorLoss, KvPassesItsFlowAtOneBarOfWater) {
  const QuadraticLaw law = from_flow_area(flow_area_from_kv(10.0), 1000.0);
  EXPECT_NEAR(flow_at(law, 1e5) * 3600.0, 10.0, 1e-13);
}

TEST(MinorLoss, CvPassesItsFlowAtOnePsiOfWater) {
  const QuadraticLaw law = from_flow_area(flow_area_from_cv(10.0), 1000.0);
  const double gallons_per_minute = flow_at(law, 6894.757293168361) * 60.0 / (231.0 * std::pow(0.0254, 3));
  EXPECT_NEAR(gallons_per_minute, 10.0, 1e-13);
}

TEST(MinorLoss, GoesThroughItsPoint) {
  EXPECT_NEAR(loss(from_loss_at_flow(2e4, 1e-3), 1e-3).pressure_loss, 2e4, 1e-10);
}

TEST(MinorLoss, PartsInSeriesAdd) {
  const Loss both = loss(laws[0] + laws[1], 2e-3), each = loss(laws[0], 2e-3) + loss(laws[1], 2e-3);
  EXPECT_DOUBLE_EQ(both.pressure_loss, each.pressure_loss);
  EXPECT_DOUBLE_EQ(both.slope, each.slope);
}

TEST(MinorLoss, IsOddRisingAndDifferentiated) {
  for (const QuadraticLaw& law : laws) {
    for (const double flow : test::spread(1e-8, 1e-1, 500)) {
      const Loss here = loss(law, flow);
      EXPECT_EQ(here.pressure_loss, -loss(law, -flow).pressure_loss);
      EXPECT_GT(here.slope, 0.0);
      const double slope = test::central_slope([&law](double q) { return loss(law, q); }, flow);
      EXPECT_NEAR(slope / here.slope, 1.0, 1e-9);  // exact but for rounding 1e-15/1e-5
    }
  }
}

TEST(MinorLoss, FlowComesBackFromItsLoss) {
  for (const QuadraticLaw& law : laws) {
    for (const double flow : test::spread(1e-9, 1e-1, 500)) {
      EXPECT_NEAR(flow_at(law, loss(law, flow).pressure_loss) / flow, 1.0, 1e-14);
    }
    EXPECT_EQ(flow_at(law, 0.0), 0.0);
  }
}

TEST(MinorLoss, PartWithoutLossHasNoFiniteFlow) { EXPECT_TRUE(std::isinf(flow_at(QuadraticLaw{}, 1.0))); }

}  // namespace
}  // namespace forecourse::parts
