#include "forecourse/lesson/failures/incident_plan.h"

#include <utility>

#include "forecourse/lesson/failures/cautions.h"
#include "forecourse/lesson/failures/scene.h"

namespace forecourse::lesson {
namespace {

/// Why the part does nothing here, though it is taken to work; empty: it acts.
std::string why_idle(const IncidentPlan& plan, const IncidentWorked& works) {
  if (!plan.acts || first_time(works.shown(), *plan.acts)) return {};
  const bool by_fire = works.result.fire && !works.result.fire->link_reason.empty();
  return plan.idle + (by_fire ? ": " + works.result.fire->link_reason : "");
}

IncidentMost most_of_both(const IncidentWorked& fails, const IncidentWorked& works) {
  IncidentMost out;
  for (const IncidentWorked* one : {&fails, &works}) {
    out.escaping = most_of(one->shown().chart.escaping, out.escaping);
    out.inflow = most_of(inflow_of(one->shown()), out.inflow);
  }
  return out;
}

Scene scene_of(const site::Site& site, const IncidentPlan& plan, const IncidentWorked& worked, const IncidentMost& most,
               bool works) {
  Scene scene = told_scene(works ? plan.works : plan.fails, worked, works);
  if (worked.result.drive_off) {
    add_pull_values(worked, most, scene);
  } else {
    add_release_values(site, plan.spot, worked, most, scene);
  }
  for (const Fixed& one : plan.fixed) hold(scene, one.name, works ? one.works : one.fails);
  return scene;
}

}  // namespace

Replay replay_of(const site::Site& site, const IncidentPlan& plan, const Context& context) {
  if (!plan.problem.empty()) return no_replay(plan.at, plan.problem);
  const IncidentWorked works = work_out(site, plan.works, true, context);
  if (!works.problem.empty()) return no_replay(plan.at, works.problem);
  if (std::string idle = why_idle(plan, works); !idle.empty()) return no_replay(plan.at, std::move(idle));
  const IncidentWorked fails = work_out(site, plan.fails, true, context);
  if (!fails.problem.empty()) return no_replay(plan.at, fails.problem);
  const IncidentMost most = most_of_both(fails, works);
  return replay_of(plan.at, caution_of_escapes, scene_of(site, plan, fails, most, false),
                   scene_of(site, plan, works, most, true));
}

std::string lacks(const site::Site& site, const IncidentPlan& plan) {
  if (!plan.problem.empty()) return plan.problem;
  const IncidentWorked works = work_out(site, plan.works, false);
  std::string problem = works.problem.empty() ? why_idle(plan, works) : works.problem;
  return problem.empty() ? work_out(site, plan.fails, false).problem : problem;
}

}  // namespace forecourse::lesson
