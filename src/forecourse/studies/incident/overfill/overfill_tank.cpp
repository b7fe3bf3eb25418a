#include <optional>
#include <utility>

#include "forecourse/site/liquid_level.h"
#include "forecourse/studies/incident/overfill/overfill_setup.h"
#include "forecourse/studies/incident/setup/tank_contents.h"

namespace forecourse::studies::overfilling {
namespace {

void warn_of_shape(const site::Tank& tank, std::vector<std::string>& warnings) {
  const std::string name = "tank '" + tank.id.text + "'";
  if (pitch_of(tank) != 0.0)
    warnings.push_back(name + " is pitched: it is taken as level, with the depth at the middle of its length");
  if (tank.chart.empty() && !tank.shape->heads.empty() && tank.shape->heads.text != "flat")
    warnings.push_back("the heads of " + name + " are taken as flat: it holds a little more");
  if (!tank.siphoned_with.empty())
    warnings.push_back("what runs from " + name + " into tanks that it is siphoned with is left out");
}

/// Depth when the drop begins, from the reading, or from the level of the liquid above the tank's bottom [m].
std::optional<double> depth_of(const site::Site& site, const site::Tank& tank, Inputs& inputs) {
  if (tank.reading && tank.reading->depth)
    return at_middle(tank, *inputs.take("depth in the tank when the drop begins", tank.reading->depth, "m"),
                     tank.reading->at ? std::optional(tank.reading->at->likely.si()) : std::nullopt);
  const auto level = site::liquid_level(site, tank.id.text);
  if (!level || !tank.bottom_elevation) return std::nullopt;
  return at_middle(tank, *level - tank.bottom_elevation->likely.si(), 0.0);
}

}  // namespace

void set_tank(const site::Site& site, Inputs& inputs, Setup& setup) {
  const site::Tank& tank = *setup.tank;
  auto vessel = vessel_of(tank);
  if (auto* why = std::get_if<std::string>(&vessel)) {
    setup.problem = std::move(*why);
    return;
  }
  setup.everything.tank = std::get<parts::TankVolume>(vessel);
  warn_of_shape(tank, setup.warnings);
  const auto depth = depth_of(site, tank, inputs);
  if (!depth) {
    setup.problem = "how much is in tank '" + tank.id.text + "' is not entered: add reading = { depth = ... }";
    return;
  }
  setup.depth = *depth;
  setup.everything.in_tank = setup.everything.tank->volume(*depth);
}

}  // namespace forecourse::studies::overfilling
