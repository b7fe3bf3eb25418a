#include "forecourse/studies/incident/setup/tank_contents.h"

#include <algorithm>
#include <numbers>
#include <optional>
#include <utility>
#include <vector>

#include "forecourse/base/constants.h"
#include "forecourse/site/liquid_level.h"

namespace forecourse::studies {
namespace {

constexpr std::size_t samples = 97;

parts::DipChart chart_of(const site::Tank& tank) {
  parts::DipChart chart;
  for (const site::ChartPoint& p : tank.chart) chart.points.push_back({p.depth.si(), p.volume.si()});
  return chart;
}

std::optional<parts::TankShape> shape_of(const site::TankShape& shape) {
  if (shape.kind.text == "horizontal-cylinder" && shape.inside_diameter && shape.length)
    return parts::RoundTank{.diameter = shape.inside_diameter->likely.si(), .length = shape.length->likely.si()};
  if (shape.kind.text == "vertical-cylinder" && shape.inside_diameter && shape.height) {
    return parts::RoundTank{.diameter = shape.inside_diameter->likely.si(),
                            .length = shape.height->likely.si(),
                            .incline = 0.5 * std::numbers::pi};
  }
  if (shape.kind.text == "rectangular" && shape.length && shape.width && shape.height)
    return parts::BoxTank{
        .length = shape.length->likely.si(), .width = shape.width->likely.si(), .height = shape.height->likely.si()};
  return std::nullopt;
}

/// Depth at the middle of the tank's length, as read or as the level says [m].
std::optional<double> depth_in(const site::Site& site, const site::Tank& tank) {
  if (tank.reading && tank.reading->depth) {
    const auto& at = tank.reading->at;
    return at_middle(tank, tank.reading->depth->likely.si(), at ? std::optional(at->likely.si()) : std::nullopt);
  }
  const auto level = site::liquid_level(site, tank.id.text);
  if (!level || !tank.bottom_elevation) return std::nullopt;
  return at_middle(tank, *level - tank.bottom_elevation->likely.si(), 0.0);
}

template <class Part>
const Part* with_id(const std::vector<Part>& parts, const std::string& id) {
  const auto found = std::find_if(parts.begin(), parts.end(), [&](const Part& part) { return part.id.text == id; });
  return found == parts.end() ? nullptr : &*found;
}

network::FlowTable fall_of(const parts::TankVolume& tank, double depth, double usable, double density) {
  if (!(usable > 0.0)) return {};
  const double full = tank.volume(depth);
  const double step = usable / static_cast<double>(samples - 1);
  std::vector<double> falls;
  for (std::size_t i = 0; i < samples; ++i) {
    const double left = i == 0 ? depth : tank.level(full - step * static_cast<double>(i));
    falls.push_back(density * standard_gravity * (depth - left));
  }
  return {0.0, step, std::move(falls)};
}

}  // namespace

std::variant<parts::TankVolume, std::string> vessel_of(const site::Tank& tank) {
  const std::string name = "tank '" + tank.id.text + "'";
  if (!tank.chart.empty()) return parts::TankVolume(chart_of(tank));
  if (!tank.compartments.empty())
    return name +
           " is divided by inner heads, and how much its compartment holds is not computed here: enter its "
           "chart";
  if (!tank.shape) return "the shape of " + name + " is not entered, nor a chart";
  const auto shape = shape_of(*tank.shape);
  if (!shape) return "the sizes of " + name + " are not all entered, nor a chart";
  if (const auto why = parts::tank_problem(*shape)) return name + ": " + *why;
  return parts::TankVolume(*shape);
}

double pitch_of(const site::Tank& tank) {
  const bool pitched = tank.shape && tank.shape->pitch && tank.chart.empty();
  return pitched ? tank.shape->pitch->likely.si() : 0.0;
}

double at_middle(const site::Tank& tank, double depth, std::optional<double> at) {
  const double pitch = pitch_of(tank);
  if (pitch == 0.0 || !at || !tank.shape->length) return depth;
  return depth + pitch * (*at - 0.5 * tank.shape->length->likely.si());
}

std::variant<Contents, std::string> contents_for(const site::Site& site, const std::string& id, double density) {
  const site::Pump* pump = with_id(site.pumps, id);
  const site::Tank* tank = pump != nullptr ? with_id(site.tanks, pump->tank.text) : nullptr;
  if (tank == nullptr) return "pump '" + id + "' draws from a compartment, whose contents are not computed here";
  const std::string name = "tank '" + tank->id.text + "'";
  if (!tank->siphoned_with.empty())
    return name + " is siphoned with others, and what they hold together is not computed here";
  auto vessel = vessel_of(*tank);
  if (auto* why = std::get_if<std::string>(&vessel)) return std::move(*why);
  const auto depth = depth_in(site, *tank);
  if (!depth) return "how much is in " + name + " is not entered";
  const parts::TankVolume& inside = std::get<parts::TankVolume>(vessel);
  Contents out;
  out.to_bottom = !pump->inlet_above_bottom;
  const double inlet = out.to_bottom ? 0.0
                                     : at_middle(*tank, pump->inlet_above_bottom->likely.si(),
                                                 pump->at ? std::optional(pump->at->likely.si()) : std::nullopt);
  out.usable = std::max(0.0, inside.volume(*depth) - inside.volume(inlet));
  out.fall = fall_of(inside, *depth, out.usable, density);
  return out;
}

}  // namespace forecourse::studies
