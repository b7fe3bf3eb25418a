#include "forecourse/studies/incident/after/equipment_here.h"

#include <algorithm>

namespace forecourse::studies {
namespace {

void look_at_end(const Scene& scene, const EndGround& end, EquipmentHere& here) {
  here.has_detector = here.has_detector || detector_of(scene, end) != nullptr;
  if (end.dispenser != nullptr) here.may_have_bar = end.dispenser->stabilizer_bar.value_or(true);
  if (end.inlet == nullptr) return;
  here.has_riser = here.has_riser || end.inlet->riser.has_value();
  if (!end.inlet->shear_valve) return;
  here.has_valve = true;
  here.has_link = here.has_link || end.inlet->shear_valve->fusible_link.has_value();
}

bool may_have_two_walls(const Scene& scene) {
  const auto& lines = scene.site.lines;
  const auto line =
      std::find_if(lines.begin(), lines.end(), [&](const site::Line& one) { return one.id.text == scene.ground.at; });
  return line != lines.end() && (line->interstice || line->double_wall.value_or(true));
}

const site::Tank* tank_at(const Scene& scene) {
  const auto& tanks = scene.site.tanks;
  const auto found =
      std::find_if(tanks.begin(), tanks.end(), [&](const site::Tank& one) { return one.id.text == scene.ground.at; });
  return found == tanks.end() ? nullptr : &*found;
}

}  // namespace

EquipmentHere equipment_here(const Scene& scene) {
  EquipmentHere here;
  for (const EndGround& end : scene.ground.ends) look_at_end(scene, end, here);
  const site::Sump* sump = scene.ground.sump;
  here.has_sump = sump != nullptr;
  here.has_sensor = sump != nullptr && (sump->sensor || sump->sensor_height);
  here.has_interlock = stopping_interlock(scene) != nullptr;
  here.has_stop = !scene.site.emergency_stops.empty();
  here.may_have_two_walls = may_have_two_walls(scene);
  if (!scene.ground.ends.empty()) here.hose = scene.ground.ends.front().hose;
  here.tank = tank_at(scene);
  return here;
}

}  // namespace forecourse::studies
