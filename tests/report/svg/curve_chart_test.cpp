// SOURCE: common practice, no source
#include "forecourse/report/svg/curve_chart.h"

#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/report/svg/buried_tank.h"

namespace forecourse::report::svg {
namespace {

std::size_t count(const std::string& text, const std::string& part) {
  std::size_t found = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++found;
  return found;
}

CurveChart chart_of(std::vector<double> y) {
  CurveChart chart;
  chart.id = "c";
  Curve curve;
  for (std::size_t i = 0; i < y.size(); ++i) curve.x.push_back(static_cast<double>(i));
  curve.y = std::move(y);
  chart.curves.push_back(std::move(curve));
  return chart;
}

TEST(CurveChart, BreaksWhereThereIsNoValue) {
  EXPECT_EQ(count(draw(chart_of({1.0, 2.0, 3.0, 4.0, 5.0})), "<polyline"), 1U);
  EXPECT_EQ(count(draw(chart_of({1.0, 2.0, NAN, 4.0, 5.0})), "<polyline"), 2U);
}

TEST(CurveChart, IsEmptyWithoutTwoPoints) {
  EXPECT_TRUE(draw(chart_of({1.0})).empty());
  EXPECT_TRUE(draw(chart_of({NAN, NAN})).empty());
}

TEST(BuriedTank, IsDrawnWithItsSoilAndWater) {
  BuriedTankDrawing drawing;
  drawing.id = "t";
  drawing.crown = 1.0;
  drawing.diameter = 2.4;
  drawing.water = 0.5;
  drawing.tank_names = {"T1"};
  const std::string dry = draw(drawing);
  EXPECT_EQ(count(dry, "<circle"), 2U);
  EXPECT_EQ(count(dry, "\"earth\""), 0U);
  drawing.soil_counts = true;
  drawing.prism_base = 2.2;
  drawing.prism_half_width = drawing.prism_half_top = 1.2;
  EXPECT_EQ(count(draw(drawing), "\"earth\""), 1U);
  drawing.diameter = 0.0;
  EXPECT_TRUE(draw(drawing).empty());
}

}  // namespace
}  // namespace forecourse::report::svg
