// Classified areas: around what they are drawn, and where there is a named gap.
#include "forecourse/handover/drawings/zones.h"

#include <map>

#include "forecourse/base/unit_text.h"
#include "handover/drawings/placed.h"

namespace forecourse::handover {
namespace {

using test::with;
using testing::HasSubstr;
using testing::IsEmpty;

/// Closed paths, without the piece of the key.
int shapes(const Drawing& drawing, const std::string& layer) {
  const std::vector<Path> all = on_layer(drawing, layer);
  return static_cast<int>(std::count_if(all.begin(), all.end(), [](const Path& path) { return path.closed; }));
}

std::vector<double> radii(const Drawing& drawing, const std::string& layer) {
  std::vector<double> out;
  for (const Circle& circle : drawing.circles) {
    if (circle.layer == layer) out.push_back(circle.radius);
  }
  std::sort(out.begin(), out.end());
  return out;
}

// SOURCE: [ifc_2018, table 5703.1.1] fill: 18 in above grade within 5 ft (tight) or 10 ft (loose); vent that blows
// upward: Division 1 within 3 ft, Division 2 within 5 ft; pump out of doors: 3 ft, and to 18 in within 10 ft.
TEST(ClassifiedAreas, AreThoseWhoseTextWasSeen) {
  const Drawing tight = drawn(placed, Asked{.which = "plan"}).drawings.front();
  const double foot = to_si(1.0, "ft");
  EXPECT_THAT(radii(tight, "zones-1"), testing::ElementsAre(testing::DoubleEq(3.0 * foot)));
  EXPECT_THAT(radii(tight, "zones-2"),
              testing::ElementsAre(testing::DoubleEq(3.0 * foot), testing::DoubleEq(5.0 * foot),
                                   testing::DoubleEq(5.0 * foot), testing::DoubleEq(10.0 * foot)));
  const Drawing loose = drawn(with(placed, "tank.T1.fill.F1.tight", "false"), Asked{.which = "plan"}).drawings.front();
  EXPECT_THAT(radii(loose, "zones-2"),
              testing::ElementsAre(testing::DoubleEq(3.0 * foot), testing::DoubleEq(5.0 * foot),
                                   testing::DoubleEq(10.0 * foot), testing::DoubleEq(10.0 * foot)));
  for (const Zone& zone : tight.zones) EXPECT_EQ(zone.clause, "IFC table 5703.1.1");
}

TEST(ClassifiedAreas, WhatWasNotSeenOrEnteredIsANamedGap) {
  std::string text = placed;
  text.erase(text.find("  tight = true\n"), std::string("  tight = true\n").size());
  text = with(text, "tank.T1.vent.V1.upward", "false");
  const Drawing plan = drawn(text, Asked{.which = "plan"}).drawings.front();
  std::map<std::string, std::string> gaps;
  for (const ZoneGap& gap : plan.zone_gaps) gaps[gap.part] = gap.why;
  EXPECT_THAT(gaps["tank.T1.fill.F1"], HasSubstr("enter tight"));
  EXPECT_THAT(gaps["tank.T1.vent.V1"], HasSubstr("not seen"));
  EXPECT_THAT(gaps["dispenser.D1"], HasSubstr("not seen"));
  for (const Zone& zone : plan.zones) EXPECT_EQ(zone.part, "pump.P1");
}

TEST(ClassifiedAreas, AreNotDrawnAroundDiesel) {
  std::string text = with(placed, "tank.T1.product", "diesel");
  text = with(text, "dispenser.D1.inlet.regular.product", "diesel");
  text = with(text, "dispenser.D1.hose.D1.a.product", "diesel");
  text = with(text, "line.trunk.to", "D1.diesel");
  const Drawing plan = drawn(text, Asked{.which = "plan"}).drawings.front();
  EXPECT_THAT(plan.zones, IsEmpty());
  EXPECT_THAT(plan.zone_gaps, IsEmpty());
}

/// The station with the dispenser this far to the right of its fill, which stands at (2, 20), and this sump.
/// The fill is tight: its area reaches 5 ft, 1.524 m.
Drawing with_sump(double right, const std::string& sump, const char* which = "plan") {
  std::string text = with(placed, "dispenser.D1.position", "[\"" + std::to_string(2.0 + right) + " m\", \"20 m\"]");
  text = with(text, "dispenser.D1.sump", sump);
  return called(drawn(text), which);
}

bool is_classified_inside(const Drawing& drawing, const std::string& part) {
  return std::any_of(drawing.zones.begin(), drawing.zones.end(),
                     [&](const Zone& zone) { return zone.part == part && zone.division == 1; });
}

std::string gap_of(const Drawing& drawing, const std::string& part) {
  for (const ZoneGap& gap : drawing.zone_gaps) {
    if (gap.part == part) return gap.why;
  }
  return "";
}

// SOURCE: closed form. A box 1 m wide and 2 m high is met 0.5 m from its middle, between its corners; a round one of
// 1 m likewise.
TEST(ClassifiedAreas, ASumpIsDivisionOneInsideWhereAnAreaTouchesIt) {
  const std::string part = "dispenser.D1.sump";
  const std::string box = "{ kind = \"box\", floor = [\"1 m\", \"4 m\"], top = [\"1 m\", \"4 m\"], depth = \"0.9 m\" }";
  const std::string round = "{ kind = \"round\", diameter = \"1 m\", depth = \"0.9 m\" }";
  for (const std::string& sump : {box, round}) {
    const Drawing near = with_sump(-2.02, sump), far = with_sump(-2.03, sump);
    EXPECT_TRUE(is_classified_inside(near, part)) << sump;
    EXPECT_FALSE(is_classified_inside(far, part)) << sump;
    EXPECT_EQ(gap_of(near, part), "");
    EXPECT_EQ(gap_of(far, part), "");
  }
  EXPECT_EQ(shapes(with_sump(-2.02, box), "zones-1"), 1);
  EXPECT_EQ(shapes(with_sump(-2.03, box), "zones-1"), 0);
  EXPECT_THAT(radii(with_sump(-2.02, round), "zones-1"), testing::Contains(testing::DoubleEq(0.5)));
  EXPECT_THAT(radii(with_sump(-2.03, round), "zones-1"), testing::Not(testing::Contains(testing::DoubleEq(0.5))));
  // Around the whole of the area: the sump holds it.
  EXPECT_TRUE(is_classified_inside(with_sump(0.0, round), part));
}

TEST(ClassifiedAreas, ASumpWithoutSizesIsAGap) {
  const std::string part = "dispenser.D1.sump";
  for (const double right : {-1.0, 40.0}) {
    const Drawing plan = with_sump(right, "{ kind = \"round\", depth = \"0.9 m\" }");
    EXPECT_FALSE(is_classified_inside(plan, part));
    EXPECT_EQ(gap_of(plan, part), "enter sizes of the sump");
  }
  EXPECT_EQ(gap_of(with_sump(0.0, "{ kind = \"round\", diameter = \"1 m\", depth = \"0.9 m\" }", "section"), part), "");
}

// In a section the sump of the tank stands at the pump, whose area reaches 10 ft.
TEST(ClassifiedAreas, TheSumpOfATankIsDivisionOneInside) {
  const std::string sump = "{ kind = \"round\", diameter = \"1.2 m\", depth = \"1 m\" }";
  const DrawingSet set = drawn(with(placed, "tank.T1.sump", sump));
  for (const char* id : {"plan", "section", "tank"}) {
    EXPECT_TRUE(is_classified_inside(called(set, id), "tank.T1.sump")) << id;
    EXPECT_FALSE(is_classified_inside(called(set, id), "dispenser.D1.sump")) << id;
  }
  EXPECT_EQ(shapes(called(set, "tank"), "zones-1"), 1);
}

TEST(ClassifiedAreas, AreNotDrawnByARuleThatDoesNotHold) {
  const Drawing european = drawn(with(placed, "site.rules", "[\"eu\"]"), Asked{.which = "plan"}).drawings.front();
  EXPECT_THAT(european.zones, IsEmpty());
  EXPECT_THAT(radii(european, "zones-2"), IsEmpty());
  ASSERT_EQ(european.zone_gaps.size(), 1U);
  EXPECT_EQ(european.zone_gaps.front().why, "zones of the European rule not seen");
  const Drawing both =
      drawn(with(placed, "site.rules", "[\"us-fire-code\", \"eu\"]"), Asked{.which = "plan"}).drawings.front();
  EXPECT_FALSE(both.zones.empty());
}

/// The station with a tank of diesel before the other, through whose vent both breathe. Invented.
std::string with_shared_stack(const std::string& of_diesel, const std::string& of_regular) {
  std::string text = with(placed, "tank.T1.vent.V1.shared", "stack");
  const auto cut = [&](const std::string& from, std::size_t lines) {
    const std::size_t at = text.find(from);
    std::size_t end = at;
    for (std::size_t i = 0; i < lines; ++i) end = text.find('\n', end) + 1;
    text.erase(at, end - at);
  };
  cut("  position = [\"-3 m\"", 3);  // what is entered of the outlet
  text.insert(text.find("shared = \"stack\"\n") + std::string("shared = \"stack\"\n").size(), of_regular);
  text.insert(text.find("[[tank]]"),
              "[[tank]]\nid = \"T0\"\nproduct = \"diesel\"\n  [[tank.vent]]\n  id = \"V0\"\n  shared = \"stack\"\n" +
                  of_diesel);
  return text;
}

// SOURCE: [ifc_2018, table 5703.1.1] as above, whichever tank the outlet is listed under.
TEST(ClassifiedAreas, ASharedVentBreathesForAllItsTanks) {
  const std::string outlet = "  position = [\"-3 m\", \"20 m\"]\n  outlet_elevation = \"4 m\"\n  upward = true\n";
  for (const auto& text : {with_shared_stack("", outlet), with_shared_stack(outlet, "")}) {
    const DrawingSet set = drawn(text);
    for (const char* id : {"plan", "section", "tank"}) {
      const Drawing& one = called(set, id);
      std::vector<double> around;
      for (const Zone& zone : one.zones) {
        if (zone.part == "tank.T0.vent.V0") around.push_back(zone.radius);
      }
      EXPECT_THAT(around,
                  testing::ElementsAre(testing::DoubleEq(to_si(3.0, "ft")), testing::DoubleEq(to_si(5.0, "ft"))))
          << id;
      EXPECT_THAT(radii(one, "zones-1"), testing::Contains(testing::DoubleEq(to_si(3.0, "ft")))) << id;
    }
    // In the section of the other tank it stands where that tank sees it.
    EXPECT_NEAR(mark(called(set, "tank"), "tank.T0.vent.V0").x, -9.0 - 4.0, exact);
    EXPECT_NEAR(mark(called(set, "tank"), "tank.T0.vent.V0").y, 4.0, exact);
  }
}

TEST(ClassifiedAreas, ASharedVentWithoutAPlaceIsAGap) {
  const DrawingSet set = drawn(with_shared_stack("", "  upward = true\n"));
  for (const char* id : {"plan", "section", "tank"}) {
    const auto& gaps = called(set, id).zone_gaps;
    EXPECT_TRUE(std::any_of(gaps.begin(), gaps.end(), [](const ZoneGap& gap) {
      return gap.part == "tank.T0.vent.V0" && gap.why == "its place is not known";
    })) << id;
  }
}

}  // namespace
}  // namespace forecourse::handover
