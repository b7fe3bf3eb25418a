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
handover::Calendar of_one(const std::string& what, const checks::Period& every = {1, 0, 0}) {
  handover::Calendar out;
  out.version = "0";
  out.today = {2026, 11, 30, {}};
  Duty duty;
  duty.id = "own/stop/E1";
  duty.subject = "E1";
  duty.what = what;
  duty.every = every;
  duty.last_done = site::Date{2026, 3, 1, {}};
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
  made.duties.front().sequence = 9000;
  const std::string before = ics_of(made);
  made.duties.front().last_done = site::Date{2026, 11, 1, {}};
  made.duties.front().due = site::Date{2027, 11, 1, {}};
  made.duties.front().sequence = 9245;
  const std::string after = ics_of(made);
  const auto uid = [](const std::string& ics) { return ics.substr(ics.find("UID:"), 60); };
  EXPECT_EQ(uid(before), uid(after));
  EXPECT_TRUE(has(before, "SEQUENCE:9000\r\n"));
  EXPECT_TRUE(has(after, "SEQUENCE:9245\r\n"));
  EXPECT_TRUE(has(after, "DTSTART;VALUE=DATE:20271101\r\n"));
  const std::string other = calendar_ics(made, {"20261130T120000Z", "Another station (invented)", {}});
  EXPECT_NE(uid(after), uid(other));
}

TEST(CalendarFile, RemindsOnlyOfWhatComesBackLater) {
  EXPECT_FALSE(has(ics_of(of_one("x")), "VALARM"));
  EXPECT_TRUE(has(ics_of(of_one("x"), 30), "TRIGGER:-P30D\r\n"));
  EXPECT_FALSE(has(ics_of(of_one("x", {0, 0, 30}), 30), "VALARM"));
  EXPECT_TRUE(has(ics_of(of_one("x", {0, 0, 31}), 30), "VALARM"));
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
