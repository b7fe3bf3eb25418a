#include "forecourse/checks/rules/period.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "forecourse/studies/day.h"

namespace forecourse::checks {
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
  const int months = 12 * (day.year + period.years) + day.month - 1 + period.months;
  const studies::Day first = studies::day_of({months / 12, months % 12 + 1, 1, {}});
  const studies::Day last{studies::month_beside(first, 1).number - 1};
  const int number = std::min(first.number + day.day - 1, last.number);
  return studies::date_of({number + period.days});
}

bool is_before(const site::Date& a, const site::Date& b) { return days_between(a, b) > 0; }

int days_between(const site::Date& from, const site::Date& to) {
  return studies::day_of(to).number - studies::day_of(from).number;
}

std::string text(const site::Date& day) { return fmt::format("{:04}-{:02}-{:02}", day.year, day.month, day.day); }

}  // namespace forecourse::checks
