// The three drawings: what they hold and what they refuse.
#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/report/svg/budget.h"
#include "forecourse/report/svg/grade_line.h"
#include "forecourse/report/svg/hose_flows.h"
#include "report/snapshot.h"

namespace forecourse::report::svg {
namespace {

GradeChart grade_chart() {
  return {"grade",
          wide,
          "Grade line to D1.a",
          "Heights.",
          "ft above the site's datum",
          {{"T1", "0.0 ft", 0.0, 0.0, "0.0"},
           {"P1", "0.0 ft", 3.0, 72.8, "22.4"},
           {"D1.a", "154.0 ft", 12.0, 12.0, "0.0"}}};
}

BudgetChart budget_chart() {
  return {"budget",
          wide,
          "Where the pressure goes",
          "Bars.",
          "pressure left, psi",
          {{"pump", "P1", 0.0, 23.3, "+23.3"},
           {"line", "trunk", 23.3, 3.8, "\u221219.5"},
           {"lift", "D1.a", 3.8, 0.0, "\u22123.8"}}};
}

HoseFlowChart hose_chart() {
  return {"hoses",
          wide,
          "What a hose gives",
          "Flows.",
          "flow, gpm",
          2,
          {{"D1.a", 12.28, 11.48, 9.68}, {"D1.b", 12.28, std::nullopt, 9.68}, {"D3.d", {}, {}, {}}},
          {{10.0, "cap 10.00"}, {9.0, "to keep 9.00"}}};
}

TEST(GradeLineChart, DrawsPipeGapAndGradeLine) { EXPECT_TRUE(matches_snapshot(draw(grade_chart()), "grade_line.svg")); }

TEST(BudgetChart, DrawsAWaterfall) { EXPECT_TRUE(matches_snapshot(draw(budget_chart()), "budget.svg")); }

TEST(HoseFlowChart, DrawsARowForEachHose) { EXPECT_TRUE(matches_snapshot(draw(hose_chart()), "hose_flows.svg")); }

TEST(Charts, HaveATitleAndADescription) {
  for (const std::string& svg : {draw(grade_chart()), draw(budget_chart()), draw(hose_chart())}) {
    EXPECT_NE(svg.find("role=\"img\""), std::string::npos);
    EXPECT_NE(svg.find("<title id="), std::string::npos);
    EXPECT_NE(svg.find("<desc id="), std::string::npos);
  }
}

TEST(Charts, AreEmptyWhenThereIsNothingToDraw) {
  GradeChart grade = grade_chart();
  grade.stops[1].grade = std::nan("");
  EXPECT_EQ(draw(grade), "");
  grade.stops.resize(1);
  EXPECT_EQ(draw(grade), "");
  BudgetChart budget = budget_chart();
  budget.bars.front().after = INFINITY;
  EXPECT_EQ(draw(budget), "");
  budget.bars.clear();
  EXPECT_EQ(draw(budget), "");
  HoseFlowChart hoses = hose_chart();
  hoses.hoses = {{"D3.d", {}, {}, {}}};
  EXPECT_EQ(draw(hoses), "");
}

TEST(Charts, EscapeNames) {
  GradeChart grade = grade_chart();
  grade.stops[0].name = "<i>\"&";
  EXPECT_EQ(draw(grade).find("<i>"), std::string::npos);
  HoseFlowChart hoses = hose_chart();
  hoses.hoses[0].name = "<i>";
  EXPECT_EQ(draw(hoses).find("<i>"), std::string::npos);
  BudgetChart budget = budget_chart();
  budget.bars[0].name = budget.bars[0].owner = "<i>";
  EXPECT_EQ(draw(budget).find("<i>"), std::string::npos);
}

TEST(GradeLineChart, AlwaysHoldsZeroAndTheLowestPipe) {
  GradeChart grade = grade_chart();
  grade.stops[0].pipe = grade.stops[0].grade = -11.0;
  EXPECT_NE(draw(grade).find(">\u221220<"), std::string::npos);
  EXPECT_NE(draw(grade).find(">0<"), std::string::npos);
}

}  // namespace
}  // namespace forecourse::report::svg
