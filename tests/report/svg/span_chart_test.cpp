// The chart of spans: what it holds and what it refuses.
#include "forecourse/report/svg/span_chart.h"

#include <gtest/gtest.h>

#include <cmath>

#include "report/snapshot.h"

namespace forecourse::report::svg {
namespace {

SpanChart chart() {
  return {"spans",
          wide,
          "How far each moves the slowest open hose",
          "Whiskers.",
          "slowest open hose, gpm",
          2,
          {{"filters of regular", 9.58, 7.9, 9.58},
           {"level in T1", 9.58, 9.4, 9.9},
           {"line.trunk.length", 9.58, 9.58, 9.58}}};
}

TEST(SpanChart, DrawsAWhiskerForEachSpan) { EXPECT_TRUE(matches_snapshot(draw(chart()), "span_chart.svg")); }

TEST(SpanChart, TellsItsTitleAndEscapesNames) {
  SpanChart named = chart();
  named.rows.front().name = "<i>\"&";
  const std::string svg = draw(named);
  EXPECT_NE(svg.find("role=\"img\""), std::string::npos);
  EXPECT_NE(svg.find("<title id="), std::string::npos);
  EXPECT_NE(svg.find("<desc id="), std::string::npos);
  EXPECT_EQ(svg.find("<i>"), std::string::npos);
}

TEST(SpanChart, IsEmptyWithoutRowsOrNumbers) {
  SpanChart empty = chart();
  empty.rows.front().least = std::nan("");
  EXPECT_EQ(draw(empty), "");
  empty.rows.clear();
  EXPECT_EQ(draw(empty), "");
}

}  // namespace
}  // namespace forecourse::report::svg
