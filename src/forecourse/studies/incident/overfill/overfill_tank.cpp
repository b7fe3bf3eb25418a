#include <optional>
#include <utility>

#include "forecourse/studies/incident/overfill/overfill_setup.h"

namespace forecourse::studies::overfilling {
namespace {

void warn_of_tank(const site::Tank& tank, bool charted, std::vector<std::string>& warnings) {
  const std::string name = "tank '" + tank.id.text + "'";
  const bool pitched = !charted && tank.shape->pitch && tank.shape->pitch->likely.si() != 0.0;
  if (pitched && tank.reading && tank.reading->depth && !tank.reading->at)
    warnings.push_back("where along " + name + " its depth was read is not entered: taken at its low end");
  if (!tank.siphoned_with.empty())
    warnings.push_back("what runs from " + name + " into tanks that it is siphoned with is left out");
}

/// Level when the drop begins, from the reading, or from the elevation of the surface [m].
std::optional<double> level_of(const site::Site& site, const site::Tank& tank, const network::TankInside& inside,
                               Inputs& inputs) {
  if (!tank.reading || !tank.reading->depth) return network::tank_level(site, tank, nullptr, inside);
  const auto& at = tank.reading->at;
  const double depth = *inputs.take("depth in the tank when the drop begins", tank.reading->depth, "m");
  return inside.volume.level_at(inside.place(at ? std::optional(at->likely.si()) : std::nullopt), depth);
}

}  // namespace

void set_tank(const site::Site& site, Inputs& inputs, Setup& setup) {
  const site::Tank& tank = *setup.tank;
  if (!setup.inside) {
    auto found = network::tank_inside(tank);
    if (auto* why = std::get_if<std::string>(&found)) {
      setup.problem = std::move(*why);
      return;
    }
    setup.inside = std::get<network::TankInside>(std::move(found));
  }
  setup.everything.tank = setup.inside->volume;
  setup.defaults.insert(setup.defaults.end(), setup.inside->defaults.begin(), setup.inside->defaults.end());
  warn_of_tank(tank, setup.inside->charted, setup.warnings);
  const auto level = level_of(site, tank, *setup.inside, inputs);
  if (!level) {
    setup.problem = "how much is in tank '" + tank.id.text + "' is not entered: add reading = { depth = ... }";
    return;
  }
  setup.level = *level;
  setup.everything.in_tank = setup.everything.tank->volume(*level);
}

}  // namespace forecourse::studies::overfilling
