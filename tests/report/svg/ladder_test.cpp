// The ladder drawn: what it holds and what it refuses.
#include "forecourse/report/svg/ladder.h"

#include <gtest/gtest.h>

#include <cmath>

#include "report/snapshot.h"

namespace forecourse::report::svg {
namespace {

LadderChart chart() {
  LadderChart chart;
  chart.id = "ladder";
  chart.title = "The slowest hose by the number open";
  chart.description = "Flows.";
  chart.axis = "flow of the slowest hose, gpm";
  chart.series = {{"worst", LadderMark::square, {10.0, 10.0, 9.89, 9.45, 8.93, 8.45, 8.06, 7.70}},
                  {"typical", LadderMark::disc, {10.0, 10.0, 10.0, 10.0, 9.04, 8.53, 8.11, 7.70}},
                  {"asked for", LadderMark::ring, {10.0, std::nullopt, 9.95}}};
  chart.limits = {{{9.0, "to keep 9.00"}, Forbidden::below}, {{10.0, "cap 10.00"}, Forbidden::above}};
  return chart;
}

std::size_t count(const std::string& text, const std::string& what) {
  std::size_t n = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++n;
  return n;
}

TEST(LadderChart, DrawsSeriesAndLimits) { EXPECT_TRUE(matches_snapshot(draw(chart()), "ladder.svg")); }

TEST(LadderChart, EveryFlowHasAMarkAndAMissingOnePartsTheLine) {
  const std::string svg = draw(chart());
  EXPECT_EQ(count(svg, "\"mark-a\""), 8U);
  EXPECT_EQ(count(svg, "\"mark-b\""), 8U);
  EXPECT_EQ(count(svg, "\"mark-c\""), 2U);
  EXPECT_EQ(count(svg, "\"line-c\""), 0U);  // two points that do not join
}

TEST(LadderChart, EachSeriesAndLimitIsNamedOnce) {
  for (const double width : {wide, narrow}) {
    LadderChart one = chart();
    one.width = width;
    const std::string svg = draw(one);
    for (const char* name : {">worst<", ">typical<", ">asked for<", ">to keep 9.00<", ">cap 10.00<", ">7.70<"}) {
      EXPECT_EQ(count(svg, name), 1U) << name;
    }
  }
}

TEST(LadderChart, FollowsFromWideToNarrowAndHoldsNoNumberThatIsNone) {
  LadderChart one = chart();
  one.width = narrow;
  one.series[0].flows[3] = std::nan("");
  one.series[0].name = "<worst & \"hostile\">";
  const std::string svg = draw(one);
  EXPECT_EQ(svg.find("nan"), std::string::npos);
  EXPECT_EQ(svg.find("<worst"), std::string::npos);
}

TEST(LadderChart, IsEmptyWithoutAFlow) {
  LadderChart none = chart();
  none.series = {{"worst", LadderMark::square, {std::nullopt, std::nullopt}}};
  EXPECT_TRUE(draw(none).empty());
  none.series.clear();
  EXPECT_TRUE(draw(none).empty());
}

TEST(LadderChart, OneHoseIsAChartToo) {
  LadderChart one = chart();
  for (LadderSeries& series : one.series) series.flows.resize(1);
  EXPECT_EQ(count(draw(one), "\"mark-a\""), 1U);
}

}  // namespace
}  // namespace forecourse::report::svg
