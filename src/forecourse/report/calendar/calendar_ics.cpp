#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <filesystem>

#include "forecourse/report/calendar/calendar_report.h"
#include "forecourse/report/calendar/calendar_view.h"

namespace forecourse::report {
namespace {

using handover::Duty;

/// \source [rfc_5545, 3.1]: octets of a line, its end not counted
constexpr std::size_t longest_line = 75;

bool is_continuation(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

/// A line of content with its end, folded between characters.
/// \source [rfc_5545, 3.1]
std::string folded(std::string_view line) {
  std::string out;
  std::size_t room = longest_line;
  while (line.size() > room) {
    std::size_t cut = room;
    while (cut > 0 && is_continuation(line[cut])) --cut;
    out.append(line.substr(0, cut)).append("\r\n ");
    line.remove_prefix(cut);
    room = longest_line - 1;  // after the blank
  }
  return out.append(line).append("\r\n");
}

/// \source [rfc_5545, 3.3.11]; control characters, which a text may not hold, are left out
std::string escaped(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (const char c : text) {
    if (c == '\n') {
      out += "\\n";
    } else if (static_cast<unsigned char>(c) >= 0x20U && c != '\x7F') {
      if (c == '\\' || c == ';' || c == ',') out += '\\';
      out += c;
    }
  }
  return out;
}

std::string line(std::string_view name, std::string_view value) { return folded(fmt::format("{}:{}", name, value)); }
std::string text_line(std::string_view name, std::string_view text) { return line(name, escaped(text)); }

std::string day_of(const site::Date& day) { return fmt::format("{:04}{:02}{:02}", day.year, day.month, day.day); }

/// Tells stations apart by the names of their files, whatever characters these hold.
/// \source [fnv_draft, FNV-1a] offset and prime of 64 bits, from memory, not verified
std::string key_of(std::string_view station) {
  std::uint64_t hash = 14695981039346656037ULL;
  for (const char c : station) hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211ULL;
  return fmt::format("{:016x}", hash);
}

/// \source [rfc_7986, 5.1]
std::string name_line(const std::string& station) {
  return text_line("NAME", (station.empty() ? "Station without a name" : station) + ": tests and inspections");
}

std::string description(const Duty& duty) {
  std::string out = duty.what + ".\nPart: " + duty.subject + "\nRule: " + clause_in_words(duty);
  if (!duty.edition.empty()) out += " (" + duty.edition + ")";
  out += "\nLast done: " + done_in_words(duty) + "; " + in_words(duty.every);
  if (!duty.reason.empty()) out += "\nOpen: " + duty.reason + (duty.enter.empty() ? "" : "; " + duty.enter);
  if (!duty.by_whom.empty()) out += "\nBy: " + duty.by_whom;
  if (!duty.sheet.empty()) out += "\nSheet: " + duty.sheet;
  return out + "\n" + calendar_cautions().front();
}

/// \source [rfc_5545, 3.6.6]
std::string reminder(const Duty& duty, int days) {
  return line("BEGIN", "VALARM") + line("ACTION", "DISPLAY") + line("TRIGGER", fmt::format("-P{}D", days)) +
         text_line("DESCRIPTION", duty.subject + ": " + duty.what) + line("END", "VALARM");
}

bool is_late(const Duty& duty) { return duty.failed || (duty.due && *duty.days_left < 0); }

bool has_event(const Duty& duty) { return duty.due || duty.failed; }

/// "F1: a spill container is tested, overdue since 2026-11-04"
std::string summary(const Duty& duty) {
  std::string out = duty.subject + ": " + duty.what;
  if (duty.failed) return out + ", failed on " + checks::text(*duty.failed) + ": mend it and test again";
  return is_late(duty) ? out + ", overdue since " + checks::text(*duty.due) : out;
}

/// [s] from the first day of 2020 to a time of writing, "20261130T120000Z": it only rises, and stays within the range
/// of a sequence until 2088. 0 where it is no time.
/// \source [rfc_5545, 3.8.7.4]
int sequence_of(const std::string& stamp) {
  constexpr site::Date first{2020, 1, 1, {}};
  constexpr std::size_t length_of_stamp = 16;
  if (stamp.size() != length_of_stamp) return 0;
  const auto number = [&](std::size_t at, std::size_t count) { return std::stoi(stamp.substr(at, count)); };
  const int days = checks::days_between(first, {number(0, 4), number(4, 2), number(6, 2), {}});
  return ((days * 24 + number(9, 2)) * 60 + number(11, 2)) * 60 + number(13, 2);
}

bool comes_back_within(const Duty& duty, int days) {
  return checks::days_between(*duty.due, checks::later(*duty.due, duty.every)) <= days;
}

/// \source [rfc_5545, 3.6.1]: an event of a day has no end and takes that day
std::string event(const Duty& duty, const IcsFacts& facts, const std::string& station_key, const site::Date& today) {
  std::string out = line("BEGIN", "VEVENT");
  out += text_line("UID", duty.id + "." + station_key + "@forecourse");
  out += line("DTSTAMP", facts.stamp);
  out += line("LAST-MODIFIED", facts.stamp);
  out += line("SEQUENCE", std::to_string(sequence_of(facts.stamp)));
  out += line("DTSTART;VALUE=DATE", day_of(is_late(duty) ? today : *duty.due));
  out += text_line("SUMMARY", summary(duty));
  out += text_line("DESCRIPTION", description(duty));
  out += text_line("CATEGORIES", duty.set_title);
  out += line("TRANSP", "TRANSPARENT");
  if (facts.remind && !is_late(duty) && !comes_back_within(duty, *facts.remind)) out += reminder(duty, *facts.remind);
  return out + line("END", "VEVENT");
}

}  // namespace

std::string left_out_of_ics(const handover::Calendar& calendar) {
  const auto count =
      std::count_if(calendar.duties.begin(), calendar.duties.end(), [](const Duty& duty) { return !has_event(duty); });
  if (count == 0) return {};
  return fmt::format("{} without a known day {} not in it.", count == 1 ? "1 duty" : fmt::format("{} duties", count),
                     count == 1 ? "is" : "are");
}

std::string calendar_ics(const handover::Calendar& calendar, const IcsFacts& facts) {
  const std::string file = std::filesystem::path(facts.file).stem().string();
  const std::string station_key = key_of(file.empty() ? facts.station : file);
  std::string out = line("BEGIN", "VCALENDAR") + line("VERSION", "2.0");
  out += text_line("PRODID", "-//forecourse//" + calendar.version + "//EN");
  out += line("CALSCALE", "GREGORIAN") + line("METHOD", "PUBLISH");
  out += name_line(facts.station);
  if (const std::string left = left_out_of_ics(calendar); !left.empty()) out += text_line("DESCRIPTION", left);
  for (const Duty& duty : calendar.duties) {
    if (has_event(duty)) out += event(duty, facts, station_key, calendar.today);
  }
  return out + line("END", "VCALENDAR");
}

}  // namespace forecourse::report
