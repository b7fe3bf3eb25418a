#include "forecourse/report/incident/incident_scene.h"

#include <algorithm>
#include <cmath>

#include "forecourse/report/drawing/tone.h"
#include "forecourse/report/units.h"

namespace forecourse::report {
namespace {

using studies::Holder;
using studies::IncidentKind;
using studies::IncidentResult;
using studies::IncidentRun;

bool lies_below(const IncidentResult& r) {
  return !r.open_ends.empty() && r.open_ends.front().height_above_liquid > 0.0;
}

/// What a holder holds over the time of the run's chart; null: the run has no such holder.
const std::vector<double>* course_of(const IncidentRun& run, Holder holder) {
  const auto at =
      static_cast<std::size_t>(std::find(run.holders.begin(), run.holders.end(), holder) - run.holders.begin());
  return at < run.chart.held.size() ? &run.chart.held[at] : nullptr;
}

/// The greatest value of some runs; empty if it is not above zero.
template <class Value>
std::optional<double> most_of(const std::vector<IncidentRun>& runs, Value value) {
  double most = 0.0;
  for (const IncidentRun& run : runs) most = std::max(most, value(run));
  return most > 0.0 ? std::optional<double>(most) : std::nullopt;
}

double most_on_slab(const IncidentRun& run) {
  double most = 0.0;
  for (const studies::TimelineRow& row : run.timeline) {
    for (std::size_t h = 0; h < row.held.size(); ++h) {
      if (run.holders[h] == Holder::slab) most = std::max(most, row.held[h]);
    }
  }
  if (const auto* course = course_of(run, Holder::slab); course != nullptr) {
    for (const double volume : *course) most = std::max(most, volume);
  }
  return most;
}

}  // namespace

bool has_scene(const IncidentResult& result) {
  return result.options.kind != IncidentKind::overfill && result.options.kind != IncidentKind::line_break;
}

std::optional<double> over_at(const IncidentResult& result, const IncidentRun& run) {
  if (result.options.kind == IncidentKind::struck) return 0.0;
  const auto over = std::find_if(run.timeline.begin(), run.timeline.end(), [](const studies::TimelineRow& row) {
    return row.what == studies::Happening::dispenser_over;
  });
  return over == run.timeline.end() ? std::nullopt : std::optional(over->time);
}

std::optional<studies::JetRow> jet_at(const IncidentResult& result, const IncidentRun& run, double flow) {
  if (result.jets.empty() || !(result.jets.front().height_high > 0.0)) return std::nullopt;
  if (!(flow > 0.0) || flow < 0.9 * run.steady_flow) return std::nullopt;
  return result.jets.front();
}

svg::SpillScene empty_scene(const IncidentResult& result, const site::Site& site, const std::string& id) {
  svg::SpillScene scene;
  scene.id = id;
  scene.title = "The scene";
  scene.description =
      "A cut through island, slab and sump at chosen moments: how full the sump is, how wide the pool, how high the "
      "jet. The event list holds the numbers.";
  scene.level = lies_below(result);
  if (!result.open_ends.empty()) scene.tone = drawing::tone_of(site, result.open_ends.front().product);
  return scene;
}

std::string moving_scene(const IncidentResult& result, const site::Site& site, double width, const std::string& id) {
  if (!has_scene(result) || result.runs.empty()) return {};
  svg::SpillScene scene = empty_scene(result, site, id);
  scene.width = width;
  scene.description =
      "A cut through island, slab and sump: how full the sump is, how wide the pool, how high the jet. The event list "
      "holds the numbers.";
  svg::SpillMoment before;
  before.standing = true;
  svg::SpillFull full;
  full.sump = result.sump_brim;
  if (full.sump) before.in_sump = 0.0;
  full.pool = most_of(result.runs, most_on_slab);
  full.flow = most_of(result.runs, [](const IncidentRun& run) { return run.steady_flow; });
  if (!full.flow) full.flow = most_of(result.runs, [](const IncidentRun& run) { return run.peak_flow; });
  if (!result.jets.empty() && result.jets.front().height_high > 0.0) full.jet = result.jets.front().height_high;
  scene.moments.push_back(before);
  return draw_moving(scene, full);
}

std::vector<std::string> scene_remarks(const IncidentResult& result, const site::Site& site, bool with_jet) {
  std::vector<std::string> out{"Not to scale: the pool's width against its widest, the sump's fill by volume."};
  if (lies_below(result)) {
    out.push_back("Dotted at the foot: the liquid in the tank, " +
                  with_unit(Measure::length, site.display, result.open_ends.front().height_above_liquid) +
                  " below the opening.");
  }
  if (with_jet) out.emplace_back("Over the opening: the range of the jet's height.");
  return out;
}

SceneCourses scene_courses(const IncidentResult& result, const IncidentRun& run) {
  SceneCourses out;
  const std::vector<double>* sump = course_of(run, Holder::sump);
  const std::vector<double>* slab = course_of(run, Holder::slab);
  const bool pool_told = result.pool && result.pool->volume > 0.0;
  for (std::size_t i = 0; i < run.chart.time.size(); ++i) {
    const auto jet = jet_at(result, run, run.chart.escaping[i]);
    out.jet_low.push_back(jet ? std::optional(jet->height_low) : std::nullopt);
    out.jet_high.push_back(jet ? std::optional(jet->height_high) : std::nullopt);
    out.sump_share.push_back(sump != nullptr && result.sump_brim ? std::optional((*sump)[i] / *result.sump_brim)
                                                                 : std::nullopt);
    out.pool_radius.push_back(
        slab != nullptr && pool_told
            ? std::optional(result.pool->radius.likely * std::sqrt(std::max((*slab)[i], 0.0) / result.pool->volume))
            : std::nullopt);
  }
  return out;
}

}  // namespace forecourse::report
