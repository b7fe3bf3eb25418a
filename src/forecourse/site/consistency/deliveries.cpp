#include "forecourse/site/consistency/deliveries.h"

#include <fmt/format.h>

#include <algorithm>

namespace forecourse::site {
namespace {

void check_compartment(const Site& site, const TruckCompartment& from, Findings& findings) {
  const auto tank =
      std::find_if(site.tanks.begin(), site.tanks.end(), [&](const Tank& t) { return t.id == from.tank; });
  if (from.tank.empty() || tank == site.tanks.end()) return;
  const bool divided = !tank->compartments.empty();
  if (!divided && !from.product.empty() && !tank->product.empty() && !(from.product == tank->product)) {
    Diagnostic& d = findings.error(from.tank.where,
                                   fmt::format("a compartment of {} is dropped into tank '{}', which holds {}",
                                               from.product.text, tank->id.text, tank->product.text),
                                   "name a tank of its product");
    relate(d, tank->product.where, "product of the tank");
  }
}

void check_branch(const Tank& tank, const Vent& vent, Findings& findings) {
  if (!vent.branch || !vent.shared.empty()) return;
  findings.error(vent.branch->where,
                 fmt::format("a branch of a vent of tank '{}' leads to no shared vent", tank.id.text),
                 "add shared with the same id at every tank of that vent, or enter its pipe alone");
}

/// Elevation zero of a site is its grade.
void check_vent(const Tank& tank, const Vent& vent, Findings& findings) {
  if (!vent.outlet_elevation || !(vent.outlet_elevation->likely.si() <= 0.0)) return;
  findings.error(vent.outlet_elevation->where, fmt::format("a vent of tank '{}' ends in the ground", tank.id.text),
                 "enter the elevation of its outlet above grade, which is elevation zero: \"12 ft\"");
}

}  // namespace

void check_deliveries(const Site& site, Findings& findings) {
  for (const Delivery& delivery : site.deliveries) {
    for (const TruckCompartment& from : delivery.compartments) check_compartment(site, from, findings);
  }
  for (const Tank& tank : site.tanks) {
    for (const Vent& vent : tank.vents) {
      check_branch(tank, vent, findings);
      check_vent(tank, vent, findings);
    }
  }
}

}  // namespace forecourse::site
