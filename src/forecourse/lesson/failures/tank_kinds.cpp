#include <algorithm>
#include <utility>

#include "forecourse/lesson/failures/kinds.h"
#include "forecourse/lesson/failures/scene.h"
#include "forecourse/lesson/rests_on.h"
#include "forecourse/studies/tank/read_tank_options.h"

namespace forecourse::lesson {
namespace {

/// What nothing changes in for this long is shown as it stands [s].
constexpr double span = 60.0;

/// A pump whose inlet stands at a known height, in the tank of `at`, or in the first that has one.
const site::Pump* pump_with_inlet(const site::Site& site, const std::string& at) {
  const site::Tank* tank = tank_at(site, at);
  const site::Pump* out = nullptr;
  for (const site::Pump& pump : site.pumps) {
    if (!pump.inlet_above_bottom) continue;
    if (out == nullptr || (tank != nullptr && pump.tank == tank->id)) out = &pump;
    if (tank != nullptr && pump.tank == tank->id) break;
  }
  return out;
}

/// A tank with a depth of liquid in it at the pump.
struct Depth {
  std::string problem;
  studies::TankTold tank;
  std::vector<std::string> command;
};

Depth at_depth(const site::Site& site, const std::string& tank, const std::optional<double>& depth) {
  studies::TankAsked asked;
  asked.tank = tank;
  Depth out;
  out.command = {"tank", "--tank", tank};
  if (depth) {
    asked.depth = exact(*depth, "m");
    asked.at = "pump";
    out.command.insert(out.command.end(), {"--depth", asked.depth, "--at", asked.at});
  }
  const auto options = studies::read_tank_options(asked, studies::Asker::command);
  std::vector<Diagnostic> wrong = options.diagnostics;
  if (wrong.empty()) wrong = check_options(site, options.value);
  if (!wrong.empty()) {
    out.problem = wrong.front().message + (wrong.front().hint.empty() ? "" : ": " + wrong.front().hint);
    return out;
  }
  studies::TankResult result = study_tank(site, options.value);
  if (result.tanks.empty()) {
    out.problem = "there is no tank " + tank;
    return out;
  }
  out.tank = std::move(result.tanks.front());
  out.problem = out.tank.problem;
  if (out.problem.empty() && !out.tank.now) out.problem = out.tank.not_read;
  return out;
}

/// The water at the inlet, and the tank as it was read.
struct Water {
  std::string problem;
  std::string at;
  double inlet = 0.0;  ///< [m]
  Depth now, high;
};

Water water_of(const site::Site& site, const std::string& at) {
  Water out;
  out.at = at;
  const site::Pump* pump = pump_with_inlet(site, at);
  if (pump == nullptr) {
    out.problem = "how high the pump's inlet stands is not entered: add inlet_above_bottom to a [[pump]]";
    return out;
  }
  out.at = pump->tank.text;
  out.inlet = pump->inlet_above_bottom->likely.si();
  out.now = at_depth(site, out.at, std::nullopt);
  out.problem = out.now.problem;
  if (!out.problem.empty()) return out;
  if (!out.now.tank.now->water) {
    out.problem = "the water bottom of tank " + out.at + " was not read: enter reading = { ..., water = \"0 in\" }";
    return out;
  }
  out.high = at_depth(site, out.at, out.inlet);
  out.problem = out.high.problem;
  return out;
}

Scene scene_of(const Water& told, bool works) {
  const studies::TankTold& tank = told.now.tank;
  Scene scene = steady_scene(works ? "water as it was read" : "water up to the pump's inlet", works, span);
  hold(scene, "tank", share_of(tank.now->level, tank.full_level));
  hold(scene, "suction", share_of(told.inlet, tank.full_level));
  const double level = works ? tank.now->water_level.value_or(0.0) : told.high.tank.now->level;
  hold(scene, "water", share_of(level, tank.full_level));
  scene.command = works ? told.now.command : told.high.command;
  scene.rests_on = rests_on((works ? told.now : told.high).tank.defaults);
  if (works) {
    scene.told = {{"water in the tank", tank.now->water, Quantity::volume, "/result/tanks/0/now/water_m3"}};
    scene.events = {{0.0, "the pump draws fuel: the water lies below its inlet"}};
  } else {
    scene.told = {{"water that the pump begins to draw", told.high.tank.now->volume, Quantity::volume,
                   "/result/tanks/0/now/volume_m3"},
                  {"its level", told.high.tank.now->level, Quantity::length, "/result/tanks/0/now/level_m"}};
    scene.events = {{0.0, "the water stands at the pump's inlet: what the pump sends to the hoses is water"}};
  }
  return scene;
}

}  // namespace

Replay run_water_in_tank(const site::Site& site, const std::string& at, const Context&) {
  const Water told = water_of(site, at);
  if (!told.problem.empty()) return no_replay(told.at, told.problem);
  return replay_of(told.at, {}, scene_of(told, false), scene_of(told, true));
}
std::string lacks_water_in_tank(const site::Site& site, const std::string& at) { return water_of(site, at).problem; }

}  // namespace forecourse::lesson
