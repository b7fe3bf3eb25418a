// What comes back, when, and by what it is known: by the calendar, by alternatives, by the site file and the records.
#include "forecourse/handover/calendar/calendar.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "forecourse/checks/station/check_record_parts.h"
#include "forecourse/checks/station/check_records.h"
#include "forecourse/site/read.h"
#include "forecourse/site/rules/read_rule_set.h"
#include "forecourse/store/read_records.h"
#include "support/stations.h"

namespace forecourse::handover {
namespace {

using site::Date;
using site::records::Records;
using site::records::TestKind;

constexpr Date today{2026, 11, 30, {}};

site::RuleSet rule_set(const std::string& text) {
  auto read = site::read_rule_set("format = 1\nid = \"own\"\ntitle = \"Own\"\nedition = \"of 2026\"\n" + text, 1);
  EXPECT_TRUE(read.ok()) << (read.ok() ? "" : read.diagnostics.front().message);
  return std::move(read.value);
}

/// An emergency stop is tested at an interval.
site::RuleSet stop_rule(const std::string& every, const std::string& more = "") {
  return rule_set("[[requirement]]\nid = \"stop\"\nwords = \"a stop is tested\"\nfigure = \"emergency-stop-tested\"\n" +
                  std::string("who = \"the manager\"\nsheet = \"annual\"\nevery = \"") + every + "\"\n" + more);
}

site::Site site_of(const std::string& text) {
  return site::read_site("format = 1\n[site]\nname = \"Case (invented)\"\n" + text).value;
}

std::string stop(const std::string& tested) {
  return "[[emergency_stop]]\nid = \"E1\"\n" + (tested.empty() ? "" : "tested = " + tested + "\n");
}

Calendar calendar(const site::Site& site, const std::vector<site::RuleSet>& own, const Records* records = nullptr,
                  const Date& on = today) {
  const checks::Studied studied;
  return calendar_of(checks::check_station(checks::facts_of(site, studied, on, records), studied, own), {});
}

Duty stop_duty(const std::string& tested, const std::string& every, const Date& on = today) {
  const Calendar made = calendar(site_of(stop(tested)), {stop_rule(every)}, nullptr, on);
  EXPECT_EQ(made.duties.size(), 1U);
  return made.duties.empty() ? Duty{} : made.duties.front();
}

std::string due(const Duty& duty) { return duty.due ? checks::text(*duty.due) : "none"; }

site::records::Test test_of(TestKind kind, const std::string& part, const Date& day, bool passed = true) {
  site::records::Test out;
  out.at.day = day;
  out.kind = kind;
  out.part.text = part;
  out.passed = passed;
  return out;
}

site::records::Inspection look(const std::string& kind, const std::string& part, const Date& day) {
  site::records::Inspection out;
  out.at.day = day;
  out.kind.text = kind;
  out.items.emplace_back();
  out.items.back().part.text = part;
  out.items.back().in_order = true;
  return out;
}

// Days. Closed form: the days of the Gregorian calendar.

TEST(Calendar, FallsDueByTheCalendar) {
  EXPECT_EQ(due(stop_duty("2026-08-31", "6 months")), "2027-02-28");
  EXPECT_EQ(due(stop_duty("2027-08-31", "6 months", {2027, 12, 1, {}})), "2028-02-29");
  EXPECT_EQ(due(stop_duty("2024-02-29", "1 year")), "2025-02-28");
  EXPECT_EQ(due(stop_duty("2024-02-29", "4 years")), "2028-02-29");
  EXPECT_EQ(due(stop_duty("2026-11-05", "30 days")), "2026-12-05");
}

TEST(Calendar, IsOverdueTheDayAfter) {
  struct Case {
    const char* tested;
    DutyState state;
    int left;
  };
  for (const Case& one : {Case{"2025-11-29", DutyState::overdue, -1}, Case{"2025-11-30", DutyState::due_soon, 0},
                          Case{"2026-02-28", DutyState::due_soon, 90}, Case{"2026-03-01", DutyState::later, 91}}) {
    const Duty duty = stop_duty(one.tested, "1 year");
    EXPECT_EQ(duty.state, one.state) << one.tested;
    EXPECT_EQ(duty.days_left, one.left) << one.tested;
    EXPECT_EQ(done_by(duty), DoneBy::site_file);
  }
}

TEST(Calendar, WithoutARecordSaysWhatToEnter) {
  const Duty duty = stop_duty("", "1 year");
  EXPECT_EQ(duty.state, DutyState::no_record);
  EXPECT_EQ(due(duty), "none");
  EXPECT_EQ(done_by(duty), DoneBy::nothing);
  EXPECT_EQ(duty.enter, "enter tested of the emergency stop");
  EXPECT_EQ(duty.by_whom, "the manager");
  EXPECT_EQ(duty.sheet, "annual");
  EXPECT_EQ(duty.id, "own/stop/E1");
}

TEST(Calendar, TwelveMonthsRepeatAtThePeriod) {
  const Duty duty = stop_duty("2026-08-31", "3 months");  // due today
  std::vector<std::string> days;
  for (const StripMonth& month : duty.strip) {
    for (const Date& day : month.days) days.push_back(checks::text(day));
  }
  EXPECT_EQ(days, (std::vector<std::string>{"2026-11-30", "2027-02-28", "2027-05-30", "2027-08-30"}));
  ASSERT_EQ(duty.strip.size(), 12U);
  EXPECT_EQ(duty.strip.front().month, (Month{2026, 11}));
  EXPECT_EQ(duty.strip.back().month, (Month{2027, 10}));
  EXPECT_EQ(duty.strip[3].state, DutyState::due_soon);  // 28 February: in 90 days
  EXPECT_EQ(duty.strip[6].state, DutyState::later);
}

TEST(Calendar, WhatIsOverdueIsTakenAsDoneToday) {
  const Duty duty = stop_duty("2024-01-10", "6 months");
  EXPECT_EQ(duty.strip[0].state, DutyState::overdue);
  ASSERT_EQ(duty.strip[6].days.size(), 1U);
  EXPECT_EQ(checks::text(duty.strip[6].days.front()), "2027-05-30");
}

// Conditions and alternatives

TEST(Calendar, AnUnknownConditionIsListedAsThat) {
  const auto of = [](const char* fact) {
    const site::RuleSet own = stop_rule("1 year", "when = [{ figure = \"attended\", is = false }]\n");
    return calendar(site_of(stop("2026-05-01") + fact), {own}).duties;
  };
  const std::vector<Duty> open = of("");
  ASSERT_EQ(open.size(), 1U);
  EXPECT_EQ(open.front().state, DutyState::not_determined);
  EXPECT_EQ(open.front().enter, "enter attended, card_limits and warning_signs of [operations]");
  EXPECT_EQ(of("[operations]\nattended = false\n").front().state, DutyState::later);
  EXPECT_TRUE(of("[operations]\nattended = true\n").empty());
}

std::vector<Duty> of_spill_container(const std::string& container) {
  const site::Site site = site_of(
      "rules = [\"us-federal\"]\n[[product]]\nid = \"regular\"\nkind = \"gasoline-e10\"\n[[tank]]\nid = "
      "\"T1\"\nproduct "
      "= \"regular\"\n  [[tank.fill]]\n  id = \"F1\"\n  spill_container = { " +
      container + " }\n");
  std::vector<Duty> out = calendar(site, {}).duties;
  std::erase_if(out, [](const Duty& one) { return one.rule != "spill-container-tight"; });
  return out;
}

/// SOURCE: [cfr_280, 280.35(a)(1)]: tested every 3 years, or both walls watched every 30 days
TEST(Calendar, OfAlternativesTheOneThatIsKeptComesBack) {
  const auto tested = of_spill_container("tested = 2025-03-01");
  ASSERT_EQ(tested.size(), 1U);
  EXPECT_EQ(due(tested.front()), "2028-03-01");
  const auto both = of_spill_container("double_wall = true, tested = 2025-03-01, monitored = 2026-11-20");
  ASSERT_EQ(both.size(), 1U);
  EXPECT_EQ(due(both.front()), "2028-03-01");  // one that is kept is enough
  EXPECT_EQ(both.front().instead.size(), 1U);
  const auto watched = of_spill_container("double_wall = true, tested = 2021-03-01, monitored = 2026-11-20");
  ASSERT_EQ(watched.size(), 1U);
  EXPECT_EQ(due(watched.front()), "2026-12-20");
  EXPECT_EQ(watched.front().id, both.front().id);
  EXPECT_EQ(of_spill_container("double_wall = false, tested = 2021-03-01").front().state, DutyState::overdue);
}

/// An alarm that watches the interstice all the time leaves nothing to come back.
TEST(Calendar, AnAlternativeThatDoesNotComeBackLeavesNoDuty) {
  const auto of = [](const std::string& interstice) {
    const site::Site site =
        site_of("rules = [\"us-federal\"]\n[[tank]]\nid = \"T1\"\ninstalled = 2019-01-01\n" + interstice);
    std::vector<Duty> out = calendar(site, {}).duties;
    std::erase_if(out, [](const Duty& one) { return one.rule != "tank-monitored"; });
    return out;
  };
  EXPECT_TRUE(of("interstice = { alarm = true }\n").empty());
  const auto looked = of("interstice = { alarm = false, monitored = 2026-11-10 }\n");
  ASSERT_EQ(looked.size(), 1U);
  EXPECT_EQ(due(looked.front()), "2026-12-10");
  EXPECT_EQ(looked.front().clause, "40 CFR 280.41(a), 280.43(g)");
  const auto neither = of("");
  ASSERT_EQ(neither.size(), 1U);
  EXPECT_EQ(neither.front().state, DutyState::no_record);
  EXPECT_FALSE(neither.front().instead.empty());
}

/// Of two ways that are both kept the days are of the one due later, and so is the clause.
TEST(Calendar, AnAlternativeOfAnOwnSetHasItsOwnClause) {
  const auto way = [](const std::string& id, const std::string& figure, const std::string& clause) {
    return "[[requirement]]\nid = \"" + id + "\"\nroute = \"container\"\nwords = \"" + id + "\"\nfigure = \"" + figure +
           "\"\nevery = \"3 years\"\nclause = \"" + clause + "\"\n";
  };
  const site::RuleSet own =
      rule_set(way("watched", "spill-container-monitored", "Own 1") + way("tested", "spill-container-tested", "Own 2") +
               "edition = \"of 2025\"\nseen = \"text\"\n");
  const site::Site site = site_of(
      "[[tank]]\nid = \"T1\"\n  [[tank.fill]]\n  id = \"F1\"\n  spill_container = { double_wall = true, tested = "
      "2026-10-01, monitored = 2026-09-20 }\n");
  const auto duties = calendar(site, {own}).duties;
  ASSERT_EQ(duties.size(), 1U);
  EXPECT_EQ(duties.front().what, "tested");
  EXPECT_EQ(duties.front().figure, "spill-container-tested");
  EXPECT_EQ(duties.front().clause, "Own 2");
  EXPECT_EQ(duties.front().edition, "of 2025");
  EXPECT_TRUE(duties.front().clause_verified);
}

/// Also where a set has the name and the words of a built-in one.
TEST(Calendar, TheWordsOfABuiltInRuleDoNotBringItsClause) {
  const auto built_in = calendar(site_of("rules = [\"us-federal\"]\n"), {}).duties;
  const auto walk = std::ranges::find(built_in, "walk-through-yearly", &Duty::rule);
  ASSERT_NE(walk, built_in.end());
  site::RuleSet own =
      rule_set("[[requirement]]\nid = \"walk\"\nwords = \"" + walk->what +
               "\"\nfigure = \"walked-annual\"\nevery = \"6 months\"\nclause = \"Own 3\"\nseen = \"told\"\n");
  own.id.text = "us-federal";
  const auto duties = calendar(site_of(""), {own}).duties;
  ASSERT_EQ(duties.size(), 1U);
  EXPECT_EQ(duties.front().clause, "Own 3");
  EXPECT_EQ(duties.front().edition, "of 2026; as other texts tell it");
  EXPECT_FALSE(duties.front().clause_verified);
}

// Records

/// The test of a record, or the look, and the duty that it moves.
struct Moves {
  std::string site;
  std::string rule;
  Records records;
};

Records with(const site::records::Test& test) {
  Records out;
  out.tests.push_back(test);
  return out;
}
Records with(const site::records::Inspection& inspection) {
  Records out;
  out.inspections.push_back(inspection);
  return out;
}

std::vector<Moves> all_that_records_prove() {
  constexpr Date day{2026, 11, 20, {}};
  const std::string federal = "rules = [\"us-federal\", \"us-fire-code\", \"us-osha\", \"eu\"]\n";
  const std::string product = "[[product]]\nid = \"regular\"\nkind = \"gasoline-e10\"\n";
  const auto tank = [&](const std::string& more) {
    return federal + product + "[[tank]]\nid = \"T1\"\nproduct = \"regular\"\n" + more + "\n";
  };
  const auto line = [&](const std::string& more) {
    return tank("") +
           "[[pump]]\nid = \"P1\"\ntank = \"T1\"\n[[dispenser]]\nid = \"D1\"\n[[dispenser.inlet]]\nproduct = "
           "\"regular\"\nshear_valve = { anchored = true }\n[[line]]\nid = \"trunk\"\nfrom = \"P1\"\nto = "
           "\"D1.regular\"\nlength = \"60 ft\"\n" +
           more + "\n";
  };
  const std::string old = "installed = 2010-01-01\n";
  return {
      {tank("fill = [{ id = \"F1\", spill_container = {} }]"), "spill-container-tight",
       with(test_of(TestKind::spill_container, "F1", day))},
      {tank("fill = [{ id = \"F1\", spill_container = { double_wall = true } }]"), "spill-container-tight",
       with(look("walls", "F1", day))},
      {tank("fill = [{ id = \"F1\", overfill_valve = {} }]"), "overfill-device-inspected",
       with(test_of(TestKind::overfill_device, "F1", day))},
      {tank("gauge = { kind = \"automatic\" }"), "gauge-yearly", with(test_of(TestKind::sensor, "T1", day))},
      {tank(old), "tank-monitored", with(look("interstice", "T1", day))},
      {tank(old), "tank-monitored", with(test_of(TestKind::gauge_leak_test, "T1", day))},
      {tank(old), "tank-monitored", with(test_of(TestKind::statistics, "T1", day))},
      {tank(old + "well = [{ id = \"W1\" }]"), "tank-monitored", with(look("wells", "W1", day))},
      {tank("lined = 2005-01-01"), "lined-tank-sound", with(look("inside", "T1", day))},
      {line("interstice = { alarm = false }\ninstalled = 2020-01-01"), "line-monitored",
       with(look("interstice", "trunk", day))},
      {line("interstice = { watch = \"sump\" }"), "interstice-gear-yearly",
       with(test_of(TestKind::interstice, "trunk", day))},
      {line(""), "shear-valve-yearly", with(test_of(TestKind::shear_valve_trip, "D1.regular", day))},
      {line("acceptance = { kind = \"pneumatic\" }"), "line-tested-again",
       with(test_of(TestKind::line_acceptance, "trunk", day))},
      {federal, "hand-held-yearly", with(test_of(TestKind::hand_held, "station", day))},
      {federal, "walk-through-30-days", with(look("30-day", "F1", day))},
      {federal, "walk-through-yearly", with(look("annual", "F1", day))},
  };
}

TEST(Calendar, ARecordMovesTheDueDay) {
  for (const Moves& one : all_that_records_prove()) {
    const site::Site site = site_of(one.site);
    const auto duty_of = [&](const Records* records) -> std::optional<Duty> {
      for (Duty& duty : calendar(site, {}, records).duties) {
        if (duty.rule == one.rule) return std::move(duty);
      }
      return std::nullopt;
    };
    const auto before = duty_of(nullptr);
    const auto after = duty_of(&one.records);
    ASSERT_TRUE(before && after) << one.rule;
    EXPECT_TRUE(!before->last_done || checks::text(*before->last_done) == "2005-01-01") << one.rule;  // as lined
    ASSERT_TRUE(after->last_done) << one.rule;
    EXPECT_EQ(checks::text(*after->last_done), "2026-11-20") << one.rule;
    EXPECT_EQ(before->id, after->id);
  }
}

/// It is no lack of a record, whichever other way the rule allows.
TEST(Calendar, ATestThatFailedStandsFirstWithItsDay) {
  Records records = with(test_of(TestKind::emergency_stop, "E1", {2026, 10, 14, {}}, false));
  const site::Site site = site_of(stop("2026-05-01") + "[[emergency_stop]]\nid = \"E2\"\ntested = 2020-01-01\n");
  const Calendar made = calendar(site, {stop_rule("1 year")}, &records);
  ASSERT_EQ(made.duties.size(), 2U);
  const Duty& first = made.duties.front();
  EXPECT_EQ(first.subject, "E1");
  EXPECT_EQ(first.state, DutyState::failed);
  EXPECT_EQ(first.reason, "failed on 2026-10-14");
  EXPECT_EQ(first.enter, "mend it and test again");
  EXPECT_EQ(due(first), "none");
  EXPECT_EQ(made.duties.back().state, DutyState::overdue);
  EXPECT_EQ(made.counts.failed, 1);
  EXPECT_EQ(made.counts.no_record, 0);
  records.tests.push_back(test_of(TestKind::emergency_stop, "E1", {2026, 10, 20, {}}));
  EXPECT_EQ(calendar(site, {stop_rule("1 year")}, &records).counts.failed, 0);
}

TEST(Calendar, AnotherWayDoesNotHideATestThatFailed) {
  const Records records = with(test_of(TestKind::spill_container, "F1", {2026, 10, 14, {}}, false));
  const site::Site site = site_of(
      "rules = [\"us-federal\"]\n[[tank]]\nid = \"T1\"\n  [[tank.fill]]\n  id = \"F1\"\n"
      "  spill_container = { double_wall = true, monitored = 2026-11-20 }\n");
  const Calendar made = calendar(site, {}, &records);
  ASSERT_FALSE(made.duties.empty());
  EXPECT_EQ(made.duties.front().rule, "spill-container-tight");
  EXPECT_EQ(made.duties.front().state, DutyState::failed);
}

TEST(Calendar, TheStudiesCountRecordsToo) {
  const site::Site site = test::station(test::site_text("hollin-gap"));
  const auto due_of = [&](const Records* records) {
    const checks::Studied studied = checks::study_for_checks(site, nullptr);
    const auto made = calendar_of(checks::check_station(checks::facts_of(site, studied, today, records), studied), {});
    for (const Duty& duty : made.duties) {
      if (duty.id == "line-test/leak-detector-yearly/P1") return due(duty);
    }
    return std::string("no such duty");
  };
  const Records passed = with(test_of(TestKind::leak_detector, "P1", {2026, 11, 20, {}}));
  EXPECT_EQ(due_of(&passed), "2027-11-20");
  EXPECT_NE(due_of(nullptr), "2027-11-20");
  const Records failed = with(test_of(TestKind::leak_detector, "P1", {2026, 11, 20, {}}, false));
  EXPECT_EQ(due_of(&failed), "none");
}

/// Whichever stands first in the file: without times it is not told which came last.
TEST(Calendar, ADayOnWhichATestWasPassedAndFailedProvesNothing) {
  const site::Site site = site_of(stop(""));
  const auto due_of = [&](std::vector<site::records::Test> tests) {
    Records records;
    records.tests = std::move(tests);
    return due(calendar(site, {stop_rule("1 year")}, &records).duties.at(0));
  };
  site::records::Test passed = test_of(TestKind::emergency_stop, "E1", {2026, 11, 2, {}});
  site::records::Test failed = test_of(TestKind::emergency_stop, "E1", {2026, 11, 2, {}}, false);
  EXPECT_EQ(due_of({passed}), "2027-11-02");
  EXPECT_EQ(due_of({passed, failed}), "none");
  EXPECT_EQ(due_of({failed, passed}), "none");
  failed.at.time = Duration::from_si(9.0 * 3600.0);
  passed.at.time = Duration::from_si(14.0 * 3600.0);
  EXPECT_EQ(due_of({failed, passed}), "2027-11-02");
  passed.at.day = {2026, 11, 3, {}};
  passed.at.time.reset();
  EXPECT_EQ(due_of({failed, passed}), "2027-11-03");
}

// Every one of the example stations

TEST(Calendar, IdsAreUniqueAndStay) {
  for (const char* name : {"hollin-gap", "ludd-bank", "marle-cross", "pell-ridge", "site-s", "thornby", "truck-lane"}) {
    const site::Site site = test::station(test::site_text(name));
    const checks::Studied studied = checks::study_for_checks(site, nullptr);
    const auto result = checks::check_station(checks::facts_of(site, studied, today, nullptr), studied);
    const Calendar one = calendar_of(result);
    const Calendar two = calendar_of(result);
    std::set<std::string> ids;
    for (std::size_t i = 0; i < one.duties.size(); ++i) {
      ids.insert(one.duties[i].id);
      EXPECT_EQ(one.duties[i].id, two.duties[i].id);
    }
    EXPECT_EQ(ids.size(), one.duties.size()) << name;
  }
}

TEST(Calendar, OverdueStandsFirstAndAllAreCounted) {
  const site::Site site = test::station(test::site_text("hollin-gap"));
  const checks::Studied studied = checks::study_for_checks(site, nullptr);
  const Calendar made =
      calendar_of(checks::check_station(checks::facts_of(site, studied, {2028, 6, 1, {}}, nullptr), studied));
  ASSERT_GT(made.counts.overdue, 0);
  for (std::size_t i = 1; i < made.duties.size(); ++i) EXPECT_LE(made.duties[i - 1].state, made.duties[i].state);
  const DutyCounts& n = made.counts;
  EXPECT_EQ(n.failed + n.overdue + n.due_soon + n.no_record + n.later + n.not_determined,
            static_cast<int>(made.duties.size()));
}

/// The federal clauses that come with the study of lines are not held against a station that names other rules alone.
TEST(Calendar, RulesThatASiteDoesNotNameHaveNoDuties) {
  std::string text = test::site_text("hollin-gap");
  const std::string named = "rules = [\"us-federal\", \"us-fire-code\"]";
  ASSERT_NE(text.find(named), std::string::npos);
  text.replace(text.find(named), named.size(), "rules = [\"eu\"]");
  const site::Site site = test::station(text);
  const checks::Studied studied = checks::study_for_checks(site, nullptr);
  const auto made = calendar_of(checks::check_station(checks::facts_of(site, studied, today, nullptr), studied));
  for (const Duty& duty : made.duties) EXPECT_NE(duty.set, "line-test") << duty.id;
}

// Days that cannot be

TEST(Calendar, ADayToComeIsAnErrorWithItsPlace) {
  const std::string text = "format = 1\n[site]\nname = \"Case (invented)\"\n" + stop("2027-01-01");
  const Calendar made = calendar(site::read_site(text).value, {stop_rule("1 year")});
  ASSERT_EQ(made.wrong_days.size(), 1U);
  const Diagnostic& one = made.wrong_days.front();
  EXPECT_EQ(one.severity, Severity::error);
  EXPECT_EQ(text.substr(one.where->begin, one.where->end - one.where->begin), "2027-01-01");
  EXPECT_EQ(made.duties.front().state, DutyState::no_record);
  EXPECT_EQ(due(made.duties.front()), "none");
}

std::vector<Diagnostic> told_of(const std::string& rows) {
  std::vector<SourceText> texts{{"site", ""}, {"tests.csv", "day,time,kind,part,passed\n" + rows}};
  Parsed<Records> read;
  store::read_records_text(*store::find_kind("tests"), texts, read);
  EXPECT_TRUE(read.ok());
  return checks::check_records(read.value, today);
}

TEST(CheckRecords, ATestOfADayToComeIsAnError) {
  EXPECT_TRUE(told_of("2026-11-30,,sump,D1,yes\n").empty());
  const auto told = told_of("2026-12-01,,sump,D1,yes\n");
  ASSERT_EQ(told.size(), 1U);
  EXPECT_EQ(told.front().severity, Severity::error);
  EXPECT_EQ(told.front().where->text, 1U);
  EXPECT_EQ(told.front().where->begin, 26U);  // behind the head
}

TEST(CheckRecords, PassedAndFailedOnOneDayIsToldUnlessTheTimesTellTheOrder) {
  const auto told = told_of("2026-11-02,,sump,D1,yes\n2026-11-02,09:00,sump,D1,no\n");
  ASSERT_EQ(told.size(), 1U);
  EXPECT_EQ(told.front().severity, Severity::warning);
  EXPECT_EQ(told.front().related.size(), 1U);
  EXPECT_TRUE(told_of("2026-11-02,09:00,sump,D1,no\n2026-11-02,14:00,sump,D1,yes\n").empty());
  EXPECT_TRUE(told_of("2026-11-02,,sump,D1,yes\n2026-11-02,09:00,sump,D2,no\n").empty());
  EXPECT_TRUE(told_of("2026-11-02,,sump,D1,yes\n2026-11-03,,sump,D1,no\n").empty());
}

/// Of a part that the station does not have, or has under another kind; what is written freely is no part.
TEST(CheckRecords, APartThatIsNotThereIsToldWithTheNearestName) {
  const site::Site site = test::station(test::site_text("hollin-gap"));
  const auto told_parts = [&](const std::string& kind, const std::string& head, const std::string& row) {
    std::vector<SourceText> texts{{"site", ""}, {kind + ".csv", head + "\n" + row}};
    Parsed<Records> read;
    store::read_records_text(*store::find_kind(kind), texts, read);
    EXPECT_TRUE(read.ok());
    return checks::check_record_parts(read.value, site);
  };
  const auto of_test = [&](const std::string& row) { return told_parts("tests", "day,kind,part,passed", row); };
  EXPECT_TRUE(of_test("2026-11-02,leak-detector,P1,yes\n2026-11-02,shear-valve-trip,D1.regular,yes\n").empty());
  const auto wrong = of_test("2026-11-02,leak-detector,P11,yes\n");
  ASSERT_EQ(wrong.size(), 1U);
  EXPECT_EQ(wrong.front().severity, Severity::warning);
  EXPECT_EQ(wrong.front().message, "the station has no pump 'P11': the record proves nothing");
  EXPECT_EQ(wrong.front().hint, "did you mean 'P1'?");
  EXPECT_EQ(wrong.front().where->text, 1U);
  EXPECT_EQ(of_test("2026-11-02,leak-detector,T1,yes\n").size(), 1U);  // a tank, no pump
  const auto of_look = [&](const std::string& row) {
    return told_parts("inspections", "day,kind,part,what,in_order", row);
  };
  EXPECT_EQ(of_look("2026-11-02,interstice,T9,dry,yes\n").size(), 1U);
  EXPECT_TRUE(of_look("2026-11-02,30-day,kiosk,extinguisher,yes\n").empty());
}

}  // namespace
}  // namespace forecourse::handover
