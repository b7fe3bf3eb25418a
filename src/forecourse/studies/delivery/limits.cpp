#include "forecourse/studies/delivery/limits.h"

#include "forecourse/base/api_units.h"
#include "forecourse/parts/escape/static_limit.h"
#include "forecourse/parts/vapor/stage_one.h"
#include "forecourse/parts/vapor/truck_limits.h"
#include "forecourse/parts/vapor/vent_table.h"
#include "forecourse/studies/gasoline.h"

namespace forecourse::studies {

DeliveryLimits delivery_limits() {
  DeliveryLimits out;
  out.truck_pressure = parts::truck_pressure_limit;
  out.truck_vacuum = parts::truck_vacuum_limit;
  out.start_velocity = parts::start_of_fill_velocity;
  out.vent_height = meters_from_feet(12.0);
  return out;
}

std::optional<double> vent_size(double flow, double length) { return parts::vent_size_by_table(flow, length); }

std::optional<bool> is_in_top_tier(const site::Site& site) {
  const std::optional<double> throughput = gasoline_throughput(site);
  if (!throughput) return std::nullopt;
  return parts::throughput_tier(*throughput) == parts::ThroughputTier::from_100000;
}

}  // namespace forecourse::studies
