#pragma once

#include "forecourse/site/entered.h"

namespace forecourse::store {

/// What clocks do at a local time.
enum class ClockChange {
  none,
  skipped,  ///< set forward over this time: it does not exist
  doubled,  ///< set back: this time comes twice
};

/// Where clocks change in the United States: forward from 2 to 3 in the morning of the second Sunday in March, back
/// from 2 to 1 in that of the first Sunday in November, since 2007. Not every place there changes its clocks. \source
/// [energy_policy_act_2005, section 110]
[[nodiscard]] ClockChange clock_change(const site::Date& day, double seconds_since_midnight);

}  // namespace forecourse::store
