#include "forecourse/lesson/failures/incident_side.h"

#include <algorithm>
#include <cstddef>
#include <iterator>

#include "forecourse/lesson/rests_on.h"
#include "forecourse/studies/incident/runs_alone.h"

namespace forecourse::lesson {
namespace {

using studies::Happening;
using studies::Holder;
using studies::IncidentRun;

std::string words_of(const Diagnostic& wrong) { return wrong.message + (wrong.hint.empty() ? "" : ": " + wrong.hint); }

/// As typed behind the program's name, without the site.
std::vector<std::string> command_of(const IncidentSide& side) {
  const studies::IncidentTexts& t = side.texts;
  std::vector<std::string> out{"incident", t.kind, "--at", t.at};
  const auto add = [&](const char* option, const std::string& value) {
    if (!value.empty()) out.insert(out.end(), {option, value});
  };
  if (t.open && t.open->empty()) add("--open", "none");
  add("--stop-at", t.stop_at);
  add("--for", t.counts_for);
  add("--open-area", t.open_area);
  for (const std::string& barrier : t.without) add("--without", barrier);
  for (const std::string& barrier : t.dead) add("--dead", barrier);
  for (const std::string& set : side.sets) add("--set", set);
  return out;
}

/// The options that the texts ask for. Hoses that the file has open elsewhere may hang at this very place: none is
/// open then.
Parsed<studies::IncidentOptions> options_of(const site::Site& site, IncidentSide& side) {
  auto read = studies::read_incident_options(side.texts, studies::Asker::command);
  if (!read.ok() || check_options(site, read.value).empty() || side.texts.open) return read;
  IncidentSide closed = side;
  closed.texts.open.emplace();
  auto again = studies::read_incident_options(closed.texts, studies::Asker::command);
  if (!again.ok() || !check_options(site, again.value).empty()) return read;
  side = closed;
  return again;
}

std::size_t find_run(const std::vector<IncidentRun>& runs, const std::string& name) {
  const auto found =
      std::find_if(runs.begin(), runs.end(), [&](const IncidentRun& run) { return run.name.rfind(name, 0) == 0; });
  return static_cast<std::size_t>(std::distance(runs.begin(), found));
}

bool is_outside(Holder holder) {
  switch (holder) {
    case Holder::sump:
    case Holder::slab:
    case Holder::ground:
    case Holder::air:
    case Holder::interceptor:
    case Holder::spill_container:
      return true;
    default:
      return false;
  }
}

}  // namespace

IncidentSide incident_side(std::string name, const char* kind, const std::string& at,
                           std::vector<std::string> without) {
  IncidentSide out;
  out.name = std::move(name);
  out.texts.kind = kind;
  out.texts.at = at;
  out.texts.without = std::move(without);
  return out;
}

IncidentWorked work_out(const site::Site& site, const IncidentSide& asked, bool charts, const Context& context) {
  IncidentWorked out;
  IncidentSide side = asked;
  auto options = options_of(site, side);
  out.command = command_of(side);
  std::vector<Diagnostic> wrong = options.diagnostics;
  if (wrong.empty()) wrong = check_options(site, options.value);
  if (!wrong.empty()) {
    out.problem = words_of(wrong.front());
    return out;
  }
  options.value.barrier_table = !side.run.empty();
  options.value.charts = charts;
  out.result = incident_runs_alone(site, options.value, context);
  out.problem = out.result.problem;
  if (!out.problem.empty()) return out;
  out.run = side.run.empty() ? 0 : find_run(out.result.runs, side.run);
  if (out.run >= out.result.runs.size()) {
    out.problem = "the study has no such run here: " + side.run;
  } else if (out.shown().status == studies::RunStatus::failed) {
    out.problem = "the run did not finish: " + out.shown().reason;
  }
  return out;
}

std::optional<double> first_time(const IncidentRun& run, Happening what) {
  const auto row = std::find_if(run.timeline.begin(), run.timeline.end(),
                                [&](const studies::TimelineRow& one) { return one.what == what; });
  return row == run.timeline.end() ? std::nullopt : std::optional(row->time);
}

std::optional<double> last_time(const IncidentRun& run, Happening what) {
  const auto row = std::find_if(run.timeline.rbegin(), run.timeline.rend(),
                                [&](const studies::TimelineRow& one) { return one.what == what; });
  return row == run.timeline.rend() ? std::nullopt : std::optional(row->time);
}

std::vector<double> held_in(const IncidentRun& run, Holder holder) {
  const auto at =
      static_cast<std::size_t>(std::find(run.holders.begin(), run.holders.end(), holder) - run.holders.begin());
  return at < run.chart.held.size() ? run.chart.held[at] : std::vector<double>();
}

std::vector<double> escaped_so_far(const IncidentRun& run) {
  std::vector<double> out(run.chart.time.size(), 0.0);
  for (std::size_t h = 0; h < run.chart.held.size(); ++h) {
    if (!is_outside(run.holders[h])) continue;
    const std::vector<double>& held = run.chart.held[h];
    for (std::size_t i = 0; i < out.size(); ++i) out[i] += held[i] - held.front();
  }
  return out;
}

Scene told_scene(const IncidentSide& side, const IncidentWorked& worked, bool works) {
  const IncidentRun& run = worked.shown();
  Scene scene;
  scene.name = side.name;
  scene.works = works;
  scene.command = worked.command;
  scene.time = run.chart.time;
  scene.courses = {{"escaped", "outside the piping so far", Quantity::volume, escaped_so_far(run)},
                   {"escaping", "escapes", Quantity::flow, run.chart.escaping}};
  if (!run.chart.pressure.empty()) {
    scene.courses.push_back({"pressure", "pressure in the line there", Quantity::pressure, run.chart.pressure});
  }
  scene.events.reserve(run.timeline.size() + 1);
  if (worked.result.options.none_open) scene.events.push_back({0.0, "no hose is open elsewhere"});
  for (const studies::TimelineRow& row : run.timeline) scene.events.push_back({row.time, row.words});
  scene.rests_on = rests_on(worked.result);
  scene.rests_on.insert(scene.rests_on.begin(), side.chosen.begin(), side.chosen.end());
  const std::string at = "/result/runs/" + std::to_string(worked.run) + "/";
  scene.told = {{"escapes", run.escaped, Quantity::volume, at + "escaped_m3"},
                {"of it, outside every container", run.to_environment, Quantity::volume, at + "to_environment_m3"},
                {"nothing escapes any more after", run.isolated_at, Quantity::time, at + "isolated_at_s"}};
  const bool any_sump = worked.result.sump_brim.has_value();
  if (!any_sump) return scene;
  scene.told.push_back({"the sump sensor is wet after", run.sensor_at, Quantity::time, at + "sensor_at_s"});
  scene.told.push_back({"at the lowest entry seal after", run.seal_at, Quantity::time, at + "lowest_seal_at_s"});
  return scene;
}

}  // namespace forecourse::lesson
