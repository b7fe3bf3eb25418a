#include "forecourse/cli/output.h"

#include <algorithm>
#include <chrono>
#include <ctime>
#include <filesystem>
#include <system_error>

#include "forecourse/cli/console.h"

namespace forecourse::cli {

std::string today() {
  const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
  std::tm local{};
  localtime_r(&now, &local);
  static constexpr const char* months[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                           "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  return std::to_string(local.tm_mday) + " " + months[local.tm_mon] + " " + std::to_string(local.tm_year + 1900);
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
