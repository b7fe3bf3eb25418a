#pragma once

#include "forecourse/site/entered.h"

namespace forecourse::site::records {

/// A day and a time of day of the record, local to the station.
struct Moment {
  Date day;
  std::optional<Duration> time;  ///< since midnight; empty: only the day is known
};

}  // namespace forecourse::site::records
