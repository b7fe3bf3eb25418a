#include "forecourse/studies/delivery/limits.h"

#include <algorithm>

#include "forecourse/base/api_units.h"
#include "forecourse/fuel/kinds.h"
#include "forecourse/parts/escape/static_limit.h"
#include "forecourse/parts/vapor/stage_one.h"
#include "forecourse/parts/vapor/truck_limits.h"
#include "forecourse/parts/vapor/vent_table.h"

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
  if (!site.operations) return std::nullopt;
  const auto& all = site.operations->throughput;
  for (const site::Tank& tank : site.tanks) {
    const auto is_entered = [&](const site::Throughput& one) { return one.product == tank.product && one.per_month; };
    if (is_gasoline(site, tank.product.text) && std::none_of(all.begin(), all.end(), is_entered)) return std::nullopt;
  }
  double sum = 0.0;
  for (const site::Throughput& one : all) {
    if (is_gasoline(site, one.product.text) && one.per_month) sum += one.per_month->likely.si();
  }
  return parts::throughput_tier(sum) == parts::ThroughputTier::from_100000;
}

bool is_gasoline(const site::Site& site, const std::string& product) {
  for (const site::Product& p : site.products) {
    if (p.id.text != product) continue;
    const auto kind = fuel::kind_from_name(p.kind.text);
    return kind && fuel::is_gasoline(*kind);
  }
  return false;
}

}  // namespace forecourse::studies
