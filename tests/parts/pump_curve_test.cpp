// SOURCE: [hydr_watres, examples 7.1 to 7.3] [tp410, examples 7.33 and 7.34]
#include "forecourse/parts/pump_curve.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "forecourse/parts/law.h"
#include "parts/sweep.h"
#include "support/check_values.h"

namespace forecourse::parts {
namespace {

using test::agrees;
using test::row;
using Points = std::vector<CurvePoint>;
using Kind = CurveFault::Kind;

constexpr double gravity = 9.80665, water = 998.98;  // 62.364 lb/ft3
constexpr double foot = 0.3048, cubic_foot = foot * foot * foot;

double pascal_from_feet(double feet) { return feet * foot * water * gravity; }
double flow_from_gpm(double gpm) { return gpm * 231.0 * std::pow(0.0254, 3) / 60.0; }
double watts_from_horsepower(double hp) { return hp * 550.0 * foot * 0.45359237 * gravity; }

const Points station{{0.0, 2.1e5}, {1e-3, 2.05e5}, {2e-3, 1.9e5}, {4e-3, 1.2e5}, {5e-3, 5e4}};

PumpLaw pump(std::variant<PowerCurve, PolynomialCurve, PointCurve> curve, double speed_ratio = 1.0) {
  return {.curve = std::move(curve), .speed_ratio = speed_ratio, .efficiency = {}};
}

std::vector<PumpLaw> all_kinds() {
  std::vector<PumpLaw> all;
  for (const double speed : {1.0, 0.8}) {
    all.push_back(pump(pump_from_shutoff(2.1e5, 6e9), speed));
    all.push_back(pump(pump_from_runout(2.1e5, 6e-3), speed));
    all.push_back(
        pump(std::get<PowerCurve>(pump_from_three_points(Points{station[0], station[2], station[3]})), speed));
    all.push_back(pump(PolynomialCurve{{2.1e5, -1e6, -3e9, -2e11}}, speed));
    all.push_back(pump(PolynomialCurve{{2.1e5, -1e6, -3e9, -2e11}, 4e-3}, speed));
    all.push_back(pump(std::get<PointCurve>(pump_from_points(station)), speed));
  }
  return all;
}

// Loss of the textbook's line at 1 ft3/s, in feet: D = 20/12 ft, L = 3884 ft, ks = 0.0005 ft, nu = 1.23e-5 ft2/s.
double textbook_coefficient() {
  const Pipe pipe{3884.0 * foot, 20.0 / 12.0 * foot, 0.0005 * foot, water, water * 1.23e-5 * foot * foot};
  return pipe_loss(pipe, cubic_foot).pressure_loss / pascal_from_feet(1.0);
}

// The textbook's pump: a + c Q2 by least squares through three points in gpm and feet.
PowerCurve textbook_pump() {
  const double q[] = {0.0, flow_from_gpm(5000.0), flow_from_gpm(7850.0)}, h[] = {81.0, 60.0, 20.0};
  double sum_x = 0.0, sum_xx = 0.0, sum_h = 0.0, sum_xh = 0.0;
  for (int i = 0; i < 3; ++i) {
    const double x = q[i] * q[i];
    sum_x += x, sum_xx += x * x, sum_h += h[i], sum_xh += x * h[i];
  }
  const double c = (3.0 * sum_xh - sum_x * sum_h) / (3.0 * sum_xx - sum_x * sum_x);
  return pump_from_shutoff(pascal_from_feet((sum_h - c * sum_x) / 3.0), -pascal_from_feet(c));
}

TEST(PumpCurve, SystemOfTextbookExample7_1) { EXPECT_TRUE(agrees(row("PUMP-K"), textbook_coefficient())); }

TEST(PumpCurve, OperatingPointOfTextbookExample7_3) {
  const PumpLaw law = pump(textbook_pump());
  const double per_flow_squared = pascal_from_feet(textbook_coefficient()) / (cubic_foot * cubic_foot);
  double flow = 0.1;
  for (int i = 0; i < 50; ++i) {  // Newton's method on pump = lift + line
    const Rise up = rise(law, flow);
    const double miss = pascal_from_feet(30.0) + per_flow_squared * flow * flow - up.pressure_rise;
    flow -= miss / (2.0 * per_flow_squared * flow - up.slope);
  }
  // The rows' tolerances: the textbook rounds its coefficients to three digits.
  EXPECT_TRUE(agrees(row("PUMP-op-Q"), flow / cubic_foot));
  EXPECT_TRUE(agrees(row("PUMP-op-h"), rise(law, flow).pressure_rise / pascal_from_feet(1.0)));
}

TEST(PumpCurve, AffinityLawsOfHandbookExample7_33) {
  const double flow = flow_from_gpm(400.0), ratio = 1700.0 / 3500.0;
  PumpLaw law = pump(pump_from_shutoff(pascal_from_feet(150.0), pascal_from_feet(24.0) / (flow * flow)));
  const double efficiency = hydraulic_power(law, flow) / watts_from_horsepower(17.5);
  law.efficiency = MonotoneCubic(Points{{0.0, efficiency}, {1.0, efficiency}});
  law.speed_ratio = ratio;
  const double slow_flow = ratio * flow;
  EXPECT_TRUE(agrees(row("TP-7.33-Q2"), slow_flow / flow_from_gpm(1.0)));
  EXPECT_TRUE(agrees(row("TP-7.33-H2"), rise(law, slow_flow).pressure_rise / pascal_from_feet(1.0)));
  EXPECT_TRUE(agrees(row("TP-7.33-P2"), *shaft_power(law, slow_flow) / watts_from_horsepower(1.0)));
}

TEST(PumpCurve, BrakePowerOfHandbookExample7_34) {
  PumpLaw law = pump(PolynomialCurve{{pascal_from_feet(428.0)}});
  law.efficiency = MonotoneCubic(Points{{0.0, 0.707}, {1.0, 0.707}});
  EXPECT_TRUE(agrees(row("TP-7.34-bhp"), *shaft_power(law, flow_from_gpm(700.0)) / watts_from_horsepower(1.0)));
}

TEST(PumpCurve, GoesThroughWhatWasEntered) {
  EXPECT_EQ(rise(pump(pump_from_runout(2e5, 5e-3)), 0.0).pressure_rise, 2e5);
  EXPECT_NEAR(rise(pump(pump_from_runout(2e5, 5e-3)), 5e-3).pressure_rise, 0.0, 1e-10);
  const auto cubic = pump(PolynomialCurve{{3.0, -2.0, -1.0, -0.5}});
  EXPECT_DOUBLE_EQ(rise(cubic, 2.0).pressure_rise, 3.0 - 4.0 - 4.0 - 4.0);
  EXPECT_DOUBLE_EQ(rise(cubic, 2.0).slope, -2.0 - 4.0 - 6.0);
  const auto points = pump(std::get<PointCurve>(pump_from_points(station)));
  for (const auto& point : station) EXPECT_NEAR(rise(points, point.flow).pressure_rise, point.value, 1e-9);
}

TEST(PumpCurve, PowerLawGoesThroughItsThreePoints) {
  const Points three{{0.0, 2.1e5}, {2e-3, 1.9e5}, {4e-3, 1.2e5}};
  const auto curve = std::get<PowerCurve>(pump_from_three_points(three));
  EXPECT_NEAR(curve.exponent, std::log(4.5) / std::log(2.0), 1e-14);
  for (const auto& point : three) EXPECT_NEAR(rise(pump(curve), point.flow).pressure_rise, point.value, 1e-9);
}

TEST(PumpCurve, FallsOverItsRange) {
  for (const PumpLaw& law : all_kinds()) {
    for (const double flow : test::spread(1e-7, 6e-3, 500)) EXPECT_LE(rise(law, flow).slope, 0.0);
    EXPECT_FALSE(first_rise_of(law, 6e-3));
  }
}

TEST(PumpCurve, SlopeIsTheDerivative) {
  for (const PumpLaw& law : all_kinds()) {
    for (const double flow : test::spread(1e-5, 8e-3, 1000)) {
      const double slope = test::central_slope([&law](double q) { return loss(law, q); }, flow);
      // Rounding of 2e5 Pa over the step of 1e-5 flow, and the slope's own kinks.
      EXPECT_NEAR(slope, loss(law, flow).slope, 2e-10 / (1e-5 * std::abs(flow)) + 1e-4 * loss(law, flow).slope);
    }
  }
}

TEST(PumpCurve, KeepsGrowingAgainstTheFlow) {
  for (const PumpLaw& law : all_kinds()) {
    const double shutoff = rise(law, 0.0).pressure_rise;
    for (const double flow : {1e-6, 1e-3, 5e-3}) {
      EXPECT_GE(rise(law, -flow).pressure_rise, shutoff);
      EXPECT_NEAR(rise(law, -flow).pressure_rise - shutoff, shutoff - rise(law, flow).pressure_rise, 1e-9);
      EXPECT_DOUBLE_EQ(rise(law, -flow).slope, rise(law, flow).slope);
    }
  }
}

TEST(PumpCurve, LossIsMinusTheRise) {
  const PumpLaw law = pump(pump_from_runout(2e5, 5e-3));
  EXPECT_EQ(loss(law, 1e-3).pressure_loss, -rise(law, 1e-3).pressure_rise);
  EXPECT_EQ(loss(law, 1e-3).slope, -rise(law, 1e-3).slope);
}

TEST(PumpCurve, FindsWhereACurveTurnsUp) {
  // -10 q + 5000 q2 turns at q = 1e-3.
  const auto turn = first_rise_of(pump(PolynomialCurve{{1.0, -10.0, 5000.0}}), 5e-3);
  ASSERT_TRUE(turn);
  EXPECT_NEAR(*turn, 1e-3, 5e-12);  // 1e-9 of the range
  EXPECT_EQ(first_rise_of(pump(PolynomialCurve{{1.0, 10.0}}), 5e-3), 0.0);
}

TEST(PumpCurve, PolynomialGoesOnStraightBeyondItsEnd) {
  const PumpLaw law = pump(PolynomialCurve{{1.0, -10.0, 5000.0}, 5e-4});
  EXPECT_FALSE(first_rise_of(law, 5e-3));
  EXPECT_NEAR(rise(law, 1e-3).pressure_rise, 1.0 - 5e-3 + 1.25e-3 - 5.0 * 5e-4, 1e-15);
}

TEST(PumpCurve, SaysWhatIsWrongWithPoints) {
  const auto fault = [](const Points& points) { return std::get<CurveFault>(pump_from_points(points)); };
  const auto fault3 = [](const Points& points) { return std::get<CurveFault>(pump_from_three_points(points)); };
  EXPECT_EQ(fault({{0.0, 1.0}}), (CurveFault{Kind::too_few_points, 1}));
  EXPECT_EQ(fault({{0.1, 1.0}, {0.2, 0.5}}), (CurveFault{Kind::first_flow_not_zero, 0}));
  EXPECT_EQ(fault({{0.0, 1.0}, {0.2, 1.0}}), (CurveFault{Kind::rise_not_falling, 1}));
  EXPECT_EQ(fault({{0.0, 1.0}, {0.2, 0.5}, {0.1, 0.4}}), (CurveFault{Kind::flow_not_rising, 2}));
  EXPECT_EQ(fault3({{0.0, 1.0}, {0.1, 0.5}}), (CurveFault{Kind::too_few_points, 2}));
  EXPECT_EQ(fault3({{0.0, 1.0}, {0.1, 0.5}, {0.2, 0.4}}), (CurveFault{Kind::exponent_below_one, 2}));
}

TEST(PumpCurve, ShaftPowerNeedsAnEfficiencyAboveZero) {
  PumpLaw law = pump(pump_from_runout(2e5, 5e-3));
  EXPECT_FALSE(shaft_power(law, 1e-3));
  law.efficiency = MonotoneCubic(Points{{0.0, 0.0}, {2e-3, 0.4}, {5e-3, 0.1}});
  EXPECT_FALSE(shaft_power(law, 0.0));
  EXPECT_NEAR(*shaft_power(law, 2e-3), hydraulic_power(law, 2e-3) / 0.4, 1e-9);
}

}  // namespace
}  // namespace forecourse::parts
