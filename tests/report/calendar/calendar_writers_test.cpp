// The calendar as it is written: JSON, calendar file, page.
#include <gtest/gtest.h>

#include "forecourse/report/calendar/calendar_report.h"
#include "forecourse/report/calendar/calendar_view.h"
#include "support/stations.h"

namespace forecourse::report {
namespace {

using handover::Duty;

handover::Calendar calendar_on(const site::Date& on, const char* station = "hollin-gap") {
  const site::Site site = test::station(test::site_text(station));
  const checks::Studied studied = checks::study_for_checks(site, nullptr);
  handover::Calendar out =
      handover::calendar_of(checks::check_station(checks::facts_of(site, studied, on, nullptr), studied));
  out.version = "0";
  return out;
}

handover::Calendar calendar() { return calendar_on({2026, 11, 30, {}}); }

std::string ics_of(const handover::Calendar& made, std::optional<int> remind = {}) {
  return calendar_ics(made, {"20261130T120000Z", "Hollin Gap (invented)", remind});
}

std::size_t count(const std::string& text, const std::string& what) {
  std::size_t out = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++out;
  return out;
}

bool has(const std::string& text, const std::string& what) { return count(text, what) > 0; }

/// A calendar of one duty with texts of its own.
handover::Calendar of_one(const std::string& what, const checks::Period& every = {1, 0, 0},
                          const site::Date& last = {2026, 3, 1, {}}) {
  handover::Calendar out;
  out.version = "0";
  out.today = {2026, 11, 30, {}};
  Duty duty;
  duty.id = "own/stop/E1";
  duty.subject = "E1";
  duty.what = what;
  duty.every = every;
  duty.last_done = last;
  duty.due = checks::later(*duty.last_done, every);
  duty.days_left = checks::days_between(out.today, *duty.due);
  duty.state = handover::DutyState::later;
  out.duties.push_back(duty);
  return out;
}

TEST(CalendarJson, HoldsEveryDutyWithItsStrip) {
  const handover::Calendar made = calendar();
  const Json document = calendar_document(made);
  const Json& duties = document["result"]["duties"];
  ASSERT_EQ(duties.size(), made.duties.size());
  for (const Json& duty : duties) {
    EXPECT_EQ(duty["strip"].size(), 12U);
    EXPECT_EQ(duty["due"].is_null(), duty["days_left"].is_null());
    EXPECT_FALSE(duty["id"].get<std::string>().empty());
  }
  EXPECT_EQ(document["cautions"].size(), 4U);
  EXPECT_EQ(document["options"]["within_days"], 90);
}

/// The place is that of the last test, also where it failed.
TEST(CalendarJson, AFailedDutyTellsWhereThatIsEntered) {
  handover::Calendar made = of_one("x");
  Duty& duty = made.duties.front();
  const auto told = [&] {
    const ReportFacts facts{{}, {}, {{"site.toml", "a\nb\n"}, {"tests.csv", "day\n2026-10-14\n"}}};
    const Json one = calendar_document(made, facts)["result"]["duties"][0];
    return one["done_by"].dump() + " " + one["done_where"]["file"].dump() + " " + one["done_where"]["line"].dump();
  };
  duty.last_done->where = {0, 2, 3};
  EXPECT_EQ(told(), "\"site file\" \"site.toml\" 2");
  duty.failed = site::Date{2026, 10, 14, {1, 4, 14}};
  EXPECT_EQ(told(), "\"records\" \"tests.csv\" 2");
  duty.last_done.reset();
  EXPECT_EQ(told(), "\"records\" \"tests.csv\" 2");
  duty.failed.reset();
  EXPECT_EQ(told(), "null null null");
}

// SOURCE: [rfc_5545, 3.1] lines of at most 75 octets, folded with CRLF and a blank, no character torn apart

TEST(CalendarFile, FoldsBetweenCharacters) {
  std::string long_text;
  for (int i = 0; i < 90; ++i) long_text += i % 3 == 0 ? "\xE2\x82\xAC" : "x";
  const std::string ics = ics_of(of_one(long_text));
  std::string unfolded;
  std::size_t begin = 0;
  for (std::size_t end = ics.find("\r\n"); end != std::string::npos; end = ics.find("\r\n", begin)) {
    const std::string line = ics.substr(begin, end - begin);
    EXPECT_LE(line.size(), 75U);
    const auto first = static_cast<unsigned char>(line.size() > 1 && line[0] == ' ' ? line[1] : line[0]);
    EXPECT_NE(first & 0xC0U, 0x80U) << "a line begins within a character";
    unfolded += line.starts_with(' ') ? line.substr(1) : "\n" + line;
    begin = end + 2;
  }
  EXPECT_EQ(begin, ics.size());
  EXPECT_TRUE(has(unfolded, "\nSUMMARY:E1: " + long_text + "\n"));
}

// SOURCE: [rfc_5545, 3.3.11]
TEST(CalendarFile, EscapesTexts) {
  const std::string ics = ics_of(of_one("a\\b; c, d\ne\r"));
  EXPECT_TRUE(has(ics, "SUMMARY:E1: a\\\\b\\; c\\, d\\ne\r\n")) << ics;
}

TEST(CalendarFile, AnIdStaysAndTheSequenceRises) {
  handover::Calendar made = of_one("a stop is tested");
  const auto at = [&](const char* stamp, const char* station, const char* file) {
    return calendar_ics(made, {stamp, station, {}, file});
  };
  const std::string before = at("20261130T120000Z", "Hollin Gap (invented)", "sites/hollin-gap.toml");
  made.duties.front().last_done = site::Date{2026, 2, 1, {}};  // corrected to an earlier day
  made.duties.front().due = site::Date{2027, 2, 1, {}};
  const std::string after = at("20261130T120001Z", "Hollin Gap, renamed", "/home/hollin-gap.toml");
  const auto uid = [](const std::string& ics) { return ics.substr(ics.find("UID:"), 60); };
  EXPECT_EQ(uid(before), uid(after));
  // Closed form: 2525 days from 2020-01-01, and 12 hours.
  EXPECT_TRUE(has(before, "SEQUENCE:218203200\r\n")) << before;
  EXPECT_TRUE(has(after, "SEQUENCE:218203201\r\n")) << after;
  EXPECT_TRUE(has(after, "DTSTART;VALUE=DATE:20270201\r\n"));
  EXPECT_NE(uid(after), uid(at("20261130T120000Z", "Hollin Gap (invented)", "other.toml")));
  EXPECT_NE(uid(at("20261130T120000Z", "A", "")), uid(at("20261130T120000Z", "B", "")));
}

TEST(CalendarFile, WhatIsLateStandsOnTheDayOfTheCalendar) {
  handover::Calendar made = of_one("x");
  Duty& duty = made.duties.front();
  duty.due = site::Date{2026, 11, 4, {}};
  duty.days_left = -26;
  const std::string overdue = ics_of(made, 30);
  EXPECT_TRUE(has(overdue, "DTSTART;VALUE=DATE:20261130\r\nSUMMARY:E1: x\\, overdue since 2026-11-04\r\n")) << overdue;
  EXPECT_FALSE(has(overdue, "VALARM"));
  duty.due.reset();
  duty.days_left.reset();
  EXPECT_TRUE(has(ics_of(made), "\r\nDESCRIPTION:1 duty without a known day is not in it.\r\n"));
  duty.failed = site::Date{2026, 10, 14, {}};
  const std::string failed = ics_of(made);
  EXPECT_TRUE(has(failed, "SUMMARY:E1: x\\, failed on 2026-10-14: mend it and test again\r\n")) << failed;
  EXPECT_FALSE(has(failed, "not in it"));
}

TEST(CalendarFile, RemindsOnlyOfWhatComesBackLater) {
  EXPECT_FALSE(has(ics_of(of_one("x")), "VALARM"));
  EXPECT_TRUE(has(ics_of(of_one("x"), 30), "TRIGGER:-P30D\r\n"));
  EXPECT_FALSE(has(ics_of(of_one("x", {0, 0, 30}, {2026, 11, 20, {}}), 30), "VALARM"));
  EXPECT_TRUE(has(ics_of(of_one("x", {0, 0, 31}, {2026, 11, 20, {}}), 30), "VALARM"));
}

TEST(CalendarFile, HoldsOnlyWhatHasADay) {
  const handover::Calendar made = calendar();
  std::size_t dated = 0;
  for (const Duty& duty : made.duties) dated += duty.due ? 1 : 0;
  EXPECT_GT(dated, 0U);
  EXPECT_EQ(count(ics_of(made), "BEGIN:VEVENT\r\n"), dated);
}

TEST(CalendarPage, NamesEveryStateThatItHolds) {
  const handover::Calendar made = calendar_on({2028, 6, 1, {}});
  const std::string body = calendar_body(made);
  EXPECT_TRUE(has(body, "Overdue"));
  EXPECT_TRUE(has(body, "Without a record"));
  EXPECT_TRUE(has(body, "id=\"calendar-strip"));
  EXPECT_TRUE(has(calendar_section(made), "overdue"));
}

/// The report of a station has little room.
TEST(CalendarPage, TheSectionOfAStationIsShort) {
  for (const char* name : {"hollin-gap", "marle-cross", "thornby"}) {
    EXPECT_LT(calendar_section(calendar_on({2026, 11, 30, {}}, name)).size(), 3000U) << name;
  }
}

TEST(CalendarPage, CautionsOfAnEscapeStandFirst) {
  const site::Site site = test::station(test::site_text("hollin-gap"));
  const std::string page = calendar_report(calendar(), site);
  EXPECT_TRUE(has(page, "stop the pump, clear people away, call the fire service"));
}

}  // namespace
}  // namespace forecourse::report
