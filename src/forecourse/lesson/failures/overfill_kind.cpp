#include <algorithm>
#include <utility>

#include "forecourse/lesson/failures/cautions.h"
#include "forecourse/lesson/failures/drop_scene.h"
#include "forecourse/lesson/failures/incident_side.h"
#include "forecourse/lesson/failures/kinds.h"
#include "forecourse/lesson/failures/scene.h"
#include "forecourse/studies/tank/tank.h"

namespace forecourse::lesson {
namespace {

using studies::Happening;
using studies::Holder;

const site::Fill* fill_with_valve(const site::Tank& tank) {
  const auto found = std::find_if(tank.fills.begin(), tank.fills.end(),
                                  [](const site::Fill& one) { return one.overfill_valve.has_value(); });
  return found == tank.fills.end() ? nullptr : &*found;
}

/// An overfill that the driver does not watch.
IncidentSide unwatched(const char* name, const std::string& tank, std::vector<std::string> without) {
  IncidentSide out = incident_side(name, "overfill", tank, std::move(without));
  out.texts.dead = {"driver"};
  return out;
}

studies::TankTold tank_told(const site::Site& site, const std::string& tank) {
  studies::TankOptions options;
  options.tank = tank;
  studies::TankResult result = study_tank(site, options);
  return result.tanks.empty() ? studies::TankTold{} : std::move(result.tanks.front());
}

/// Both scenes worked out; the driver watches in neither.
struct Overfill {
  std::string problem;
  std::string tank;
  const site::Fill* fill = nullptr;
  IncidentSide fails, works;
  IncidentWorked failing, working;
};

void work_both(const site::Site& site, bool charts, const Context& context, Overfill& out) {
  out.failing = work_out(site, out.fails, charts, context);
  out.working = work_out(site, out.works, charts, context);
  out.problem = out.failing.problem.empty() ? out.working.problem : out.failing.problem;
}

/// The compartment that is dropped there brings as much as the tank holds.
site::Site with_more(const site::Site& site, const Drop& drop, double capacity, Overfill& out) {
  site::Site changed = site;
  for (std::size_t d = 0; d < site.deliveries.size(); ++d) {
    if (&site.deliveries[d] != drop.delivery) continue;
    for (std::size_t c = 0; c < drop.delivery->compartments.size(); ++c) {
      if (&drop.delivery->compartments[c] != drop.compartment) continue;
      const auto name = [](const site::Name& id, std::size_t i) {
        return id.empty() ? std::to_string(i + 1) : id.text;
      };
      const Volume volume = Volume::from_si(capacity);
      changed.deliveries[d].compartments[c].volume = site::Entered<Volume>{volume, volume, volume, {}};
      const std::string path =
          "delivery." + name(drop.delivery->id, d) + ".compartment." + name(drop.compartment->id, c) + ".";
      out.fails.sets = {path + "volume=" + exact(capacity, "m3")};
      if (drop.compartment->capacity) {
        changed.deliveries[d].compartments[c].capacity = changed.deliveries[d].compartments[c].volume;
        out.fails.sets.push_back(path + "capacity=" + exact(capacity, "m3"));
      }
      out.works.sets = out.fails.sets;
    }
  }
  return changed;
}

Overfill overfill(const site::Site& site, const std::string& at, bool charts, const Context& context) {
  Overfill out;
  out.tank = at;
  std::vector<Drop> all = drops(site, at, [](const Drop& drop) { return fill_with_valve(*drop.tank) != nullptr; });
  if (all.empty()) {
    out.problem =
        "no delivery into a tank with an overfill valve is listed: add overfill_valve = { ... } to its "
        "[[tank.fill]], and a [[delivery]] into it";
    return out;
  }
  const Drop& drop = all.front();
  out.tank = drop.tank->id.text;
  out.fill = fill_with_valve(*drop.tank);
  out.fails = unwatched("without overfill valve", out.tank, {"overfill-valve"});
  out.works = unwatched("overfill valve works", out.tank, {});
  work_both(site, charts, context, out);
  if (!out.problem.empty() || out.failing.shown().escaped > 0.0) return out;
  const double capacity = tank_told(site, out.tank).capacity;
  work_both(with_more(site, drop, capacity, out), charts, context, out);
  if (out.problem.empty() && !(out.failing.shown().escaped > 0.0)) {
    out.problem = "not even a full load runs over here: enter a delivery that brings more (ordered)";
  }
  return out;
}

/// Level of a volume in the tank, as a share of its height inside.
std::vector<double> levels_of(const studies::TankTold& tank, const std::vector<double>& volumes) {
  std::vector<double> chart_volumes, levels, out;
  for (const studies::TankChartRow& row : tank.chart.rows) {
    chart_volumes.push_back(row.volume);
    levels.push_back(row.level);
  }
  if (levels.empty()) return out;
  out.reserve(volumes.size());
  for (const double volume : volumes) out.push_back(share_of(between(chart_volumes, levels, volume), tank.full_level));
  return out;
}

Scene scene_of(const Overfill& plan, const studies::TankTold& tank, double most, bool works) {
  const IncidentWorked& worked = works ? plan.working : plan.failing;
  const studies::IncidentRun& run = worked.shown();
  Scene scene = told_scene(works ? plan.works : plan.fails, worked, works);
  scene.told.front().label = "runs out of the fill";
  hold(scene, "cap", 0.0);
  scene.values["flow"] = shares_of(run.chart.pumped, most);
  if (std::vector<double> levels = levels_of(tank, held_in(run, Holder::tank)); !levels.empty()) {
    scene.values["tank"] = std::move(levels);
  }
  const auto& container = plan.fill->spill_container;
  const std::vector<double> caught = held_in(run, Holder::spill_container);
  if (container && container->volume && !caught.empty()) {
    scene.values["container"] = shares_of(caught, container->volume->likely.si());
  }
  if (std::count(run.missing.begin(), run.missing.end(), studies::Barrier::overfill_valve) != 0) {
    hold(scene, "valve_gone", 1.0);
    return scene;
  }
  step(scene, "valve", first_time(run, Happening::valve_closes));
  const auto& closes = plan.fill->overfill_valve->closes_at;
  if (closes) hold(scene, "valve_height", share_of(closes->likely.si(), tank.full_level));
  return scene;
}

}  // namespace

Replay run_overfilled(const site::Site& site, const std::string& at, const Context& context) {
  const Overfill plan = overfill(site, at, true, context);
  if (!plan.problem.empty()) return no_replay(plan.tank, plan.problem);
  const studies::TankTold tank = tank_told(site, plan.tank);
  const double most = most_of(plan.working.shown().chart.pumped, most_of(plan.failing.shown().chart.pumped));
  return replay_of(plan.tank, caution_of_escapes, scene_of(plan, tank, most, false), scene_of(plan, tank, most, true));
}

std::string lacks_overfilled(const site::Site& site, const std::string& at) {
  return overfill(site, at, false, {}).problem;
}

}  // namespace forecourse::lesson
