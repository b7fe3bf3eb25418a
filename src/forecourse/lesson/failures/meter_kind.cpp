#include <algorithm>
#include <cstddef>
#include <utility>

#include "forecourse/lesson/failures/kinds.h"
#include "forecourse/lesson/failures/scene.h"
#include "forecourse/lesson/rests_on.h"
#include "forecourse/studies/meter/meter.h"

namespace forecourse::lesson {
namespace {

/// How long the draw is shown to take [s]; a chosen span.
constexpr double span = 60.0;

/// A draw of a meter that tells as much too much as the published limit allows, and of one that tells no more than it
/// gives.
struct Draws {
  std::string problem;
  std::string hose;
  double draft = 0.0;    ///< [m3] given
  double allowed = 0.0;  ///< [m3]
};

Draws draws_of(const site::Site& site, const std::string& at) {
  Draws out;
  out.hose = at;
  const std::vector<Spot> spots = hoses(site, at, "", is_any);
  if (spots.empty()) {
    out.problem = "no hose is listed: add a [[dispenser.hose]]";
    return out;
  }
  out.hose = spots.front().id;
  for (const studies::MeterLimit& limit : studies::published_limits(site)) {
    if (limit.seen != studies::LimitSeen::verified || !(limit.draft > 0.0)) continue;
    const auto allowed = studies::allowed(limit, limit.draft);
    if (!allowed) continue;
    out.draft = limit.draft;
    out.allowed = *allowed;
    return out;
  }
  out.problem = "no published limit whose text was read is for the draw of a meter here";
  return out;
}

/// What the study tells of one draw.
struct Told {
  studies::MeterResult result;
  std::vector<std::string> command;
};

Told told_of(const site::Site& site, const Draws& draws, double indicated) {
  site::records::Proving draw;
  draw.at.day = {2026, 1, 1, {}};
  draw.hose.text = draws.hose;
  draw.indicated = Volume::from_si(indicated);
  draw.measure = Volume::from_si(draws.draft);
  draw.scale = Volume::from_si(0.0);
  site::records::Records records;
  records.provings = {draw};
  studies::MeterOptions options;
  options.hose = draws.hose;
  Told out;
  out.result = study_meter(site, records, options, {});
  out.command = {"meter", "--hose", draws.hose, "--draw",
                 "indicated=" + exact(indicated, "m3") + ", measure=" + exact(draws.draft, "m3") + ", scale=0 m3"};
  return out;
}

Scene scene_of(const site::Site& site, const Draws& draws, bool works) {
  const double most = draws.draft + draws.allowed;
  const double indicated = works ? draws.draft : most;
  const Told told = told_of(site, draws, indicated);
  Scene scene = steady_scene(works ? "meter right" : "meter runs fast", works, span);
  scene.command = told.command;
  scene.rests_on = rests_on(told.result.defaults);
  hold(scene, "flow", 1.0);
  scene.values["count"] = {0.0, share_of(indicated, most)};
  scene.courses = {{"told", "told by the meter", Quantity::volume, {0.0, indicated}},
                   {"given", "given", Quantity::volume, {0.0, draws.draft}}};
  scene.events = {
      {0.0, "a test measure is filled"},
      {span, works ? "the meter tells what is in the measure"
                   : "the meter tells more than is in the measure, by as much as inventory control allows"}};
  const auto& meters = told.result.meters;
  if (meters.empty()) return scene;
  scene.told = {{"told above given, share", meters.front().error, Quantity::share, "/result/meters/0/error"}};
  return scene;
}

}  // namespace

Replay run_meter_runs_fast(const site::Site& site, const std::string& at, const Context&) {
  const Draws draws = draws_of(site, at);
  if (!draws.problem.empty()) return no_replay(draws.hose, draws.problem);
  return replay_of(draws.hose, {}, scene_of(site, draws, false), scene_of(site, draws, true));
}
std::string lacks_meter_runs_fast(const site::Site& site, const std::string& at) { return draws_of(site, at).problem; }

}  // namespace forecourse::lesson
