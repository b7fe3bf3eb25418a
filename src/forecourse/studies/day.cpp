#include "forecourse/studies/day.h"

#include <fmt/format.h>

namespace forecourse::studies {
namespace {

constexpr int days_in_era = 146097;  ///< 400 years
constexpr int epoch = 719468;        ///< days from 0000-03-01 to 1970-01-01

int floor_div(int a, int b) { return a / b - (a % b < 0 ? 1 : 0); }

/// Day of the Gregorian calendar, with years that begin in March. closed form
Day counted(int year, int month, int day) {
  const int y = month <= 2 ? year - 1 : year;
  const int era = floor_div(y, 400);
  const int of_era = y - 400 * era;
  const int of_year = (153 * (month + (month > 2 ? -3 : 9)) + 2) / 5 + day - 1;
  return {days_in_era * era + 365 * of_era + of_era / 4 - of_era / 100 + of_year - epoch};
}

}  // namespace

Day day_of(const site::Date& date) { return counted(date.year, date.month, date.day); }

site::Date date_of(Day day) {
  const int z = day.number + epoch;
  const int era = floor_div(z, days_in_era);
  const int of_era = z - days_in_era * era;
  const int year_of_era = (of_era - of_era / 1460 + of_era / 36524 - of_era / 146096) / 365;
  const int of_year = of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
  const int march_month = (5 * of_year + 2) / 153;
  const int month = march_month + (march_month < 10 ? 3 : -9);
  return {year_of_era + 400 * era + (month <= 2 ? 1 : 0), month, of_year - (153 * march_month + 2) / 5 + 1, {}};
}

Day month_of(Day day) {
  const site::Date date = date_of(day);
  return counted(date.year, date.month, 1);
}

Day month_beside(Day day, int months) {
  const site::Date date = date_of(day);
  const int all = 12 * date.year + date.month - 1 + months;
  return counted(floor_div(all, 12), all - 12 * floor_div(all, 12) + 1, 1);
}

std::string text(Day day) {
  const site::Date date = date_of(day);
  return fmt::format("{:04}-{:02}-{:02}", date.year, date.month, date.day);
}

std::string month_text(Day day) { return text(day).substr(0, 7); }

double hours_of(const site::records::Moment& moment, double untimed) {
  constexpr double seconds = 3600.0;
  const double time = moment.time ? moment.time->si() / seconds : untimed;
  return 24.0 * day_of(moment.day).number + time;
}

}  // namespace forecourse::studies
