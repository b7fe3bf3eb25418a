// Readings typed back: within, outside, not determined; what is refused; what is kept of them.
#include "forecourse/handover/sheets/readings.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "forecourse/handover/sheets/walk_of_readings.h"
#include "forecourse/store/readings/read_sheet_readings.h"
#include "handover/sheets/pack.h"

namespace forecourse::handover {
namespace {

using testing::HasSubstr;

constexpr SheetKind commissioning = SheetKind::commissioning;

const Handed& site_s() {
  static const Handed handed = [] {
    SheetOptions options;
    options.agreed.flow = 0.05;
    return Handed(test::site_text("site-s"), options);
  }();
  return handed;
}

const Handed& hollin_gap() {
  static const Handed handed = [] {
    SheetOptions options;
    options.agreed = {0.05, {}, 0.00635};  // 1/4 in
    return Handed(test::site_text("hollin-gap"), options);
  }();
  return handed;
}

ReadingTold held_on(const Handed& handed, const std::string& id, const std::string& part, const std::string& value) {
  return held(handed, typed(handed, commissioning, id, part, value));
}

// computed: a second computation of this station gives 12.25 gpm; a loaded filter was made to give 7.6 gpm
TEST(Readings, ASlowHoseIsOutsideItsTolerance) {
  const ReadingTold slow = held_on(site_s(), "flow-alone", "D3.a", "7.6 gpm");
  EXPECT_EQ(slow.verdict, Verdict::outside);
  EXPECT_EQ(slow.reason, "outside its tolerance");
  EXPECT_NEAR(test::in_gpm(*slow.difference), 7.6 - 12.25, 0.02);
  EXPECT_EQ(held_on(site_s(), "flow-alone", "D3.a", "12.0 gpm").verdict, Verdict::within);
}

TEST(Readings, JustInsideOnAndJustOutsideALimit) {
  const auto groove = [](const char* value) { return held_on(hollin_gap(), "shear-groove", "D1.regular", value); };
  // The value entered is -6 in: past the limit whatever the tolerance.
  EXPECT_EQ(groove("-6 in").verdict, Verdict::outside);
  EXPECT_EQ(groove("-6 in").reason, "past its limit");
  const auto change = [](const char* value) { return held_on(hollin_gap(), "sump-change", "D1", value).verdict; };
  EXPECT_EQ(change("0.12 in"), Verdict::within);
  EXPECT_EQ(change("1/8 in"), Verdict::outside);  // below 1/8 in is asked
  EXPECT_EQ(change("0.13 in"), Verdict::outside);
  const auto error = [](const char* value) {
    return held_on(hollin_gap(), "meter-error", "D1.regular-a", value).verdict;
  };
  EXPECT_EQ(error("-2.9 in3"), Verdict::within);
  EXPECT_EQ(error("3 in3"), Verdict::within);
  EXPECT_EQ(error("-3.1 in3"), Verdict::outside);
  EXPECT_EQ(error("5.9 in3"), Verdict::outside);  // a looser limit allows 6 in3
}

TEST(Readings, ALimitWinsOverATolerance) {
  // 10.2 gpm lies within 5 % of the 10 gpm computed, and above what the rule allows.
  const ReadingTold fast = held_on(hollin_gap(), "flow-alone", "D1.regular-a", "10.2 gpm");
  EXPECT_EQ(fast.verdict, Verdict::outside);
  EXPECT_EQ(fast.reason, "past its limit");
}

TEST(Readings, WithoutAToleranceOrALimitNothingIsDetermined) {
  const Handed open(test::site_text("site-s"));
  const ReadingTold told = held_on(open, "flow-alone", "D1.a", "3 gpm");
  EXPECT_EQ(told.verdict, Verdict::not_determined);
  EXPECT_EQ(told.reason, "no tolerance is agreed");
  EXPECT_EQ(held_on(open, "bond-hose", "D1.a", "1.2").verdict, Verdict::not_determined);
}

TEST(Readings, ALimitAloneDoesNotMakeAComputedValueWithin) {
  const Handed open(test::site_text("hollin-gap"));
  const ReadingTold slow = held_on(open, "flow-alone", "D1.regular-a", "3 gpm");  // computed: 10 gpm, at most 10 gpm
  ASSERT_TRUE(slow.row.limit.at_most);
  EXPECT_EQ(slow.verdict, Verdict::not_determined);
  EXPECT_EQ(slow.reason, "within its limit; no tolerance is agreed");
  EXPECT_EQ(held_on(open, "flow-alone", "D1.regular-a", "10.2 gpm").verdict, Verdict::outside);
  const std::string line = open.site.lines.front().id.text;
  EXPECT_EQ(held_on(open, "line-pressure", line, "5 psi").verdict, Verdict::outside);
  EXPECT_EQ(held_on(open, "line-pressure", line, "900 psi").verdict, Verdict::not_determined);
  EXPECT_EQ(held_on(open, "sump-change", "D1", "0.12 in").verdict, Verdict::within);  // the limit is all there is
}

TEST(Readings, NorDoesALimitWhereTheValueRestsOnAnInventedDefault) {
  Handed handed(test::site_text("hollin-gap"));
  for (SheetRow& row : handed.pack.sheets.front().sections.front().rows) row.rests_on = "a guess";
  const ReadingTold told = held_on(handed, "flow-alone", "D1.regular-a", "9.9 gpm");
  EXPECT_EQ(told.verdict, Verdict::not_determined);
  EXPECT_EQ(told.reason, "within its limit; the computed value rests on a guess");
  EXPECT_EQ(held_on(handed, "flow-alone", "D1.regular-a", "10.2 gpm").verdict, Verdict::outside);
}

TEST(Readings, AValueThatRestsOnAnInventedDefaultDecidesNothing) {
  SheetOptions options;
  options.agreed.flow = 0.05;
  const Handed handed(test::site_text("marle-cross"), options);
  const std::string hose = handed.studied.flow->hoses.back().id;
  const SheetRow* row = handed.row(commissioning, "flow-all-open", hose);
  ASSERT_FALSE(row->rests_on.empty());
  ASSERT_TRUE(row->value);
  const ReadingTold told = held(handed, typed(handed, commissioning, "flow-all-open", hose, "5 gpm"));
  EXPECT_EQ(told.verdict, Verdict::not_determined);
  EXPECT_THAT(told.reason, HasSubstr("rests on"));
}

TEST(Readings, AYesOrANoIsHeldAgainstWhatItShouldBe) {
  EXPECT_EQ(held_on(hollin_gap(), "shear-trip", "D1.regular", "yes").verdict, Verdict::within);
  const ReadingTold no = held_on(hollin_gap(), "shear-trip", "D1.regular", "no");
  EXPECT_EQ(no.verdict, Verdict::outside);
  EXPECT_EQ(no.reason, "it should be yes");
}

TEST(Readings, AnEmergencyStopThatLeavesAPumpRunningIsOutsideWhateverIsEntered) {
  const Handed fewer(test::with(test::site_text("hollin-gap"), "emergency_stop.E1.stops", "[\"P1\", \"P2\"]"));
  auto reading = typed(fewer, commissioning, "effect", "E1", "no");
  for (const char* part : {"P1", "P3", "D1"}) {
    reading.what.text = std::string("emergency stop E1 acts on ") + part;
    const ReadingTold told = held(fewer, reading);
    EXPECT_EQ(told.verdict, Verdict::outside) << part;
    EXPECT_EQ(told.row.expected, true) << part;
    EXPECT_FALSE(told.row.limit.clause.empty()) << part;
  }
  reading.what.text = "emergency stop E1 acts on P3";
  EXPECT_EQ(held(fewer, reading).row.limit.clause, "RP1200 11.1");
}

TEST(Readings, ASimulatedLeakThatIsTooLargeOrATestAtTooLittlePressureIsOutside) {
  EXPECT_EQ(held_on(hollin_gap(), "detector-caught", "P1", "400 mL").verdict, Verdict::outside);
  EXPECT_EQ(held_on(hollin_gap(), "detector-caught", "P1", "150 mL").verdict, Verdict::within);
  EXPECT_EQ(held_on(hollin_gap(), "detector-time", "P1", "2 h").verdict, Verdict::outside);
  const std::string line = hollin_gap().site.lines.front().id.text;
  EXPECT_EQ(held_on(hollin_gap(), "line-pressure", line, "5 psi").verdict, Verdict::outside);
}

TEST(Readings, ABareNumberTakesTheUnitBesideIt) {
  site::records::SheetReading reading = typed(site_s(), commissioning, "flow-alone", "D1.a", "46");
  reading.unit.text = "L/min";
  EXPECT_NEAR(*held(site_s(), reading).amount, 46.0 / 60000.0, 1e-9);  // SOURCE: [nist_sp811, appendix B] L/min
}

std::string refused(const std::vector<site::records::SheetReading>& readings) {
  const auto told = hold_readings(site_s().pack, readings, the_day);
  EXPECT_FALSE(told.ok());
  EXPECT_EQ(told.diagnostics.size(), 1U);
  return told.diagnostics.empty() ? "" : told.diagnostics.front().message + " | " + told.diagnostics.front().hint;
}

TEST(Readings, WhatCannotBeIsRefused) {
  const auto good = typed(site_s(), commissioning, "flow-alone", "D1.a", "12 gpm");
  auto late = good;
  late.at.day = {2026, 12, 1, {}};
  EXPECT_THAT(refused({late}), HasSubstr("2026-12-01, which is yet to come"));
  auto sheet = good;
  sheet.sheet.text = "comissioning";
  EXPECT_THAT(refused({sheet}), HasSubstr("did you mean 'commissioning'?"));
  auto row = good;
  row.what.text = "flow of the hose alon";
  EXPECT_THAT(refused({row}), HasSubstr("did you mean 'flow of the hose alone'?"));
  EXPECT_THAT(refused({typed(site_s(), commissioning, "flow-alone", "D1.a", "12 psi")}), HasSubstr("is a flow, but"));
  EXPECT_THAT(refused({typed(site_s(), commissioning, "bond-hose", "D1.a", "low")}), HasSubstr("is no number of ohm"));
  for (const char* none : {"nan", "inf", "-inf"}) {
    EXPECT_THAT(refused({typed(site_s(), commissioning, "bond-hose", "D1.a", none)}), HasSubstr("is no number of ohm"));
  }
  EXPECT_THAT(refused({typed(site_s(), commissioning, "bond-hose", "D1.a", "-2")}), HasSubstr("is below zero"));
  EXPECT_THAT(refused({typed(site_s(), commissioning, "flow-alone", "D1.a", "-2 gpm")}), HasSubstr("is below zero"));
  auto other = good;
  other.value.text = "9 gpm";
  EXPECT_THAT(refused({good, other}), HasSubstr("contradicts another of the same day: '9 gpm' against '12 gpm'"));
}

TEST(Readings, TheSameTwiceCountsOnceAndAnotherTimeIsAnotherReading) {
  const auto good = typed(site_s(), commissioning, "flow-alone", "D1.a", "12 gpm");
  const auto twice = hold_readings(site_s().pack, {good, good}, the_day);
  EXPECT_TRUE(twice.ok());
  EXPECT_EQ(twice.value.readings.size(), 1U);
  ASSERT_EQ(twice.diagnostics.size(), 1U);
  EXPECT_EQ(twice.diagnostics.front().severity, Severity::warning);
  auto later = good;
  later.value.text = "9 gpm";
  later.at.time = Duration::from_si(36000.0);
  EXPECT_EQ(hold_readings(site_s().pack, {good, later}, the_day).value.readings.size(), 2U);
}

std::string cell(const RecordRow& row, const std::string& column) {
  for (std::size_t i = 0; i < row.columns.size(); ++i) {
    if (row.columns[i] == column) return row.cells[i];
  }
  return {};
}

TEST(Readings, AreKeptAsTestsAndAsThingsLookedAt) {
  const auto told = hold_readings(hollin_gap().pack,
                                  {typed(hollin_gap(), commissioning, "shear-trip", "D1.regular", "no"),
                                   typed(hollin_gap(), commissioning, "flow-alone", "D1.regular-a", "9.9 gpm"),
                                   typed(hollin_gap(), SheetKind::thirty_day, "spill-damage", "F1", "yes")},
                                  the_day);
  ASSERT_TRUE(told.ok());
  const std::vector<RecordRow> rows = records_of(told.value);
  ASSERT_EQ(rows.size(), 5U);
  EXPECT_EQ(rows[0].kind, "tests");
  EXPECT_EQ(cell(rows[0], "kind"), "shear-valve-trip");
  EXPECT_EQ(cell(rows[0], "part"), "D1.regular");
  EXPECT_EQ(cell(rows[0], "passed"), "no");
  EXPECT_EQ(cell(rows[0], "day"), "2026-11-20");
  EXPECT_EQ(cell(rows[2], "kind"), "flow");
  EXPECT_EQ(cell(rows[2], "flow"), "9.9 gpm");
  EXPECT_EQ(cell(rows[2], "passed"), "");  // a computed flow is no test that somebody passed
  EXPECT_EQ(rows[4].kind, "inspections");
  EXPECT_EQ(cell(rows[4], "kind"), "30-day row");  // one row is no walk-through
  EXPECT_EQ(cell(rows[4], "in_order"), "yes");
}

TEST(Readings, ATestIsNotPassedWhereAnotherRowOfItIsOutside) {
  const auto passed = [](std::vector<site::records::SheetReading> readings) {
    const auto told = hold_readings(hollin_gap().pack, readings, the_day);
    EXPECT_TRUE(told.ok());
    for (const RecordRow& row : records_of(told.value)) {
      if (row.kind == "tests") return cell(row, "passed");
    }
    return std::string("no test");
  };
  const auto on = [](const char* id, const char* part, const char* value, double time = 0.0) {
    auto out = typed(hollin_gap(), commissioning, id, part, value);
    if (time > 0.0) out.at.time = Duration::from_si(time);
    return out;
  };
  EXPECT_EQ(passed({on("sump-change", "D1", "0.5 in"), on("sump-tight", "D1", "yes")}), "no");
  EXPECT_EQ(passed({on("sump-change", "D1", "0.1 in"), on("sump-tight", "D1", "yes")}), "yes");
  EXPECT_EQ(passed({on("sump-change", "D2", "0.5 in"), on("sump-tight", "D1", "yes")}), "yes");  // another sump
  EXPECT_EQ(passed({on("detector-time", "P1", "2 h"), on("detector-acts", "P1", "yes")}), "no");
  EXPECT_EQ(passed({on("detector-caught", "P1", "400 mL"), on("detector-acts", "P1", "yes")}), "no");
  const std::string line = hollin_gap().site.lines.front().id.text;
  EXPECT_EQ(passed({on("line-pressure", line.c_str(), "5 psi"), on("line-tight", line.c_str(), "yes")}), "no");
  auto runs_on = on("effect", "E1", "no");
  runs_on.what.text = "emergency stop E1 acts on P3";
  EXPECT_EQ(passed({runs_on, on("stop-works", "E1", "yes")}), "no");
  EXPECT_EQ(passed({on("sump-change", "D1", "0.5 in", 3600.0), on("sump-change", "D1", "0.1 in", 7200.0),
                    on("sump-tight", "D1", "yes", 7200.0)}),
            "yes");
}

TEST(Readings, AnOverfillDeviceIsNotPassedWhereItsOwnDepthIsOutside) {
  const Handed handed(test::site_text("ludd-bank"));
  const auto passed = [&](const char* part) {
    const auto told = hold_readings(handed.pack,
                                    {typed(handed, commissioning, "overfill-set", "F1", "300 in"),
                                     typed(handed, commissioning, "overfill-acts", part, "yes")},
                                    the_day);
    EXPECT_EQ(told.value.outside, 1);
    for (const RecordRow& row : records_of(told.value)) {
      if (row.kind == "tests") return cell(row, "passed");
    }
    return std::string("no test");
  };
  EXPECT_EQ(passed("F1"), "no");
  EXPECT_EQ(passed("T1"), "yes");  // the alarm of the same tank
}

// A row beside it, of the same part and section, that the test does not read.
TEST(Readings, ATestIsPassedWhateverElseIsWrongWithThePart) {
  const std::string vent = [] {
    for (const SheetSection& section : hollin_gap().sheet(commissioning).sections) {
      for (const SheetRow& row : section.rows) {
        if (row.id == "vent-valve-passes") return row.part;
      }
    }
    return std::string();
  }();
  struct Case {
    const char* beside;
    const char* wrong;
    const char* test;
    std::string part;
  };
  for (const Case& one : {Case{"vent-height", "1 ft", "vent-valve-passes", vent},
                          {"stop-sign", "no", "stop-works", "E1"},
                          {"shear-anchored", "no", "shear-trip", "D1.regular"},
                          {"shear-groove", "-6 in", "shear-trip", "D1.regular"}}) {
    const auto told = hold_readings(hollin_gap().pack,
                                    {typed(hollin_gap(), commissioning, one.beside, one.part, one.wrong),
                                     typed(hollin_gap(), commissioning, one.test, one.part, "yes")},
                                    the_day);
    ASSERT_EQ(told.value.readings.size(), 2U) << one.beside;
    EXPECT_EQ(told.value.readings.front().verdict, Verdict::outside) << one.beside;
    const std::vector<RecordRow> rows = records_of(told.value);
    const auto test = std::find_if(rows.begin(), rows.end(), [](const RecordRow& row) { return row.kind == "tests"; });
    ASSERT_NE(test, rows.end()) << one.beside;
    EXPECT_EQ(cell(*test, "passed"), "yes") << one.beside;
  }
}

TEST(Readings, ARowThatAsksWhetherATestWasDoneIsNoTest) {
  const std::string line = hollin_gap().site.lines.front().id.text;
  for (const auto& [id, part] : {std::pair<std::string, std::string>{"line-yearly", line},
                                 std::pair<std::string, std::string>{"leak-detector-yearly", "P1"}}) {
    const auto told =
        hold_readings(hollin_gap().pack, {typed(hollin_gap(), SheetKind::annual, id, part, "yes")}, the_day);
    ASSERT_EQ(told.value.readings.size(), 1U) << id;
    for (const RecordRow& row : records_of(told.value)) EXPECT_NE(row.kind, "tests") << id;
  }
}

/// Every row that the rule of the 30-day walk-through lists, answered on a day.
std::vector<site::records::SheetReading> walked(const Handed& handed, const std::string& by) {
  std::vector<site::records::SheetReading> out;
  for (const SheetSection& section : handed.sheet(SheetKind::thirty_day).sections) {
    if (section.id != "spill" && section.id != "detection") continue;
    for (const SheetRow& row : section.rows) {
      out.push_back(typed(handed, SheetKind::thirty_day, row.id, row.part, "yes"));
      out.back().by.text = by;
    }
  }
  return out;
}

std::vector<RecordRow> walks(const std::vector<site::records::SheetReading>& typed) {
  const auto told = hold_readings(hollin_gap().pack, typed, the_day);
  EXPECT_TRUE(told.ok());
  return walks_of(told.value, hollin_gap().pack);
}

TEST(Readings, OnlyAllRowsOfOneDayMakeAWalkThrough) {
  auto all = walked(hollin_gap(), "R. Tay");
  ASSERT_GT(all.size(), 3U);
  const std::vector<RecordRow> whole = walks(all);
  ASSERT_EQ(whole.size(), 1U);
  EXPECT_EQ(cell(whole[0], "kind"), "30-day");
  EXPECT_EQ(cell(whole[0], "day"), "2026-11-20");
  EXPECT_EQ(cell(whole[0], "by"), "R. Tay");
  EXPECT_EQ(cell(whole[0], "in_order"), "yes");
  all.front().value.text = "no";
  const std::vector<RecordRow> faulty = walks(all);
  ASSERT_EQ(faulty.size(), 1U);
  EXPECT_EQ(cell(faulty[0], "in_order"), "no");
  EXPECT_THAT(cell(faulty[0], "note"), HasSubstr(all.front().what.text));
  all.front().at.day.day = 19;
  EXPECT_TRUE(walks(all).empty());  // not all on one day
  all.erase(all.begin());
  EXPECT_TRUE(walks(all).empty());
}

TEST(Readings, OfNobodyAreNoWalkThrough) {
  const auto told = hold_readings(hollin_gap().pack, walked(hollin_gap(), ""), the_day);
  EXPECT_TRUE(walks_of(told.value, hollin_gap().pack).empty());
}

TEST(Readings, AnEmptyFileOrALineCutOffIsAnError) {
  const auto told = [](const std::string& text) {
    const auto read = store::read_sheet_readings({{"readings.csv", text}});
    return read.diagnostics.empty() ? std::string("fine") : read.diagnostics.front().message;
  };
  const std::string header = "sheet,section,part,what,value,day\n";
  EXPECT_EQ(told(header + "a,b,c,d,12,2026-11-20\n\n"), "fine");
  EXPECT_NE(told(""), "fine");
  EXPECT_EQ(told(header + "a,b,c,d\n"), "the line has 4 of 6 columns");
}

TEST(Readings, OfARowThatSomebodyIsToDoNameThem) {
  auto trip = typed(hollin_gap(), SheetKind::commissioning, "shear-trip", "D1.regular", "yes");
  const auto refused = [&] {
    const auto told = hold_readings(hollin_gap().pack, {trip}, the_day);
    EXPECT_TRUE(told.ok());
    return without_a_name(told.value);
  };
  const std::vector<Diagnostic> found = refused();
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found.front().severity, Severity::error);
  EXPECT_THAT(found.front().message, HasSubstr("who did it is missing"));
  trip.by.text = "R. Tay";
  EXPECT_TRUE(refused().empty());
  trip = typed(hollin_gap(), SheetKind::commissioning, "shear-anchored", "D1.regular", "yes");
  EXPECT_TRUE(refused().empty());  // its row asks nobody in particular
}

TEST(Readings, OnRecordAreHeldAgain) {
  site::records::Records records;
  site::records::Test trip;
  trip.at.day = {2026, 11, 20, {}};
  trip.kind = site::records::TestKind::shear_valve_trip;
  trip.part.text = "D1.regular";
  trip.passed = false;
  site::records::Test flow = trip;
  flow.kind = site::records::TestKind::flow;
  flow.part.text = "D1.regular-a";
  flow.passed.reset();
  flow.flow = VolumeFlow::from_si(0.0005);
  site::records::Test tank = trip;
  tank.kind = site::records::TestKind::tank_tightness;
  records.tests = {trip, flow, tank};
  records.inspections = {
      {trip.at, {"30-day", {}}, {}, {{{"F1", {}}, {"spill: no damage to the spill container", {}}, true, {}}}},
      {trip.at, {"30-day", {}}, {}, {{{"station", {}}, {whole_walk, {}}, true, {}}}},
      {trip.at,
       {"commissioning", {}},
       {},
       {{{"D1", {}}, {"sump: change of the level in that time, without a sign", {}}, {}, {"0.2 in; rain", {}}}}}};
  const auto read = readings_of(records, hollin_gap().pack);
  ASSERT_EQ(read.diagnostics.size(), 1U);  // no sheet has a line for the tightness of a tank
  EXPECT_EQ(read.diagnostics.front().severity, Severity::warning);
  const auto told = hold_readings(hollin_gap().pack, read.value, the_day);
  ASSERT_TRUE(told.ok());
  ASSERT_EQ(told.value.readings.size(), 4U);
  EXPECT_EQ(told.value.readings[0].verdict, Verdict::within);
  EXPECT_EQ(told.value.readings[1].verdict, Verdict::outside);  // 0.2 in is past 1/8 in
  EXPECT_EQ(told.value.readings[2].verdict, Verdict::outside);
  EXPECT_NEAR(*told.value.readings[3].amount, 0.0005, 1e-9);
}

}  // namespace
}  // namespace forecourse::handover
