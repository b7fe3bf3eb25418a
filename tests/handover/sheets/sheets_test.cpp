// What stands on sheets: the figures of the studies, what is not known, what comes first.
#include "forecourse/handover/sheets/sheets.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "forecourse/base/unit_text.h"
#include "forecourse/handover/calendar/proofs.h"
#include "forecourse/handover/sheets/source.h"
#include "handover/sheets/pack.h"

namespace forecourse::handover {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

class SheetsOfExample : public testing::TestWithParam<const char*> {
 protected:
  const Handed handed{test::site_text(GetParam())};
};
INSTANTIATE_TEST_SUITE_P(, SheetsOfExample, testing::ValuesIn(examples), [](const auto& one) {
  std::string name = one.param;
  name.erase(std::remove(name.begin(), name.end(), '-'), name.end());
  return name;
});

void expect_value(const SheetRow* row, const std::optional<double>& value) {
  ASSERT_NE(row, nullptr);
  EXPECT_EQ(row->value, value) << row->what << " of " << row->part;
  EXPECT_EQ(row->value_by.empty(), !value);
  EXPECT_TRUE(value || !row->missing.empty()) << row->what;
}

TEST_P(SheetsOfExample, FlowsAreThoseOfTheFlowStudy) {
  ASSERT_TRUE(handed.studied.flow);
  for (const studies::HoseSummary& hose : handed.studied.flow->hoses) {
    const auto flow = [](const auto& one) { return one ? std::optional(one->flow) : std::nullopt; };
    expect_value(handed.row(SheetKind::commissioning, "flow-alone", hose.id), flow(hose.alone));
    expect_value(handed.row(SheetKind::commissioning, "flow-all-open", hose.id), flow(hose.all_open));
    expect_value(handed.row(SheetKind::return_to_service, "flow-alone", hose.id), flow(hose.alone));
  }
}

TEST_P(SheetsOfExample, PressuresAreThoseOfTheFlowStudy) {
  const studies::FlowResult& flow = *handed.studied.flow;
  for (const studies::LineAtRest& line : flow.lines_at_rest) {
    for (const studies::RestPlace& place : line.places) {
      const SheetRow* row = handed.row(SheetKind::commissioning, "pump-stopped-flow", place.id);
      if (row == nullptr) continue;
      expect_value(row, place.shutoff_gauge);
      expect_value(handed.row(SheetKind::commissioning, "pump-held", place.id), place.held_gauge);
    }
  }
}

TEST_P(SheetsOfExample, LevelsAndRoomsAreThoseOfTheTankStudy) {
  if (!handed.studied.tank) return;
  for (const studies::TankTold& tank : handed.studied.tank->tanks) {
    if (!tank.problem.empty()) continue;
    expect_value(handed.row(SheetKind::commissioning, "overfill-level", tank.id), tank.rooms.front().level);
    expect_value(handed.row(SheetKind::delivery_card, "volume-95", tank.id), tank.rooms[1].volume);
    double top = tank.rooms[1].volume;
    for (const studies::DeviceSet& device : tank.overfill.set) top = std::min(top, device.volume);
    const SheetRow* fits = handed.row(SheetKind::delivery_card, "fits", tank.id);
    ASSERT_NE(fits, nullptr);
    ASSERT_EQ(fits->figures.size(), 1U);
    EXPECT_DOUBLE_EQ(fits->figures.front().value, top);
    EXPECT_EQ(fits->missing.empty(), tank.overfill.remarks.empty());
    for (const std::string& remark : tank.overfill.remarks) {
      EXPECT_THAT(handed.row(SheetKind::delivery_card, "overfill", tank.id)->missing, HasSubstr(remark));
    }
    const auto room = tank.now ? std::optional(std::max(0.0, top - tank.now->volume)) : std::nullopt;
    expect_value(handed.row(SheetKind::delivery_card, "room", tank.id), room);
  }
}

TEST_P(SheetsOfExample, SimulatedLeaksAreThoseOfTheLineTests) {
  if (!handed.studied.line_test) return;
  for (const studies::LineTest& line : handed.studied.line_test->lines) {
    for (const studies::DetectorTold& detector : line.detectors) {
      const SheetRow* row = handed.row(SheetKind::commissioning, "detector-caught", detector.pump);
      expect_value(row, detector.catches.front().minute);
      expect_value(handed.row(SheetKind::commissioning, "detector-rate", detector.pump), detector.detects);
    }
  }
}

/// The pressures of a line on one sheet are of one line: at the discharge the one that the flow study tells, at the
/// place of the leak less the height to there.
TEST_P(SheetsOfExample, PressuresOfLineTestsAreThoseOfTheFlowStudyAtTheirPlace) {
  if (!handed.studied.line_test || !handed.studied.flow) return;
  const auto told = [&](const std::string& place) -> const studies::RestPlace* {
    for (const studies::LineAtRest& line : handed.studied.flow->lines_at_rest) {
      for (const studies::RestPlace& one : line.places) {
        if (one.id == place) return &one;
      }
    }
    return nullptr;
  };
  for (const studies::LineTest& line : handed.studied.line_test->lines) {
    if (!line.held_at.empty()) {
      EXPECT_NEAR(*line.held, *told(line.held_at)->held_gauge, 1e-6);
    }
    for (const studies::DetectorTold& detector : line.detectors) {
      for (const studies::CatchTold& one : detector.catches) {
        const std::string begin = "the pressure held at ";
        if (!one.where.starts_with(begin)) continue;
        const std::string place = one.where.substr(begin.size(), one.where.find(',') - begin.size());
        ASSERT_NE(told(place), nullptr) << place;
        EXPECT_NEAR(one.pressure, *told(place)->held_gauge, 1e-6);
      }
    }
  }
}

TEST(Sheets, TheHeightIsTakenOffWhereItIsEntered) {
  const Handed asked(test::site_text("hollin-gap"));
  for (const studies::LineTest& line : asked.studied.line_test->lines) {
    EXPECT_FALSE(line.held_at.empty()) << line.system;
    const SheetRow* pump = asked.row(SheetKind::commissioning, "pump-held", line.held_at);
    const SheetRow* test = asked.row(SheetKind::commissioning, "line-pressure", line.lines.front());
    ASSERT_TRUE(pump != nullptr && test != nullptr);
    EXPECT_NEAR(*test->value, studies::tightness_pressure_factor * *pump->value, 1e-6) << line.system;
  }
  const auto where = [](const std::string& text) {
    std::string out;
    const Handed handed(text);
    for (const studies::CatchTold& one : handed.studied.line_test->lines.front().detectors.front().catches) {
      if (one.where.starts_with("the pressure held")) out += one.where;
    }
    return out;
  };
  const std::string text = test::site_text("hollin-gap");
  EXPECT_EQ(where(text), "the pressure held at D4.regular, pump off");
  std::string nowhere = text;
  const std::string tested_at = ", tested_at = \"D4.regular\"";
  nowhere.erase(nowhere.find(tested_at), tested_at.size());
  EXPECT_EQ(where(nowhere), "the pressure held at D1.regular, pump off");  // all inlets are level
  const std::string height = "line_elevation = \"-2 ft 6 in\"";
  nowhere.erase(nowhere.find(height), height.size());
  EXPECT_EQ(where(nowhere), "the pressure held, pump off");  // one may be the highest
}

TEST_P(SheetsOfExample, EverySheetHasItsCautionAndEmergencyComesFirst) {
  ASSERT_EQ(handed.pack.sheets.size(), all_sheet_kinds.size());
  for (const Sheet& sheet : handed.pack.sheets) {
    EXPECT_FALSE(sheet.cautions.empty()) << word(sheet.kind);
    EXPECT_FALSE(sheet.sections.empty()) << word(sheet.kind);
    const auto advises = [](const std::string& one) { return one.find("t advises") != std::string::npos; };
    EXPECT_TRUE(std::any_of(sheet.cautions.begin(), sheet.cautions.end(), advises)) << word(sheet.kind);
  }
  for (const SheetKind kind : {SheetKind::return_to_service, SheetKind::emergency_card}) {
    EXPECT_THAT(handed.sheet(kind).first,
                ElementsAre("Stop the pump.", "Clear people away.", "Call the fire service."));
  }
  EXPECT_THAT(handed.sheet(SheetKind::delivery_card).first,
              ElementsAre("Spill, overfill or fire: shut the truck's valve.", "Stop the pump.", "Clear people away.",
                          "Call the fire service."));
  EXPECT_THAT(handed.sheet(SheetKind::delivery_card).cautions.front(), HasSubstr("never open a connection"));
}

// A reading finds its row by sheet, section, part and words.
TEST_P(SheetsOfExample, NoTwoBlanksGoByOneName) {
  for (const Sheet& sheet : handed.pack.sheets) {
    std::set<std::tuple<std::string, std::string, std::string>> seen;
    for (const SheetSection& section : sheet.sections) {
      for (const SheetRow& row : section.rows) {
        if (row.blank == Blank::none || row.blank == Blank::signature) continue;
        EXPECT_TRUE(seen.insert({section.id, row.part, row.what}).second)
            << word(sheet.kind) << ", " << section.id << ": " << row.part << ", " << row.what;
      }
    }
  }
}

// An amount has a value, a reason why not, or nothing was to be computed for it.
TEST_P(SheetsOfExample, NothingIsMadeUp) {
  for (const Sheet& sheet : handed.pack.sheets) {
    for (const SheetSection& section : sheet.sections) {
      for (const SheetRow& row : section.rows) {
        EXPECT_EQ(row.value.has_value(), !row.value_by.empty()) << row.what;
        EXPECT_TRUE(!row.tolerance.known() || *row.tolerance.low <= *row.tolerance.high) << row.what;
        EXPECT_TRUE(row.limit.clause.empty() || !row.limit.words.empty()) << row.what;
      }
    }
  }
}

TEST(Sheets, OnlyThoseAskedForAreMade) {
  SheetOptions options;
  options.kinds = {SheetKind::emergency_card, SheetKind::annual};
  const Handed handed(test::site_text("site-s"), options);
  ASSERT_EQ(handed.pack.sheets.size(), 2U);
  EXPECT_EQ(handed.pack.sheets[0].kind, SheetKind::annual);  // in their own order
  EXPECT_EQ(handed.pack.sheets[1].kind, SheetKind::emergency_card);
}

TEST(Sheets, AChangedLengthChangesTheFlowBesideTheBlank) {
  const std::string text = test::site_text("site-s");
  const Handed before(text);
  const Handed after(test::with(text, "line.trunk.length", "\"600 ft\""));
  const SheetRow* short_one = before.row(SheetKind::commissioning, "flow-all-open", "D3.a");
  const SheetRow* long_one = after.row(SheetKind::commissioning, "flow-all-open", "D3.a");
  // computed: a second computation of this station gives 9.58 gpm
  EXPECT_NEAR(test::in_gpm(*short_one->value), 9.58, 0.02);
  EXPECT_LT(*long_one->value, 0.9 * *short_one->value);
}

TEST(Sheets, AChangedRuleChangesTheLimitBesideTheBlank) {
  const std::string text = test::site_text("hollin-gap");
  const Handed named(text);
  const SheetRow* groove = named.row(SheetKind::commissioning, "shear-groove", "D1.regular");
  ASSERT_TRUE(groove->limit.at_most);
  EXPECT_NEAR(*groove->limit.at_most, 0.0127, 1e-9);  // SOURCE: [ifc_2018, 2306.7.4] 1/2 in
  EXPECT_EQ(groove->limit.clause, "IFC 2306.7.4");
  EXPECT_TRUE(groove->limit.verified);
  EXPECT_NEAR(*groove->value, -0.1524, 1e-9);  // 0 in against an island of 6 in
  const Handed without(test::with(text, "site.rules", "[\"us-federal\"]"));
  EXPECT_TRUE(without.row(SheetKind::commissioning, "shear-groove", "D1.regular")->limit.clause.empty());
}

TEST(Sheets, APracticeThatTheSiteDoesNotNameIsMarked) {
  const Handed handed(test::site_text("hollin-gap"));
  const SheetRow* change = handed.row(SheetKind::commissioning, "sump-change", "D1");
  EXPECT_EQ(change->limit.clause, "RP1200 6.5");
  EXPECT_FALSE(change->limit.binds);
  EXPECT_TRUE(change->limit.strict);
  EXPECT_NEAR(*change->limit.at_most, 0.003175, 1e-9);  // SOURCE: [rp1200, 6.5] 1/8 in
}

TEST(Sheets, AClauseOfAListBindsWhereTheSiteNamesItsSet) {
  const std::string text = test::site_text("hollin-gap");
  const auto binds = [&](const char* sets) {
    const Handed handed(test::with(text, "site.rules", sets));
    for (const SheetSection& section : handed.sheet(SheetKind::commissioning).sections) {
      for (const SheetRow& row : section.rows) {
        if (row.id != "vent-height") continue;
        EXPECT_EQ(row.limit.clause, "29 CFR 1910.106(b)(3)(iv)(a), IFC 5704.2.7.3.3");
        return row.limit.binds;
      }
    }
    ADD_FAILURE() << "no vent";
    return false;
  };
  EXPECT_TRUE(binds("[\"us-fire-code\"]"));
  EXPECT_TRUE(binds("[\"us-osha\"]"));
  EXPECT_FALSE(binds("[\"us-federal\"]"));
}

TEST(Sheets, AClauseOfAnUnknownBeginningDoesNotBind) {
  const Handed handed(test::site_text("hollin-gap"));
  const AgreedTolerances agreed;
  const checks::Facts facts = checks::facts_of(handed.site, handed.studied, the_day, nullptr);
  const SheetSource source(facts, handed.studied, agreed);
  EXPECT_TRUE(source.binds("40 CFR 280.44(a)"));
  EXPECT_FALSE(source.binds("NFPA 77, table 7.6"));
  EXPECT_FALSE(source.binds(""));
}

TEST(Sheets, TheHighestSealIsKnownOnlyWhereTheHeightOfEachIs) {
  std::string text = test::site_text("hollin-gap");
  const std::string lowest = "lowest_seal = \"11 in\"";
  const auto with_seals = [&](const std::string& seals) {
    std::string out = text;
    for (std::size_t at = out.find(lowest); at != std::string::npos; at = out.find(lowest)) {
      out.replace(at, lowest.size(), seals);
    }
    return out;
  };
  const Handed known(with_seals(R"(seal = [{ height = "11 in" }, { id = "S2", height = "20 in" }])"));
  EXPECT_NEAR(*known.row(SheetKind::commissioning, "sump-seal", "D1")->value, 0.508, 1e-9);  // 20 in
  EXPECT_NEAR(*known.row(SheetKind::commissioning, "sump-water", "D1")->value, 0.6096,
              1e-9);  // SOURCE: [rp1200, 6.5] 4 in more
  const Handed open(with_seals(R"(seal = [{ height = "11 in" }, { id = "S2" }, {}])"));
  for (const char* id : {"sump-seal", "sump-water"}) {
    const SheetRow* row = open.row(SheetKind::commissioning, id, "D1");
    EXPECT_FALSE(row->value) << id;
    EXPECT_EQ(row->missing, "not entered: height of seal 'S2', 3") << id;
  }
  EXPECT_EQ(held(open, typed(open, SheetKind::commissioning, "sump-water", "D1", "5 in")).verdict,
            Verdict::not_determined);
}

TEST(Sheets, ASpreadOfTheStudyIsTheTolerance) {
  SheetOptions options;
  options.agreed.flow = 0.05;
  const Handed handed(test::site_text("thornby"), options);
  const studies::HoseSummary& hose = handed.studied.flow->hoses.front();
  ASSERT_TRUE(hose.alone->low);
  const SheetRow* row = handed.row(SheetKind::commissioning, "flow-alone", hose.id);
  EXPECT_EQ(row->tolerance.low, hose.alone->low);
  EXPECT_EQ(row->tolerance.high, hose.alone->high);
  EXPECT_LT(*row->tolerance.low, *row->value);
}

TEST(Sheets, WithoutASpreadWhatIsAgreedCountsAndElseNothing) {
  const Handed open(test::site_text("site-s"));
  EXPECT_FALSE(open.row(SheetKind::commissioning, "flow-alone", "D1.a")->tolerance.known());
  EXPECT_EQ(open.row(SheetKind::commissioning, "flow-alone", "D1.a")->tolerance.source, "to be agreed");
  SheetOptions options;
  options.agreed.flow = 0.05;
  const Handed agreed(test::site_text("site-s"), options);
  const SheetRow* row = agreed.row(SheetKind::commissioning, "flow-alone", "D1.a");
  EXPECT_NEAR(*row->tolerance.low, 0.95 * *row->value, 1e-12);
  EXPECT_NEAR(*row->tolerance.high, 1.05 * *row->value, 1e-12);
}

TEST(Sheets, LinksOfTheSiteFileStandInTheMatrix) {
  const std::string text = test::site_text("hollin-gap");
  const auto cell = [](const Handed& handed, const std::string& what) -> const SheetRow* {
    for (const SheetSection& section : handed.sheet(SheetKind::commissioning).sections) {
      for (const SheetRow& row : section.rows) {
        if (row.what == what) return &row;
      }
    }
    return nullptr;
  };
  const Handed before(text);
  EXPECT_EQ(cell(before, "emergency stop E1 acts on P1")->words, "stops");
  EXPECT_EQ(cell(before, "emergency stop E1 acts on P1")->expected, true);
  EXPECT_EQ(cell(before, "sump sensor of dispenser D2 acts on P1")->words, "not entered");
  EXPECT_EQ(cell(before, "sump sensor of dispenser D2 acts on P1")->expected, std::nullopt);
  const Handed after(text + "\n[[interlock]]\nid = \"L1\"\nwhen = \"D2\"\nthen = \"stop\"\nwhat = [\"P1\"]\n");
  EXPECT_EQ(cell(after, "sump sensor of dispenser D2 acts on P1")->words, "stops");
  EXPECT_EQ(cell(after, "sump sensor of dispenser D2 acts on P2")->words, "not linked, as entered");
  EXPECT_EQ(cell(after, "sump sensor of dispenser D2 acts on P2")->expected, false);
  const Handed fewer(test::with(text, "emergency_stop.E1.stops", "[\"P1\", \"P2\"]"));
  EXPECT_THAT(cell(fewer, "emergency stop E1 acts on P3")->words, HasSubstr("runs on, as entered"));
}

TEST(Sheets, WalkThroughsNameTheClauseOnlyWhereTheSiteLivesUnderIt) {
  const Handed federal(test::site_text("hollin-gap"));
  const SheetRow* row = federal.row(SheetKind::thirty_day, "spill-damage", "F1");
  EXPECT_EQ(row->limit.clause, "40 CFR 280.36(a)(1)(i)");  // SOURCE: [cfr_280, 280.36(a)(1)(i)]
  EXPECT_EQ(federal.row(SheetKind::annual, "sump-damage", "D1")->limit.clause, "40 CFR 280.36(a)(1)(ii)");
  EXPECT_NE(federal.row(SheetKind::thirty_day, "spill-interstice", "F1"), nullptr);  // its container has two walls
  EXPECT_NE(federal.row(SheetKind::annual, "shear-valve-yearly", "D1.regular"), nullptr);
  const Handed abroad(test::site_text("thornby"));
  for (const SheetSection& section : abroad.sheet(SheetKind::annual).sections) {
    for (const SheetRow& one : section.rows) EXPECT_THAT(one.limit.clause, testing::Not(HasSubstr("CFR")));
  }
}

TEST(Sheets, TheEmergencyCardSaysWhatIsNotEntered) {
  const Handed handed(test::site_text("truck-lane"));
  EXPECT_EQ(handed.row(SheetKind::emergency_card, "stop-place", "")->missing, "not entered: write it here");
  EXPECT_EQ(handed.row(SheetKind::emergency_card, "extinguisher-place", "")->missing, "not entered: write it here");
}

TEST(Sheets, TheCardForTheDriverStopsAtTheLowestDevice) {
  // The alarm is set at 90 %, far below the 95 % of the rule.
  const Handed handed(test::site_text("hollin-gap"));
  const studies::TankTold& tank = handed.studied.tank->tanks.front();
  const SheetRow* fits = handed.row(SheetKind::delivery_card, "fits", tank.id);
  EXPECT_NEAR(fits->figures.front().value, 0.90 * tank.capacity, 1e-3 * tank.capacity);
  EXPECT_THAT(fits->words, HasSubstr("alarm"));
}

TEST(Sheets, NoCardSendsAnyoneThroughFuelToTheEmergencyStop) {
  const Handed handed(test::site_text("hollin-gap"));
  for (const SheetKind kind : {SheetKind::delivery_card, SheetKind::emergency_card}) {
    for (const SheetSection& section : handed.sheet(kind).sections) {
      if (section.id != "emergency-stop") continue;
      ASSERT_EQ(section.notes.size(), 1U);
      EXPECT_THAT(section.notes.front(), HasSubstr("only if no fuel and no vapor lies on the way"));
    }
  }
  EXPECT_THAT(handed.row(SheetKind::emergency_card, "fuel", "T1")->what, HasSubstr("holds up to"));
  EXPECT_THAT(handed.row(SheetKind::delivery_card, "drain", "")->what, HasSubstr("your company or a technician says"));
}

std::vector<Duty> duties_of(const Handed& handed) {
  const checks::Facts facts = checks::facts_of(handed.site, handed.studied, the_day, nullptr);
  return calendar_of(checks::check_station(facts, handed.studied)).duties;
}

/// Each overfill device is asked for under the name of its own duty.
TEST(Sheets, EachOverfillDeviceHasItsRow) {
  const Handed handed(test::site_text("hollin-gap"));
  EXPECT_NE(handed.row(SheetKind::commissioning, "overfill-acts", "T1"), nullptr);
  EXPECT_NE(handed.row(SheetKind::commissioning, "overfill-acts", "F1"), nullptr);
}

std::vector<SheetRow> rows_by_rule(const Handed& handed) {
  std::vector<SheetRow> out;
  for (const SheetKind kind : {SheetKind::thirty_day, SheetKind::annual}) {
    for (const SheetSection& section : handed.sheet(kind).sections) {
      if (section.id == "by-rule") out.insert(out.end(), section.rows.begin(), section.rows.end());
    }
  }
  return out;
}

/// A row that asks for something by rule says when it was last done where the calendar knows.
TEST_P(SheetsOfExample, ARowByRuleKnowsTheDayThatItsDutyKnows) {
  std::map<std::pair<std::string, std::string>, double> since;
  for (const Duty& duty : duties_of(handed)) {
    if (duty.last_done) since[{duty.what, duty.subject}] = to_si(checks::days_between(*duty.last_done, the_day), "d");
  }
  for (const SheetRow& row : rows_by_rule(handed)) {
    const auto known = since.find({row.what, row.part});
    ASSERT_EQ(row.figures.size(), known == since.end() ? 0U : 1U) << row.id << " of " << row.part;
    if (known != since.end()) {
      EXPECT_DOUBLE_EQ(row.figures.front().value, known->second);
    }
  }
}

/// One that may not apply is asked for as well, and says what that rests on.
TEST_P(SheetsOfExample, RowsByRuleAreTheDutiesThatNameTheSheet) {
  std::set<std::tuple<std::string, std::string, std::string>> open;
  std::set<std::pair<std::string, std::string>> due;
  for (const Duty& duty : duties_of(handed)) {
    const std::optional<SheetKind> kind = sheet_kind(duty.sheet);
    const std::optional<Proof> proof = proof_of(duty);
    const bool walked = kind == SheetKind::thirty_day || kind == SheetKind::annual;
    if (!walked || (proof && proof->inspection == record_kind(*kind))) continue;
    due.insert({duty.what, duty.subject});
    if (duty.state == DutyState::not_determined) open.insert({duty.what, duty.subject, duty.reason});
  }
  std::set<std::pair<std::string, std::string>> asked;
  for (const SheetRow& row : rows_by_rule(handed)) {
    EXPECT_TRUE(asked.insert({row.what, row.part}).second) << row.what << " twice of " << row.part;
    open.erase({row.what, row.part, row.words});
  }
  EXPECT_EQ(asked, due);
  EXPECT_TRUE(open.empty()) << std::get<0>(*open.begin()) << " of " << std::get<1>(*open.begin());
}

/// Whether a sheet has a row of the part of a duty in which something is filled in, and which is kept as the record by
/// which the duty is done, if there is such a record. A walk-through is its whole sheet.
bool leads_through(const Sheet& sheet, const Duty& duty) {
  const std::optional<Proof> proof = proof_of(duty);
  if (proof && proof->inspection == record_kind(sheet.kind)) return true;
  const auto is_of = [&](const SheetRow& row) {
    if (row.blank == Blank::none || row.part != duty.subject) return false;
    return !proof || row.id == duty.rule || (row.test && row.test == proof->test);
  };
  return std::ranges::any_of(sheet.sections,
                             [&](const SheetSection& section) { return std::ranges::any_of(section.rows, is_of); });
}

TEST_P(SheetsOfExample, TheSheetOfADutyLeadsThroughIt) {
  for (const Duty& duty : duties_of(handed)) {
    if (duty.sheet.empty()) continue;
    const auto kind = sheet_kind(duty.sheet);
    ASSERT_TRUE(kind) << duty.id;
    EXPECT_TRUE(leads_through(handed.sheet(*kind), duty)) << duty.id << " on " << duty.sheet;
  }
}

TEST_P(SheetsOfExample, LimitsOfOverfillDevicesNameTheirEdition) {
  for (const SheetSection& section : handed.sheet(SheetKind::commissioning).sections) {
    for (const SheetRow& row : section.rows) {
      if (row.id != "overfill-highest") continue;
      EXPECT_THAT(row.limit.edition, HasSubstr("40 CFR 280")) << row.part;
      EXPECT_TRUE(row.limit.verified) << row.part;
    }
  }
}

TEST(Sheets, AMeterIsPutToUseUnderTheLeastLimitWithHowFarItsTextWasSeen) {
  const Handed handed(test::site_text("hollin-gap"));
  const SheetRow* error = handed.row(SheetKind::commissioning, "meter-error", "D1.regular-a");
  EXPECT_EQ(error->limit.clause, "NIST Handbook 44, 3.30");
  EXPECT_NEAR(*error->limit.at_most, 3.0 * 1.6387064e-5, 1e-9);  // SOURCE: [nist_handbook_44, 3.30] 3 in3 in 5 gal
  EXPECT_FALSE(error->limit.verified);
  EXPECT_THAT(error->words, HasSubstr("acceptance: seen in derived texts"));
  const Handed abroad(test::site_text("thornby"));
  EXPECT_FALSE(
      abroad.row(SheetKind::commissioning, "meter-error", abroad.studied.flow->hoses.front().id)->limit.at_most);
}

}  // namespace
}  // namespace forecourse::handover
