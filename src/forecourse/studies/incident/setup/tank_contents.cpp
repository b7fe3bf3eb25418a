#include "forecourse/studies/incident/setup/tank_contents.h"

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

#include "forecourse/base/constants.h"
#include "forecourse/network/tanks/tank_inside.h"

namespace forecourse::studies {
namespace {

constexpr std::size_t samples = 97;

template <class Part>
const Part* with_id(const std::vector<Part>& parts, const std::string& id) {
  const auto found = std::find_if(parts.begin(), parts.end(), [&](const Part& part) { return part.id.text == id; });
  return found == parts.end() ? nullptr : &*found;
}

/// A tank, or a compartment of one.
struct Room {
  const site::Tank* tank = nullptr;
  const site::Compartment* compartment = nullptr;
  [[nodiscard]] std::string name() const {
    return compartment != nullptr ? "compartment '" + compartment->id.text + "'" : "tank '" + tank->id.text + "'";
  }
};

std::optional<Room> room_with_id(const site::Site& site, const std::string& id) {
  if (const site::Tank* tank = with_id(site.tanks, id)) return Room{tank, nullptr};
  for (const site::Tank& tank : site.tanks) {
    if (const site::Compartment* compartment = with_id(tank.compartments, id)) return Room{&tank, compartment};
  }
  return std::nullopt;
}

network::FlowTable fall_of(const parts::TankVolume& tank, double level, double usable, double density) {
  if (!(usable > 0.0)) return {};
  const double full = tank.volume(level);
  const double step = usable / static_cast<double>(samples - 1);
  std::vector<double> falls;
  for (std::size_t i = 0; i < samples; ++i) {
    const double left = i == 0 ? level : tank.level(full - step * static_cast<double>(i));
    falls.push_back(density * standard_gravity * (level - left));
  }
  return {0.0, step, std::move(falls)};
}

}  // namespace

std::variant<Contents, std::string> contents_for(const site::Site& site, const std::string& id, double density) {
  const site::Pump* pump = with_id(site.pumps, id);
  const auto room = pump != nullptr ? room_with_id(site, pump->tank.text) : std::nullopt;
  if (!room) return "pump '" + id + "' draws from no tank that is listed";
  if (room->compartment == nullptr && !room->tank->siphoned_with.empty())
    return room->name() + " is siphoned with others, and what they hold together is not computed here";
  auto found = network::tank_inside(*room->tank, room->compartment);
  if (auto* why = std::get_if<std::string>(&found)) return std::move(*why);
  const network::TankInside& inside = std::get<network::TankInside>(found);
  const auto level = network::tank_level(site, *room->tank, room->compartment, inside);
  if (!level) return "how much is in " + room->name() + " is not entered";
  Contents out;
  out.to_bottom = !pump->inlet_above_bottom;
  double inlet = 0.0;
  if (!out.to_bottom) {
    const auto at = pump->at ? std::optional(pump->at->likely.si()) : std::nullopt;
    inlet = inside.volume.level_at(inside.place(at), pump->inlet_above_bottom->likely.si());
  }
  out.usable = std::max(0.0, inside.volume.volume(*level) - inside.volume.volume(inlet));
  out.fall = fall_of(inside.volume, *level, out.usable, density);
  out.defaults = inside.defaults;
  return out;
}

}  // namespace forecourse::studies
