#include "forecourse/cli/output.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <system_error>

#include "forecourse/cli/console.h"
#include "forecourse/server/pages/day.h"

namespace forecourse::cli {

std::string today() { return server::in_words(server::today()); }

std::string now_in_utc() { return server::now_in_utc(); }

std::optional<site::Date> day_of(const std::string& text, const std::string& option) {
  if (text.empty()) return server::today();
  site::Date day;
  char after = 0;
  const int read = std::sscanf(text.c_str(), "%4d-%2d-%2d%c", &day.year, &day.month, &day.day, &after);
  const std::chrono::year_month_day date{std::chrono::year(day.year),
                                         std::chrono::month(static_cast<unsigned>(day.month)),
                                         std::chrono::day(static_cast<unsigned>(day.day))};
  if (read == 3 && day.month > 0 && day.day > 0 && date.ok()) return day;
  print_error("error: " + option + " is a day, but '" + text + "' is written\n  hint: write 2026-11-25\n");
  return std::nullopt;
}

bool make_folder(const std::string& folder) {
  std::error_code trouble;
  std::filesystem::create_directories(folder, trouble);
  if (trouble) print_error(folder + ": error: cannot be made: " + trouble.message() + "\n");
  return !trouble;
}

std::string beside_program(const std::string& name) {
  std::error_code trouble;
  const std::filesystem::path program = std::filesystem::read_symlink("/proc/self/exe", trouble);
  return trouble ? name : (program.parent_path() / name).string();
}

bool falls_short(const std::vector<checks::Finding>& findings) {
  return std::any_of(findings.begin(), findings.end(),
                     [](const checks::Finding& finding) { return finding.state == checks::FindingState::falls_short; });
}

}  // namespace forecourse::cli
