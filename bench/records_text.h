#pragma once

#include <fmt/format.h>

#include <chrono>
#include <string>

namespace forecourse::bench {

/// Files of an invented station with 20 tanks and 40 hoses: one dip a tank and one total a hose each day, two
/// deliveries a tank each week.
struct RecordsText {
  std::string dips = "day,time,tank,depth,water,temperature,by\n";
  std::string deliveries = "day,time,tank,gross,net,temperature,ticket\n";
  std::string sales = "day,time,hose,volume [gal],totalizer [gal]\n";
  std::size_t rows = 0;
};

inline RecordsText records_text(int years) {
  using namespace std::chrono;
  RecordsText out;
  const sys_days first = 2016y / January / 1;
  const int days_in_all = 365 * years;
  for (int n = 0; n < days_in_all; ++n) {
    const year_month_day date(first + days(n));
    const std::string day = fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()),
                                        static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
    for (int tank = 1; tank <= 20; ++tank) {
      out.dips += fmt::format("{},06:00,T{},{} {}/8 in,0.5 in,{} degF,stick\n", day, tank, 30 + (n * 7 + tank) % 50,
                              1 + n % 7, 50 + (n / 9) % 20);
      ++out.rows;
      if ((n + tank) % 7 > 1) continue;
      out.deliveries += fmt::format("{},11:30,T{},{} gal,{} gal,64.5 degF,{}\n", day, tank, 4000 + n % 900,
                                    3985 + n % 900, 100000 + n * 20 + tank);
      ++out.rows;
    }
    for (int hose = 1; hose <= 40; ++hose) {
      out.sales += fmt::format("{},23:59,D{}.a,{}.{},{}.{}\n", day, hose, 300 + (n * 13 + hose) % 200, n % 10,
                               1000 + n * 400, n % 10);
      ++out.rows;
    }
  }
  return out;
}

}  // namespace forecourse::bench
