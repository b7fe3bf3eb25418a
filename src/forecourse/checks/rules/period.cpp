#include "forecourse/checks/rules/period.h"

#include <fmt/format.h>

#include <charconv>
#include <chrono>

namespace forecourse::checks {
namespace {

std::chrono::year_month_day calendar(const site::Date& day) {
  return {std::chrono::year(day.year), std::chrono::month(static_cast<unsigned>(day.month)),
          std::chrono::day(static_cast<unsigned>(day.day))};
}

}  // namespace

std::optional<Period> read_period(std::string_view text) {
  int count = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), count);
  if (error != std::errc() || count <= 0) return std::nullopt;
  const std::string_view unit = text.substr(static_cast<std::size_t>(end - text.data()));
  if (unit == " year" || unit == " years") return Period{count, 0, 0};
  if (unit == " month" || unit == " months") return Period{0, count, 0};
  if (unit == " day" || unit == " days") return Period{0, 0, count};
  return std::nullopt;
}

site::Date later(const site::Date& day, const Period& period) {
  std::chrono::year_month_day moved =
      calendar(day) + std::chrono::years(period.years) + std::chrono::months(period.months);
  if (!moved.ok()) moved = moved.year() / moved.month() / std::chrono::last;
  moved = std::chrono::sys_days(moved) + std::chrono::days(period.days);
  return {static_cast<int>(moved.year()),
          static_cast<int>(static_cast<unsigned>(moved.month())),
          static_cast<int>(static_cast<unsigned>(moved.day())),
          {}};
}

int days_between(const site::Date& from, const site::Date& to) {
  return static_cast<int>((std::chrono::sys_days(calendar(to)) - std::chrono::sys_days(calendar(from))).count());
}

std::string text(const site::Date& day) { return fmt::format("{:04}-{:02}-{:02}", day.year, day.month, day.day); }

}  // namespace forecourse::checks
