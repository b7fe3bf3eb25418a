#include "forecourse/network/tanks/tank_inside.h"

#include <cmath>
#include <numbers>
#include <utility>

#include "forecourse/parts/tank/profile.h"
#include "forecourse/site/liquid_level.h"

namespace forecourse::network {
namespace {

using Said = std::variant<TankInside, std::string>;

double si_or_zero(const site::Maybe<Length>& entered) { return entered ? entered->likely.si() : 0.0; }

parts::HeadKind head_kind(const std::string& word) {
  if (word == "dished") return parts::HeadKind::dished;
  if (word == "elliptical") return parts::HeadKind::elliptical;
  if (word == "hemispherical") return parts::HeadKind::hemispherical;
  return word == "conical" ? parts::HeadKind::conical : parts::HeadKind::flat;
}

parts::Head head_of(const site::TankShape& shape) {
  return {head_kind(shape.heads.text), si_or_zero(shape.head_depth), si_or_zero(shape.dish_radius),
          si_or_zero(shape.knuckle_radius)};
}

/// What follows from the kind of the heads alone.
std::vector<DefaultUsed> head_defaults(const site::Tank& tank, const parts::Head& entered, double diameter) {
  std::vector<DefaultUsed> out;
  auto sizes = parts::head_sizes(entered, diameter);
  const auto* head = std::get_if<parts::Head>(&sizes);
  if (head == nullptr) return out;
  const auto note = [&](const char* what, double before, double after) {
    if (before > 0.0 || !(after > 0.0)) return;
    DefaultUsed used;
    used.what = std::string(what) + " of tank " + tank.id.text;
    used.value = after;
    used.unit = "m";
    used.status = DefaultStatus::common_practice;
    used.source = "common practice, no source";
    used.system = tank.id.text;
    used.moves_flow = false;
    out.push_back(std::move(used));
  };
  if (entered.kind == parts::HeadKind::elliptical) note("head depth", entered.depth, head->depth);
  const bool by_depth_alone = entered.depth > 0.0 && entered.dish_radius == 0.0 && entered.knuckle_radius == 0.0;
  if (entered.kind == parts::HeadKind::dished && !by_depth_alone) {
    note("dish radius", entered.dish_radius, head->dish_radius);
    if (!(entered.depth > 0.0)) note("knuckle radius", entered.knuckle_radius, head->knuckle_radius);
  }
  if (entered.kind == parts::HeadKind::dished && by_depth_alone)
    note("dish radius without a knuckle", entered.dish_radius, head->dish_radius);
  return out;
}

parts::DipChart chart_of(const site::Tank& tank) {
  parts::DipChart chart;
  for (const site::ChartPoint& p : tank.chart) chart.points.push_back({p.depth.si(), p.volume.si()});
  return chart;
}

/// Sizes and inclines of a tank's shape, all of it or one compartment.
std::variant<parts::TankShape, std::string> shape_of(const site::Tank& tank, const site::Compartment* part) {
  const site::TankShape& shape = *tank.shape;
  const double incline = shape.pitch ? std::atan(shape.pitch->likely.si()) : 0.0;
  const std::string& kind = shape.kind.text;
  if (kind == "vertical-cylinder") {
    if (part != nullptr) return "the compartments of an upright tank are not computed: enter its chart";
    if (!shape.inside_diameter || !shape.height) return "add inside_diameter and height to its shape";
    const parts::Head head = head_of(shape);
    return parts::RoundTank{shape.inside_diameter->likely.si(), shape.height->likely.si(), head, head,
                            0.5 * std::numbers::pi - incline};
  }
  if (!shape.length) return "add length to its shape";
  const double whole = shape.length->likely.si();
  double length = whole;
  if (part != nullptr) {
    if (!part->from || !part->length) return "add from and length to compartment '" + part->id.text + "'";
    length = part->length->likely.si();
  }
  if (kind == "rectangular") {
    if (!shape.width || !shape.height) return "add width and height to its shape";
    const double roll = shape.roll ? shape.roll->likely.si() : 0.0;
    return parts::BoxTank{length, shape.width->likely.si(), shape.height->likely.si(), incline, roll};
  }
  if (!shape.inside_diameter) return "add inside_diameter to its shape";
  parts::Head low = head_of(shape), high = low;
  if (part != nullptr) {  // inner heads are taken as flat
    constexpr double near_the_end = 1e-3;
    if (part->from->likely.si() > near_the_end) low = {};
    if (part->from->likely.si() + length < whole - near_the_end) high = {};
  }
  return parts::RoundTank{shape.inside_diameter->likely.si(), length, low, high, incline};
}

std::vector<parts::Displacement> displacements(const site::Tank& tank) {
  std::vector<parts::Displacement> out;
  for (const site::Displacement& d : tank.displacements) {
    if (d.volume && d.from && d.to) out.push_back({d.volume->likely.si(), d.from->likely.si(), d.to->likely.si()});
  }
  return out;
}

}  // namespace

Said tank_inside(const site::Tank& tank, const site::Compartment* compartment, parts::Ready ready) {
  const std::string name = "tank '" + tank.id.text + "'";
  if (!tank.chart.empty()) {
    if (!tank.compartments.empty()) return "the dip chart of " + name + " does not tell its compartments apart";
    parts::TankShape chart = chart_of(tank);
    if (const auto why = parts::tank_problem(chart)) return name + ": " + *why;
    return TankInside{parts::TankVolume(std::move(chart)), 0.0, 0.0, true, {}};
  }
  if (compartment == nullptr && !tank.compartments.empty())
    return name + " is divided by inner heads: its compartments hold their own";
  if (!tank.shape) return "the shape of " + name + " is not entered, nor a chart: add shape = { kind = ... }";
  auto shape = shape_of(tank, compartment);
  if (auto* why = std::get_if<std::string>(&shape)) return "the sizes of " + name + " are not all entered: " + *why;
  std::vector<parts::Displacement> inside =
      compartment == nullptr ? displacements(tank) : std::vector<parts::Displacement>{};
  if (const auto why = parts::tank_problem(std::get<parts::TankShape>(shape), inside)) return name + ": " + *why;
  TankInside out{
      parts::TankVolume(std::move(std::get<parts::TankShape>(shape)), std::move(inside), ready), 0.0, 0.0, false, {}};
  if (compartment != nullptr) out.start = compartment->from->likely.si();
  if (tank.shape->roll) out.roll = tank.shape->roll->likely.si();
  if (tank.shape->inside_diameter)
    out.defaults = head_defaults(tank, head_of(*tank.shape), tank.shape->inside_diameter->likely.si());
  return out;
}

std::optional<parts::TankShape> as_level(const parts::TankShape& shape) {
  if (const auto* round = std::get_if<parts::RoundTank>(&shape)) {
    parts::RoundTank level = *round;
    level.incline = level.incline > 0.25 * std::numbers::pi ? 0.5 * std::numbers::pi : 0.0;
    return level;
  }
  if (const auto* box = std::get_if<parts::BoxTank>(&shape)) {
    parts::BoxTank level = *box;
    level.pitch = level.roll = 0.0;
    return level;
  }
  return std::nullopt;
}

std::optional<double> level_of_elevation(const site::Tank& tank, const TankInside& inside, double elevation) {
  if (!tank.bottom_elevation) return std::nullopt;
  // The bottom is entered where the shell begins; the lowest point of a bulging head lies a little deeper.
  return elevation - tank.bottom_elevation->likely.si() + inside.volume.range_of(inside.place(0.0)).bottom;
}

std::optional<double> tank_level(const site::Site& site, const site::Tank& tank, const site::Compartment* compartment,
                                 const TankInside& inside) {
  const auto& reading = compartment == nullptr ? tank.reading : compartment->reading;
  if (reading && reading->depth) {
    const auto at = reading->at ? std::optional(reading->at->likely.si()) : std::nullopt;
    return inside.volume.level_at(inside.place(at), reading->depth->likely.si());
  }
  if (compartment != nullptr) return std::nullopt;
  const auto surface = site::liquid_level(site, tank.id.text);
  return surface ? level_of_elevation(tank, inside, *surface) : std::nullopt;
}

}  // namespace forecourse::network
