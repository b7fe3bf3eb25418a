#include "forecourse/studies/delivery/limits.h"

#include "forecourse/base/api_units.h"
#include "forecourse/fuel/kinds.h"
#include "forecourse/parts/escape/static_limit.h"
#include "forecourse/parts/vapor/truck_limits.h"
#include "forecourse/parts/vapor/vent_table.h"

namespace forecourse::studies {

DeliveryLimits delivery_limits() {
  DeliveryLimits out;
  out.truck_pressure = parts::truck_pressure_limit;
  out.truck_vacuum = parts::truck_vacuum_limit;
  out.start_velocity = parts::start_of_fill_velocity;
  out.vent_height = meters_from_feet(12.0);
  out.vent_opens_low = pascal_from_inches_of_water(2.5);
  out.vent_opens_high = pascal_from_inches_of_water(6.0);
  out.vent_draws_low = pascal_from_inches_of_water(6.0);
  out.vent_draws_high = pascal_from_inches_of_water(10.0);
  return out;
}

std::optional<double> vent_size(double flow, double length) { return parts::vent_size_by_table(flow, length); }

bool is_gasoline(const site::Site& site, const std::string& product) {
  for (const site::Product& p : site.products) {
    if (p.id.text != product) continue;
    const auto kind = fuel::kind_from_name(p.kind.text);
    return kind && fuel::is_gasoline(*kind);
  }
  return false;
}

}  // namespace forecourse::studies
