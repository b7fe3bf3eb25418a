// Pictures of pump, line and sumps.
#include "forecourse/lesson/numbers/flow_pick.h"
#include "forecourse/lesson/numbers/pick.h"
#include "forecourse/lesson/numbers/sump_pick.h"
#include "forecourse/lesson/pages/picture.h"

namespace forecourse::lesson {
namespace {

const site::Pump* pump_entered(const From& from) {
  for (const site::Pump& pump : from.ground.site.pumps) {
    if (pump.id.text == from.at) return &pump;
  }
  return nullptr;
}

/// Level and pump inlet as shares of the tank's height.
void put_tank(PictureValues& values, const From& from) {
  const site::Pump* pump = pump_entered(from);
  if (pump == nullptr || !from.ground.studied.tank) return;
  for (const studies::TankTold& told : from.ground.studied.tank->tanks) {
    if (told.id != pump->tank.text || !told.problem.empty()) continue;
    if (told.now) put(values, "tank", share_of(told.now->level, told.full_level));
    if (pump->inlet_above_bottom) {
      put(values, "suction", share_of(pump->inlet_above_bottom->likely.si(), told.full_level));
    }
  }
}

/// A pressure of a place at rest as a share of that with the pump running against shut hoses.
std::optional<double> held_share(const std::optional<InFlow<studies::RestPlace>>& place) {
  if (!place) return std::nullopt;
  return share_of(place->told->held_gauge, place->told->shutoff_gauge);
}

}  // namespace

States pump_states(const From& from) {
  PictureValues rest{{"runs", 0.0}, {"flow", 0.0}, {"check", 0.0}};
  put_tank(rest, from);
  States out{state("at rest", "every hose shut", rest)};
  const auto duty = pump_in_flow(from.ground, from.at);
  if (!duty) return out;
  const double flows = duty->told->flow > 0.0 ? 1.0 : 0.0;
  out.push_back(state("running", "with the hoses open",
                      with(rest, {{"runs", duty->told->running ? 1.0 : 0.0}, {"flow", flows}, {"check", flows}})));
  return out;
}

States sump_states(const From& from) {
  PictureValues dry{{"liquid", 0.0}, {"sensor", 0.0}, {"leak", 0.0}};
  for (const site::Dispenser& dispenser : from.ground.site.dispensers) {
    if (dispenser.id.text != from.at || dispenser.inlets.empty() || !dispenser.inlets.front().connection) continue;
    dry["through"] = dispenser.inlets.front().connection->value == site::Connection::through ? 1.0 : 0.0;
  }
  const auto place = sump_place(from.ground, from.at);
  if (!place) return {state("at rest", "dry", std::move(dry))};
  const studies::ContainedSump& sump = from.ground.studied.containment->sumps[*place];
  const auto sensor = share_of(sump.sensor_height, sump.depth);
  const auto seal = share_of(sump.seal_height, sump.depth);
  put(dry, "sensor_height", sensor);
  put(dry, "seal_height", seal);
  States out{state("at rest", "dry", dry)};
  if (sensor) {
    out.push_back(
        state("sensor", "the sensor tells", with(dry, {{"liquid", *sensor}, {"sensor", 1.0}, {"leak", 1.0}})));
  }
  if (seal) {
    const double tells = sensor && *sensor <= *seal ? 1.0 : 0.0;
    out.push_back(
        state("seal", "at the lowest seal", with(dry, {{"liquid", *seal}, {"sensor", tells}, {"leak", 1.0}})));
  }
  return out;
}

States leak_detector_states(const From& from) {
  PictureValues rest{{"runs", 0.0}, {"opened", 0.0}, {"leak", 0.0}, {"trips", 0.0}};
  const auto place = place_at_rest(from.ground, from.at);
  PictureValues running = with(rest, {{"runs", 1.0}, {"opened", 1.0}});
  put(rest, "pressure", held_share(place));
  const auto duty = pump_in_flow(from.ground, from.at);
  if (duty && place) {
    put(running, "pressure", share_of(duty->told->leak_detector_pressure_gauge, place->told->shutoff_gauge));
  }
  return {state("at rest", "every hose shut", std::move(rest)),
          state("running", "with the hoses open", std::move(running))};
}

States double_wall_states(const From& from) {
  PictureValues rest{{"flow", 0.0}, {"leak", 0.0}, {"space", 0.0}, {"sump", 0.0}};
  States out{state("at rest", "every hose shut", rest)};
  const auto line = line_in_flow(from.ground, from.at);
  if (line) {
    out.push_back(state("running", "with the hoses open", with(rest, {{"flow", line->told->flow != 0.0 ? 1.0 : 0.0}})));
  }
  return out;
}

States line_states(const From& from) {
  PictureValues rest{{"runs", 0.0}, {"flow", 0.0}, {"check", 0.0}, {"warm", 0.0}};
  PictureValues running = with(rest, {{"runs", 1.0}});
  for (const site::Line& line : from.ground.site.lines) {
    if (line.id.text != from.at) continue;
    const auto at_rest = place_at_rest(from.ground, line.to.text);
    put(rest, "pressure", held_share(at_rest));
    const auto flowing = place_in_flow(from.ground, line.to.text);
    if (flowing && at_rest) {
      put(running, "pressure", share_of(flowing->told->pressure_gauge, at_rest->told->shutoff_gauge));
    }
  }
  const auto line = line_in_flow(from.ground, from.at);
  if (line) {
    running["flow"] = line->told->flow != 0.0 ? 1.0 : 0.0;
    running["check"] = running["flow"];
  }
  return {state("at rest", "every hose shut", std::move(rest)),
          state("running", "with the hoses open", std::move(running))};
}

}  // namespace forecourse::lesson
