// The time axis whose first second is stretched, and the scene of a spill.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "forecourse/report/svg/bars.h"
#include "forecourse/report/svg/spill_scene.h"
#include "forecourse/report/svg/time_chart.h"
#include "report/snapshot.h"

namespace forecourse::report::svg {
namespace {

std::size_t count(const std::string& text, const std::string& what) {
  std::size_t n = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++n;
  return n;
}

TEST(TimeAxis, TheFirstSecondTakesAThirdAndTheRestGoesByTheLogarithm) {
  // Closed form: linear to 1 s, then log(t) over log(end).
  EXPECT_DOUBLE_EQ(time_place(0.0, 600.0), 0.0);
  EXPECT_DOUBLE_EQ(time_place(0.5, 600.0), 1.0 / 6.0);
  EXPECT_DOUBLE_EQ(time_place(1.0, 600.0), 1.0 / 3.0);
  EXPECT_DOUBLE_EQ(time_place(std::sqrt(600.0), 600.0), 2.0 / 3.0);
  EXPECT_DOUBLE_EQ(time_place(600.0, 600.0), 1.0);
  EXPECT_DOUBLE_EQ(time_place(0.1, 0.4), 0.25);  // shorter than a second: even throughout
}

TEST(TimeAxis, NeverRunsBackNorOut) {
  double before = 0.0;
  for (double t = 0.0; t < 4000.0; t = 1.1 * t + 0.01) {
    const double place = time_place(t, 3600.0);
    EXPECT_GE(place, before);
    EXPECT_LE(place, 1.0);
    before = place;
  }
}

TimeChart chart() {
  TimeChart c;
  c.id = "courses";
  c.title = "Over time";
  c.description = "Flow and volume.";
  c.panels = {{"Flow, gpm",
               {{"escaping", {0.0, 1.0, 10.0, 60.0}, {0.0, 80.0, 83.0, 0.0}, 0},
                {"pumped", {0.0, 1.0, 10.0, 60.0}, {0.0, 70.0, 83.0, 0.0}, 1}}},
              {"Volume, gal", {{"sump", {0.0, 60.0}, {0.0, 20.0}, 0}}}};
  c.marks = {{10.0, "2"}, {10.5, "3"}, {45.0, "4"}};
  return c;
}

TEST(TimeChart, IsAsItWasLookedAt) { EXPECT_TRUE(matches_snapshot(draw(chart()), "time_chart.svg")); }

TEST(TimeChart, TellsSeriesApartByStrokeAndNamesThem) {
  const std::string drawn = draw(chart());
  EXPECT_EQ(count(drawn, "stroke-dasharray=\"7 4\""), 2U);  // the series, and its sample beside its name
  EXPECT_EQ(count(drawn, ">pumped<"), 1U);
}

TEST(TimeChart, DrawsABandThatItsAxisHolds) {
  TimeChart c = chart();
  EXPECT_EQ(count(draw(c), "class=\"spread\""), 0U);
  c.panels[0].series[0].low = {0.0, 40.0, 10.0, 0.0};
  c.panels[0].series[0].high = {0.0, 90.0, 390.0, 0.0};
  EXPECT_EQ(count(draw(c), "class=\"spread\""), 1U);
  EXPECT_EQ(count(draw(c), ">400<"), 1U);
}

TEST(TimeChart, WhatIsNotFiniteIsLeftOutAndOneMomentDrawsNothing) {
  TimeChart c = chart();
  c.panels[0].series[0].value[1] = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(draw(c).find("nan"), std::string::npos);
  c.panels = {{"Flow", {{"escaping", {0.0}, {1.0}, 0}}}};
  EXPECT_EQ(draw(c), "");
}

SpillScene scene() {
  SpillScene s;
  s.id = "scene";
  s.title = "The scene";
  s.description = "A cut at three moments.";
  s.level = true;
  s.moments = {{"0.00 s", "it happens", 0.0, 0.0, "", "0.00 gal in the sump", 0.0, 0.0, "", "", false},
               {"11.0 s", "the sump sensor gets wet", 0.4, 0.6, "10.91 gal on the slab", "4.68 gal in the sump", 0.3,
                1.0, "jet 0.8 to 2.7 ft", "83.45 gpm escaping", false},
               {"10.0 min", "counting ends", std::nullopt, 1.0, "13.83 gal on the slab", "", 0.0, 0.0, "", "", true}};
  return s;
}

TEST(SpillScene, IsAsItWasLookedAt) { EXPECT_TRUE(matches_snapshot(draw(scene()), "spill_scene.svg")); }

TEST(SpillScene, ASumpThatIsNotThereIsNotDrawn) {
  EXPECT_EQ(count(draw(scene()), "class=\"sump\""), 2U);
  EXPECT_EQ(count(draw(scene()), "class=\"housing\""), 1U);
  EXPECT_EQ(draw(SpillScene{}), "");
}

TEST(SpillScene, StacksOnANarrowPage) {
  SpillScene narrow = scene();
  narrow.width = 340.0;
  const std::string drawn = draw(narrow);
  EXPECT_NE(drawn.find("viewBox=\"0 0 340"), std::string::npos);
  EXPECT_EQ(count(drawn, "class=\"slab\""), 3U);
}

TEST(BarChart, DrawsAPartOfABarSolid) {
  const BarChart bars{
      "bars", wide, "What escapes", "Bars.", {{"all act", 1.0, 0.0, "1 gal"}, {"none", 4.0, 4.0, "4 gal"}}};
  EXPECT_TRUE(matches_snapshot(draw(bars), "incident_bars.svg"));
  EXPECT_EQ(draw(BarChart{}), "");
}

}  // namespace
}  // namespace forecourse::report::svg
