// SOURCE: [theobald_1981, maximum range at 35 degrees] rows JET and JETR of water jets; the rest is closed form
#include "forecourse/parts/escape/orifice.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "forecourse/base/api_units.h"
#include "parts/sweep.h"
#include "support/check_values.h"

namespace forecourse::parts {
namespace {

using test::row;

constexpr double gasoline = 740.0;  // [kg/m3], of the rows
constexpr double water = 998.2;     // [kg/m3], 20 degC; the rows were computed with it
constexpr double angle = 35.0 / 180.0 * std::numbers::pi;

// A row "JET-13-2.1" with a "JETR-13-2.1" beside it.
struct Throw {
  double bar = 0.0;
  double range = 0.0;  // [m]
  test::CheckRow measured, share;
};

std::vector<Throw> throws() {
  std::vector<Throw> all;
  for (const test::CheckRow& share : test::rows_starting("JETR")) {
    const test::CheckRow measured = row("JET" + share.id.substr(4));
    all.push_back({*test::number_in(test::parts_of(share.inputs).at(1)), measured.number(), measured, share});
  }
  return all;
}

double velocity_of(const Throw& t) { return jet_velocity(t.bar * 1e5, water); }

TEST(Orifice, FlowIsDifferentiatedAndOdd) {
  const Orifice hole{1e-5, 0.61};
  for (const double p : test::spread(1.0, 1e6, 200)) {
    const OrificeFlow here = flow_through(hole, p, gasoline);
    const double step = 1e-5 * std::abs(p);
    const double slope =
        (flow_through(hole, p + step, gasoline).flow - flow_through(hole, p - step, gasoline).flow) / (2.0 * step);
    EXPECT_NEAR(slope / here.slope, 1.0, 1e-9);  // third order of the step, and rounding
    EXPECT_EQ(here.flow, -flow_through(hole, -p, gasoline).flow);
  }
  EXPECT_EQ(flow_through(hole, 0.0, gasoline).flow, 0.0);
  EXPECT_TRUE(std::isinf(flow_through(hole, 0.0, gasoline).slope));
}

TEST(Orifice, AreaComesBackFromItsFlow) {
  for (const double p : {1e3, 1e5, 4e5}) {
    const double flow = flow_through({2e-6, 0.7}, p, gasoline).flow;
    EXPECT_NEAR(orifice_area(flow, p, 0.7, gasoline) / 2e-6, 1.0, 1e-14);
  }
}

// With a coefficient of 1 the power of the jet is flow times pressure: Bernoulli's law.
TEST(Orifice, KeepsTheEnergy) {
  const double p = 2e5, v = jet_velocity(p, gasoline), flow = flow_through({1e-4, 1.0}, p, gasoline).flow;
  EXPECT_NEAR(0.5 * gasoline * flow * v * v, flow * p, 1e-9 * flow * p);
}

TEST(Orifice, DiameterOfThreeGallonsAnHourAtTenPsi) {
  const double flow = 3.0 * 231.0 * std::pow(0.0254, 3) / 3600.0;
  const double area = orifice_area(flow, pascal_from_psi(10.0), 0.61, gasoline);
  EXPECT_TRUE(agrees(row("LEAK-hole"), 1000.0 * hole_diameter(area), {.absolute = 1e-6}));  // as printed
}

TEST(Jet, VelocityAndHeightWithoutAir) {
  for (const std::string psi : {"10", "20", "30", "45"}) {
    const test::CheckRow check = row("JET-" + psi);
    const double v = jet_velocity(pascal_from_psi(std::stod(psi)), gasoline);
    const auto expected = test::parts_of(check.expected);
    EXPECT_NEAR(v, *test::number_in(expected.at(0)), 1e-5);  // as printed
    EXPECT_NEAR(drag_free_height(v), *test::number_in(expected.at(1)), 1e-5);
    test::count_check(check);
  }
}

TEST(Jet, MeasuredShareOfTheDragFreeRange) {
  ASSERT_EQ(throws().size(), 13u);
  for (const Throw& t : throws()) {
    EXPECT_TRUE(agrees(t.share, t.range / drag_free_range(velocity_of(t), angle)));
  }
}

TEST(Jet, MeasuredRangesLieInside) {
  for (const Throw& t : throws()) {
    const Estimate range = jet_range(velocity_of(t), angle);
    EXPECT_GT(t.range, range.low) << t.measured.id;
    EXPECT_LT(t.range, range.high) << t.measured.id;
    EXPECT_LE(t.range, measured_range_share.high * range.high * 1.001) << t.measured.id;  // the share has three digits
    test::count_check(t.measured);
  }
}

TEST(Jet, HeightIsARange) {
  const Estimate height = jet_height(20.0);
  EXPECT_EQ(height.high, drag_free_height(20.0));
  EXPECT_DOUBLE_EQ(height.low / height.high, 0.294);
  EXPECT_EQ(jet_height(0.0), Estimate{});
}

// A path without air: the highest range is at 45 degrees and twice the height straight up.
TEST(Jet, LongestRangeIsTwiceTheHeight) {
  EXPECT_NEAR(drag_free_range(15.0, std::numbers::pi / 4.0), 2.0 * drag_free_height(15.0), 1e-12);
  EXPECT_NEAR(drag_free_range(15.0, std::numbers::pi / 2.0), 0.0, 1e-12);
}

}  // namespace
}  // namespace forecourse::parts
