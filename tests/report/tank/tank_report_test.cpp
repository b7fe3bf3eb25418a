#include "forecourse/report/tank/tank_report.h"

#include <gmock/gmock.h>

#include <algorithm>

#include "forecourse/checks/tank_checks.h"
#include "forecourse/report/tank/tank_drawings.h"
#include "support/stations.h"

namespace forecourse::report {
namespace {

using testing::HasSubstr;
using testing::Not;

const site::Site& ludd_bank() {
  static const site::Site site = test::station(test::site_text("ludd-bank"));
  return site;
}

const studies::TankResult& result() {
  static const studies::TankResult told = studies::study_tank(ludd_bank(), {});
  return told;
}

TEST(TankReport, TheSectionDrawsBothSectionsAndTheCurve) {
  const std::string html = tank_section(result(), ludd_bank());
  for (const char* text : {"Tank T1 to scale", "Volume against depth, tank T1", "Overfill prevention, tank T1",
                           "Fitted to the readings, tank T1", "Siphoned: T1, T2", "T1 solid, T2 long dashes",
                           "id=\"tank-1-title\"", "id=\"volume-1-title\""})
    EXPECT_THAT(html, HasSubstr(text));
}

// One scale: a circle of the section is as wide as it is high, and the long section as high as the circle.
TEST(TankReport, BothSectionsAreToOneScale) {
  const svg::TankScene scene = tank_scene(result().tanks.front(), ludd_bank(), "x");
  EXPECT_FALSE(scene.box);
  EXPECT_DOUBLE_EQ(scene.section_width, 96.0 * 0.0254);
  EXPECT_DOUBLE_EQ(scene.section_height, scene.section_width);
  double left = 1e9, right = -1e9;
  for (const svg::Point& p : scene.outline) {
    left = std::min(left, p.x);
    right = std::max(right, p.x);
  }
  EXPECT_GT(right - left, 32.0 * 0.3048);  // the shell and two heads
  ASSERT_EQ(scene.marks.size(), 2U);
  EXPECT_LT(scene.marks[0].level, scene.marks[1].level);
  EXPECT_EQ(scene.sticks.size(), 3U);
}

TEST(TankReport, ATankWithoutSizesSaysSo) {
  const site::Site site = test::station(test::site_text("site-s"));
  const studies::TankResult none = studies::study_tank(site, {});
  EXPECT_THAT(tank_section(none, site), HasSubstr("Not determined: the shape of tank"));
  EXPECT_THAT(tank_section(none, site), Not(HasSubstr("<svg")));
}

TEST(TankReport, TheDocumentHoldsWhatTheSheetNeeds) {
  const Json json = tank_document(result(), checks::check_tanks(ludd_bank(), result()), {});
  const Json& tank = json["result"]["tanks"][0];
  for (const char* key : {"capacity_m3", "now", "places", "rooms", "chart", "overfill", "calibration", "outline"})
    EXPECT_TRUE(tank.contains(key)) << key;
  EXPECT_EQ(tank["overfill"]["settings"].size(), 6U);
  EXPECT_EQ(json["findings"].size(), 3U);  // T1, T3a and T3b have a fill
  EXPECT_EQ(json["result"]["siphons"][0]["course"].size(), 121U);
}

TEST(TankReport, TheChartAsText) {
  const NumberTable table = tank_chart_numbers(result().tanks[2], site::Display::us);
  EXPECT_EQ(table.heads, (std::vector<std::string>{"Depth, in", "Volume, gal", "Full, %"}));
  ASSERT_EQ(table.rows.size(), 97U);
  EXPECT_NEAR(*table.rows[48][2], 50.0, 1e-9);  // half the diameter of a level tank
  const std::string csv = to_csv(table);
  EXPECT_THAT(csv, HasSubstr("\"Depth, in\",\"Volume, gal\",\"Full, %\"\n0.000,0.00,0.000\n"));
  EXPECT_THAT(csv, HasSubstr("\n48.000,"));
}

}  // namespace
}  // namespace forecourse::report
