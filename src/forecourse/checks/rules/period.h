#pragma once

#include <compare>
#include <optional>
#include <string>
#include <string_view>

#include "forecourse/site/entered.h"

namespace forecourse::checks {

/// A stretch of the calendar: "3 years", "30 days".
struct Period {
  int years = 0;
  int months = 0;
  int days = 0;
};

/// Reads "1 year", "3 years", "6 months", "30 days"; empty where it is none of these.
[[nodiscard]] std::optional<Period> read_period(std::string_view text);

/// The day a period later; the last of its month where that month has no such day.
[[nodiscard]] site::Date later(const site::Date& day, const Period& period);

/// Whether `a` lies before `b`.
[[nodiscard]] bool is_before(const site::Date& a, const site::Date& b);
/// [d] from one day to another; negative where it lies before.
[[nodiscard]] int days_between(const site::Date& from, const site::Date& to);

/// "2026-11-30"
[[nodiscard]] std::string text(const site::Date& day);

}  // namespace forecourse::checks
