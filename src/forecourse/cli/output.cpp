#include "forecourse/cli/output.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <ctime>
#include <filesystem>
#include <system_error>

#include "forecourse/cli/console.h"

namespace forecourse::cli {

namespace {

std::tm local_time() {
  const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
  std::tm local{};
  localtime_r(&now, &local);
  return local;
}

}  // namespace

std::string today() {
  const std::tm local = local_time();
  static constexpr const char* months[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                           "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  return std::to_string(local.tm_mday) + " " + months[local.tm_mon] + " " + std::to_string(local.tm_year + 1900);
}

std::optional<site::Date> day_of(const std::string& text) {
  if (text.empty()) {
    const std::tm local = local_time();
    return site::Date{local.tm_year + 1900, local.tm_mon + 1, local.tm_mday, {}};
  }
  site::Date day;
  char after = 0;
  const int read = std::sscanf(text.c_str(), "%4d-%2d-%2d%c", &day.year, &day.month, &day.day, &after);
  const std::chrono::year_month_day date{std::chrono::year(day.year),
                                         std::chrono::month(static_cast<unsigned>(day.month)),
                                         std::chrono::day(static_cast<unsigned>(day.day))};
  if (read == 3 && day.month > 0 && day.day > 0 && date.ok()) return day;
  print_error("error: --on is a day, but '" + text + "' is written\n  hint: write 2026-11-25\n");
  return std::nullopt;
}

bool make_folder(const std::string& folder) {
  std::error_code trouble;
  std::filesystem::create_directories(folder, trouble);
  if (trouble) print_error(folder + ": error: cannot be made: " + trouble.message() + "\n");
  return !trouble;
}

bool falls_short(const std::vector<checks::Finding>& findings) {
  return std::any_of(findings.begin(), findings.end(),
                     [](const checks::Finding& finding) { return finding.state == checks::FindingState::falls_short; });
}

}  // namespace forecourse::cli
