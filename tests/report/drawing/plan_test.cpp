// The plan to scale: what it shows and what it says where there is none.
#include "forecourse/report/drawing/plan.h"

#include <gtest/gtest.h>

#include "forecourse/report/drawing/plan_view.h"
#include "report/snapshot.h"
#include "support/stations.h"

namespace forecourse::report::drawing {
namespace {

using test::site_text;
using test::station;

Plan small_plan() {
  Plan plan;
  plan.id = "plan";
  plan.title = "Plan";
  plan.description = "A plan.";
  plan.marks = {{MarkKind::tank, "T1", 0.0, 0.0, {}}, {MarkKind::dispenser, "D1", 30.0, 8.0, {true, false}}};
  plan.runs = {{0.0, 0.0, 30.0, 8.0, 1.0, "premium", 1}};
  plan.products = {{"premium", "premium", "40.0 L/min"}};
  plan.widest = "40.0 L/min";
  plan.unit_name = "m";
  return plan;
}

TEST(Plan, DrawsMarksLinesAndAScaleBar) { EXPECT_TRUE(matches_snapshot(draw(small_plan()), "plan.svg")); }

TEST(Plan, NeedsTwoPlacesApart) {
  Plan plan = small_plan();
  plan.marks[1].x = plan.marks[1].y = 0.0;
  EXPECT_EQ(draw(plan), "");
  plan.marks.resize(1);
  EXPECT_EQ(draw(plan), "");
}

TEST(Plan, EscapesNames) {
  Plan plan = small_plan();
  plan.marks[0].name = plan.marks[1].name = plan.products[0].name = "<i>\"&";
  EXPECT_EQ(draw(plan).find("<i>"), std::string::npos);
}

TEST(PlanView, ShowsOpenHosesAndLeavesOutWhatHasNoPosition) {
  const site::Site site = station(site_text("hollin-gap"));
  const studies::FlowResult result = studies::study_flow(site, {});
  const Plan plan = plan_of(site, result.states.front(), "plan");
  EXPECT_EQ(plan.marks.size(), 7U);  // three tanks, four dispensers
  EXPECT_EQ(plan.runs.size(), 10U);
  EXPECT_EQ(plan.marks.back().hoses, std::vector<bool>(6, true));
  EXPECT_TRUE(without_position(site).empty());
}

TEST(PlanView, SaysThatThereIsNone) {
  const site::Site site = station(site_text("site-s"));
  const studies::FlowResult result = studies::study_flow(site, {});
  EXPECT_NE(plan_figure(site, result.states.front(), "plan").find("No plan is drawn"), std::string::npos);
}

}  // namespace
}  // namespace forecourse::report::drawing
