#include "forecourse/server/pages/day.h"

#include <fmt/chrono.h>

#include <array>
#include <chrono>
#include <ctime>

namespace forecourse::server {

site::Date today() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  return {local.tm_year + 1900, local.tm_mon + 1, local.tm_mday, {}};
}

std::string now_in_utc() {
  const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
  return fmt::format("{:%Y%m%dT%H%M%S}Z", fmt::gmtime(std::chrono::system_clock::to_time_t(now)));
}

std::string in_words(const site::Date& day) {
  static constexpr std::array months{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                     "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  return std::to_string(day.day) + " " + months.at(static_cast<std::size_t>(day.month - 1)) + " " +
         std::to_string(day.year);
}

}  // namespace forecourse::server
