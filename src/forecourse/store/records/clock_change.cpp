#include "forecourse/store/records/clock_change.h"

#include <chrono>

namespace forecourse::store {

ClockChange clock_change(const site::Date& day, double seconds_since_midnight) {
  using namespace std::chrono;
  const auto hour_of_day = floor<hours>(duration<double>(seconds_since_midnight)).count();
  if (day.year < 2007 || hour_of_day < 1 || hour_of_day > 2) return ClockChange::none;
  const sys_days date = year(day.year) / month(static_cast<unsigned>(day.month)) / day.day;
  if (hour_of_day == 2 && date == sys_days(year(day.year) / March / Sunday[2])) return ClockChange::skipped;
  if (hour_of_day == 1 && date == sys_days(year(day.year) / November / Sunday[1])) return ClockChange::doubled;
  return ClockChange::none;
}

}  // namespace forecourse::store
