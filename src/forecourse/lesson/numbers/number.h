#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "forecourse/lesson/ground.h"
#include "forecourse/lesson/numbers/worked_incidents.h"
#include "forecourse/lesson/told.h"

namespace forecourse::lesson {

/// What a number is picked from: the station with its studies, and the part that its page is shown at.
struct From {
  const Ground& ground;
  std::string at;
  WorkedIncidents& incidents;
};

/// A value picked out of a study, and where the command line prints it.
struct Picked {
  std::optional<double> value = {};  ///< [SI]
  Proof proof = {};                  ///< without a command: no study was made
  std::string reason = {};           ///< why there is no value, and what to enter
  std::string rests_on = {};         ///< an unpublished default that it rests on
  std::optional<Ends> range = {};    ///< where the value is one of a spread
};

/// A kind of number: what a page can show of a station.
struct NumberKind {
  std::string_view id;  ///< "room-to-95"
  std::string_view label;
  Quantity quantity = Quantity::flow;
  Picked (*pick)(const From& from) = nullptr;
};

/// Every kind, in the order of the course.
[[nodiscard]] const std::vector<NumberKind>& number_kinds();
/// Null where there is none.
[[nodiscard]] const NumberKind* find_number(std::string_view id);

/// The number of a page.
[[nodiscard]] Number number_of(const NumberKind& kind, const From& from);

}  // namespace forecourse::lesson
