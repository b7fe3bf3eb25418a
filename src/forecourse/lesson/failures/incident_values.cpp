#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

#include "forecourse/lesson/failures/incident_plan.h"
#include "forecourse/lesson/failures/scene.h"
#include "forecourse/studies/containment/containment.h"

namespace forecourse::lesson {
namespace {

using studies::Barrier;
using studies::Happening;
using studies::Holder;
using studies::IncidentKind;
using studies::IncidentRun;

bool is_missing(const IncidentRun& run, Barrier barrier) {
  return std::find(run.missing.begin(), run.missing.end(), barrier) != run.missing.end();
}

/// How high the fuel stands in the sump of a dispenser, with sensor and lowest seal, as shares of its depth.
void add_sump(const site::Site& site, const IncidentWorked& worked, Scene& scene) {
  const std::vector<double> volume = held_in(worked.shown(), Holder::sump);
  const studies::ContainmentResult held = studies::study_containment(site, {});
  const auto sump = std::find_if(held.sumps.begin(), held.sumps.end(), [&](const studies::ContainedSump& one) {
    return !one.of_tank && one.owner == worked.result.dispenser;
  });
  if (volume.empty() || sump == held.sumps.end() || !sump->depth || sump->points.empty()) return;
  std::vector<double> volumes, heights;
  for (const studies::SumpPoint& point : sump->points) {
    volumes.push_back(point.volume);
    heights.push_back(point.height);
  }
  std::vector<double>& liquid = scene.values["liquid"];
  for (const double one : volume) liquid.push_back(share_of(between(volumes, heights, one), *sump->depth));
  if (sump->sensor_height) hold(scene, "sensor_height", share_of(*sump->sensor_height, *sump->depth));
  if (sump->seal_height) hold(scene, "seal_height", share_of(*sump->seal_height, *sump->depth));
  step(scene, "sensor", first_time(worked.shown(), Happening::sensor_wet));
  step(scene, "signal", first_time(worked.shown(), Happening::sensor_stops));
}

/// Pressure at the opening as a share of that of the pump against a shut line.
void add_pressure(const IncidentWorked& worked, Scene& scene) {
  const std::vector<double>& pressure = worked.shown().chart.pressure;
  const auto& ends = worked.result.open_ends;
  const bool known =
      !pressure.empty() && std::all_of(pressure.begin(), pressure.end(), [](double one) { return std::isfinite(one); });
  if (!known || ends.empty() || !(ends.front().shutoff_at_opening > 0.0)) return;
  scene.values["pressure"] = shares_of(pressure, ends.front().shutoff_at_opening);
}

/// The pump runs from the start until somebody or something stops it; one that comes and goes all day is not told.
void add_pump(const IncidentWorked& worked, Scene& scene) {
  const IncidentRun& run = worked.shown();
  const auto stop = first_time(run, Happening::emergency_stop);
  step(scene, "pressed", stop);
  const auto& ends = worked.result.open_ends;
  const bool runs =
      !ends.empty() && std::all_of(ends.begin(), ends.end(), [](const auto& end) { return end.pump_runs; });
  if (!runs || first_time(run, Happening::pump_starts)) return;
  std::optional<double> off = stop;
  if (const auto sensor = first_time(run, Happening::sensor_stops)) off = off ? std::min(*off, *sensor) : sensor;
  if (const auto pump = first_time(run, Happening::pump_stops)) off = off ? std::min(*off, *pump) : pump;
  step(scene, "runs", off);
  for (double& one : scene.values["runs"]) one = 1.0 - one;
}

/// The upper poppet drops when the top is carried away, where there is one and it works.
void add_struck(const Spot& spot, const IncidentRun& run, Scene& scene) {
  const bool torn = run.name.rfind("shear valve not anchored", 0) == 0;
  hold(scene, "hit", 1.0);
  hold(scene, "broken", torn ? 0.0 : 1.0);
  if (!has_shear_valve(spot) || !spot.inlet->shear_valve->poppet) return;
  const bool upper = spot.inlet->shear_valve->poppet->value == site::Poppet::double_poppet;
  const bool acts = upper && !torn && !is_missing(run, Barrier::upper_poppet) && !is_missing(run, Barrier::shear_valve);
  hold(scene, "upper", acts ? 1.0 : 0.0);
}

void add_fire(const IncidentWorked& worked, Scene& scene) {
  const auto& fire = worked.result.fire;
  const std::vector<double>& link = worked.shown().chart.link_temperature;
  step(scene, "parted", first_time(worked.shown(), Happening::link_parts));
  if (!fire || !fire->rated || link.size() != scene.time.size()) return;
  const double rise = *fire->rated - fire->start_temperature;
  std::vector<double>& heat = scene.values["heat"];
  for (const double one : link) heat.push_back(share_of(one - fire->start_temperature, rise));
}

}  // namespace

std::vector<double> inflow_of(const IncidentRun& run) {
  std::vector<double> out = run.chart.pumped;
  for (std::size_t i = 0; i < out.size(); ++i) out[i] = std::max(0.0, out[i] - run.chart.elsewhere[i]);
  return out;
}

void add_release_values(const site::Site& site, const Spot& spot, const IncidentWorked& worked,
                        const IncidentMost& most, Scene& scene) {
  const IncidentRun& run = worked.shown();
  const IncidentKind kind = worked.result.options.kind;
  scene.values["escape"] = scene.values["leak"] = shares_of(run.chart.escaping, most.escaping);
  scene.values["flow"] = shares_of(inflow_of(run), most.inflow);
  add_sump(site, worked, scene);
  add_pressure(worked, scene);
  add_pump(worked, scene);
  step(scene, "lower", last_time(run, Happening::valve_shut));
  if (spot.inlet != nullptr && spot.inlet->connection) {
    hold(scene, "through", spot.inlet->connection->value == site::Connection::through ? 1.0 : 0.0);
  }
  if (kind == IncidentKind::struck) add_struck(spot, run, scene);
  if (kind == IncidentKind::sump_fire) add_fire(worked, scene);
  if (kind != IncidentKind::crack) return;
  hold(scene, "crack", 1.0);
  if (is_missing(run, Barrier::leak_detector)) hold(scene, "detector_gone", 1.0);
  step(scene, "tripped", first_time(run, Happening::crack_trips));
  step(scene, "trips", first_time(run, Happening::detector_due));
}

void add_pull_values(const IncidentWorked& worked, const IncidentMost& most, Scene& scene) {
  const IncidentRun& run = worked.shown();
  const auto& told = *worked.result.drive_off;
  constexpr std::size_t before = 2;  // sets off, hose tight
  scene.time.insert(scene.time.begin(), {0.0, std::min(told.tight_at, scene.time.front())});
  for (Course& course : scene.courses) {
    const double begins = course.course == "escaped" ? 0.0 : std::nan("");
    course.values.insert(course.values.begin(), before, begins);
  }
  std::vector<double> escape = shares_of(run.chart.escaping, most.escaping);
  escape.insert(escape.begin(), before, 0.0);
  scene.values["escape"] = std::move(escape);
  hold(scene, "pull", 0.0);
  scene.values["pull"][before] = 1.0;
  hold(scene, "angle", share_of(told.angle, 0.5 * std::numbers::pi));
  step(scene, "away", told.tight_at);
  const auto parts = first_time(run, Happening::breakaway_parts);
  step(scene, "parted", parts);
  step(scene, "shut", is_missing(run, Barrier::breakaway) ? std::nullopt : parts);
}

}  // namespace forecourse::lesson
