// SOURCE: closed forms of volume over inflow, law of nature; the sumps are invented.
#include "forecourse/studies/containment/containment.h"

#include <gtest/gtest.h>

#include "forecourse/base/api_units.h"
#include "support/stations.h"

namespace forecourse::studies {
namespace {

using test::site_text;
using test::station;

constexpr double inch = 0.0254;     // [m]
constexpr double rounding = 1e-12;  // relative

ContainmentResult of(const std::string& text, const ContainmentOptions& options = {}) {
  return study_containment(station(text), options);
}

/// Site S: a box of 20 by 30 by 30 in with a tenth taken by parts, sensor at 2 in, lowest seal at 10 in.
TEST(Containment, ABoxFillsAtItsFloorTimesHeight) {
  const double inflow = cubic_meters_from_gallons(3.0) / 3600.0;
  const ContainmentResult result = of(site_text("site-s"), {{inflow}, {}});
  ASSERT_EQ(result.sumps.size(), 1U);
  const double floor = 0.9 * 20.0 * 30.0 * inch * inch;
  const SumpFill& fill = result.sumps.front().fills.front();
  EXPECT_NEAR(fill.to_sensor.value(), floor * 2.0 * inch / inflow, rounding * *fill.to_sensor);
  EXPECT_NEAR(fill.to_seal.value(), floor * 10.0 * inch / inflow, rounding * *fill.to_seal);
  EXPECT_NEAR(fill.to_brim, floor * 30.0 * inch / inflow, rounding * fill.to_brim);
  EXPECT_EQ(fill.seen_at, fill.to_sensor);
}

/// A tapered one: the integral of length times width over the height, by Simpson's rule, which is exact for it.
TEST(Containment, ATaperedSumpHoldsItsIntegral) {
  const ContainmentResult result = of(site_text("hollin-gap"));
  const ContainedSump& sump = result.sumps.front();
  const double bottom = 14.0 * 26.0, top = 18.0 * 40.0, middle = 16.0 * 33.0;
  const double share = 1.0 - 0.05;
  EXPECT_NEAR(sump.brim, share * 36.0 * (bottom + 4.0 * middle + top) / 6.0 * inch * inch * inch, 1e-9);
  for (std::size_t i = 1; i < sump.points.size(); ++i) EXPECT_GT(sump.points[i].volume, sump.points[i - 1].volume);
}

TEST(Containment, ADeadSensorTellsLate) {
  const double inflow = cubic_meters_from_gallons(10.0) / 60.0;
  const SumpFill fill = of(site_text("site-s"), {{inflow}, 3600.0}).sumps.front().fills.front();
  EXPECT_EQ(fill.seen_at, 3600.0);
  EXPECT_TRUE(fill.over_before_seen);
  EXPECT_NEAR(*fill.volume_when_seen, inflow * 3600.0, rounding);
}

TEST(Containment, WhatIsNotEnteredIsNotAssured) {
  const ContainmentResult result = of(site_text("site-s"));
  EXPECT_EQ(result.sumps.front().holds, Holds::not_assured);
  for (const Joint& joint : result.joints) EXPECT_NE(joint.holds, Holds::assured);
  for (const DrainBack& line : result.lines) EXPECT_EQ(line.holds, Holds::not_determined);
}

TEST(Containment, ATestedTightSumpIsAssured) {
  std::string text = site_text("site-s");
  const std::string kind = "kind = \"box\"";
  text.replace(text.find(kind), kind.size(), kind + ", tight = true, tested = 2026-03-12");
  const ContainmentResult result = of(text);
  EXPECT_EQ(result.sumps.front().holds, Holds::assured);
  std::size_t assured = 0;
  for (const Joint& joint : result.joints) assured += joint.sump == "D3" && joint.holds == Holds::assured ? 1 : 0;
  EXPECT_EQ(assured, 3U);  // line, riser, shear valve
}

TEST(Containment, ADoubleWalledLineDrainsToItsLowerEnd) {
  std::string text = site_text("site-s");
  const std::string gap = "id = \"gap-2\"";
  text.replace(text.find(gap), gap.size(), gap + "\ndouble_wall = true\nfall = \"-1 %\"");
  const ContainmentResult result = of(text);
  const DrainBack& line = result.lines.back();
  EXPECT_EQ(line.to, "D3.regular");
  EXPECT_EQ(line.sump, "D3");
}

TEST(Containment, ASumpWithoutSizesSaysWhatToEnter) {
  std::string text = site_text("site-s");
  const std::string sizes = "floor = [\"20 in\", \"30 in\"], depth = \"30 in\", ";
  text.erase(text.find(sizes), sizes.size());
  const ContainedSump sump = of(text).sumps.front();
  EXPECT_FALSE(sump.problem.empty());
  EXPECT_TRUE(sump.fills.empty());
}

TEST(Containment, ASensorAboveASealIsWarnedOf) {
  std::string text = site_text("site-s");
  const std::string low = "lowest_seal = \"10 in\"";
  text.replace(text.find(low), low.size(), "lowest_seal = \"1 in\"");
  EXPECT_EQ(of(text).warnings.size(), 1U);
}

}  // namespace
}  // namespace forecourse::studies
