#pragma once

#include <optional>
#include <string>

#include "forecourse/handover/calendar/calendar.h"
#include "forecourse/site/records/test.h"

namespace forecourse::handover {

/// The row of the records that shows that a duty was done, and moves its day.
struct Proof {
  std::optional<site::records::TestKind> test;  ///< empty: an inspection
  std::string inspection;                       ///< its word: "30-day"
  std::string part;                             ///< as records call it
};

/// Empty where no single row does: water in a tank is read with its dips, a meter is proved with its draws.
[[nodiscard]] std::optional<Proof> proof_of(const Duty& duty);

}  // namespace forecourse::handover
