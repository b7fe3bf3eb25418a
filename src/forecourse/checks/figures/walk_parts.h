#pragma once

#include <string>

#include "forecourse/site/places.h"

// Parts of a station one by one, each with the id that a finding has.

namespace forecourse::checks {

/// The id of a part of a tank, or "T1 fill 1".
template <class Part>
[[nodiscard]] std::string id_in_tank(const site::Tank& tank, const std::vector<Part>& parts, const Part& part,
                                     const char* noun) {
  if (!part.id.empty()) return part.id.text;
  return tank.id.text + " " + noun + " " + std::to_string(&part - parts.data() + 1);
}

/// \param tell called with the hose and its dispenser
template <class Tell>
void each_hose_of(const site::Site& site, Tell tell) {
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Hose& hose : dispenser.hoses) tell(hose, dispenser);
  }
}

/// \param tell called with the id of the place, the inlet and its dispenser
template <class Tell>
void each_inlet_of(const site::Site& site, Tell tell) {
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) tell(site::place_name(dispenser, inlet), inlet, dispenser);
  }
}

/// \param tell called with the fill's id, or "T1 fill 1", the fill and its tank
template <class Tell>
void each_fill_of(const site::Site& site, Tell tell) {
  for (const site::Tank& tank : site.tanks) {
    for (const site::Fill& fill : tank.fills) tell(id_in_tank(tank, tank.fills, fill, "fill"), fill, tank);
  }
}

/// \param tell called with the vent's id, or "T1 vent 1", and the valve
template <class Tell>
void each_vent_valve_of(const site::Site& site, Tell tell) {
  for (const site::Tank& tank : site.tanks) {
    for (const site::Vent& vent : tank.vents) {
      if (vent.valve) tell(id_in_tank(tank, tank.vents, vent, "vent"), *vent.valve);
    }
  }
}

/// \param tell called with the id of the tank or dispenser, and its sump
template <class Tell>
void each_sump_of(const site::Site& site, Tell tell) {
  for (const site::Tank& tank : site.tanks) {
    if (tank.sump) tell(tank.id.text, *tank.sump);
  }
  for (const site::Dispenser& dispenser : site.dispensers) {
    if (dispenser.sump) tell(dispenser.id.text, *dispenser.sump);
  }
}

/// The product of an id, or null.
[[nodiscard]] inline const site::Product* product_of(const site::Site& site, const site::Name& id) {
  for (const site::Product& product : site.products) {
    if (product.id == id) return &product;
  }
  return nullptr;
}

/// Whether a product is sold as gasoline.
[[nodiscard]] inline bool is_gasoline(const site::Product* product) {
  return product != nullptr && product->kind.text.starts_with("gasoline");
}

}  // namespace forecourse::checks
