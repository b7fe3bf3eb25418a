// The command sheets as it is run: what is written, what readings come to, what the store keeps.
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>

#include "cli/program.h"

namespace forecourse::cli {
namespace {

using nlohmann::json;

bool has(const std::string& text, const std::string& what) { return text.find(what) != std::string::npos; }

Outcome sheets_of(const char* site, const std::string& folder, const std::string& arguments) {
  return run_program(folder, "sheets " + quoted(std::string(SITES_DIR) + site) + " " + arguments,
                     "LC_ALL=C.UTF-8 COLUMNS=100");
}

Outcome sheets(const std::string& folder, const std::string& arguments) {
  return sheets_of("/site-s.toml", folder, arguments);
}

constexpr const char* header = "sheet,section,part,what,value,unit,by,day\n";

std::string flow_line(const std::string& hose, const std::string& value) {
  return "commissioning,flow," + hose + ",flow of the hose alone," + value + ",gpm,R. Tay,2026-11-20\n";
}

TEST(SheetsCommand, WritesAPageASheetAndAFileForReadings) {
  const std::string folder = scratch_folder("sheets-out");
  const Outcome done = sheets(folder, "delivery-card emergency-card --out out --on 2026-11-30");
  EXPECT_EQ(done.exit, 0) << done.err;
  EXPECT_TRUE(has(file_text(folder + "/out/sheet-emergency-card.html"), "Call the fire service."));
  EXPECT_TRUE(has(file_text(folder + "/out/readings.csv"), "sheet,section,part,what,computed,value,unit,by,day"));
  EXPECT_EQ(json::parse(file_text(folder + "/out/sheets.json"))["result"]["sheets"].size(), 2U);
  EXPECT_TRUE(file_text(folder + "/out/sheet-annual.html").empty());
}

TEST(SheetsCommand, ReadingsAreHeldAndKeptOnce) {
  const std::string folder = scratch_folder("sheets-readings");
  std::ofstream(folder + "/r.csv") << header << flow_line("D1.a", "12.2") << "\n" << flow_line("D3.a", "7.6");
  const std::string with = "--on 2026-11-30 --tolerance 'flow=5 %' --readings r.csv --store s.db";
  const Outcome first = sheets(folder, with);
  EXPECT_EQ(first.exit, 1) << first.err;  // one lies outside
  EXPECT_TRUE(has(first.out, "1 within, 1 outside, 0 not determined.")) << first.out;
  EXPECT_TRUE(has(first.out, "tests: 2 stored, 0 there before"));
  EXPECT_TRUE(has(sheets(folder, with).out, "tests: 0 stored, 2 there before"));
  // With another tolerance it is the same reading.
  EXPECT_EQ(sheets(folder, "--on 2026-11-30 --readings r.csv --store s.db").exit, 0);
}

// Each is on record twice, as something looked at and as a test, which rounds the flow.
TEST(SheetsCommand, ReadingsThatWereKeptAreHeldAgainOnce) {
  const std::string folder = scratch_folder("sheets-again");
  std::ofstream(folder + "/r.csv") << header << flow_line("D1.a", "12.2") << flow_line("D3.a", "7.63");
  const std::string tolerance = "--on 2026-11-30 --tolerance 'flow=5 %' ";
  EXPECT_EQ(sheets(folder, tolerance + "--readings r.csv --store s.db").exit, 1);
  const Outcome again = sheets(folder, tolerance + "--readings s.db");
  EXPECT_EQ(again.exit, 1) << again.err;
  EXPECT_TRUE(has(again.out, "1 within, 1 outside, 0 not determined.")) << again.out;
}

TEST(SheetsCommand, AContradictionIsRefusedWithItsPlaceAndNothingIsStored) {
  const std::string folder = scratch_folder("sheets-contradiction");
  std::ofstream(folder + "/r.csv") << header << flow_line("D1.a", "12.2");
  EXPECT_EQ(sheets(folder, "--on 2026-11-30 --readings r.csv --store s.db").exit, 0);
  std::ofstream(folder + "/r.csv") << header << flow_line("D2.a", "12.1") << flow_line("D1.a", "9.0");
  const Outcome refused = sheets(folder, "--on 2026-11-30 --readings r.csv --store s.db");
  EXPECT_EQ(refused.exit, 2);
  EXPECT_TRUE(has(refused.err,
                  "r.csv:3:1: error: this test contradicts one that is stored: flow is '9.0 gpm' here "
                  "and '12.2 gpm' there"))
      << refused.err;
  EXPECT_TRUE(has(refused.err, "that one came from r.csv (tests), r.csv (inspections), line 2")) << refused.err;
  EXPECT_TRUE(has(run_program(folder, "records list s.db").out, "inspections     1"));
}

TEST(SheetsCommand, WhatIsWrongIsToldBeforeAnythingIsDone) {
  const std::string folder = scratch_folder("sheets-wrong");
  EXPECT_TRUE(has(sheets(folder, "anual").err, "did you mean 'annual'?"));
  EXPECT_TRUE(has(sheets(folder, "--tolerance flow=5").err, "--tolerance flow"));
  EXPECT_TRUE(has(sheets(folder, "--tolerance 'flow=100 %'").err, "lets any flow pass"));
  EXPECT_TRUE(has(sheets(folder, "--tolerance weight=5").err, "'weight=5' is no tolerance"));
  EXPECT_TRUE(has(sheets(folder, "--store s.db").err, "--store needs --readings"));
  EXPECT_EQ(sheets(folder, "--readings none.csv").exit, 2);
  std::ofstream(folder + "/r.csv") << header
                                   << "commissioning,flow,D1.a,flow of the hose alone,12,gpm,R. Tay,2027-01-01\n";
  const Outcome late = sheets(folder, "--on 2026-11-30 --readings r.csv --store s.db");
  EXPECT_EQ(late.exit, 2);
  EXPECT_TRUE(has(late.err, "r.csv:2:")) << late.err;
  EXPECT_TRUE(has(late.err, "which is yet to come"));
  EXPECT_TRUE(file_text(folder + "/s.db").empty());
}

TEST(SheetsCommand, AReadingOfNobodyIsRefusedButNotARecordOfNobody) {
  const std::string folder = scratch_folder("sheets-nobody");
  std::ofstream(folder + "/r.csv")
      << header
      << "commissioning,shear-valve,D3.regular,\"tripped by hand: it shuts, and no product "
         "flows at the nozzle\",yes,yes/no,,2026-11-20\n";
  const Outcome refused = sheets_of("/hollin-gap.toml", folder, "--on 2026-11-30 --readings r.csv --store s.db");
  EXPECT_EQ(refused.exit, 2);
  EXPECT_TRUE(has(refused.err, "r.csv:2:")) << refused.err;
  EXPECT_TRUE(has(refused.err, "who did it is missing")) << refused.err;
  std::ofstream(folder + "/tests.csv") << "day,kind,part,passed\n2026-11-20,shear-valve-trip,D3.regular,yes\n";
  const Outcome kept = sheets_of("/hollin-gap.toml", folder, "--on 2026-11-30 --readings tests.csv");
  EXPECT_EQ(kept.exit, 0) << kept.err;
  EXPECT_TRUE(has(kept.out, "1 within")) << kept.out;
}

}  // namespace
}  // namespace forecourse::cli
