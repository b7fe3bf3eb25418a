#include "forecourse/handover/kit/needs.h"

#include <algorithm>

namespace forecourse::handover {
namespace {

constexpr const char* enter_pressure = "enter pump curve, level in the tank and elevations";

bool hangs(const StationPart& part) { return part.hose != nullptr; }

/// The greater of two, of which either may be missing.
void widen(std::optional<double>& most, const std::optional<double>& one) {
  if (one) most = std::max(most.value_or(*one), *one);
}

/// Whether a tank breathes through a vent: through its own, or one that it shares.
bool breathes_through(const site::Tank& tank, const site::Tank& owner, const site::Vent& vent) {
  if (&tank == &owner) return true;
  if (vent.shared.empty()) return false;
  return std::any_of(tank.vents.begin(), tank.vents.end(),
                     [&](const site::Vent& own) { return own.shared == vent.shared; });
}

bool holds(const site::Tank& tank, const std::vector<std::string>& products) {
  const auto is_one = [&](const site::Name& product) {
    return std::find(products.begin(), products.end(), product.text) != products.end();
  };
  return is_one(tank.product) || std::any_of(tank.compartments.begin(), tank.compartments.end(),
                                             [&](const site::Compartment& one) { return is_one(one.product); });
}

}  // namespace

Needs::Needs(const site::Site& site, const studies::FlowResult* flow) : site_(site), studied_(flow != nullptr) {
  if (flow == nullptr) return;
  for (const studies::LineAtRest& line : flow->lines_at_rest) {
    if (!line.reason.empty()) open_products_.push_back(line.product);
    for (const studies::RestPlace& place : line.places) {
      // What a check valve holds when its pump has stopped counts too, but is no pressure of a running pump.
      std::optional<double> most = place.shutoff_gauge;
      if (most) widen(most, place.held_gauge);
      // The place of a blended hose is in the line of each of its products.
      const auto [known, fresh] = pressure_at_.try_emplace(place.id, most);
      if (fresh) continue;
      std::optional<double>& both = known->second;
      both = both && most ? std::optional(std::max(*both, *most)) : std::nullopt;
    }
  }
}

RatingNeeded Needs::of(const StationPart& part, Bears bears) const {
  if (bears == Bears::fuel && !part.of_tanker) return of_fuel(part);
  if (bears == Bears::vapor) return of_vapor(part);
  return {};
}

RatingNeeded Needs::of_fuel(const StationPart& part) const {
  RatingNeeded out;
  out.bears = Bears::fuel;
  out.basis = pressure_basis;
  // The height of a nozzle, which stands first, does for what hangs between it and the dispenser; a line is as low as
  // its lower end.
  const std::size_t deciding = hangs(part) ? 1 : part.places.size();
  bool is_known = !part.places.empty();
  for (std::size_t i = 0; i < part.places.size(); ++i) {
    const auto found = pressure_at_.find(part.places[i]);
    const std::optional<double> one = found == pressure_at_.end() ? std::nullopt : found->second;
    widen(out.pressure_gauge, one);
    if (i < deciding) is_known = is_known && one;
  }
  const bool open = std::any_of(part.products.begin(), part.products.end(), [&](const std::string& product) {
    return std::find(open_products_.begin(), open_products_.end(), product) != open_products_.end();
  });
  if (open || !is_known) out.pressure_gauge.reset();
  if (!out.pressure_gauge) out.missing = enter_pressure;
  return out;
}

void Needs::add_tank_vents(const site::Tank& tank, RatingNeeded& out) const {
  for (const site::Tank& owner : site_.tanks) {
    for (const site::Vent& vent : owner.vents) {
      if (!vent.valve || !breathes_through(tank, owner, vent)) continue;
      if (vent.valve->opens_at) widen(out.pressure_gauge, vent.valve->opens_at->likely.si());
      if (vent.valve->vacuum_opens_at) widen(out.vacuum, vent.valve->vacuum_opens_at->likely.si());
    }
  }
}

RatingNeeded Needs::of_vapor(const StationPart& part) const {
  RatingNeeded out;
  out.bears = Bears::vapor;
  out.basis = "settings of the vent valve; with more flow than it lets through it rises above them";
  const bool of_tank = std::any_of(site_.tanks.begin(), site_.tanks.end(),
                                   [&](const site::Tank& tank) { return tank.id.text == part.owner; });
  for (const site::Tank& tank : site_.tanks) {
    if (of_tank ? tank.id.text == part.owner : holds(tank, part.products)) add_tank_vents(tank, out);
  }
  if (!out.pressure_gauge) out.missing = "enter opens_at of the vent valve";
  return out;
}

}  // namespace forecourse::handover
