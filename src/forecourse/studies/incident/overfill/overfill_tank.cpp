#include <numbers>
#include <optional>

#include "forecourse/site/liquid_level.h"
#include "forecourse/studies/incident/overfill/overfill_setup.h"

namespace forecourse::studies::overfilling {
namespace {

parts::DipChart chart_of(const site::Tank& tank) {
  parts::DipChart chart;
  for (const site::ChartPoint& p : tank.chart) chart.points.push_back({p.depth.si(), p.volume.si()});
  return chart;
}

std::optional<parts::TankShape> shape_of(const site::TankShape& shape) {
  if (shape.kind.text == "horizontal-cylinder" && shape.inside_diameter && shape.length)
    return parts::LevelCylinder{shape.inside_diameter->likely.si(), shape.length->likely.si()};
  if (shape.kind.text == "vertical-cylinder" && shape.inside_diameter && shape.height) {
    const double d = shape.inside_diameter->likely.si();
    return parts::UprightTank{0.25 * std::numbers::pi * d * d, shape.height->likely.si()};
  }
  if (shape.kind.text == "rectangular" && shape.length && shape.width && shape.height)
    return parts::UprightTank{shape.length->likely.si() * shape.width->likely.si(), shape.height->likely.si()};
  return std::nullopt;
}

double pitch_of(const site::Tank& tank) {
  const bool pitched = tank.shape && tank.shape->pitch && tank.chart.empty();
  return pitched ? tank.shape->pitch->likely.si() : 0.0;
}

void warn_of_shape(const site::Tank& tank, std::vector<std::string>& warnings) {
  const std::string name = "tank '" + tank.id.text + "'";
  if (pitch_of(tank) != 0.0)
    warnings.push_back(name + " is pitched: it is taken as level, with the depth at the middle of its length");
  if (tank.chart.empty() && !tank.shape->heads.empty() && tank.shape->heads.text != "flat")
    warnings.push_back("the heads of " + name + " are taken as flat: it holds a little more");
  if (!tank.siphoned_with.empty())
    warnings.push_back("what runs from " + name + " into tanks that it is siphoned with is left out");
}

/// What shape or chart the tank has; why not, if it has none that can be computed.
std::string take_shape(const site::Tank& tank, Case& c) {
  const std::string name = "tank '" + tank.id.text + "'";
  if (!tank.chart.empty()) {
    c.tank = chart_of(tank);
    return {};
  }
  if (!tank.compartments.empty())
    return name +
           " is divided by inner heads, and how much its compartment holds is not computed here: enter its "
           "chart";
  if (!tank.shape) return "the shape of " + name + " is not entered, nor a chart";
  const auto shape = shape_of(*tank.shape);
  if (!shape) return "the sizes of " + name + " are not all entered, nor a chart";
  c.tank = *shape;
  return {};
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

double at_middle(const site::Tank& tank, double depth, std::optional<double> at) {
  const double pitch = pitch_of(tank);
  if (pitch == 0.0 || !at || !tank.shape->length) return depth;
  return depth + pitch * (*at - 0.5 * tank.shape->length->likely.si());
}

void set_tank(const site::Site& site, Inputs& inputs, Setup& setup) {
  const site::Tank& tank = *setup.tank;
  setup.problem = take_shape(tank, setup.everything);
  if (!setup.problem.empty()) return;
  warn_of_shape(tank, setup.warnings);
  const auto depth = depth_of(site, tank, inputs);
  if (!depth) {
    setup.problem = "how much is in tank '" + tank.id.text + "' is not entered: add reading = { depth = ... }";
    return;
  }
  setup.depth = *depth;
  setup.everything.in_tank = parts::volume_at_depth(setup.everything.tank, *depth);
}

}  // namespace forecourse::studies::overfilling
