// Pictures of the drop, the tank and its vapor.
#include "forecourse/lesson/numbers/pick.h"
#include "forecourse/lesson/pages/picture.h"

namespace forecourse::lesson {
namespace {

using studies::DeliveryResult;
using studies::DeliveryRun;
using studies::DeviceSet;
using studies::TankTold;
using studies::UllageTold;

const TankTold* tank_told(const From& from, const std::string& id) {
  if (!from.ground.studied.tank) return nullptr;
  for (const TankTold& told : from.ground.studied.tank->tanks) {
    if (told.id == id || told.tank == id) return told.problem.empty() ? &told : nullptr;
  }
  return nullptr;
}

const site::Tank* tank_entered(const From& from) {
  for (const site::Tank& tank : from.ground.site.tanks) {
    if (tank.id.text == from.at) return &tank;
  }
  return nullptr;
}

/// Share of the height that the liquid stands at.
std::optional<double> level_now(const TankTold* told) {
  if (told == nullptr || !told->now) return std::nullopt;
  return share_of(told->now->level, told->full_level);
}

std::optional<double> height_of(const TankTold* told) {
  return told == nullptr ? std::nullopt : std::optional<double>(told->full_level);
}

/// The run of a delivery, of its own id or into the tank at hand; null: none.
const DeliveryRun* run_of(const From& from) {
  for (const DeliveryResult& one : from.ground.studied.deliveries) {
    if (one.runs.empty() || !one.problem.empty()) continue;
    const auto into = [&](const auto& tank) { return tank.tank == from.at; };
    if (one.delivery == from.at || place_of(one.runs.front().tanks, into)) return &one.runs.front();
  }
  return nullptr;
}

/// The vapor above a tank in a delivery; null: not determined.
const UllageTold* ullage_of(const DeliveryRun* run, const std::string& tank) {
  if (run == nullptr) return nullptr;
  for (const UllageTold& one : run->ullages) {
    const bool over = place_of(one.tanks, [&](const std::string& id) { return id == tank; }).has_value();
    if (over && one.problem.empty()) return &one;
  }
  return nullptr;
}

/// How the vapor that leaves is shared between vapor hose and vent.
void put_vapor(PictureValues& values, const UllageTold* ullage) {
  if (ullage == nullptr) return;
  const double out = std::max(ullage->vented, 0.0) + std::max(ullage->returned, 0.0);
  put(values, "vapor", share_of(ullage->returned, out));
  put(values, "vent", share_of(ullage->vented, out));
}

void put_pressure(PictureValues& values, const UllageTold* ullage) {
  if (ullage == nullptr) return;
  put(values, "pressure", share_of(ullage->highest_pressure, ullage->opens_at), -1.0);
  values["out"] = ullage->lifts_at ? 1.0 : 0.0;
}

}  // namespace

States drop_states(const From& from) {
  const DeliveryRun* run = run_of(from);
  PictureValues before{{"truck", 1.0}, {"flow", 0.0}, {"vapor", 0.0}, {"vent", 0.0}};
  if (run == nullptr || run->drops.empty() || run->tanks.empty()) {
    return {state("before", "before the drop", std::move(before))};
  }
  const studies::DropTold& drop = run->drops.front();
  const auto into = [&](const auto& tank) { return tank.tank == drop.tank; };
  const studies::DeliveryTank& tank = run->tanks[place_of(run->tanks, into).value_or(0)];
  const std::optional<double> height = height_of(tank_told(from, drop.tank));
  put(before, "tank", share_of(tank.depth_before, height));
  PictureValues dropping = with(before, {{"flow", 1.0}});
  put_vapor(dropping, ullage_of(run, drop.tank));
  PictureValues after = before;
  put(after, "truck", share_of(drop.left_in_truck, drop.brought));
  put(after, "tank", share_of(tank.depth_after, height));
  return {state("before", "before the drop", std::move(before)),
          state("running", "at the start of the drop", std::move(dropping)),
          state("after", "at its end", std::move(after))};
}

States fill_states(const From& from) {
  PictureValues rest{{"cap", 1.0}, {"flow", 0.0}};
  put(rest, "tank", level_now(tank_told(from, from.at)));
  PictureValues dropping = with(rest, {{"cap", 0.0}, {"flow", 1.0}});
  return {state("at rest", "between deliveries", std::move(rest)),
          state("running", "during a drop", std::move(dropping))};
}

States overfill_valve_states(const From& from) {
  const TankTold* told = tank_told(from, from.at);
  PictureValues open{{"flow", 1.0}, {"valve", 0.0}};
  put(open, "tank", level_now(told));
  std::optional<double> height;
  if (told != nullptr) {
    for (const DeviceSet& one : told->overfill.set) {
      if (one.device == studies::OverfillDevice::shutoff && one.depth) height = share_of(one.depth, told->diameter);
    }
  }
  put(open, "valve_height", height);
  PictureValues shut = with(open, {{"flow", 0.0}, {"valve", 1.0}});
  put(shut, "tank", height);
  return {state("running", "during a drop", std::move(open)), state("shut", "the valve has shut", std::move(shut))};
}

States tank_walls_states(const From& from) {
  PictureValues tight{{"space", 0.0}, {"sensor", 0.0}};
  put(tight, "tank", level_now(tank_told(from, from.at)));
  const site::Tank* entered = tank_entered(from);
  if (entered != nullptr && entered->double_wall) tight["double"] = *entered->double_wall ? 1.0 : 0.0;
  return {state("at rest", "with nothing between the walls", std::move(tight))};
}

States tank_water_states(const From& from) {
  const TankTold* told = tank_told(from, from.at);
  PictureValues now;
  put(now, "tank", level_now(told));
  if (told != nullptr && told->now) put(now, "water", share_of(told->now->water_level, told->full_level));
  for (const site::Pump& pump : from.ground.site.pumps) {
    if (told == nullptr || pump.tank.text != from.at || !pump.inlet_above_bottom) continue;
    put(now, "suction", share_of(pump.inlet_above_bottom->likely.si(), told->full_level));
  }
  return {state("at rest", "as it was read", std::move(now))};
}

States tank_breathing_states(const From& from) {
  PictureValues rest{{"pressure", 0.0}, {"out", 0.0}, {"in", 0.0}};
  put(rest, "tank", level_now(tank_told(from, from.at)));
  States out{state("at rest", "nothing moves", rest)};
  PictureValues selling = with(rest, {{"in", 1.0}});
  selling.erase("pressure");  // how far below the atmosphere no study tells
  out.push_back(state("selling", "fuel is sold, air comes in", std::move(selling)));
  if (const UllageTold* ullage = ullage_of(run_of(from), from.at)) {
    PictureValues dropping = rest;
    put_pressure(dropping, ullage);
    out.push_back(state("running", "at the highest pressure of a drop", std::move(dropping)));
  }
  return out;
}

States vapor_return_states(const From& from) {
  PictureValues rest{{"flow", 0.0}, {"vapor", 0.0}, {"vent", 0.0}};
  put(rest, "tank", level_now(tank_told(from, from.at)));
  PictureValues dropping = with(rest, {{"flow", 1.0}});
  dropping.erase("vapor");
  dropping.erase("vent");
  put_vapor(dropping, ullage_of(run_of(from), from.at));
  return {state("at rest", "between deliveries", std::move(rest)),
          state("running", "during a drop", std::move(dropping))};
}

States vent_states(const From& from) {
  PictureValues rest{{"pressure", 0.0}, {"out", 0.0}, {"in", 0.0}};
  const site::Tank* entered = tank_entered(from);
  if (entered != nullptr && !entered->vents.empty() && entered->vents.front().blocked) {
    rest["blocked"] = *entered->vents.front().blocked ? 1.0 : 0.0;
  }
  States out{state("at rest", "nothing moves", rest)};
  if (const UllageTold* ullage = ullage_of(run_of(from), from.at)) {
    PictureValues dropping = rest;
    put_pressure(dropping, ullage);
    out.push_back(state("running", "at the highest pressure of a drop", std::move(dropping)));
  }
  return out;
}

}  // namespace forecourse::lesson
