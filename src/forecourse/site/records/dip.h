#pragma once

#include "forecourse/site/records/moment.h"

namespace forecourse::site::records {

/// A level read in a tank, by stick or by gauge.
struct Dip {
  Moment at;
  Name tank;
  std::optional<Length> depth;
  std::optional<Length> water;
  std::optional<Volume> volume;  ///< as a gauge states it, observed
  std::optional<Temperature> temperature;
  Name by;  ///< "stick" or "gauge"
};

}  // namespace forecourse::site::records
