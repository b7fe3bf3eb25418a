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

class Runs {
 public:
  Runs(const Scene& scene, Inputs& inputs, const release::Names& names, const Context& context)
      : s_(scene), in_(inputs), names_(names), context_(context), pull_(pull_of(scene, inputs)) {}

  DriveOffOutcome all() {
    const bool listed = hose().breakaway || hose().parting;
    if (listed) {
      add(shut_run(), "the breakaway parts and both its ends shut", {}, Happening::breakaway_parts,
          "the breakaway parts");
      add(open_run(), "the breakaway parts and its dispenser end stays open", {Barrier::breakaway},
          Happening::breakaway_parts, "the breakaway parts, one end open");
    } else {
      add(open_run(), "no breakaway: the hose fails", {Barrier::breakaway}, Happening::hose_fails, "the hose fails");
    }
    add_over({}, listed ? "the breakaway does not part, and the dispenser goes over"
                        : "no breakaway, and the dispenser goes over");
    add_over({Barrier::shear_valve}, "the dispenser goes over, without its shear valve");
    return {std::move(pull_.told), std::move(runs_)};
  }

 private:
  [[nodiscard]] const site::Hose& hose() const { return *s_.ground.ends.front().hose; }

  [[nodiscard]] IncidentRun told(release::Case given, const release::Names& names) const {
    given.stops.emergency_stop = std::max(0.0, given.stops.emergency_stop - pull_.parts_at);
    return release::tell_run(given, names, s_.options.charts, context_);
  }

  [[nodiscard]] IncidentRun shut_run() {
    release::Case given = make_case(s_, in_, {});
    for (release::Broken& b : given.broken) {
      b.running = b.stopped = {};
      b.compliance = 0.0;
    }
    return told(std::move(given), names_);
  }

  [[nodiscard]] IncidentRun open_run() {
    release::Case given = make_case(s_, in_, {});
    if (const auto held = curb_volume(hose())) given.broken.front().above.volume = *held;
    return told(std::move(given), names_);
  }

  void add(IncidentRun run, std::string name, std::vector<Barrier> missing, Happening what, const char* words) {
    run.name = std::move(name);
    run.missing = std::move(missing);
    begin_earlier(pull_.parts_at, run);
    const std::string& id = hose().id.text;
    const std::vector<TimelineRow> before{row(0.0, Happening::begins, id, "the vehicle sets off", run),
                                          row(pull_.told.tight_at, Happening::hose_tight, id, "the hose is tight", run),
                                          row(pull_.parts_at, what, id, words, run)};
    run.timeline.erase(run.timeline.begin());
    run.timeline.insert(run.timeline.begin(), before.begin(), before.end());
    runs_.push_back(std::move(run));
  }

  /// The dispenser is pulled off its valves: what a strike does.
  void add_over(const std::set<Barrier>& missing, std::string name) {
    IncidentOptions struck = s_.options;
    struck.kind = IncidentKind::struck;
    struck.request = s_.request;
    struck.request.at.text = s_.ground.dispenser;
    const Groundwork ground = lay_ground(s_.site, struck);
    if (!ground.problem.empty()) return;
    site::IncidentRequest request = s_.request;
    request.at.text = s_.ground.dispenser;
    const Scene over{s_.site, struck, request, ground};
    release::Names names = names_;
    names.places.clear();
    names.products.clear();
    for (const EndGround& end : ground.ends) {
      names.places.push_back(end.place);
      names.products.push_back(end.product);
    }
    std::vector<Barrier> gone{Barrier::breakaway};
    gone.insert(gone.end(), missing.begin(), missing.end());
    add(told(make_case(over, in_, missing), names), std::move(name), std::move(gone), Happening::dispenser_over,
        "the dispenser goes over");
  }

  const Scene& s_;
  Inputs& in_;
  const release::Names& names_;
  const Context& context_;
  Pull pull_;
  std::vector<IncidentRun> runs_;
};

}  // namespace

DriveOffOutcome drive_off(const Scene& scene, Inputs& inputs, const release::Names& names, const Context& context) {
  return Runs(scene, inputs, names, context).all();
}

}  // namespace forecourse::studies
