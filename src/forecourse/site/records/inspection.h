#pragma once

#include "forecourse/site/records/moment.h"

namespace forecourse::site::records {

/// One thing looked at in a walk-through.
struct Inspected {
  Name part;
  Name what;  ///< in words
  Fact in_order;
  Name note;
};

/// A walk-through of a station.
struct Inspection {
  Moment at;
  Name kind;  ///< "30-day", "annual" or other words
  Name by;
  std::vector<Inspected> items;
};

}  // namespace forecourse::site::records
