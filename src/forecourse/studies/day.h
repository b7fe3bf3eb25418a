#pragma once

#include <compare>
#include <string>

#include "forecourse/site/records/moment.h"

namespace forecourse::studies {

/// A calendar day, counted from 1970-01-01.
struct Day {
  int number = 0;

  friend auto operator<=>(const Day&, const Day&) = default;
};

[[nodiscard]] Day day_of(const site::Date& date);
[[nodiscard]] site::Date date_of(Day day);
/// The first day of its month.
[[nodiscard]] Day month_of(Day day);
/// The first day of the month after (1) or before (-1).
[[nodiscard]] Day month_beside(Day day, int months);

/// "2026-11-05"
[[nodiscard]] std::string text(Day day);
/// "2026-11"
[[nodiscard]] std::string month_text(Day day);

/// Hours since 1970-01-01 0:00, local; a day is counted as 24 hours, also where the clock is put forward or back.
/// \param untimed hours since midnight that stand for a moment without a time
[[nodiscard]] double hours_of(const site::records::Moment& moment, double untimed);

}  // namespace forecourse::studies
