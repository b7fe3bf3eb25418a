#pragma once

#include "forecourse/site/records/moment.h"

namespace forecourse::site::records {

/// Fuel that was metered and went back into a tank: what a proving or a flow test drew.
struct Returned {
  Moment at;
  Name tank;
  std::optional<Volume> volume;  ///< as metered, observed
  Name note;
};

}  // namespace forecourse::site::records
