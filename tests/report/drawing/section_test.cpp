// The developed section: what it shows, what it leaves out in words, and what it refuses.
#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/report/drawing/section_view.h"
#include "forecourse/report/flow/flow_view.h"
#include "report/snapshot.h"
#include "support/stations.h"

namespace forecourse::report::drawing {
namespace {

using test::site_text;
using test::station;

Section small_section() {
  Section s;
  s.id = "section";
  s.title = "Section of the course to D1.a";
  s.description = "A section.";
  s.axis = "ft above the site's datum";
  s.marks = {{0.0, "0"}, {-1.5, "\u22125"}};
  s.tank = {"T1 regular", -3.6, -3.5, 2.4, -2.3, true};
  s.pump_head = -0.6;
  s.line = {{"P1", 0.0, -0.6, true}, {"D1.regular", 30.0, -0.7, true}, {"D2.regular", 40.0, -0.75, true}};
  s.line_length = "line, 40.0 m, to length";
  s.sump_floor = -1.0;
  s.sensor = 0.05;
  s.island = 0.15;
  s.groove = 0.0;
  s.dispenser = "D2";
  s.hose = "D2.a";
  s.outlet = 0.9;
  for (Stop& stop : s.stops) stop = {"Stop", "1.0", "psi", "takes", true};
  s.stops[0] = {"Tanker", "", "", "no delivery entered", false};
  return s;
}

/// The section to the slowest hose of a product of an example station.
Section section_for(const std::string& name, bool heights_known) {
  const site::Site site = station(site_text(name));
  const studies::FlowResult result = studies::study_flow(site, {});
  const studies::SystemFlow& system = result.states.front().systems.front();
  return section_of(site, system, system.hoses.back(), site.display, heights_known, "section");
}

TEST(Section, DrawsTankLineDispenserAndBand) { EXPECT_TRUE(matches_snapshot(draw(small_section()), "section.svg")); }

TEST(Section, HasATitleADescriptionAndElevenStops) {
  const std::string svg = draw(small_section());
  EXPECT_NE(svg.find("role=\"img\""), std::string::npos);
  EXPECT_NE(svg.find("<title id=\"section-title\">"), std::string::npos);
  for (int stop = 1; stop <= 11; ++stop) {
    EXPECT_NE(svg.find(">" + std::to_string(stop) + "</text>"), std::string::npos) << stop;
  }
}

TEST(Section, RefusesWhatIsNotFiniteAndWhatHasNoLine) {
  Section s = small_section();
  s.tank.liquid = NAN;
  EXPECT_EQ(draw(s), "");
  s = small_section();
  s.line.resize(1);
  EXPECT_EQ(draw(s), "");
}

TEST(Section, EscapesNames) {
  Section s = small_section();
  s.tank.name = s.dispenser = s.hose = s.line[1].name = s.stops[3].note = s.stops[4].value = "<i>\"&";
  EXPECT_EQ(draw(s).find("<i>"), std::string::npos);
}

TEST(SectionView, TakesHeightsFromTheSite) {
  const Section s = section_for("hollin-gap", true);
  EXPECT_TRUE(s.tank.shape_known);
  EXPECT_NEAR(s.tank.height, 2.9972, 1e-4);   // 118 in, inside
  EXPECT_NEAR(*s.sump_floor, -0.9144, 1e-4);  // 36 in below the datum
  EXPECT_NEAR(s.outlet, 0.9144, 1e-4);        // 3 ft
  EXPECT_EQ(s.line.size(), 5U);               // the pump and four dispensers
  EXPECT_FALSE(s.marks.empty());
  EXPECT_EQ(s.stops[2].value, "71.0");
}

TEST(SectionView, SaysInWordsWhatWasNotEntered) {
  const Section s = section_for("thornby", true);
  for (const std::size_t stop : {0U, 1U, 10U}) {
    EXPECT_EQ(s.stops[stop].value, "");
    EXPECT_FALSE(s.stops[stop].listed);
    EXPECT_NE(s.stops[stop].note.find("entered"), std::string::npos);
  }
  EXPECT_FALSE(s.vent_outlet.has_value());
}

TEST(SectionView, HeightsThatAreNotKnownHaveNoScale) {
  const Section s = section_for("site-s", false);
  EXPECT_TRUE(s.marks.empty());
  EXPECT_EQ(s.lift, "lift 12.0\u00A0ft");
  EXPECT_FALSE(s.tank.shape_known);
  EXPECT_NE(remarks(s).front().find("depths to no scale"), std::string::npos);
}

// Rounded apart, line and hose of this station would take a tenth more than the budget shows of them.
TEST(SectionView, TheBandAddsUpAsTheBudgetDoes) {
  const site::Site site = station(site_text("truck-lane"));
  const studies::FlowResult result = studies::study_flow(site, {});
  const studies::HoseFlow& hose = result.states.front().systems.front().hoses.front();
  const ShownBudget budget = shown_budget(hose, site.display);
  const Section s = section_of(site, result.states.front().systems.front(), hose, site.display, true, "section");
  ASSERT_EQ(budget.rows.size(), 4U);  // pump, line, dispenser and hose, lift
  EXPECT_EQ(s.stops[3].value, budget.signed_text(budget.rows[0].change));
  EXPECT_EQ(s.stops[4].value, budget.text(budget.rows[1].change));
  EXPECT_EQ(s.stops[8].value, budget.text(budget.rows[2].change));
}

TEST(SectionView, TheTableHoldsTheBand) {
  const Section s = section_for("hollin-gap", true);
  const html::Table table = stops_table(s);
  ASSERT_EQ(table.rows.size(), 11U);
  EXPECT_EQ(table.rows[0].cells[1], "\u2013");
  EXPECT_EQ(table.rows[9].cells[1], s.stops[9].value);
}

}  // namespace
}  // namespace forecourse::report::drawing
