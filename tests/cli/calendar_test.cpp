// The calendar as it is run: exit codes, files, records that move a due day, days that cannot be.
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <nlohmann/json.hpp>

#include "cli/program.h"

namespace forecourse::cli {
namespace {

using nlohmann::json;

const std::string hollin_gap = std::string(SITES_DIR) + "/hollin-gap.toml";

bool has(const std::string& text, const std::string& what) { return text.find(what) != std::string::npos; }

Outcome run(const std::string& folder, const std::string& arguments) {
  return run_program(folder, arguments, "LC_ALL=C.UTF-8 COLUMNS=100");
}

json duty(const std::string& folder, const std::string& id, const std::string& more) {
  const Outcome out = run(folder, "calendar " + hollin_gap + " --on 2026-11-30 --json " + more);
  const json document = json::parse(out.out);
  for (const json& one : document["result"]["duties"]) {
    if (one["id"] == id) return one;
  }
  return {};
}

TEST(CalendarCommand, ARecordedTestMovesTheDueDay) {
  const std::string folder = scratch_folder("calendar-records");
  const std::string records = " --records station.db";
  run(folder, "records add station.db tests day=2025-10-14 kind=leak-detector part=P1 passed=yes");
  const json before = duty(folder, "line-test/leak-detector-yearly/P1", records);
  const Outcome added =
      run(folder, "records add station.db tests day=2026-11-20 kind=leak-detector part=P1 passed=yes");
  EXPECT_EQ(added.exit, 0) << added.err;
  const json after = duty(folder, "line-test/leak-detector-yearly/P1", records);
  EXPECT_EQ(after["due"], "2027-11-20");
  EXPECT_EQ(after["done_by"], "records");
  EXPECT_NE(before["due"], after["due"]);
}

TEST(CalendarCommand, OverdueIsAnExitCode) {
  const std::string folder = scratch_folder("calendar-exit");
  const std::string site =
      "format = 1\n[site]\nname = \"One (invented)\"\n[[emergency_stop]]\nid = \"E1\"\ntested = 2026-01-10\n";
  std::ofstream(folder + "/site.toml") << site;
  const std::string rules = " --rules " + std::string(SITES_DIR) + "/rules/owner.toml --on ";
  EXPECT_EQ(run(folder, "calendar site.toml" + rules + "2026-07-10").exit, 0);
  const Outcome late = run(folder, "calendar site.toml" + rules + "2026-07-11");
  EXPECT_EQ(late.exit, 1);
  EXPECT_TRUE(has(late.out, "1 overdue")) << late.out;
}

TEST(CalendarCommand, ATestThatFailedIsAnExitCodeAndStandsFirst) {
  const std::string folder = scratch_folder("calendar-failed");
  std::ofstream(folder + "/tests.csv") << "day,kind,part,passed\n2026-10-14,leak-detector,P1,no\n";
  const Outcome out = run(folder, "calendar " + hollin_gap + " --records tests.csv --on 2026-11-30");
  EXPECT_EQ(out.exit, 1) << out.err;
  EXPECT_TRUE(has(out.out, "1 failed, ")) << out.out;
  EXPECT_TRUE(has(out.out, "Its test failed on 2026-10-14,")) << out.out;
  EXPECT_LT(out.out.find("\nFailed"), out.out.find("\nWithout a record"));
}

TEST(CalendarCommand, APartThatIsNotThereIsAWarning) {
  const std::string folder = scratch_folder("calendar-parts");
  std::ofstream(folder + "/tests.csv") << "day,kind,part,passed\n2026-10-14,leak-detector,P11,yes\n";
  const Outcome out = run(folder, "calendar " + hollin_gap + " --records tests.csv --on 2026-11-30");
  EXPECT_TRUE(has(out.err, "tests.csv:2:26: warning: the station has no pump 'P11'")) << out.err;
  EXPECT_TRUE(has(out.err, "did you mean 'P1'?")) << out.err;
  const Outcome import = run(folder, "records import s.db tests.csv --site " + hollin_gap);
  EXPECT_EQ(import.exit, 0) << import.err;
  EXPECT_TRUE(has(import.err, "tests.csv:2:26: warning: the station has no pump 'P11'")) << import.err;
}

TEST(CalendarCommand, WritesItsFiles) {
  const std::string folder = scratch_folder("calendar-files");
  const Outcome out = run(folder, "calendar " + hollin_gap + " --on 2026-11-30 --out out --ics phone.ics");
  EXPECT_LE(out.exit, 1) << out.err;
  const json written = json::parse(file_text(folder + "/out/calendar.json"));
  EXPECT_EQ(written["study"], "calendar");
  EXPECT_TRUE(has(file_text(folder + "/out/calendar.html"), "Twelve months"));
  const std::string ics = file_text(folder + "/phone.ics");
  EXPECT_TRUE(ics.starts_with("BEGIN:VCALENDAR\r\n"));
  EXPECT_TRUE(has(file_text(folder + "/out/calendar.ics"), "END:VCALENDAR\r\n"));
}

TEST(CalendarCommand, ADayToComeIsRefusedWithItsPlace) {
  const std::string folder = scratch_folder("calendar-future");
  std::ofstream(folder + "/tests.csv") << "day,kind,part,passed\n2026-12-01,sump,D1,yes\n";
  std::ofstream(folder + "/site.toml") << "format = 1\n[site]\nname = \"One (invented)\"\n[[emergency_stop]]\nid = "
                                          "\"E1\"\ntested = 2027-01-10\n";
  const Outcome out = run(folder, "calendar site.toml --records tests.csv --on 2026-11-30 --rules " +
                                      std::string(SITES_DIR) + "/rules/owner.toml");
  EXPECT_EQ(out.exit, 2);
  EXPECT_TRUE(has(out.err, "tests.csv:2:1: error: a test is dated 2026-12-01, which is after 2026-11-30")) << out.err;
  EXPECT_TRUE(has(out.err, "site.toml:6:10: error: E1: done on 2027-01-10, which is after 2026-11-30")) << out.err;
}

TEST(CalendarCommand, WhatContradictsIsAWarning) {
  const std::string folder = scratch_folder("calendar-contradiction");
  std::ofstream(folder + "/tests.csv")
      << "day,time,kind,part,passed\n2026-11-02,,sump,D1,yes\n2026-11-02,09:00,sump,D1,no\n";
  const Outcome out = run(folder, "calendar " + hollin_gap + " --records tests.csv --on 2026-11-30 --json");
  EXPECT_LE(out.exit, 1) << out.err;
  const json told = json::parse(out.out)["warnings"];
  const auto found = std::find_if(told.begin(), told.end(), [](const json& one) {
    return has(one["message"], "D1 was passed and failed on 2026-11-02");
  });
  ASSERT_NE(found, told.end());
  EXPECT_EQ((*found)["line"], 3);
  EXPECT_TRUE(has((*found)["file"], "tests.csv"));
}

TEST(CalendarCommand, AStretchOfTimeIsAskedForInWords) {
  const std::string folder = scratch_folder("calendar-within");
  const Outcome out = run(folder, "calendar " + hollin_gap + " --within 90");
  EXPECT_EQ(out.exit, 2);
  EXPECT_TRUE(has(out.err, "error: --within is a stretch of time, but '90' is written")) << out.err;
}

}  // namespace
}  // namespace forecourse::cli
