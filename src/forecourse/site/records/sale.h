#pragma once

#include "forecourse/site/records/moment.h"

namespace forecourse::site::records {

/// Fuel sold through one hose: a single sale, or a meter's total over a day.
struct Sale {
  Moment at;
  Name hose;
  Name product;
  std::optional<Volume> volume;     ///< as metered, observed
  std::optional<Volume> totalizer;  ///< reading of the meter after it
  std::optional<Duration> fueling_time;
};

}  // namespace forecourse::site::records
