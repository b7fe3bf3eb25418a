#include <algorithm>
#include <utility>

#include "forecourse/lesson/failures/cautions.h"
#include "forecourse/lesson/failures/drop_scene.h"
#include "forecourse/lesson/failures/kinds.h"
#include "forecourse/lesson/failures/scene.h"
#include "forecourse/studies/tank/tank.h"

namespace forecourse::lesson {
namespace {

/// Two drops into a tank.
struct DropPlan {
  std::string problem;
  std::string tank;
  DropSide fails;
  DropSide works;
  site::Site fails_at;  ///< the site of each, where values are changed
  site::Site works_at;
  std::optional<double> valve_height = {};  ///< [m] in the failing scene
  std::optional<double> right_height = {};  ///< [m] in the working one
};

DropPlan plan_of(const site::Site& site, const Drop& drop) {
  DropPlan out;
  out.fails_at = out.works_at = site;
  out.tank = drop.tank->id.text;
  for (DropSide* side : {&out.fails, &out.works}) {
    side->texts.delivery = drop.delivery->id.text;
    side->texts.tank = out.tank;
  }
  return out;
}

DropPlan none(const std::string& at, std::string problem) {
  DropPlan out;
  out.tank = at;
  out.problem = std::move(problem);
  return out;
}

DropPlan plan_vapor(const site::Site& site, const std::string& at) {
  const auto fits = [](const Drop& drop) {
    return drop.tank->vapor_return.has_value() && drop.delivery->vapor_hose.has_value();
  };
  const std::vector<Drop> all = drops(site, at, fits);
  if (all.empty()) {
    return none(at,
                "no delivery into a tank with a vapor return is listed: add vapor_return = { ... } to the tank and "
                "vapor_hose = { ... } to the [[delivery]]");
  }
  DropPlan out = plan_of(site, all.front());
  out.fails.name = "vapor hose left off";
  out.fails.texts.without = {"vapor-return"};
  out.works.name = "vapor hose on";
  return out;
}

DropPlan plan_vent(const site::Site& site, const std::string& at) {
  const std::vector<Drop> all = drops(site, at, [](const Drop& drop) { return !drop.tank->vents.empty(); });
  if (all.empty()) {
    return none(at, "no delivery into a tank with a vent is listed: add a [[tank.vent]], and a [[delivery]] into it");
  }
  DropPlan out = plan_of(site, all.front());
  out.fails.name = "vent blocked";
  out.fails.texts.blocked = {out.tank};
  // with the vapor hose on, the vent has little to do: the pressure would go back to the tanker
  if (all.front().tank->vapor_return) out.fails.texts.without = out.works.texts.without = {"vapor-return"};
  out.works.name = "vent open";
  return out;
}

/// The depth at which the valve has shut off at 95 % of the volume, and at 95 % of the height inside.
struct Settings {
  std::string problem;
  double by_volume = 0.0;  ///< [m]
  double by_height = 0.0;  ///< [m]
  double capacity = 0.0;   ///< [m3]
};

Settings settings_of(const site::Site& site, const std::string& tank) {
  studies::TankOptions options;
  options.tank = tank;
  const studies::TankResult result = study_tank(site, options);
  Settings out;
  out.problem = result.tanks.empty() ? "there is no tank " + tank : result.tanks.front().problem;
  if (!out.problem.empty()) return out;
  const studies::TankTold& told = result.tanks.front();
  out.capacity = told.capacity;
  const auto is_shutoff = [](const auto& one) { return one.device == studies::OverfillDevice::shutoff; };
  const auto right = std::find_if(told.overfill.settings.begin(), told.overfill.settings.end(),
                                  [&](const auto& one) { return is_shutoff(one) && one.route == "A"; });
  const auto wrong = std::find_if(told.overfill.wrong.begin(), told.overfill.wrong.end(), [&](const auto& one) {
    return is_shutoff(one) && one.by == "share of the height inside";
  });
  if (right == told.overfill.settings.end() || wrong == told.overfill.wrong.end() || !right->depth) {
    out.problem =
        "where the valve belongs is not determined: enter the place of the fill along the tank (at) and the "
        "tank's shape";
    return out;
  }
  out.by_volume = *right->depth;
  out.by_height = wrong->depth;
  return out;
}

std::size_t fill_with_valve(const site::Tank& tank) {
  const auto found = std::find_if(tank.fills.begin(), tank.fills.end(),
                                  [](const site::Fill& one) { return one.overfill_valve.has_value(); });
  return static_cast<std::size_t>(found - tank.fills.begin());
}

/// Puts the valve of a tank to a depth, with the room below it in which it restricts.
void set_valve(const std::string& tank_id, double depth, site::Site& site, DropSide& side) {
  for (site::Tank& tank : site.tanks) {
    const std::size_t i = fill_with_valve(tank);
    if (tank.id.text != tank_id || i >= tank.fills.size()) continue;
    site::Fill& fill = tank.fills[i];
    site::OverfillValve& valve = *fill.overfill_valve;
    const std::string path =
        "tank." + tank_id + ".fill." + (fill.id.empty() ? std::to_string(i + 1) : fill.id.text) + ".overfill_valve.";
    const auto set = [&](site::Maybe<Length>& value, const char* key, double to) {
      const Length length = Length::from_si(to);
      value = site::Entered<Length>{length, length, length, {}};
      side.sets.push_back(path + key + "=" + exact(to, "m"));
    };
    if (valve.restricts_at && valve.closes_at) {
      const double below = valve.closes_at->likely.si() - valve.restricts_at->likely.si();
      set(valve.restricts_at, "restricts_at", depth - below);
    }
    set(valve.closes_at, "closes_at", depth);
  }
}

DropPlan plan_valve(const site::Site& site, const std::string& at) {
  const std::vector<Drop> all =
      drops(site, at, [](const Drop& drop) { return fill_with_valve(*drop.tank) < drop.tank->fills.size(); });
  if (all.empty()) {
    return none(at,
                "no delivery into a tank with an overfill valve is listed: add overfill_valve = { ... } to its "
                "[[tank.fill]], and a [[delivery]] into it");
  }
  std::string problem;
  for (const Drop& drop : all) {
    DropPlan out = plan_of(site, drop);
    const Settings settings = settings_of(site, out.tank);
    if (!settings.problem.empty()) {
      problem = settings.problem;
      continue;
    }
    out.fails.name = "set at 95 % of the diameter";
    out.works.name = "set at 95 % of the volume";
    out.valve_height = settings.by_height;
    out.right_height = settings.by_volume;
    set_valve(out.tank, settings.by_height, out.fails_at, out.fails);
    set_valve(out.tank, settings.by_volume, out.works_at, out.works);
    for (DropSide* side : {&out.fails, &out.works}) {
      side->texts.volume = exact(settings.capacity, "m3");
      side->texts.without = {"driver"};
    }
    return out;
  }
  return none(at, problem);
}

/// What is in the tank in the end: what the setting of a valve is about.
void tell_end(const DropWorked& worked, Scene& scene) {
  const studies::DeliveryTank& tank = worked.run.tanks.front();
  scene.told.insert(
      scene.told.begin(),
      {{"in the tank in the end", tank.volume_after, Quantity::volume, "/result/runs/0/tanks/0/volume_after_m3"},
       {"of what it holds", tank.capacity, Quantity::volume, "/result/runs/0/tanks/0/capacity_m3"}});
}

Replay replay_of(const DropPlan& plan, const site::Site& site, const Context& context) {
  if (!plan.problem.empty()) return no_replay(plan.tank, plan.problem);
  const DropWorked works = work_out(plan.works_at, plan.works, true, context);
  if (!works.problem.empty()) return no_replay(plan.tank, works.problem);
  const DropWorked fails = work_out(plan.fails_at, plan.fails, true, context);
  if (!fails.problem.empty()) return no_replay(plan.tank, fails.problem);
  const DropMost most = most_of_both(site, plan.tank, fails, works);
  Scene failing = drop_scene(plan.fails, fails, most, false);
  Scene working = drop_scene(plan.works, works, most, true);
  if (plan.valve_height && plan.right_height) {
    hold(failing, "valve_height", share_of(*plan.valve_height, most.depth));
    hold(working, "valve_height", share_of(*plan.right_height, most.depth));
    tell_end(fails, failing);
    tell_end(works, working);
  }
  return lesson::replay_of(plan.tank, caution_of_drops, std::move(failing), std::move(working));
}

std::string why_none(const DropPlan& plan) {
  if (!plan.problem.empty()) return plan.problem;
  const std::string problem = work_out(plan.works_at, plan.works, false).problem;
  return problem.empty() ? work_out(plan.fails_at, plan.fails, false).problem : problem;
}

}  // namespace

Replay run_vapor_hose_off(const site::Site& site, const std::string& at, const Context& context) {
  return replay_of(plan_vapor(site, at), site, context);
}
std::string lacks_vapor_hose_off(const site::Site& site, const std::string& at) {
  return why_none(plan_vapor(site, at));
}

Replay run_vent_blocked(const site::Site& site, const std::string& at, const Context& context) {
  return replay_of(plan_vent(site, at), site, context);
}
std::string lacks_vent_blocked(const site::Site& site, const std::string& at) { return why_none(plan_vent(site, at)); }

Replay run_valve_at_95(const site::Site& site, const std::string& at, const Context& context) {
  return replay_of(plan_valve(site, at), site, context);
}
std::string lacks_valve_at_95(const site::Site& site, const std::string& at) { return why_none(plan_valve(site, at)); }

}  // namespace forecourse::lesson
