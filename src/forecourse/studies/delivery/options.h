#pragma once

#include <optional>
#include <string>
#include <vector>

namespace forecourse::studies {

/// What can be left out of a delivery, to see what it does.
enum class DeliveryPart { vapor_return, vent, vent_valve, overfill_valve, overfill_alarm, driver };
[[nodiscard]] const char* word(DeliveryPart part);

struct DeliveryOptions {
  std::string delivery;               ///< id; empty: the first of the site file
  std::string tank;                   ///< only what is dropped into this tank; empty: all
  std::optional<double> volume;       ///< [m3] brought, in place of that of the first compartment
  std::optional<double> rate;         ///< [m3/s] of each drop, in place of a computed one
  std::vector<DeliveryPart> without;  ///< left out
  std::vector<std::string> blocked;   ///< ids of vents, or of tanks with all their vents
  std::optional<double> stop_at;      ///< [s] the truck is shut
  bool table = true;                  ///< the cases beside the one that was asked for
  bool spans = true;                  ///< what each uncertain value does
  bool charts = true;
};

}  // namespace forecourse::studies
