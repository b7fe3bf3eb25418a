#pragma once

#include "forecourse/site/records/moment.h"

namespace forecourse::site::records {

/// Fuel that was delivered into a tank.
struct Delivered {
  Moment at;
  Name tank;
  Name product;
  std::optional<Volume> gross;             ///< observed
  std::optional<Volume> net;               ///< at the reference temperature
  std::optional<Temperature> temperature;  ///< of the fuel as loaded
  std::optional<Density> density;          ///< as the ticket states it
  std::optional<Duration> duration;        ///< of the drop
  Name ticket;
};

}  // namespace forecourse::site::records
