// SOURCE: [fritsch_carlson_1980, the monotone region] [fritsch_butland_1984, the slope formula]
#include "forecourse/parts/curve_law.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "parts/sweep.h"

namespace forecourse::parts {
namespace {

using Points = std::vector<CurvePoint>;
using Kind = CurveFault::Kind;

CurveLaw made(const Points& points) { return std::get<CurveLaw>(curve_law(points)); }

CurveFault fault(const Points& points) { return std::get<CurveFault>(curve_law(points)); }

const Points meter{{2e-4, 3e3}, {5e-4, 1e4}, {1e-3, 3e4}, {2e-3, 1.1e5}, {3e-3, 2.4e5}};
const Points with_flat{{0.0, 0.0}, {1e-3, 1e4}, {2e-3, 1e4}, {3e-3, 5e4}};
const Points flattening{{0.0, 0.0}, {1e-3, 1e5}, {2e-3, 1.1e5}};

// Random rising points, steep and flat stretches mixed.
Points random_points(unsigned seed) {
  std::mt19937 generator(seed);
  std::uniform_real_distribution<double> step(0.0, 1.0);
  Points points{{0.0, 0.0}};
  for (int i = 0; i < 8; ++i) {
    const double last = points.back().flow, loss = points.back().value;
    points.push_back({last + 1e-5 + 1e-3 * step(generator), loss + 1e5 * std::pow(step(generator), 6.0)});
  }
  return points;
}

TEST(CurveLaw, GoesThroughItsPoints) {
  const CurveLaw law = made(meter);
  for (const CurvePoint& point : meter) {
    EXPECT_NEAR(loss(law, point.flow).pressure_loss / point.value, 1.0, 1e-15);
  }
  EXPECT_EQ(loss(law, 0.0).pressure_loss, 0.0);
}

TEST(CurveLaw, IsExactForAStraightLine) {
  const CurveLaw law = made({{1e-3, 2e3}, {3e-3, 6e3}, {4e-3, 8e3}});
  for (const double flow : {0.0, 2e-4, 1.7e-3, 3.9e-3, 1e-2}) {
    EXPECT_NEAR(loss(law, flow).pressure_loss, 2e6 * flow, 1e-11);  // rounding of 2e4
    EXPECT_NEAR(loss(law, flow).slope / 2e6, 1.0, 1e-14);
  }
}

TEST(CurveLaw, SlopeAtAnInnerPointIsTheWeightedHarmonicMean) {
  // Widths 1 and 2, chords 1 and 2: weights 2*2+1 = 5 and 2+2*1 = 4, so 9/(5/1 + 4/2) = 9/7.
  const CurveLaw law = made({{0.0, 0.0}, {1.0, 1.0}, {3.0, 5.0}});
  EXPECT_NEAR(loss(law, 1.0).slope, 9.0 / 7.0, 1e-15);
}

TEST(CurveLaw, NeverFallsAndStaysBetweenNeighbors) {
  for (unsigned seed = 1; seed <= 200; ++seed) {
    const Points points = random_points(seed);
    const CurveLaw law = made(points);
    for (std::size_t i = 1; i < points.size(); ++i) {
      for (int j = 0; j <= 20; ++j) {
        const double flow = points[i - 1].flow + (points[i].flow - points[i - 1].flow) * j / 20.0;
        const Loss here = loss(law, flow);
        EXPECT_GE(here.slope, -1e-7);  // rounding of slopes up to 1e10
        EXPECT_GE(here.pressure_loss, points[i - 1].value - 1e-9);
        EXPECT_LE(here.pressure_loss, points[i].value + 1e-9);
      }
    }
  }
}

TEST(CurveLaw, SlopeIsTheDerivative) {
  for (const CurveLaw& law : {made(meter), made(flattening), made(random_points(7))}) {
    for (const double flow : test::spread(1e-5, 1e-2, 1000)) {
      const double slope = test::central_slope([&law](double q) { return loss(law, q); }, flow);
      EXPECT_NEAR(slope, loss(law, flow).slope, 1e-4 * loss(law, flow).slope + 1.0) << flow;  // kinks of slope
    }
  }
}

TEST(CurveLaw, SlopeIsContinuousAtPointsAndThroughZero) {
  const CurveLaw law = made(meter);
  for (const CurvePoint& point : meter) {
    const double left = loss(law, point.flow * (1.0 - 1e-12)).slope,
                 right = loss(law, point.flow * (1.0 + 1e-12)).slope;
    EXPECT_NEAR(left / right, 1.0, 1e-10);
  }
  EXPECT_NEAR(loss(law, 1e-15).slope / loss(law, -1e-15).slope, 1.0, 1e-10);
}

TEST(CurveLaw, IsOdd) {
  const CurveLaw law = made(meter);
  for (const double flow : test::spread(1e-6, 1e-2, 300)) {
    EXPECT_EQ(loss(law, flow).pressure_loss, -loss(law, -flow).pressure_loss);
    EXPECT_EQ(loss(law, flow).slope, loss(law, -flow).slope);
  }
}

TEST(CurveLaw, GoesOnStraightBeyondTheLastPoint) {
  const CurveLaw law = made(meter);
  const Loss end = loss(law, 3e-3), beyond = loss(law, 5e-3);
  EXPECT_NEAR(beyond.slope / end.slope, 1.0, 1e-12);
  EXPECT_NEAR(beyond.pressure_loss / (end.pressure_loss + 2e-3 * end.slope), 1.0, 1e-12);
}

TEST(CurveLaw, IsNotFlatBeyondPointsThatLevelOff) {
  EXPECT_GE(loss(made(flattening), 1.0).slope, 0.5 * 1e4 / 1e-3 * (1.0 - 1e-12));  // half of the last chord
}

TEST(CurveLaw, AcceptsAFlatStretch) { EXPECT_EQ(loss(made(with_flat), 1.5e-3).slope, 0.0); }

TEST(CurveLaw, AddsZeroToASinglePoint) { EXPECT_NEAR(loss(made({{1e-3, 5e3}}), 5e-4).pressure_loss, 2.5e3, 1e-9); }

TEST(CurveLaw, SaysWhatIsWrongWithPoints) {
  EXPECT_EQ(fault({}), (CurveFault{Kind::too_few_points, 0}));
  EXPECT_EQ(fault({{0.0, 0.0}}), (CurveFault{Kind::too_few_points, 1}));
  EXPECT_EQ(fault({{-1e-3, 1.0}, {1e-3, 2.0}}), (CurveFault{Kind::negative_flow, 0}));
  EXPECT_EQ(fault({{1e-3, 1.0}, {1e-3, 2.0}}), (CurveFault{Kind::flow_not_rising, 1}));
  EXPECT_EQ(fault({{1e-3, 1.0}, {2e-3, 0.5}}), (CurveFault{Kind::loss_falls, 1}));
  EXPECT_EQ(fault({{1e-3, -1.0}}), (CurveFault{Kind::loss_falls, 0}));
  EXPECT_EQ(fault({{0.0, 1.0}, {1e-3, 2.0}}), (CurveFault{Kind::loss_at_no_flow, 0}));
  const double inf = std::numeric_limits<double>::infinity();
  EXPECT_EQ(fault({{1e-3, 1.0}, {2e-3, inf}}), (CurveFault{Kind::not_finite, 1}));
  EXPECT_EQ(fault({{std::nan(""), 1.0}}), (CurveFault{Kind::not_finite, 0}));
}

TEST(CurveLaw, EveryFaultHasItsWords) {
  EXPECT_EQ(text(Kind::loss_falls), "loss falls while flow rises");
  EXPECT_NE(text(Kind::exponent_below_one), "");
}

TEST(CurveLaw, PassesNanThrough) { EXPECT_TRUE(std::isnan(loss(made(meter), std::nan("")).pressure_loss)); }

}  // namespace
}  // namespace forecourse::parts
