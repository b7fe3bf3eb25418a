#include "forecourse/report/kit/kit_report.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "forecourse/site/edit.h"
#include "support/stations.h"

namespace forecourse::report {
namespace {

using test::site_text;
using test::station;
using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

handover::Kit hollin_gap() {
  static const site::Site site = station(site_text("hollin-gap"));
  studies::FlowOptions options;
  options.spans = options.ladders = false;
  static const studies::FlowResult flow = studies::study_flow(site, options);
  return handover::make_kit(site, {}, &flow);
}

TEST(KitReport, ACellIsNoFormula) {
  const CellTable table{"t", {"=head"}, {{std::string("=1+1"), 2.5, {}}, {std::string("say \"x\""), {}, -3.0}}};
  EXPECT_EQ(to_csv(table), "\"'=head\"\n\"'=1+1\",2.5,\n\"say \"\"x\"\"\",,-3\n");
}

TEST(KitReport, OfTheDocumentEveryValueIsInSi) {
  const Json json = kit_document(hollin_gap());
  const Json& row = json["result"]["rows"][0];
  EXPECT_EQ(row["stop"]["number"], 1);
  EXPECT_EQ(row["ordered"], false);
  double length = 0.0;
  for (const Json& pipe : json["result"]["pipes"]) length += pipe["length_m"].get<double>();
  // 105 + 450 ft of line, 40 ft of risers, by hand from the file.
  // SOURCE: [nist_sp811, appendix B] the foot.
  EXPECT_NEAR(length, 595.0 * 0.3048, 1e-9);
  EXPECT_EQ(json["defaults"].size(), 1U);
}

TEST(KitReport, WhatIsNotKnownIsNull) {
  for (const Json& row : kit_document(hollin_gap())["result"]["rows"]) {
    EXPECT_TRUE(row["thread"].is_null());
    EXPECT_TRUE(row["your_part_number"].is_null());
    if (row["kind"] == "fittings") {
      EXPECT_TRUE(row["count"].is_null());
    }
  }
}

TEST(KitReport, TheOrderStandsBeforeTheSchedule) {
  const site::Site site = station(site_text("hollin-gap"));
  const std::string html = kit_report(hollin_gap(), site);
  EXPECT_LT(html.find("it is no order, no approval"), html.find("To order"));
  EXPECT_LT(html.find("To order"), html.find("Schedule along the course"));
  EXPECT_THAT(html, HasSubstr("Your part number"));
}

// The report of a station has room for so much.
TEST(KitReport, TheSectionIsShort) {
  const std::string section = kit_section(hollin_gap(), site::Display::us);
  EXPECT_LT(section.size(), 3000U);
  EXPECT_THAT(section, AllOf(HasSubstr("submersible pump 3, check valve 3"), HasSubstr("shear valve 10")));
}

TEST(KitReport, AStationWithoutPartsHasNoSection) { EXPECT_EQ(kit_section({}, site::Display::us), ""); }

TEST(KitReport, TheTerminalTellsWhatIsNotTold) {
  const site::Site site = station(site_text("site-s"));
  const handover::Kit kit = handover::make_kit(site, {}, nullptr);
  const std::string text = kit_summary(kit, site, {80, false, false, false});
  EXPECT_THAT(text, HasSubstr("how many of: fittings of a pipe (at 6 places of the file)"));
  EXPECT_THAT(text, HasSubstr("not determined"));
  EXPECT_THAT(text, Not(HasSubstr("nan")));
}

/// Marle Cross without the length of so many of its two vapor pipes, of 6 ft each.
handover::Kit without_lengths(std::size_t count) {
  std::string text = site_text("marle-cross");
  for (const char* tank : std::vector<const char*>{"T1", "T3"}) {
    if (count-- == 0) break;
    auto less = site::remove_value(text, std::string("tank.") + tank + ".vapor_return.pipe.length");
    EXPECT_TRUE(less.ok());
    text = less.value;
  }
  return handover::make_kit(station(text), {}, nullptr);
}

TEST(KitReport, ATotalOfWhichALengthLacksIsALeastOne) {
  const site::Site site = station(site_text("marle-cross"));
  const auto section = [](std::size_t count) { return kit_section(without_lengths(count), site::Display::us); };
  EXPECT_THAT(section(0),
              AllOf(HasSubstr("3.07\u00A0in: 12.0\u00A0ft laid, 12.6\u00A0ft with waste"), Not(HasSubstr("at least"))));
  EXPECT_THAT(section(1),
              HasSubstr(": at least 6.0\u00A0ft laid, at least 6.3\u00A0ft with waste; 1 of 2 runs without a length"));
  EXPECT_THAT(section(2), HasSubstr("3.07\u00A0in: length not entered"));
  for (const std::string& page :
       {kit_report(without_lengths(1), site), kit_summary(without_lengths(1), site, {120, true, false, false})}) {
    EXPECT_THAT(page, HasSubstr("2, 1 without a length"));
    EXPECT_THAT(page, HasSubstr("at least 6.0"));
  }
  EXPECT_THAT(kit_report(without_lengths(1), site), HasSubstr("at least 6.0\u00A0ft in 2 runs, 1 without a length"));
  const auto pipe = [](std::size_t count) { return kit_document(without_lengths(count))["result"]["pipes"].back(); };
  EXPECT_EQ(pipe(0)["at_least"], false);
  EXPECT_EQ(pipe(1)["at_least"], true);
  EXPECT_NEAR(pipe(1)["length_m"].get<double>(), 6.0 * 0.3048, 1e-9);
  EXPECT_TRUE(pipe(2)["length_m"].is_null());
  EXPECT_TRUE(pipe(2)["order_length_m"].is_null());
}

TEST(KitReport, InATableALeastTotalIsNoNumber) {
  const auto last = [](std::size_t count) {
    return kit_tables(without_lengths(count), site::Display::us)[2].rows.back();
  };
  EXPECT_EQ(std::get<double>(last(0)[4]), 12.0);
  EXPECT_EQ(std::get<std::string>(last(1)[4]), "at least 6.0");
  EXPECT_EQ(std::get<std::string>(last(2)[4]), "not entered");
}

TEST(KitReport, ASpreadOfALengthIsToldWithItsEnds) {
  const std::string text =
      test::with(site_text("site-s"), "line.gap-2.length", "{ low = \"20 ft\", likely = \"25 ft\", high = \"40 ft\" }");
  const handover::Kit kit = handover::make_kit(station(text), {}, nullptr);
  const std::string told =
      "length of pipe, construction not entered: between 195.0 ft and 215.0 ft, ordered by the "
      "likely 200.0 ft";
  EXPECT_THAT(kit_summary(kit, station(text), {200, false, false, false}), HasSubstr(told));
}

// The schedule of a file has a row for each row of the schedule, and as many cells as heads.
TEST(KitReport, TablesAreWhole) {
  const handover::Kit kit = hollin_gap();
  for (const CellTable& table : kit_tables(kit, site::Display::si)) {
    for (const auto& row : table.rows) EXPECT_EQ(row.size(), table.heads.size()) << table.name;
  }
  EXPECT_EQ(kit_tables(kit, site::Display::si).front().rows.size(), kit.rows.size());
}

}  // namespace
}  // namespace forecourse::report
