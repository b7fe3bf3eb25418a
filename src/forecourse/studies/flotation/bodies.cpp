#include <algorithm>
#include <utility>

#include "forecourse/studies/flotation/buried_tank.h"

namespace forecourse::studies {
namespace {

using parts::Layer;

/// Volume of a block below the water.
double below(const Block& block, double water_level) {
  return block.area * std::max(0.0, block.layer.to - std::max(block.layer.from, water_level));
}

double volume_of(const Block& block) { return block.area * std::max(0.0, block.layer.to - block.layer.from); }

BodyTold solid(const Block& block, double water_level) {
  BodyTold out;
  out.name = block.name;
  out.volume = volume_of(block);
  out.submerged = below(block, water_level);
  out.weight = out.volume * block.unit_weight;
  return out;
}

BodyTold soil(std::string name, double volume, double submerged, const BuriedTank& tank) {
  BodyTold out;
  out.name = std::move(name);
  out.volume = volume;
  out.submerged = submerged;
  out.weight = (volume - submerged) * tank.backfill->moist + submerged * (tank.backfill->submerged + tank.water);
  return out;
}

/// Soil between the planes, less the tank and all else that stands there.
double prism_soil(const BuriedTank& tank, Layer layer) {
  const Layer within{std::max(0.0, layer.from), std::min(layer.to, tank.prism.base)};
  if (within.to <= within.from) return 0.0;
  const double all = parts::prism_volume(tank.prism, within) - parts::cylinder_volume(tank.prism, tank.crown, within) -
                     parts::taken_volume(tank.out_of_prism, within);
  return std::max(0.0, all);
}

/// What the deadmen, with the soil over them, weigh beyond what the straps hold does not count: taken off again.
void add_strap_limit(const BuriedTank& tank, std::vector<BodyTold>& bodies) {
  if (!tank.strap_capacity || tank.deadmen.empty()) return;
  const std::size_t tied = tank.deadmen.size() + (tank.backfill ? tank.deadman_soil.size() : 0);
  double held = 0.0;
  for (std::size_t i = bodies.size() - tied; i < bodies.size(); ++i) held += bodies[i].submerged_weight;
  if (held <= *tank.strap_capacity) return;
  BodyTold& over = bodies.emplace_back();
  over.name = "beyond what the straps hold";
  over.weight = over.submerged_weight = *tank.strap_capacity - held;
}

BodyTold told_tank(const BuriedTank& tank, double water_level, double filled) {
  const double height = tank.bottom() - water_level;
  BodyTold out;
  out.name = "tank";
  out.lifted = true;
  out.volume = tank.shells.outside.capacity();
  out.submerged = tank.shells.outside.volume(height);
  out.weight = tank.weight + filled * tank.contents;
  if (tank.shells.inside) out.room = tank.shells.inside->volume(height - tank.shells.wall);
  return out;
}

}  // namespace

std::vector<BodyTold> bodies_at(const BuriedTank& tank, double water_level, double filled, bool with_deadmen) {
  std::vector<BodyTold> out{told_tank(tank, water_level, filled)};
  for (const Block& sump : tank.sumps) {
    BodyTold& told = out.emplace_back(solid(sump, water_level));
    told.lifted = true;
    told.room = told.submerged;
  }
  for (const Block& block : tank.concrete) out.push_back(solid(block, water_level));
  const auto add_soil = [&](const Block& block) {
    out.push_back(soil(block.name, volume_of(block), below(block, water_level), tank));
  };
  if (tank.backfill) {
    const double deep = tank.prism.base;
    out.push_back(soil("backfill", prism_soil(tank, {0.0, deep}), prism_soil(tank, {water_level, deep}), tank));
    for (const Block& block : tank.soil_blocks) add_soil(block);
  }
  if (with_deadmen) {
    for (const Block& block : tank.deadmen) out.push_back(solid(block, water_level));
    if (tank.backfill) std::for_each(tank.deadman_soil.begin(), tank.deadman_soil.end(), add_soil);
  }
  for (BodyTold& body : out) body.submerged_weight = body.weight - tank.water * body.submerged;
  if (with_deadmen) add_strap_limit(tank, out);
  return out;
}

std::vector<parts::Body> laws_of(const std::vector<BodyTold>& bodies) {
  std::vector<parts::Body> out;
  out.reserve(bodies.size());
  for (const BodyTold& body : bodies) out.push_back({body.weight, body.submerged, body.room, body.lifted});
  return out;
}

std::optional<double> hold_down_factor(const BuriedTank& tank, double water_level, double filled, bool with_deadmen) {
  return parts::flotation_factor(laws_of(bodies_at(tank, water_level, filled, with_deadmen)), tank.water,
                                 parts::FactorKind::hold_down);
}

}  // namespace forecourse::studies
