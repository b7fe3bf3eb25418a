// Schedule, calendar, sheets and drawings as files.
#include "forecourse/server/pages/handover_files.h"

#include <gtest/gtest.h>

#include "support/stations.h"

namespace forecourse::server {
namespace {

using report::Json;

StationFacts facts_of(const std::string& text, const std::string& file) { return {text, 1, file, false, {}, {}, {}}; }

Reply file(const std::string& name, const Json& asked = Json::object(), const std::string& site = "hollin-gap") {
  return handover_file(name, facts_of(test::site_text(site), site + ".toml"), {}, asked);
}

TEST(HandoverFiles, HoldTheScheduleInTheUnitsAsked) {
  const Reply us = file("kit.csv", {{"units", "us"}});
  const Reply si = file("kit.csv", {{"units", "si"}});
  ASSERT_EQ(us.status, 200) << us.body;
  EXPECT_EQ(us.type, "text/csv; charset=utf-8");
  EXPECT_NE(us.body.find("shear valve, double poppet"), std::string::npos);
  EXPECT_NE(us.body.find("psi"), std::string::npos);
  EXPECT_EQ(si.body.find("psi"), std::string::npos);
}

TEST(HandoverFiles, HoldTheScheduleForASpreadsheet) {
  const Reply made = file("kit.xlsx");
  ASSERT_EQ(made.status, 200) << made.body;
  EXPECT_EQ(made.body.substr(0, 2), "PK") << "a zip file";
}

TEST(HandoverFiles, HoldTheCalendarForAPhone) {
  const Reply made = file("calendar.ics");
  ASSERT_EQ(made.status, 200) << made.body;
  EXPECT_EQ(made.type, "text/calendar; charset=utf-8");
  EXPECT_EQ(made.body.rfind("BEGIN:VCALENDAR\r\n", 0), 0U);
  EXPECT_NE(made.body.find("BEGIN:VEVENT"), std::string::npos);
}

TEST(HandoverFiles, HoldTheSheetsToFillIn) {
  const Reply made = file("sheets.html", {{"units", "si"}});
  ASSERT_EQ(made.status, 200) << made.body;
  EXPECT_NE(made.body.find("Commissioning"), std::string::npos);
  EXPECT_NE(made.body.find("Stop the pump"), std::string::npos);
  EXPECT_NE(made.body.find("L/min"), std::string::npos);
  EXPECT_EQ(made.body.find(" gpm"), std::string::npos);
}

TEST(HandoverFiles, HoldTheDrawings) {
  for (const std::string which : {"plan", "section", "tank", "dispenser"}) {
    const Reply svg = file(which + ".svg"), dxf = file(which + ".dxf");
    ASSERT_EQ(svg.status, 200) << svg.body;
    EXPECT_EQ(svg.body.rfind("<svg", 0), 0U);
    ASSERT_EQ(dxf.status, 200) << dxf.body;
    EXPECT_NE(dxf.body.find("AC1009"), std::string::npos);
  }
}

TEST(HandoverFiles, RefuseADrawingAsTheCommandDoes) {
  const std::string far = test::with(test::site_text("hollin-gap"), "dispenser.D1.position", "[\"1e7 m\", \"0 m\"]");
  const Reply plan = handover_file("plan.svg", facts_of(far, "a.toml"), {}, Json::object());
  EXPECT_EQ(plan.status, 422) << plan.body;
  EXPECT_EQ(Json::parse(plan.body)["error"], "the plan does not fit on the paper at any standard scale");
  EXPECT_EQ(Json::parse(plan.body)["hint"], "look for a position that is far off");
  const Reply bare = handover_file("tank.dxf", facts_of("format = 1\n", "a.toml"), {}, Json::object());
  EXPECT_EQ(bare.status, 422) << bare.body;
  EXPECT_EQ(Json::parse(bare.body)["error"], "no tank is drawn: there is no hose");
}

TEST(HandoverFiles, SayWhatThereIsNot) {
  EXPECT_EQ(file("kit.doc").status, 404);
  EXPECT_EQ(file("kit.csv", {{"unit", "us"}}).status, 400);
  const Reply unreadable =
      handover_file("calendar.ics", facts_of("format = 1\n[[tank]]\n", "a.toml"), {}, Json::object());
  EXPECT_EQ(unreadable.status, 422) << unreadable.body;
}

}  // namespace
}  // namespace forecourse::server
