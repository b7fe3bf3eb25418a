// All sumps to one scale: what is drawn, what is told where something was not entered, and how it fits a narrow page.
#include "forecourse/report/svg/sumps.h"

#include <gtest/gtest.h>

#include <regex>

#include "forecourse/report/containment/sumps_view.h"
#include "report/snapshot.h"
#include "support/stations.h"

namespace forecourse::report {
namespace {

using test::site_text;
using test::station;
using test::with;

std::size_t count(const std::string& text, const std::string& part) {
  std::size_t out = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + part.size())) ++out;
  return out;
}

svg::SumpChart two_sumps() {
  svg::SumpChart chart;
  chart.id = "sumps";
  chart.title = "Sumps";
  chart.description = "Two sumps.";
  chart.unit_name = "m";
  chart.sumps.resize(2);
  svg::DrawnSump& tank = chart.sumps[0];
  tank.name = "T1";
  tank.shows = {6, "tank.T1.sump"};
  tank.of_tank = true;
  tank.depth = 1.2;
  tank.floor = tank.top = 1.0;
  tank.sensor = 0.05;
  tank.lowest_seal = 0.4;
  tank.pump_head = 0.8;
  tank.pipes = {{0.8, "diesel", false}};
  chart.sumps[1].name = "D1";
  chart.sumps[1].shows = {6, "dispenser.D1.sump"};
  chart.rows = {{"Sensor at", {"50 mm", "\u2013"}}, {"At 4 L/min", {}}, {"over the brim after", {"5 min", "\u2013"}}};
  return chart;
}

TEST(Sumps, AreAsTheyWereLookedAt) { EXPECT_TRUE(matches_snapshot(draw(two_sumps()), "sumps.svg")); }

TEST(Sumps, WithoutADepthAreNotDrawn) {
  svg::SumpChart chart = two_sumps();
  chart.sumps.erase(chart.sumps.begin());
  EXPECT_EQ(draw(chart), "");
  EXPECT_EQ(draw(svg::SumpChart{}), "");
}

TEST(Sumps, EscapeNames) {
  svg::SumpChart chart = two_sumps();
  chart.sumps[0].name = chart.sumps[0].shows.part = chart.rows[0].name = chart.rows[0].values[0] = "<i>\"&";
  EXPECT_EQ(draw(chart).find("<i>"), std::string::npos);
}

TEST(Sumps, TakeSeveralGroundLinesOnANarrowPage) {
  const site::Site site = station(site_text("marle-cross"));
  svg::SumpChart chart = sump_chart(studies::study_containment(site, {}), site, "sumps");
  ASSERT_EQ(chart.sumps.size(), 10U);
  EXPECT_EQ(count(draw(chart), "class=\"ground-line\""), 2U);
  chart.width = svg::narrow;
  EXPECT_EQ(count(draw(chart), "class=\"ground-line\""), 5U);
  EXPECT_EQ(count(draw(chart), "data-part=\"dispenser."), 10U);
}

TEST(Sumps, ColumnsBeginBehindTheNamesOfTheRows) {
  svg::SumpChart chart = two_sumps();
  const std::string longest = "over the brim after";
  ASSERT_EQ(chart.rows.back().name, longest);
  for (const double width : {svg::narrow, svg::wide}) {
    chart.width = width;
    const std::string drawn = draw(chart);
    std::smatch column;
    ASSERT_TRUE(std::regex_search(drawn, column, std::regex("<rect class=\"touch\" x=\"([0-9.]+)\""))) << drawn;
    EXPECT_GT(std::stod(column[1]), 6.5 * static_cast<double>(longest.size()));
    EXPECT_EQ(count(drawn, "class=\"ground-line\""), 1U);  // both sumps beside each other on a phone too
  }
}

TEST(SumpsView, TellsWhatWasNotEntered) {
  const std::string text = site_text("hollin-gap");
  const site::Site site = station(with(text, "dispenser.D1.sump", "{ volume = \"40 gal\" }"));
  const studies::ContainmentResult result = studies::study_containment(site, {});
  const svg::SumpChart chart = sump_chart(result, site, "sumps");
  EXPECT_FALSE(chart.sumps[0].depth);
  EXPECT_EQ(chart.sumps[2].pipes.size(), 3U);
  std::string all;
  for (const std::string& remark : sumps_remarks(result, site)) all += remark + "\n";
  EXPECT_NE(all.find("Depth not entered, drawn dashed: D1."), std::string::npos) << all;
  EXPECT_NE(all.find("drawn with the brim at the ground: D2, D3, D4."), std::string::npos) << all;
}

TEST(SumpsView, HasThreeTimesForEachInflow) {
  const site::Site site = station(site_text("hollin-gap"));
  const studies::ContainmentResult result = studies::study_containment(site, {{1e-5, 1e-4}, {}});
  svg::SumpChart chart = sump_chart(result, site, "sumps");
  const std::size_t volumes = chart.rows.size();
  add_fill_rows(result, site.display, chart);
  EXPECT_EQ(chart.rows.size(), volumes + 2 * 4);
}

}  // namespace
}  // namespace forecourse::report
