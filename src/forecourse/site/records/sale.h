#pragma once

#include "forecourse/site/records/moment.h"

namespace forecourse::site::records {

/// Fuel sold: a single sale, or a total since the one before it. It names the hose whose meter told it; where only a
/// total is kept, the product or the tank.
struct Sale {
  Moment at;
  Name hose;
  Name product;
  Name tank;
  std::optional<Volume> volume;     ///< as metered, observed
  std::optional<Volume> totalizer;  ///< reading of the meter after it
  std::optional<Duration> fueling_time;
};

}  // namespace forecourse::site::records
