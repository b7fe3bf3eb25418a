// Schedule, drawings and checks of one station are of one mind: the same parts, the same lengths.
// SOURCE: closed form
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/station/check_station.h"
#include "forecourse/handover/drawings/drawings.h"
#include "forecourse/handover/kit/kit.h"
#include "support/stations.h"

namespace forecourse::handover {
namespace {

using test::site_text;
using test::station;
using test::with;

class HandedOver : public testing::TestWithParam<const char*> {};

std::multiset<std::string> parts_of(const Kit& kit) {
  std::multiset<std::string> out;
  for (const KitRow& row : kit.rows) out.insert(row.parts.begin(), row.parts.end());
  return out;
}

std::multiset<std::string> parts_of(const Drawing& drawing) {
  std::multiset<std::string> out(drawing.elsewhere.begin(), drawing.elsewhere.end());
  for (const Mark& mark : drawing.marks) out.insert(mark.part);
  for (const NotPlaced& part : drawing.not_placed) out.insert(part.part);
  return out;
}

TEST_P(HandedOver, EachPartOfTheScheduleIsOnTheDrawingsOrListedThereOnce) {
  const site::Site site = station(site_text(GetParam()));
  const auto scheduled = parts_of(make_kit(site, {}, nullptr));
  for (const Drawing& drawing : draw_station(site, {}).drawings) EXPECT_EQ(parts_of(drawing), scheduled) << drawing.id;
}

/// Length of the curb hose, as the schedule, the plan and the rule on the length of hoses have it.
struct Told {
  double of_kit = 0.0;
  double of_plan = 0.0;  ///< greatest reach
  double of_check = 0.0;
};

Told told(const site::Site& site, const std::string& dispenser, const std::string& hose) {
  Told out;
  const std::string path = "dispenser." + dispenser + ".hose." + hose + ".curb";
  for (const KitRow& row : make_kit(site, {}, nullptr).rows) {
    if (std::find(row.parts.begin(), row.parts.end(), path) == row.parts.end()) continue;
    for (const KitSize& size : row.sizes) {
      if (size.name == "length" && size.value) out.of_kit = *size.value;
    }
  }
  DrawingOptions plan;
  plan.which = "plan";
  for (const Drawing& drawing : draw_station(site, plan).drawings) {
    for (const Circle& circle : drawing.circles) {
      if (circle.layer == "reach") out.of_plan = std::max(out.of_plan, circle.radius);
    }
  }
  const checks::Studied nothing;
  for (const checks::FindingSet& set :
       checks::check_rule_sets(checks::facts_of(site, nothing, {2026, 11, 30, {}}, nullptr))) {
    for (const checks::Finding& one : set.findings) {
      if (one.rule == "hose-length" && one.subject == hose && one.value) out.of_check = *one.value;
    }
  }
  return out;
}

TEST(HandedOverLengths, AHoseThatIsLongerIsSoInAll) {
  const std::string text = site_text("hollin-gap");
  const Told before = told(station(text), "D1", "D1.regular-a");
  const double more = to_si(3.0, "ft");
  const Told after =
      told(station(with(text, "dispenser.D1.hose.D1.regular-a.curb.length", "12 ft")), "D1", "D1.regular-a");
  constexpr double rounding = 1e-12;  // [m]
  EXPECT_NEAR(before.of_kit, to_si(9.0, "ft"), rounding);
  EXPECT_NEAR(after.of_kit - before.of_kit, more, rounding);
  EXPECT_NEAR(after.of_plan - before.of_plan, more, rounding);
  EXPECT_NEAR(after.of_check - before.of_check, more, rounding);
}

INSTANTIATE_TEST_SUITE_P(OfExampleStations, HandedOver,
                         testing::Values("hollin-gap", "ludd-bank", "marle-cross", "pell-ridge", "site-s", "thornby",
                                         "truck-lane"));

}  // namespace
}  // namespace forecourse::handover
