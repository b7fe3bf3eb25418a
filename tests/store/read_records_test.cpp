#include "forecourse/store/read_records.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "forecourse/base/unit_text.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/store/records/columns.h"

namespace forecourse::store {
namespace {

using ::testing::HasSubstr;
using Records = site::records::Records;

struct Read {
  Parsed<Records> records;
  std::string told;
};

Read read(std::string_view kind, std::string text, const site::Site* site = nullptr) {
  std::vector<SourceText> texts{{std::string(kind) + ".csv", std::move(text)}};
  Read out;
  read_records_text(*find_kind(kind), texts, out.records, site);
  out.told = report::to_text(out.records.diagnostics, texts);
  return out;
}

site::Site station() {
  site::Site site;
  site.products.emplace_back().id.text = "regular";
  for (const char* id : {"T1", "T2"}) site.tanks.emplace_back().id.text = id;
  site.dispensers.emplace_back().hoses.emplace_back().id.text = "D1.a";
  return site;
}

TEST(ReadRecords, ReadsDipsInUnitsAndInColumnsWithUnits) {
  const Read out = read("dips",
                        "day,time,tank,depth [in],water,temperature\n"
                        "2026-11-03,06:30,T1,71 1/4,1/2 in,58 degF\r\n"
                        "2026-11-02,6:30 AM,T1,\"5 ft 10 in\",,\n");
  ASSERT_TRUE(out.records.ok()) << out.told;
  ASSERT_EQ(out.records.value.dips.size(), 2U);
  const auto& first = out.records.value.dips[0];  // in the order of time
  EXPECT_EQ(first.at.day.day, 2);
  EXPECT_NEAR(in_unit(*first.depth, "in"), 70.0, 1e-12);
  EXPECT_FALSE(first.water.has_value());
  const auto& second = out.records.value.dips[1];
  EXPECT_NEAR(in_unit(*second.depth, "in"), 71.25, 1e-12);
  EXPECT_NEAR(in_unit(*second.water, "in"), 0.5, 1e-12);
  EXPECT_NEAR(in_unit(*second.temperature, "degF"), 58.0, 1e-9);
  EXPECT_EQ(second.at.time->si(), 6.5 * 3600.0);
  EXPECT_EQ(second.tank.text, "T1");
}

TEST(ReadRecords, TellsEverythingAtOnceWithPlaces) {
  const Read out = read("dips",
                        "day,time,tank,depth\n"
                        "03/04/2026,06:30,T1,71 in\n"
                        "2026-02-30,25:00,,71\n"
                        "2026-03-05,06:30,T1,71 psi\n"
                        "2026-03-06,06:30,T1\n");
  EXPECT_EQ(out.told,
            "dips.csv:2:1: error: day is a day, but '03/04/2026' can be read in two ways\n"
            "  03/04/2026,06:30,T1,71 in\n"
            "  ^^^^^^^^^^\n"
            "  hint: write 2026-03-04 or 2026-04-03, or state the order of all dates in a mapping\n"
            "dips.csv:3:1: error: day is a day, but '2026-02-30' is not in the calendar (or not from 1950 to 2150)\n"
            "  2026-02-30,25:00,,71\n"
            "  ^^^^^^^^^^\n"
            "  hint: write 2026-11-02: year, month, day\n"
            "dips.csv:3:1: error: tank is missing\n"
            "  2026-02-30,25:00,,71\n"
            "  ^^^^^^^^^^^^^^^^^^^^\n"
            "  hint: enter it: tank or compartment\n"
            "dips.csv:3:12: error: time is a time of day, but '25:00' is none\n"
            "  2026-02-30,25:00,,71\n"
            "             ^^^^^\n"
            "  hint: write 06:30, 06:30:15 or 6:30 AM\n"
            "dips.csv:3:19: error: depth is a length; '71' has no unit\n"
            "  2026-02-30,25:00,,71\n"
            "                    ^^\n"
            "  hint: write \"2.00 in\" or \"52 mm\", or say the unit in the header: depth [...]\n"
            "dips.csv:4:21: error: depth is a length, but 'psi' is a pressure\n"
            "  2026-03-05,06:30,T1,71 psi\n"
            "                      ^^^^^^\n"
            "  hint: write \"2.00 in\" or \"52 mm\"\n"
            "dips.csv:5:1: error: this row has 3 cells, but the header names 4 columns\n"
            "  2026-03-06,06:30,T1\n"
            "  ^^^^^^^^^^^^^^^^^^^\n"
            "  hint: a cell that holds the separator is put in quotes; an empty cell keeps its separator\n"
            "7 errors\n");
}

TEST(ReadRecords, AnUnknownColumnIsToldWithTheNearest) {
  EXPECT_THAT(read("dips", "day,tank,dept\n2026-03-05,T1,71 in\n").told,
              HasSubstr("dips.csv:1:10: error: dips have no column 'dept'"));
  EXPECT_THAT(read("dips", "day,tank,dept\n").told, HasSubstr("did you mean 'depth'?"));
  EXPECT_THAT(read("dips", "day,tank,depth,depth\n").told, HasSubstr("column depth stands twice"));
  EXPECT_THAT(read("dips", "day,depth [gal]\n").told, HasSubstr("depth is a length, but 'gal' is a volume"));
  EXPECT_THAT(read("dips", "day,depth\n").told, HasSubstr("column tank is missing"));
  EXPECT_THAT(read("dips", "day,tank,water\n").told, HasSubstr("column depth or volume is missing"));
  EXPECT_THAT(read("dips", "").told, HasSubstr("the file is empty"));
}

TEST(ReadRecords, ADoubledRowIsToldAndCountsOnce) {
  const Read out = read("dips", "day,tank,depth\n2026-03-05,T1,71 in\n2026-03-05,T1,5 ft 11 in\n");
  EXPECT_TRUE(out.records.ok());
  EXPECT_EQ(out.records.value.dips.size(), 1U);
  EXPECT_THAT(out.told, HasSubstr("this dip stands twice, with the same values: it counts once"));
}

TEST(ReadRecords, ADoubledRowWithOtherValuesIsAnError) {
  const Read out = read("dips", "day,tank,depth\n2026-03-05,T1,71 in\n2026-03-05,T1,70 in\n");
  EXPECT_FALSE(out.records.ok());
  EXPECT_THAT(out.told, HasSubstr("dips.csv:3:1: error: this dip stands twice, with other values"));
  EXPECT_THAT(out.told, HasSubstr("dips.csv:2:1: note: first here"));
  // With times, or with another way of reading, both may stand.
  EXPECT_TRUE(read("dips", "day,time,tank,depth\n2026-03-05,06:00,T1,71 in\n2026-03-05,18:00,T1,70 in\n").records.ok());
  EXPECT_TRUE(read("dips", "day,tank,by,depth\n2026-03-05,T1,stick,71 in\n2026-03-05,T1,gauge,70 in\n").records.ok());
}

TEST(ReadRecords, ANegativeSaleIsRefusedAndSaysWhatItMayBe) {
  const Read out = read("sales", "day,hose,volume\n2026-03-05,D1.a,-12 gal\n");
  EXPECT_THAT(out.told, HasSubstr("volume is -12 gal, but must be zero or more"));
  EXPECT_THAT(out.told, HasSubstr("a row of returns.csv"));
}

TEST(ReadRecords, ASaleNamesWhereAndHowMuch) {
  EXPECT_THAT(read("sales", "day,hose,product,volume\n2026-03-05,,,12 gal\n").told,
              HasSubstr("this sale has no hose and no product"));
  EXPECT_THAT(read("sales", "day,hose,volume,totalizer\n2026-03-05,D1.a,,\n").told,
              HasSubstr("this sale has no volume and no totalizer"));
}

TEST(ReadRecords, NamesThatTheStationDoesNotHaveAreTold) {
  const site::Site site = station();
  const Read out = read("dips", "day,tank,depth\n2026-03-05,T9,71 in\n", &site);
  EXPECT_THAT(out.told, HasSubstr("the station has no tank 'T9'"));
  EXPECT_THAT(out.told, HasSubstr("did you mean 'T1'?"));
  EXPECT_TRUE(read("sales", "day,hose,volume\n2026-03-05,D1.a,12 gal\n", &site).records.ok());
  EXPECT_FALSE(read("sales", "day,hose,volume\n2026-03-05,D1.b,12 gal\n", &site).records.ok());
}

// SOURCE: [energy_policy_act_2005, section 110] in 2026 the second Sunday in March is the 8th, the first in November
// the 1st
TEST(ReadRecords, TimesWhereClocksChangeAreToldOnceAFile) {
  const Read out = read("dips",
                        "day,time,tank,depth\n"
                        "2026-03-08,02:30,T1,71 in\n2026-03-08,02:30,T2,71 in\n2026-03-08,03:00,T1,71 in\n"
                        "2026-11-01,01:10,T1,71 in\n2026-11-01,02:10,T1,71 in\n");
  EXPECT_TRUE(out.records.ok());
  EXPECT_EQ(out.records.value.dips.size(), 5U);
  EXPECT_THAT(out.told, HasSubstr("dips.csv:2:12: warning: 2 times are in the hour that clocks pass over"));
  EXPECT_THAT(out.told, HasSubstr("dips.csv:5:12: warning: 1 time is in the hour that comes twice"));
}

TEST(ReadRecords, RowsOfOneInspectionAndOfOneIncidentArePutTogether) {
  const Read walk = read("inspections",
                         "day,kind,by,part,what,in_order,note\n"
                         "2026-03-05,30-day,R. Tay,D1,water in the sump,no,two inches\n"
                         "2026-03-05,30-day,R. Tay,D2,water in the sump,yes,\n"
                         "2026-04-05,30-day,R. Tay,,,,\n");
  ASSERT_TRUE(walk.records.ok()) << walk.told;
  ASSERT_EQ(walk.records.value.inspections.size(), 2U);
  ASSERT_EQ(walk.records.value.inspections[0].items.size(), 2U);
  EXPECT_EQ(walk.records.value.inspections[0].items[0].in_order, false);
  EXPECT_TRUE(walk.records.value.inspections[1].items.empty());
  const Read struck = read("incidents",
                           "day,time,kind,part,released,reported,step_day,step_time,step_part,step_what\n"
                           "2026-03-05,14:02,struck,D1,3 gal,yes,,,D1,struck by a pickup\n"
                           "2026-03-05,14:02,struck,D1,,,2026-03-05,14:03,,emergency stop pressed\n");
  ASSERT_TRUE(struck.records.ok()) << struck.told;
  ASSERT_EQ(struck.records.value.incidents.size(), 1U);
  EXPECT_EQ(struck.records.value.incidents[0].steps.size(), 2U);
  EXPECT_EQ(struck.records.value.incidents[0].reported, true);
}

TEST(ReadRecords, TestsAreReadByTheirWords) {
  const Read out = read("tests", "day;kind;part;passed;pressure;flow\n2026-03-05;leak-detector;P1;yes;10 psi;3 gph\n");
  ASSERT_TRUE(out.records.ok()) << out.told;
  EXPECT_EQ(out.records.value.tests[0].kind, site::records::TestKind::leak_detector);
  EXPECT_NEAR(in_unit(*out.records.value.tests[0].flow, "gph"), 3.0, 1e-12);
  EXPECT_THAT(read("tests", "day,kind,part\n2026-03-05,leak-detecter,P1\n").told,
              HasSubstr("did you mean 'leak-detector'?"));
}

// What the table of kinds rests on: day and time come first.
TEST(Kinds, EveryKindBeginsWithDayAndTimeAndHasAKey) {
  std::vector<std::string_view> names;
  for (const Kind& kind : kinds()) {
    names.push_back(kind.name);
    ASSERT_GE(kind.columns.size(), 3U);
    EXPECT_EQ(kind.columns[0].name, "day");
    EXPECT_EQ(kind.columns[1].name, "time");
    for (const Column& column : kind.columns) EXPECT_FALSE(column.doc.empty()) << column.name;
  }
  EXPECT_THAT(names, ::testing::ElementsAre("dips", "deliveries", "sales", "returns", "provings", "tests",
                                            "inspections", "incidents"));
}

TEST(ReadRecords, AFolderWithoutRecordsAndAMissingFileAreTold) {
  std::vector<SourceText> texts;
  EXPECT_THAT(report::to_text(read_records(SITES_DIR, texts).diagnostics, texts), HasSubstr("there are no records in"));
  EXPECT_THAT(report::to_text(read_records("nowhere/dips.csv", texts).diagnostics, texts), HasSubstr("cannot be read"));
}

}  // namespace
}  // namespace forecourse::store
