#include <algorithm>
#include <cstddef>
#include <utility>

#include "forecourse/lesson/failures/kinds.h"
#include "forecourse/lesson/failures/loss_text.h"
#include "forecourse/lesson/failures/scene.h"
#include "forecourse/lesson/rests_on.h"
#include "forecourse/site/places.h"
#include "forecourse/studies/flow/read_flow_options.h"

namespace forecourse::lesson {
namespace {

/// What nothing changes in for this long is shown as it stands [s].
constexpr double span = 60.0;

/// How many times the loss of a clean filter one has that is counted as clogged, where its loss when due for a change
/// is not entered; a chosen figure, told among the events.
constexpr double clogged_times = 10.0;

bool has_filter(const Spot& spot) {
  const bool at_inlet = spot.inlet != nullptr && spot.inlet->filter && spot.inlet->filter->loss;
  return at_inlet || (spot.hose->filter && spot.hose->filter->loss);
}

/// The flow of one hose, alone.
struct HoseAlone {
  std::string problem;
  double flow = 0.0;         ///< [m3/s]
  double filter_loss = 0.0;  ///< [Pa]
  std::string pointer;
  std::string loss_pointer;
  std::vector<std::string> command;
  std::vector<std::string> rests_on;
};

HoseAlone hose_alone(const site::Site& site, const std::string& hose, const std::vector<std::string>& sets) {
  HoseAlone out;
  out.command = {"flow", "--open", hose};
  for (const std::string& set : sets) out.command.insert(out.command.end(), {"--set", set});
  auto options = studies::read_flow_options({{hose}}, site, studies::Asker::command);
  options.value.spans = options.value.lines_at_rest = options.value.ladders = false;
  const studies::FlowResult result = study_flow(site, options.value);
  out.problem = "the flow of hose " + hose + " is not determined";
  if (result.states.empty()) return out;
  const auto& systems = result.states.front().systems;
  for (std::size_t s = 0; s < systems.size(); ++s) {
    for (std::size_t h = 0; h < systems[s].hoses.size(); ++h) {
      const studies::HoseFlow& told = systems[s].hoses[h];
      if (told.id != hose) continue;
      if (systems[s].status != studies::FlowStatus::determined) {
        out.problem = systems[s].reason;
        return out;
      }
      out.problem.clear();
      out.flow = told.hose_flow;
      out.rests_on = lesson::rests_on(result.defaults, systems[s].system);
      const std::string at = "/result/states/0/systems/" + std::to_string(s) + "/hoses/" + std::to_string(h) + "/";
      out.pointer = at + "hose_flow_m3_per_s";
      for (std::size_t b = 0; b < told.budget.size(); ++b) {
        if (told.budget[b].part != "filter") continue;
        out.filter_loss = told.budget[b].loss;
        out.loss_pointer = at + "budget/" + std::to_string(b) + "/pressure_loss_pa";
      }
      return out;
    }
  }
  return out;
}

/// The filter of a hose clean, and clogged.
struct Clogging {
  std::string problem;
  std::string hose;
  std::string words;       ///< how far it is clogged
  bool is_chosen = false;  ///< nobody entered how far
  HoseAlone clean, clogged;
};

/// Gives the filter of a hose another loss; the value typed behind `--set`.
std::string set_loss(site::Site& site, const Spot& spot, const site::EnteredLoss& loss) {
  for (site::Dispenser& dispenser : site.dispensers) {
    if (dispenser.id.text != spot.dispenser->id.text) continue;
    const std::string start = "dispenser." + dispenser.id.text + ".";
    for (site::Hose& hose : dispenser.hoses) {
      if (hose.id.text != spot.id || !hose.filter || !hose.filter->loss) continue;
      hose.filter->loss = loss;
      return start + "hose." + spot.id + ".filter.loss=" + loss_text(loss);
    }
    for (site::Inlet& inlet : dispenser.inlets) {
      if (spot.inlet == nullptr || inlet.product != spot.inlet->product || !inlet.filter) continue;
      inlet.filter->loss = loss;
      return start + "inlet." + (inlet.id.empty() ? inlet.product.text : inlet.id.text) +
             ".filter.loss=" + loss_text(loss);
    }
  }
  return {};
}

Clogging clogging(const site::Site& site, const std::string& at) {
  Clogging out;
  out.hose = at;
  const std::vector<Spot> spots = hoses(site, at, "", has_filter);
  if (spots.empty()) {
    out.problem =
        "no filter with a loss is listed: add filter = { loss = \"0.020 psi/gpm^2\" } to a [[dispenser.inlet]]";
    return out;
  }
  const Spot& spot = spots.front();
  out.hose = spot.id;
  const bool own = spot.hose->filter && spot.hose->filter->loss;
  const site::Part& filter = own ? *spot.hose->filter : *spot.inlet->filter;
  site::Site changed = site;
  const std::string set = set_loss(changed, spot, filter.loaded ? *filter.loaded : times(clogged_times, *filter.loss));
  out.is_chosen = !filter.loaded;
  out.words = filter.loaded ? "the filter has the loss at which it is due for a change"
                            : "the filter has ten times the loss of a clean one";
  out.clean = hose_alone(site, out.hose, {});
  out.clogged = hose_alone(changed, out.hose, {set});
  out.problem = out.clean.problem.empty() ? out.clogged.problem : out.clean.problem;
  return out;
}

Scene scene_of(const Clogging& told, bool works) {
  const HoseAlone& alone = works ? told.clean : told.clogged;
  Scene scene = steady_scene(works ? "filter clean" : "filter clogged", works, span);
  hold(scene, "flow", share_of(alone.flow, std::max(told.clean.flow, told.clogged.flow)));
  hold(scene, "clogged", share_of(alone.filter_loss, std::max(told.clean.filter_loss, told.clogged.filter_loss)));
  scene.events = {{0.0, works ? "the filter has the loss that is entered for it" : told.words}};
  scene.told = {{"flow at " + told.hose + ", alone", alone.flow, Quantity::flow, alone.pointer}};
  if (!alone.loss_pointer.empty()) {
    scene.told.push_back({"lost in the filter", alone.filter_loss, Quantity::pressure, alone.loss_pointer});
  }
  scene.command = alone.command;
  scene.rests_on = alone.rests_on;
  if (told.is_chosen) scene.rests_on.insert(scene.rests_on.begin(), told.words + ", chosen for this lesson");
  return scene;
}

/// A line at rest, held and run down.
struct Rest {
  std::string problem;
  std::string at;
  studies::LineAtRest line;
  std::size_t number = 0;  ///< of the study's lines
  std::size_t place = 0;   ///< that is shown
  std::vector<std::string> rests_on;
};

/// The first place of the line where all of its pressures are known.
std::optional<std::size_t> known_place(const studies::LineAtRest& line) {
  const auto found = std::find_if(line.places.begin(), line.places.end(), [](const studies::RestPlace& one) {
    return one.held_gauge && one.decayed_gauge && one.shutoff_gauge;
  });
  return found == line.places.end() ? std::nullopt
                                    : std::optional(static_cast<std::size_t>(found - line.places.begin()));
}

Rest rest_of(const site::Site& site, const std::string& at) {
  Rest out;
  out.at = at;
  auto options = studies::read_flow_options({{"none"}}, site, studies::Asker::command);
  options.value.spans = options.value.ladders = false;
  const studies::FlowResult result = study_flow(site, options.value);
  const std::string product = product_at(site, at);
  out.problem = "no line is listed: add a [[line]]";
  for (std::size_t i = 0; i < result.lines_at_rest.size(); ++i) {
    const studies::LineAtRest& line = result.lines_at_rest[i];
    if (!product.empty() && line.product != product) continue;
    const auto place = known_place(line);
    out.problem = line.reason;
    if (out.problem.empty() && !line.held_pressure) out.problem = line.held_by + ": say check_valve = true of the pump";
    if (out.problem.empty() && !place) out.problem = "the pressures at rest are not determined: enter elevations";
    if (!out.problem.empty()) continue;
    out.line = line;
    out.number = i;
    out.place = *place;
    out.rests_on = lesson::rests_on(result.defaults, line.system);
    if (product.empty()) out.at = line.system;
    return out;
  }
  return out;
}

/// Time to first flow at the first hose of the line where it is determined both ways.
void tell_first_flow(const Rest& rest, bool works, Scene& scene) {
  for (std::size_t h = 0; h < rest.line.hoses.size(); ++h) {
    const studies::RestHose& hose = rest.line.hoses[h];
    if (!hose.held.time || !hose.decayed.time) continue;
    scene.told.push_back({"to first flow at " + hose.id, works ? hose.held.time : hose.decayed.time, Quantity::time,
                          "/result/lines_at_rest/" + std::to_string(rest.number) + "/hoses/" + std::to_string(h) +
                              (works ? "/first_flow_held/time_s" : "/first_flow_decayed/time_s")});
    return;
  }
}

Scene scene_of(const Rest& rest, bool works) {
  const studies::RestPlace& place = rest.line.places[rest.place];
  const double pressure = works ? *place.held_gauge : *place.decayed_gauge;
  Scene scene = steady_scene(works ? "check valve holds" : "check valve does not hold", works, span);
  hold(scene, "runs", 0.0);
  hold(scene, "flow", 0.0);
  hold(scene, "check", works ? 0.0 : 1.0);
  hold(scene, "pressure", share_of(pressure, *place.shutoff_gauge));
  scene.events = {{0.0, works ? "the pump has stopped, and the line holds its pressure"
                              : "the line has run back to the level in the tank; how soon is not computed"}};
  if (!works && place.below_atmosphere) {
    scene.events.push_back({0.0, "the line is below the pressure of the air: vapor may form, and air may come in"});
  }
  scene.told = {{"pressure at " + place.id, pressure, Quantity::pressure,
                 "/result/lines_at_rest/" + std::to_string(rest.number) + "/places/" + std::to_string(rest.place) +
                     (works ? "/held_pressure_gauge_pa" : "/decayed_pressure_gauge_pa")}};
  tell_first_flow(rest, works, scene);
  scene.command = {"flow", "--open", "none"};
  scene.rests_on = rest.rests_on;
  return scene;
}

}  // namespace

Replay run_filter_clogs(const site::Site& site, const std::string& at, const Context&) {
  const Clogging told = clogging(site, at);
  if (!told.problem.empty()) return no_replay(told.hose, told.problem);
  return replay_of(told.hose, {}, scene_of(told, false), scene_of(told, true));
}
std::string lacks_filter_clogs(const site::Site& site, const std::string& at) { return clogging(site, at).problem; }

Replay run_check_valve_leaks(const site::Site& site, const std::string& at, const Context&) {
  const Rest told = rest_of(site, at);
  if (!told.problem.empty()) return no_replay(told.at, told.problem);
  return replay_of(told.at, {}, scene_of(told, false), scene_of(told, true));
}
std::string lacks_check_valve_leaks(const site::Site& site, const std::string& at) { return rest_of(site, at).problem; }

}  // namespace forecourse::lesson
