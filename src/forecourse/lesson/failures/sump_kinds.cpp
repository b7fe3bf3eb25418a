#include <algorithm>
#include <cstddef>
#include <utility>

#include "forecourse/lesson/failures/cautions.h"
#include "forecourse/lesson/failures/kinds.h"
#include "forecourse/lesson/failures/published_hole.h"
#include "forecourse/lesson/failures/scene.h"
#include "forecourse/lesson/rests_on.h"
#include "forecourse/studies/containment/containment.h"
#include "forecourse/studies/line_test/line_test.h"

namespace forecourse::lesson {
namespace {

using studies::ContainedSump;
using studies::ContainmentResult;
using studies::SumpFill;

/// A sump at one inflow.
struct Filling {
  std::string problem;
  ContainedSump sump;
  std::size_t number = 0;  ///< of the study's sumps
  double inflow = 0.0;     ///< [m3/s]
  std::vector<std::string> rests_on;
};

Filling filling(const site::Site& site, const std::string& owner, bool of_tank, double inflow) {
  studies::ContainmentOptions options;
  options.inflows = {inflow};
  const ContainmentResult result = study_containment(site, options);
  Filling out;
  out.inflow = inflow;
  out.rests_on = lesson::rests_on(result.defaults);
  const auto found = std::find_if(result.sumps.begin(), result.sumps.end(), [&](const ContainedSump& one) {
    return one.of_tank == of_tank && (owner.empty() || one.owner == owner);
  });
  if (found == result.sumps.end()) {
    out.problem =
        "no such sump is listed: add sump = { ... } to the " + std::string(of_tank ? "[[tank]]" : "[[dispenser]]");
    return out;
  }
  out.number = static_cast<std::size_t>(found - result.sumps.begin());
  out.sump = *found;
  out.problem = found->problem;
  if (out.problem.empty() && (!found->depth || found->points.size() < 2 || found->fills.empty())) {
    out.problem = "the shape of the sump is not known: enter its sizes";
  }
  if (out.problem.empty() && !found->fills.front().to_sensor) {
    out.problem = "no sensor is listed in the sump: enter sensor_height";
  }
  return out;
}

/// The sump as it fills, up to a time [s]; its levels are those of its volumes.
Scene filling_scene(const Filling& filling, std::string name, double until, bool seen) {
  const ContainedSump& sump = filling.sump;
  const SumpFill& fill = sump.fills.front();
  std::vector<double> volumes, heights;
  for (const studies::SumpPoint& point : sump.points) {
    volumes.push_back(point.volume);
    heights.push_back(point.height);
  }
  Scene scene;
  scene.name = std::move(name);
  scene.works = seen;
  for (const double volume : volumes) scene.time.push_back(volume / filling.inflow);
  for (const auto& moment : {fill.to_sensor, fill.to_seal, std::optional(until)}) {
    if (moment) scene.time.push_back(*moment);
  }
  std::sort(scene.time.begin(), scene.time.end());
  scene.time.erase(std::unique(scene.time.begin(), scene.time.end()), scene.time.end());
  while (scene.time.back() > until) scene.time.pop_back();
  std::vector<double>& liquid = scene.values["liquid"];
  std::vector<double> in_it;
  for (const double time : scene.time) {
    in_it.push_back(std::min(time * filling.inflow, sump.brim));
    liquid.push_back(share_of(between(volumes, heights, in_it.back()), *sump.depth));
  }
  scene.courses = {{"in-sump", "in the sump", Quantity::volume, std::move(in_it)}};
  hold(scene, "leak", 1.0);
  if (sump.sensor_height) hold(scene, "sensor_height", share_of(*sump.sensor_height, *sump.depth));
  if (sump.seal_height) hold(scene, "seal_height", share_of(*sump.seal_height, *sump.depth));
  step(scene, "sensor", seen ? fill.to_sensor : std::nullopt);
  step(scene, "brim", fill.to_brim <= until ? std::optional(fill.to_brim) : std::nullopt);
  scene.events = {{0.0, "the leak begins to run into the sump"}};
  if (fill.to_sensor)
    scene.events.push_back(
        {*fill.to_sensor, seen ? "the sensor gets wet: somebody is told" : "fuel stands at the sensor, which is dead"});
  if (fill.to_seal && *fill.to_seal <= until)
    scene.events.push_back(
        {*fill.to_seal, "fuel stands at the lowest entry seal: from here the sump is not assured to hold"});
  if (fill.to_brim <= until) scene.events.push_back({fill.to_brim, "the sump is full and runs over"});
  const std::string at = "/result/sumps/" + std::to_string(filling.number) + "/fills/0/";
  const SceneValue inflow{"runs in", filling.inflow, Quantity::leak, at + "inflow_m3_per_s"};
  if (seen) {
    scene.told = {{"to the sensor", fill.to_sensor, Quantity::time, at + "to_sensor_s"}, inflow};
  } else {
    scene.told = {{"to the brim", fill.to_brim, Quantity::time, at + "to_brim_s"},
                  {"to the lowest entry seal", fill.to_seal, Quantity::time, at + "to_lowest_seal_s"},
                  inflow};
  }
  scene.command = {"containment", "--inflow", exact(filling.inflow, "m3/s")};
  scene.rests_on = filling.rests_on;
  return scene;
}

/// Of a tank or of the pump in it; its own id for another one.
std::string sump_of_tank(const site::Site& site, const std::string& at) {
  const site::Tank* tank = tank_at(site, at);
  if (tank != nullptr && tank->sump) return tank->id.text;
  for (const site::Tank& one : site.tanks) {
    if (one.sump) return one.id.text;
  }
  return {};
}

Filling tank_sump(const site::Site& site, const std::string& at) {
  const std::string tank = sump_of_tank(site, at);
  Filling out;
  out.problem = "no tank sump is listed: add sump = { ... } to a [[tank]]";
  if (!tank.empty()) out = filling(site, tank, true, studies::hourly_rate());
  out.rests_on.insert(out.rests_on.begin(), "3 gal/h run in, chosen for this lesson: what a leak detector must find");
  return out;
}

/// A double-walled line, what leaks out of its inner pipe into the ground where it is single, and the sump that it runs
/// to where it is not.
struct InnerLeak {
  std::string problem;
  std::string line;
  IncidentSide single;
  IncidentWorked lost;
  Filling caught;
};

std::vector<std::string> double_walled(const site::Site& site, const std::string& at) {
  std::vector<std::string> out;
  for (const site::Line& line : site.lines) {
    if (!line.double_wall.value_or(false)) continue;
    out.insert(line.id.text == at ? out.begin() : out.end(), line.id.text);
  }
  return out;
}

InnerLeak inner_leak(const site::Site& site, const std::string& at, bool charts, const Context& context) {
  InnerLeak out;
  out.line = at;
  const std::vector<std::string> lines = double_walled(site, at);
  if (lines.empty()) {
    out.problem = "no double-walled line is listed: say double_wall = true of a [[line]]";
    return out;
  }
  out.line = lines.front();
  out.single.name = "one wall only";
  out.single.texts.kind = "crack";
  out.single.texts.at = out.line;
  const PublishedHole hole = published_hole(site, product_at(site, out.line));
  out.problem = hole.problem;
  if (!out.problem.empty()) return out;
  out.single.texts.open_area = hole.area;
  out.lost = work_out(site, out.single, charts, context);
  out.problem = out.lost.problem;
  if (!out.problem.empty()) return out;
  const ContainmentResult held = studies::study_containment(site, {});
  const auto runs = std::find_if(held.lines.begin(), held.lines.end(),
                                 [&](const studies::DrainBack& one) { return one.line == out.line; });
  if (runs == held.lines.end() || runs->sump.empty()) {
    out.problem =
        "where it drains to is not determined, or no sump is listed there: enter interstice = { drains_to = "
        "\"...\" } of the line, and the sump";
    return out;
  }
  const bool of_tank = std::any_of(site.tanks.begin(), site.tanks.end(),
                                   [&](const site::Tank& one) { return one.id.text == runs->sump; });
  out.caught = filling(site, runs->sump, of_tank, out.lost.shown().steady_flow);
  out.problem = out.caught.problem;
  return out;
}

}  // namespace

Replay run_tank_sump_fills(const site::Site& site, const std::string& at, const Context&) {
  const Filling told = tank_sump(site, at);
  if (!told.problem.empty()) return no_replay(at, told.problem);
  const SumpFill& fill = told.sump.fills.front();
  return replay_of(told.sump.owner, caution_of_escapes, filling_scene(told, "sensor dead", fill.to_brim, false),
                   filling_scene(told, "sensor works", *fill.to_sensor, true));
}
std::string lacks_tank_sump_fills(const site::Site& site, const std::string& at) { return tank_sump(site, at).problem; }

Replay run_inner_pipe_leaks(const site::Site& site, const std::string& at, const Context& context) {
  const InnerLeak told = inner_leak(site, at, true, context);
  if (!told.problem.empty()) return no_replay(told.line, told.problem);
  const studies::IncidentRun& run = told.lost.shown();
  Scene fails = told_scene(told.single, told.lost, false);
  fails.values["leak"] = shares_of(run.chart.escaping, most_of(run.chart.escaping));
  hold(fails, "flow", 1.0);
  hold(fails, "space", 0.0);
  hold(fails, "sump", 0.0);
  Scene works = filling_scene(told.caught, "two walls, and a sensor in the sump",
                              *told.caught.sump.fills.front().to_sensor, true);
  hold(works, "flow", 1.0);
  hold(works, "space", 1.0);
  works.values["sump"] = works.values["liquid"];
  works.events.insert(works.events.begin(),
                      {0.0, "what leaks runs between the walls to the sump of " + told.caught.sump.owner});
  return replay_of(told.line, caution_of_escapes, std::move(fails), std::move(works));
}
std::string lacks_inner_pipe_leaks(const site::Site& site, const std::string& at) {
  return inner_leak(site, at, false, {}).problem;
}

}  // namespace forecourse::lesson
