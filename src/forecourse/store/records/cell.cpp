#include "forecourse/store/records/cell.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>

#include "forecourse/base/unit_text.h"
#include "forecourse/site/text/read_run.h"
#include "forecourse/store/csv/csv_writer.h"

namespace forecourse::store {
namespace {

using Outcome = std::variant<Value, CellFault>;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

bool all_digits(std::string_view text) { return !text.empty() && std::ranges::all_of(text, is_digit); }

int number_of(std::string_view digits) {
  int value = 0;
  for (const char c : digits) value = 10 * value + (c - '0');
  return value;
}

std::string shown(std::string_view text) { return "'" + site::shortened(text) + "'"; }

bool exists(int year, int month, int day) {
  const std::chrono::year_month_day date{std::chrono::year(year), std::chrono::month(static_cast<unsigned>(month)),
                                         std::chrono::day(static_cast<unsigned>(day))};
  return year >= 1950 && year <= 2150 && date.ok();
}

std::string iso(int year, int month, int day) { return fmt::format("{:04}-{:02}-{:02}", year, month, day); }

/// The three numbers of a date as they stand, parted by '-', '/' or '.'; none when it is not three numbers.
std::optional<std::array<std::string_view, 3>> three_numbers(std::string_view text) {
  std::array<std::string_view, 3> parts;
  for (std::size_t i = 0; i < 3; ++i) {
    const std::size_t end = std::min(text.find_first_of("-/."), text.size());
    parts[i] = text.substr(0, end);
    if (!all_digits(parts[i]) || parts[i].size() > 4 || (i < 2) != (end < text.size())) return std::nullopt;
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return parts;
}

/// Two digits as a year of 1980 to 2079; four as they are; none for other lengths.
std::optional<int> year_of(std::string_view digits) {
  const int value = number_of(digits);
  if (digits.size() == 4) return value;
  if (digits.size() != 2) return std::nullopt;
  return value < 80 ? 2000 + value : 1900 + value;
}

/// What a date with the year last can mean, as hints are written: "2026-03-04 or 2026-04-03".
std::string meanings(int first, int second, int year) {
  std::string out;
  if (exists(year, first, second)) out = iso(year, first, second);
  if (first != second && exists(year, second, first)) out += (out.empty() ? "" : " or ") + iso(year, second, first);
  return out;
}

constexpr const char* write_a_day = "write 2026-11-02: year, month, day";

/// Why a date with its year last cannot be taken without being told the order.
CellFault year_last(const std::string& said, const std::string& can_be) {
  const bool two = can_be.find(" or ") != std::string::npos;
  return {said + (two ? " can be read in two ways" : " does not begin with its year"),
          can_be.empty() ? write_a_day : "write " + can_be + ", or state the order of all dates in a mapping"};
}

/// Why a date is none in the order that was stated.
CellFault wrong_order(const std::string& said, bool month_first, bool other) {
  const std::string order = month_first ? "month, day, year" : "day, month, year";
  return {said + " is none in the order " + order,
          other ? "is the order " + std::string(month_first ? "day/month/year" : "month/day/year") + "?" : write_a_day};
}

Outcome day_value(int year, int month, int day) {
  Value value;
  value.text = iso(year, month, day);
  return value;
}

/// A date whose year stands last, in the order that the form states.
Outcome day_of_year_last(const std::string& said, const std::array<std::string_view, 3>& parts, DateOrder order) {
  const std::optional<int> year = year_of(parts[2]);
  const int a = number_of(parts[0]);
  const int b = number_of(parts[1]);
  if (order == DateOrder::year_first) return year_last(said, year ? meanings(a, b, *year) : std::string());
  const bool month_first = order == DateOrder::month_first;
  const int month = month_first ? a : b;
  const int day = month_first ? b : a;
  if (year && exists(*year, month, day)) return day_value(*year, month, day);
  return wrong_order(said, month_first, year && exists(*year, day, month));
}

Outcome read_day(const Column& column, std::string_view text, const CellForm& form) {
  const std::string said = std::string(column.name) + " is a day, but " + shown(text);
  const auto parts = three_numbers(text);
  if (!parts) return CellFault{said + " is none", write_a_day};
  if ((*parts)[0].size() != 4) return day_of_year_last(said, *parts, form.dates);
  const int year = number_of((*parts)[0]);
  const int month = number_of((*parts)[1]);
  const int day = number_of((*parts)[2]);
  if (exists(year, month, day)) return day_value(year, month, day);
  return CellFault{said + " is not in the calendar (or not from 1950 to 2150)", write_a_day};
}

/// Hours to add to a 12-hour time, by its last letters; none: it is a 24-hour time.
std::optional<int> half_of_day(std::string_view text) {
  std::string end;
  for (const char c : text.substr(text.size() - std::min<std::size_t>(text.size(), 4))) {
    if (c != '.' && c != ' ' && !is_digit(c)) end += static_cast<char>(c | 0x20);
  }
  if (end == "am") return 0;
  if (end == "pm") return 12;
  return std::nullopt;
}

/// Hours, minutes and seconds of "6:30" or "06:30:15".
std::optional<std::array<int, 3>> clock_parts(std::string_view clock) {
  std::array<int, 3> parts{};
  for (std::size_t count = 0; count < parts.size(); ++count) {
    const std::size_t colon = std::min(clock.find(':'), clock.size());
    const std::string_view digits = clock.substr(0, colon);
    if (!all_digits(digits) || digits.size() > 2 || (count > 0 && digits.size() != 2)) return std::nullopt;
    parts[count] = number_of(digits);
    if (colon == clock.size()) return count > 0 ? std::optional(parts) : std::nullopt;
    clock.remove_prefix(colon + 1);
  }
  return std::nullopt;
}

Outcome read_time(const Column& column, std::string_view text) {
  const CellFault none{std::string(column.name) + " is a time of day, but " + shown(text) + " is none",
                       "write 06:30, 06:30:15 or 6:30 AM"};
  const std::optional<int> shift = half_of_day(text);
  const auto found = clock_parts(shift ? text.substr(0, text.find_last_of("0123456789") + 1) : text);
  if (!found) return none;
  std::array<int, 3> parts = *found;
  if (parts[1] > 59 || parts[2] > 59) return none;
  if (shift) {
    if (parts[0] < 1 || parts[0] > 12) return none;
    parts[0] = parts[0] % 12 + *shift;
  }
  if (parts[0] == 24) return CellFault{none.message, "midnight is 00:00 of the day that begins"};
  if (parts[0] > 23) return none;
  Value value;
  value.number = std::chrono::duration<double>(std::chrono::hours(parts[0]) + std::chrono::minutes(parts[1]) +
                                               std::chrono::seconds(parts[2]))
                     .count();
  value.text = fmt::format("{:02}:{:02}", parts[0], parts[1]);
  if (parts[2] > 0) value.text += fmt::format(":{:02}", parts[2]);
  return value;
}

Outcome read_fact(const Column& column, std::string_view text) {
  std::string word(text);
  for (char& c : word) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  constexpr std::array<std::string_view, 4> yes{"yes", "true", "y", "1"};
  constexpr std::array<std::string_view, 4> no{"no", "false", "n", "0"};
  Value value;
  value.number = std::ranges::find(yes, word) != yes.end() ? 1.0 : 0.0;
  value.text = value.number > 0.0 ? "yes" : "no";
  if (value.number == 0.0 && std::ranges::find(no, word) == no.end()) {
    return CellFault{std::string(column.name) + " is yes or no, but " + shown(text) + " is written",
                     "write yes or no; leave it empty when it is not known"};
  }
  return value;
}

Outcome read_word(const Column& column, std::string_view text) {
  const auto found = std::ranges::find(column.words, text);
  if (found == column.words.end()) {
    return CellFault{std::string(column.name) + " cannot be " + shown(text),
                     site::offer(text, column.words, "write one of")};
  }
  Value value;
  value.text = text;
  value.number = static_cast<double>(found - column.words.begin());
  return value;
}

Outcome read_name(const Column& column, std::string_view text) {
  constexpr std::size_t longest = 400;
  text = without_guard(text);
  const bool control =
      std::ranges::any_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x20 && c != '\t'; });
  if (text.size() > longest || (control && column.key)) {
    return CellFault{fmt::format("{} is longer than {} bytes, or of several lines", column.name, longest),
                     "is a quote missing before it?"};
  }
  Value value;
  value.text = text;
  return value;
}

/// The numbers of a cell with a point for the decimal mark and without groups; none when groups are not of three.
std::optional<std::string> with_point(std::string_view text, const CellForm& form) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool between = i > 0 && is_digit(text[i - 1]) && i + 1 < text.size() && is_digit(text[i + 1]);
    if (between && form.thousands != '\0' && text[i] == form.thousands) {
      const std::size_t end = std::min(text.find_first_not_of("0123456789", i + 1), text.size());
      if (end - i != 4) return std::nullopt;
      continue;
    }
    if (form.decimal == ',' && text[i] == '.' && between) return std::nullopt;
    out += text[i] == form.decimal ? '.' : text[i];
  }
  return out;
}

bool in_range(double value, const Range& range) {
  return value <= range.high && (range.above_low ? value > range.low : value >= range.low);
}

/// True for a number without a unit.
bool is_bare(std::string_view text) { return is_digit(text.back()) || text.back() == '.'; }

Outcome read_number(const Column& column, std::string_view text, const CellForm& form, std::string_view unit) {
  Value value;
  const bool plain = form.decimal == '.' && form.thousands == '\0';
  const std::optional<std::string> pointed = plain ? std::string(text) : with_point(text, form);
  if (!pointed) {
    return CellFault{std::string(column.name) + " is " + column.quantity->noun + ", but " + shown(text) +
                         " does not fit the marks that the mapping states",
                     "decimal and thousands of the mapping say how numbers are written"};
  }
  value.text = *pointed;
  if (!unit.empty() && is_bare(value.text)) value.text += " " + std::string(unit);
  const auto read = read_quantity(value.text, *column.quantity);
  if (const auto* error = std::get_if<UnitTextError>(&read)) {
    const bool no_unit = unit.empty() && is_bare(text);
    return CellFault{std::string(column.name) + " " + error->message,
                     no_unit ? error->hint + ", or say the unit in the header: " + std::string(column.name) + " [...]"
                             : error->hint};
  }
  value.number = std::get<double>(read);
  if (!in_range(value.number, column.range)) {
    return CellFault{fmt::format("{} is {}, but must be {}", column.name, value.text, column.range.words),
                     std::string(column.outside)};
  }
  return value;
}

}  // namespace

std::variant<Value, CellFault> read_cell(const Column& column, const CsvCell& cell, const CellForm& form,
                                         std::string_view unit) {
  Outcome read = [&]() -> Outcome {
    switch (column.type) {
      case ColumnType::day:
        return read_day(column, cell.text, form);
      case ColumnType::time:
        return read_time(column, cell.text);
      case ColumnType::name:
        return read_name(column, cell.text);
      case ColumnType::word:
        return read_word(column, cell.text);
      case ColumnType::fact:
        return read_fact(column, cell.text);
      case ColumnType::quantity:
        break;
    }
    return read_number(column, cell.text, form, unit);
  }();
  if (Value* value = std::get_if<Value>(&read)) value->where = cell.where;
  return read;
}

std::string_view part_of_moment(std::string_view cell, ColumnType type) {
  const std::size_t gap = cell.find_first_of(" T");
  if (type == ColumnType::day) return cell.substr(0, gap);
  if (gap == std::string_view::npos) return {};
  const std::string_view rest = cell.substr(gap + 1);
  return rest.substr(std::min(rest.find_first_not_of(' '), rest.size()));
}

std::optional<site::Date> stored_day(std::string_view text) {
  if (text.size() != 10 || !all_digits(text.substr(0, 4)) || !all_digits(text.substr(5, 2)) ||
      !all_digits(text.substr(8, 2))) {
    return std::nullopt;
  }
  return site::Date{number_of(text.substr(0, 4)), number_of(text.substr(5, 2)), number_of(text.substr(8, 2)), {}};
}

}  // namespace forecourse::store
