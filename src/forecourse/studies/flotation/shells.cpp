#include "forecourse/studies/flotation/shells.h"

#include <utility>
#include <variant>

#include "forecourse/network/tanks/tank_inside.h"
#include "forecourse/parts/tank/profile.h"

namespace forecourse::studies {
namespace {

/// The inside of a tank as it is computed, level; its chart, compartments and pitch are left out. Empty if it is no
/// horizontal cylinder.
std::optional<parts::RoundTank> level_inside(site::Tank tank) {
  tank.chart.clear();
  tank.compartments.clear();
  if (!tank.shape->inside_diameter) tank.shape->inside_diameter = tank.shape->outside_diameter;
  const auto found = network::tank_inside(tank);
  const auto* inside = std::get_if<network::TankInside>(&found);
  if (inside == nullptr) return std::nullopt;
  const auto level = network::as_level(inside->volume.shape());
  const auto* round = level ? std::get_if<parts::RoundTank>(&*level) : nullptr;
  return round == nullptr ? std::nullopt : std::optional(*round);
}

/// A head that lies a wall further out: every radius grows by it, and the bulge.
parts::Head grown(const parts::Head& head, double diameter, double wall) {
  if (head.kind == parts::HeadKind::flat) return head;
  const auto sizes = parts::head_sizes(head, diameter);
  const auto* inner = std::get_if<parts::Head>(&sizes);
  if (inner == nullptr) return head;
  if (inner->knuckle_radius > 0.0) return {head.kind, 0.0, inner->dish_radius + wall, inner->knuckle_radius + wall};
  return {head.kind, inner->depth + wall, 0.0, 0.0};
}

/// How far the heads of a tank bulge [m].
double bulge_of(const parts::RoundTank& tank) {
  const auto sizes = parts::head_sizes(tank.low, tank.diameter);
  const auto* head = std::get_if<parts::Head>(&sizes);
  return head == nullptr ? 0.0 : head->depth;
}

}  // namespace

std::optional<Shells> shells_of(const site::Tank& tank) {
  if (!tank.shape || tank.shape->kind.text != "horizontal-cylinder") return std::nullopt;
  if (!tank.shape->outside_diameter || !tank.shape->length) return std::nullopt;
  const std::optional<parts::RoundTank> inside = level_inside(tank);
  if (!inside) return std::nullopt;
  const double diameter = tank.shape->outside_diameter->likely.si();
  const double wall = 0.5 * (diameter - inside->diameter);
  const bool flat = inside->low.kind == parts::HeadKind::flat;
  const parts::Head head = grown(inside->low, inside->diameter, wall);
  const parts::RoundTank outside{diameter, inside->length + (flat ? 2.0 * wall : 0.0), head, head, 0.0};
  if (parts::tank_problem(outside)) return std::nullopt;
  Shells out{diameter, outside.length, flat ? 0.0 : bulge_of(outside), wall, parts::TankVolume(outside), {}};
  if (tank.shape->inside_diameter) out.inside = parts::TankVolume(*inside);
  return out;
}

}  // namespace forecourse::studies
