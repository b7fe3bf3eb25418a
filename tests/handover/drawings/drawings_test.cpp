// Drawings: they follow the station exactly, and every part is on them or listed.
// SOURCE: closed form
#include "forecourse/handover/drawings/drawings.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <tuple>

#include "forecourse/base/unit_text.h"
#include "forecourse/handover/drawings/course.h"
#include "forecourse/handover/drawings/pen.h"
#include "forecourse/handover/drawings/plan.h"
#include "forecourse/handover/drawings/sheet.h"
#include "forecourse/handover/drawings/words.h"
#include "forecourse/handover/parts/station_parts.h"
#include "handover/drawings/placed.h"

namespace forecourse::handover {
namespace {

using test::site_text;
using test::station;
using test::with;
using testing::HasSubstr;
using testing::IsEmpty;

const std::vector<std::string>& example_names() {
  static const std::vector<std::string> names{"hollin-gap", "ludd-bank", "marle-cross", "pell-ridge",
                                              "site-s",     "thornby",   "truck-lane"};
  return names;
}

/// Without the piece of the key, which stands beside the station.
Path tank_outline(const Drawing& drawing) {
  for (const Path& path : on_layer(drawing, "tanks")) {
    if (path.closed) return path;
  }
  ADD_FAILURE() << "no tank";
  return {};
}

double measured(const Drawing& drawing, const std::string& what) {
  for (const Dimension& one : drawing.dimensions) {
    if (one.what == what) return one.value;
  }
  ADD_FAILURE() << "no dimension " << what;
  return NAN;
}

TEST(Drawings, APlanFollowsTheTankExactly) {
  for (const auto& [x, y, length, degrees] : std::vector<std::tuple<double, double, double, double>>{
           {6.0, 20.0, 10.0, 0.0}, {6.0, 20.0, 11.5, 0.0}, {-12.25, 3.5, 9.5, 90.0}, {1.0, 2.0, 9.0, 30.0}}) {
    std::string text = with(placed, "tank.T1.shape.length", std::to_string(length) + " m");
    text = with(text, "tank.T1.position", "[\"" + std::to_string(x) + " m\", \"" + std::to_string(y) + " m\"]");
    text = with(text, "tank.T1.axis", std::to_string(degrees) + " deg");
    const DrawingSet set = drawn(text, Asked{.which = "plan"});
    const Path outline = tank_outline(set.drawings.front());
    ASSERT_EQ(outline.points.size(), 4U);
    const double c = std::cos(degrees * std::numbers::pi / 180.0), s = std::sin(degrees * std::numbers::pi / 180.0);
    const double corners[4][2] = {{-0.5, -0.5}, {0.5, -0.5}, {0.5, 0.5}, {-0.5, 0.5}};
    for (std::size_t i = 0; i < 4; ++i) {
      const double along = corners[i][0] * length, across = corners[i][1] * 2.5;
      EXPECT_NEAR(outline.points[i].x, x + along * c - across * s, 1e-6);  // the text has six decimals
      EXPECT_NEAR(outline.points[i].y, y + along * s + across * c, 1e-6);
    }
    EXPECT_NEAR(measured(set.drawings.front(), "length of T1"), length, 1e-6);
    EXPECT_NEAR(measured(set.drawings.front(), "width of T1"), 2.5, exact);
    // Places along the tank count from its low end, from which its axis runs.
    const Point fill = mark(set.drawings.front(), "tank.T1.fill.F1");
    EXPECT_NEAR(fill.x, x + (1.0 - 0.5 * length) * c, 1e-6);
    EXPECT_NEAR(fill.y, y + (1.0 - 0.5 * length) * s, 1e-6);
  }
}

TEST(Drawings, EachTankOfTheExamplesFollowsItsLength) {
  const std::string text = site_text("marle-cross");
  for (const double feet : {30.0, 36.0, 41.5}) {
    const DrawingSet set =
        drawn(with(text, "tank.T1.shape.length", std::to_string(feet) + " ft"), Asked{.which = "plan"});
    EXPECT_NEAR(measured(set.drawings.front(), "length of T1"), to_si(feet, "ft"), exact);
  }
}

TEST(Drawings, ASectionHasItsHeightsAsEntered) {
  const DrawingSet set = drawn(placed);
  const Drawing& whole = called(set, "section");
  const Path outline = tank_outline(whole);
  // The pump stands 9 m from the low end, which is at the left; the shell is 0.05 m thick; the tank rises by 1 %.
  ASSERT_EQ(outline.points.size(), 4U);
  EXPECT_NEAR(outline.points[0].x, -9.0, exact);
  EXPECT_NEAR(outline.points[0].y, -4.05, exact);
  EXPECT_NEAR(outline.points[1].x, 1.0, exact);
  EXPECT_NEAR(outline.points[1].y, -3.95, exact);
  EXPECT_NEAR(outline.points[2].y, -1.45, exact);
  EXPECT_NEAR(outline.points[3].y, -1.55, exact);
  EXPECT_NEAR(measured(called(set, "tank"), "cover of T1"), 1.55, exact);
  EXPECT_NEAR(measured(called(set, "tank"), "diameter of T1"), 2.5, exact);
  EXPECT_NEAR(measured(whole, "length of trunk"), 34.0, exact);
  const Point groove = mark(whole, "dispenser.D1.inlet.regular.shear_valve");
  EXPECT_NEAR(groove.x, 34.0, exact);
  EXPECT_NEAR(groove.y, 0.15, exact);
  const Point fill = mark(whole, "tank.T1.fill.F1");
  EXPECT_NEAR(fill.x, -8.0, exact);
  EXPECT_NEAR(fill.y, -0.1, exact);
  EXPECT_NEAR(mark(whole, "tank.T1.fill.F1.drop_tube").y, -4.0 + 0.01 + 0.15, exact);
  // On plan the vent is 4 m to the left of where the tank begins.
  EXPECT_NEAR(mark(whole, "tank.T1.vent.V1").x, -9.0 - 4.0, exact);
  EXPECT_NEAR(mark(whole, "tank.T1.vent.V1").y, 4.0, exact);
  EXPECT_NEAR(measured(called(set, "dispenser"), "depth of the sump of D1"), 0.9, exact);
}

TEST(Drawings, ALowEndAtThePumpTurnsTheTank) {
  const DrawingSet set = drawn(with(placed, "tank.T1.shape.low_end", "pump"));
  const Path outline = tank_outline(called(set, "section"));
  EXPECT_NEAR(outline.points[1].x, 9.0, exact);
  EXPECT_NEAR(outline.points[1].y, -4.05, exact);
  EXPECT_NEAR(outline.points[0].y, -3.95, exact);
}

TEST(Drawings, HeadsAreArcsThroughTheirDepth) {
  const std::string round = with(placed, "tank.T1.shape.heads", "hemispherical");
  const Drawing whole = called(drawn(round), "section");
  ASSERT_EQ(whole.arcs.size(), 2U);
  // Half of the outside diameter, about the middle of each end.
  EXPECT_NEAR(whole.arcs[0].radius, 1.25, exact);
  EXPECT_NEAR(whole.arcs[0].center.x, -9.0, exact);
  EXPECT_NEAR(whole.arcs[0].center.y, -2.8, exact);
  EXPECT_NEAR(whole.arcs[1].to - whole.arcs[1].from, std::numbers::pi, exact);
  const std::string dished = with(with(placed, "tank.T1.shape.heads", "dished"), "tank.T1.shape.head_depth", "0.45 m");
  const Drawing low = called(drawn(dished), "section");
  ASSERT_EQ(low.arcs.size(), 2U);
  // Apex 0.45 m and the shell's 0.05 m beyond the end; the ends of the arc meet the shell.
  const Arc& arc = low.arcs[0];
  EXPECT_NEAR(arc.center.x - arc.radius, -9.5, exact);
  EXPECT_NEAR(arc.center.x + arc.radius * std::cos(arc.from), -9.0, exact);
  EXPECT_NEAR(arc.center.y + arc.radius * std::sin(arc.from), -2.8 + 1.25, exact);
}

TEST(Drawings, LinesFollowTheirLengths) {
  const std::string text = site_text("hollin-gap");
  for (const double factor : {1.0, 2.0}) {
    const DrawingSet set = drawn(with(text, "line.diesel-trunk.length", std::to_string(160.0 * factor) + " ft"));
    EXPECT_NEAR(measured(called(set, "section"), "length of diesel-trunk"), to_si(160.0 * factor, "ft"), exact);
  }
}

TEST(Drawings, EachPartIsPlacedListedOrElsewhere) {
  for (const std::string& name : example_names()) {
    const site::Site site = station(site_text(name));
    std::map<std::string, int> all;
    for (const StationPart& part : parts_of_station(site)) ++all[part.kind];
    for (const Drawing& drawing : draw_station(site, {}).drawings) {
      std::map<std::string, int> told;
      for (const Mark& one : drawing.marks) ++told[one.kind];
      for (const NotPlaced& one : drawing.not_placed) ++told[one.kind];
      std::map<std::string, std::string> kinds;
      for (const StationPart& part : parts_of_station(site)) kinds[part.path] = part.kind;
      for (const std::string& path : drawing.elsewhere) ++told[kinds[path]];
      EXPECT_EQ(told, all) << name << " " << drawing.id;
      if (drawing.id == "plan") {
        EXPECT_THAT(drawing.elsewhere, IsEmpty());
      }
    }
  }
}

TEST(Drawings, WhatHasNoPlaceIsListedWithWhatToEnter) {
  const DrawingSet set = drawn(site_text("site-s"), Asked{.which = "plan"});
  const Drawing& plan = set.drawings.front();
  EXPECT_THAT(plan.marks, IsEmpty());
  ASSERT_FALSE(plan.not_placed.empty());
  for (const NotPlaced& one : plan.not_placed) EXPECT_FALSE(one.why.empty()) << one.part;
}

TEST(Drawings, ADispenserWithoutAPositionTakesItsPartsOffThePlan) {
  const DrawingSet before = drawn(placed, Asked{.which = "plan"});
  std::string text = placed;
  text.erase(text.find("position = [\"40 m\""), std::string("position = [\"40 m\", \"10 m\"]\n").size());
  const DrawingSet after = drawn(text, Asked{.which = "plan"});
  std::map<std::string, std::string> why;
  for (const NotPlaced& one : after.drawings.front().not_placed) why[one.part] = one.why;
  for (const char* part : {"dispenser.D1", "dispenser.D1.sump", "dispenser.D1.hose.D1.a.nozzle"})
    EXPECT_EQ(why[part], "enter position of the dispenser") << part;
  EXPECT_EQ(why["line.trunk"], "enter where D1.regular stands");
  EXPECT_GT(before.drawings.front().marks.size(), after.drawings.front().marks.size() + 5);
}

/// Everything that is drawn lies on the paper, letters by their estimated length.
TEST(Drawings, AllLiesOnThePaper) {
  for (const std::string& name : example_names()) {
    const site::Site site = station(site_text(name));
    for (const char* paper : {"a4", "a3", "letter", "tabloid"}) {
      for (const Drawing& drawing : draw_station(site, Asked{.paper = paper}).drawings) {
        const DrawingSheet& sheet = drawing.sheet;
        Box box = extent(drawing);
        EXPECT_GE(box.low.x, sheet.corner.x) << name << " " << paper << " " << drawing.id;
        EXPECT_GE(box.low.y, sheet.corner.y) << name << " " << paper << " " << drawing.id;
        EXPECT_LE(box.high.x, sheet.corner.x + sheet.width * sheet.scale) << name << " " << paper << " " << drawing.id;
        EXPECT_LE(box.high.y, sheet.corner.y + sheet.height * sheet.scale) << name << " " << paper << " " << drawing.id;
        for (const Text& text : drawing.texts) {
          const double wide = text.anchor == Anchor::left ? text_length(text.text, text.height) : 0.0;
          EXPECT_LE(text.at.x + wide, sheet.corner.x + sheet.width * sheet.scale)
              << name << " " << paper << " " << drawing.id << ": " << text.text;
          EXPECT_GE(text.at.y, sheet.corner.y) << name << " " << paper << " " << drawing.id << ": " << text.text;
        }
      }
    }
  }
}

TEST(Drawings, TheLargestScaleThatFitsIsTaken) {
  const site::Site site = station(placed);
  for (const char* paper : {"a4", "a3"}) {
    const Drawing plan = draw_station(site, Asked{.which = "plan", .paper = paper}).drawings.front();
    const std::vector<Scale> all = standard_scales(site::Display::si, false);
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const Scale& one) { return one.denominator == plan.sheet.scale; });
    ASSERT_NE(found, all.end());
    if (found == all.begin()) continue;
    EXPECT_FALSE(
        check_drawing_options(site, Asked{.which = "plan", .paper = paper, .scale = std::prev(found)->words}).empty())
        << paper;
  }
  const Drawing asked = draw_station(site, Asked{.which = "plan", .paper = "a3", .scale = "1:500"}).drawings.front();
  EXPECT_EQ(asked.sheet.scale, 500.0);
}

TEST(Drawings, ScalesAreReadBothWays) {
  EXPECT_EQ(read_scale("1:100")->denominator, 100.0);
  EXPECT_NEAR(read_scale("1 in = 10 ft")->denominator, 120.0, 1e-9);
  EXPECT_NEAR(read_scale("1/4 in = 1 ft")->denominator, 48.0, 1e-9);
  EXPECT_EQ(read_scale("1 in = 10 ft")->words, "1 in = 10 ft");
  for (const char* wrong : {"", "100", "1:0", "1:-5", "1:x", "1 in", "1 in = 10 psi", "2 = 3", "1:1e9"})
    EXPECT_FALSE(read_scale(wrong)) << wrong;
}

TEST(Drawings, WrongOptionsAreErrors) {
  const site::Site site = station(placed);
  const auto first = [&](const DrawingOptions& options) {
    const auto wrong = check_drawing_options(site, options);
    return wrong.empty() ? std::string() : wrong.front().message;
  };
  EXPECT_EQ(first(Asked{.which = "elevation"}), "there is no drawing 'elevation'");
  EXPECT_EQ(first(Asked{.paper = "a9"}), "there is no paper 'a9'");
  EXPECT_EQ(first(Asked{.scale = "large"}), "'large' is no scale");
  EXPECT_EQ(first(Asked{.hose = "D9.a"}), "there is no hose 'D9.a'");
  EXPECT_THAT(first(Asked{.which = "plan", .scale = "1:10"}), HasSubstr("does not fit on the paper at 1:10"));
  EXPECT_THAT(
      check_drawing_options(station(with(placed, "dispenser.D1.position", "[\"1e7 m\", \"0 m\"]")), {}).front().message,
      HasSubstr("does not fit on the paper at any standard scale"));
}

// Of a tank with compartments a pump names the compartment that it stands in.
TEST(Drawings, APumpOfACompartmentStandsInItsTank) {
  site::Site site = station(placed);
  site.tanks.front().compartments.resize(2);
  site.tanks.front().compartments[0].id.text = "C1";
  site.tanks.front().compartments[0].product = site.tanks.front().product;
  site.tanks.front().compartments[1].id.text = "C2";
  for (site::Pump& pump : site.pumps) {
    pump.tank.text = "C1";
    pump.position.reset();
  }
  EXPECT_EQ(tank_with(site, "C1"), &site.tanks.front());
  EXPECT_NE(plan_places(site).find("pump." + site.pumps.front().id.text), nullptr);
  EXPECT_THAT(check_drawing_options(site, Asked{.which = "tank"}), testing::IsEmpty());
  site.pumps.front().tank.text = "nowhere";
  EXPECT_THAT(check_drawing_options(site, Asked{.which = "tank"}).front().message, HasSubstr("no tank is drawn"));
}

TEST(Drawings, ACourseIsTracedOverItsLines) {
  const site::Site site = station(site_text("marle-cross"));
  const auto course = course_to(site, "D6.premium-a");
  ASSERT_TRUE(course);
  EXPECT_EQ(course->pump->id.text, "P3");
  EXPECT_EQ(course->tank->id.text, "T3");
  std::vector<std::string> lines;
  for (const CourseStep& step : course->steps) lines.push_back(step.line->id.text);
  EXPECT_THAT(lines, testing::ElementsAre("premium-trunk", "premium-gap-1", "premium-gap-2", "premium-gap-3",
                                          "premium-gap-4", "premium-gap-5"));
  EXPECT_FALSE(course_to(site, "none"));
}

// Two pumps on regular: P1 over the short way, P2 over one line more.
TEST(Drawings, ACourseComesFromAPumpThatCanBringTheFuel) {
  const std::string two = placed + R"toml([[pump]]
id = "P2"
tank = "T1"
[[branch]]
id = "B1"
[[line]]
id = "leg"
from = "P2"
to = "B1"
length = "5 m"
bore = "50 mm"
[[line]]
id = "side"
from = "B1"
to = "D1.regular"
length = "5 m"
bore = "50 mm"
)toml";
  const auto pump_of = [](const std::string& text) {
    const site::Site site = station(text);
    const auto course = course_to(site, "D1.a");
    return course && course->pump != nullptr ? course->pump->id.text : "none";
  };
  EXPECT_EQ(pump_of(two), "P1");
  EXPECT_EQ(pump_of(with(two, "pump.P1.running", "false")), "P2");
  // A check valve in the trunk that lets nothing through from P1.
  std::string turned = with(two, "line.trunk.from", "D1.regular");
  turned = with(with(turned, "line.trunk.to", "P1"), "line.trunk.check_valve", "true");
  EXPECT_EQ(pump_of(turned), "P2");
  EXPECT_EQ(pump_of(with(turned, "line.trunk.check_valve", "false")), "P1");
}

TEST(Drawings, LengthsAreLetteredAsDesignersWriteThem) {
  EXPECT_EQ(length_words(to_si(51.0, "in"), site::Display::us), "4 ft 3 in");
  EXPECT_EQ(length_words(to_si(31.0, "ft"), site::Display::us), "31 ft");
  EXPECT_EQ(length_words(to_si(6.5, "in"), site::Display::us), "6.5 in");
  EXPECT_EQ(length_words(to_si(11.99, "in"), site::Display::us), "1 ft");
  EXPECT_EQ(length_words(-to_si(30.0, "in"), site::Display::us), "-2 ft 6 in");
  EXPECT_EQ(length_words(0.0, site::Display::us), "0 in");
  EXPECT_EQ(length_words(1.5, site::Display::si), "1.50 m");
  EXPECT_EQ(length_words(0.0127, site::Display::si), "13 mm");
}

TEST(Drawings, EqualInputGivesEqualDrawings) {
  const site::Site site = station(site_text("marle-cross"));
  const DrawingSet a = draw_station(site, {}), b = draw_station(site, {});
  ASSERT_EQ(a.drawings.size(), b.drawings.size());
  for (std::size_t i = 0; i < a.drawings.size(); ++i) {
    ASSERT_EQ(a.drawings[i].texts.size(), b.drawings[i].texts.size());
    for (std::size_t j = 0; j < a.drawings[i].texts.size(); ++j) {
      EXPECT_EQ(a.drawings[i].texts[j].text, b.drawings[i].texts[j].text);
      EXPECT_EQ(a.drawings[i].texts[j].at.x, b.drawings[i].texts[j].at.x);
    }
  }
}

TEST(Drawings, TheTitleSaysWhatIsNotGiven) {
  const Drawing plan = drawn(placed, Asked{.which = "plan", .date = "30 Nov 2026"}).drawings.front();
  std::map<std::string, std::string> cells;
  for (const TitleCell& cell : plan.cells) cells[cell.label] = cell.text;
  EXPECT_EQ(cells["Station"], "Placed (invented)");
  EXPECT_EQ(cells["Date"], "30 Nov 2026");
  EXPECT_EQ(cells["Checked"], "not checked");
  EXPECT_EQ(cells["Drawn by"], "not given");
  EXPECT_THAT(cells["Scale"], HasSubstr("1:"));
}

}  // namespace
}  // namespace forecourse::handover
