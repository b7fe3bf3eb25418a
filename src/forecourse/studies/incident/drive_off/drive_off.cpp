#include "forecourse/studies/incident/drive_off/drive_off.h"

#include <algorithm>
#include <numbers>
#include <utility>

#include "forecourse/studies/incident/drive_off/pull.h"

namespace forecourse::studies {
namespace {

/// What the curb hose holds [m3]; empty where its length or bore is not entered.
std::optional<double> curb_volume(const site::Hose& hose) {
  if (!hose.curb || !hose.curb->length || !hose.curb->bore) return std::nullopt;
  const double bore = hose.curb->bore->likely.si();
  return 0.25 * std::numbers::pi * bore * bore * hose.curb->length->likely.si();
}

TimelineRow row(double time, Happening what, const std::string& owner, std::string words, const IncidentRun& run) {
  return {time, what, owner, std::move(words), 0.0, 0.0, {}, run.timeline.front().held};
}

/// Counts a run that begins when something gives way from the moment the vehicle sets off.
void begin_earlier(double by, IncidentRun& run) {
  for (TimelineRow& one : run.timeline) one.time += by;
  for (double& time : run.chart.time) time += by;
  for (auto* time : {&run.isolated_at, &run.sensor_at, &run.seal_at, &run.brim_at}) {
    if (*time) **time += by;
  }
  run.counted += by;
}

/// What happens to the hose or the dispenser, and how the run is called.
struct Ending {
  parts::PullLimit limit = parts::PullLimit::breakaway;  ///< that was reached
  Happening what = Happening::breakaway_parts;
  const char* words = "";
  std::string name;
};

class Runs {
 public:
  Runs(const Scene& scene, Inputs& inputs, const release::Names& names, const Context& context)
      : s_(scene), in_(inputs), names_(names), context_(context), pull_(pull_of(scene, inputs)) {
    for (const Barrier barrier : scene.options.without) taken_.insert(barrier);
    for (const DeadBarrier& dead : scene.options.dead) {
      if (!dead.dead_for) taken_.insert(dead.barrier);
    }
    if (!pull_.breakaway_acts && is_listed()) taken_.insert(Barrier::breakaway);
  }

  DriveOffOutcome all() {
    const bool acts = pull_.breakaway_acts;
    const std::string no = is_listed() ? "without its breakaway" : "no breakaway";
    if (acts && is_possible(parts::PullLimit::breakaway)) {
      if (!is_single()) add_shut();
      add_open({parts::PullLimit::breakaway, Happening::breakaway_parts, "the breakaway parts, one end open",
                "the breakaway parts and its dispenser end stays open"});
    }
    if (!acts || (hose().curb && hose().curb->strength && is_possible(parts::PullLimit::hose))) {
      add_open({parts::PullLimit::hose, Happening::hose_fails, "the hose fails",
                acts ? "the breakaway does not part, and the hose fails" : no + ": the hose fails"});
    }
    if (hose().nozzle_pull_out && is_possible(parts::PullLimit::nozzle_pull_out)) add_pulled_out();
    add_over(acts ? "the breakaway does not part" : no);
    return {std::move(pull_.told), in_order()};
  }

 private:
  [[nodiscard]] const site::Hose& hose() const { return *s_.ground.ends.front().hose; }

  [[nodiscard]] bool is_listed() const { return hose().breakaway || hose().parting; }

  /// What surely comes first is told first: the others are what could have been.
  [[nodiscard]] std::vector<IncidentRun> in_order() {
    std::stable_partition(runs_.begin(), runs_.end(),
                          [&](const auto& run) { return pull_.first && run.first == *pull_.first; });
    std::vector<IncidentRun> out;
    for (auto& run : runs_) out.push_back(std::move(run.second));
    return out;
  }

  /// One poppet: which end it shuts is not entered, so that the dispenser's is taken to stay open.
  [[nodiscard]] bool is_single() const {
    return hose().parting && hose().parting->poppet && hose().parting->poppet->value == site::Poppet::single_poppet;
  }

  [[nodiscard]] bool is_possible(parts::PullLimit limit) const {
    const auto& could = pull_.could_be_first;
    return std::find(could.begin(), could.end(), limit) != could.end();
  }

  /// Times are counted from the moment the vehicle sets off; a run begins when something gives way.
  [[nodiscard]] IncidentRun told(release::Case given, const release::Names& names) const {
    const auto sooner = [&](double& time) { time = std::max(0.0, time - pull_.parts_at); };
    sooner(given.stops.emergency_stop);
    sooner(given.stops.sensor_dead_until);
    for (release::Broken& b : given.broken) sooner(b.shutting.triggers_at);
    return release::tell_run(given, names, s_.options.charts, context_);
  }

  void add_shut() {
    release::Case given = make_case(s_, in_, taken_);
    for (release::Broken& b : given.broken) {
      b.running = b.stopped = {};
      b.compliance = 0.0;
    }
    const bool known = hose().parting && hose().parting->poppet;
    add(told(std::move(given), names_), {},
        {parts::PullLimit::breakaway, Happening::breakaway_parts, "the breakaway parts",
         std::string("the breakaway parts and both its ends shut") +
             (known ? "" : "; whether both have a poppet is not entered")});
  }

  void add_open(const Ending& ending) {
    release::Case given = make_case(s_, in_, taken_);
    if (const auto held = curb_volume(hose())) given.broken.front().above.volume = *held;
    release::Names names = names_;
    names.above = "what the hose held";
    add(told(std::move(given), names), {Barrier::breakaway}, ending);
  }

  [[nodiscard]] std::string sets_off() const {
    if (!s_.request.pump_runs)
      return "the vehicle sets off; the nozzle is taken to be latched open and the pump to run";
    return *s_.request.pump_runs ? "the vehicle sets off, the nozzle latched open and the pump running"
                                 : "the vehicle sets off, the pump not running";
  }

  void add(IncidentRun run, std::vector<Barrier> missing, const Ending& ending) {
    run.name = ending.name;
    for (const Barrier barrier : taken_) {
      if (std::find(missing.begin(), missing.end(), barrier) == missing.end()) missing.push_back(barrier);
    }
    run.missing = std::move(missing);
    begin_earlier(pull_.parts_at, run);
    const std::string& id = hose().id.text;
    const std::vector<TimelineRow> before{row(0.0, Happening::begins, id, sets_off(), run),
                                          row(pull_.told.tight_at, Happening::hose_tight, id, "the hose is tight", run),
                                          row(pull_.parts_at, ending.what, id, ending.words, run)};
    run.timeline.erase(run.timeline.begin());
    run.timeline.insert(run.timeline.begin(), before.begin(), before.end());
    runs_.emplace_back(ending.limit, std::move(run));
  }

  /// Another kind of incident that the pull leads to, on a ground of its own.
  struct Follows {
    IncidentOptions options;
    site::IncidentRequest request;
    Groundwork ground;
  };
  [[nodiscard]] Follows follows(IncidentKind kind, const std::string& at) const {
    Follows f{s_.options, s_.request, {}};
    f.request.at.text = at;
    f.request.id.text = "after the drive-off";  // no incident of the file has it: none is laid under this one
    f.options.kind = kind;
    f.options.request = f.request;
    f.ground = lay_ground(s_.site, f.options);
    return f;
  }

  /// The nozzle lies on the forecourt; whether it shuts by itself then is not known.
  void add_pulled_out() {
    const Follows f = follows(IncidentKind::nozzle_left_open, hose().id.text);
    if (!f.ground.problem.empty()) return;
    add(told(make_case({s_.site, f.options, f.request, f.ground}, in_, taken_), names_), {Barrier::breakaway},
        {parts::PullLimit::nozzle_pull_out, Happening::nozzle_out, "the nozzle comes out of the vehicle",
         "the nozzle comes out and stays open"});
  }

  /// The dispenser is pulled off its valves: what a strike does.
  void add_over(const std::string& why) {
    const Follows f = follows(IncidentKind::struck, s_.ground.dispenser);
    if (!f.ground.problem.empty()) return;
    release::Names names = names_;
    names.places.clear();
    names.products.clear();
    names.tanks.clear();
    bool any_valve = false;
    for (const EndGround& end : f.ground.ends) {
      names.places.push_back(end.place);
      names.products.push_back(end.product);
      names.tanks.push_back(end.tank);
      any_valve = any_valve || (end.inlet != nullptr && end.inlet->shear_valve);
    }
    const Scene over{s_.site, f.options, f.request, f.ground};
    const auto add_one = [&](const std::set<Barrier>& gone, std::vector<Barrier> missing, std::string name) {
      add(told(make_case(over, in_, gone), names), std::move(missing),
          {parts::PullLimit::anchorage, Happening::dispenser_over, "the dispenser goes over", std::move(name)});
    };
    const bool valve_acts = any_valve && taken_.count(Barrier::shear_valve) == 0;
    if (valve_acts || !any_valve) add_one(taken_, {Barrier::breakaway}, why + ", and the dispenser goes over");
    if (!any_valve) return;
    std::set<Barrier> bare = taken_;
    bare.insert(Barrier::shear_valve);
    add_one(bare, {Barrier::breakaway, Barrier::shear_valve}, "the dispenser goes over, without its shear valve");
  }

  const Scene& s_;
  Inputs& in_;
  const release::Names& names_;
  const Context& context_;
  Pull pull_;
  std::set<Barrier> taken_;  ///< that do not act, as asked
  std::vector<std::pair<parts::PullLimit, IncidentRun>> runs_;
};

}  // namespace

DriveOffOutcome drive_off(const Scene& scene, Inputs& inputs, const release::Names& names, const Context& context) {
  return Runs(scene, inputs, names, context).all();
}

}  // namespace forecourse::studies
