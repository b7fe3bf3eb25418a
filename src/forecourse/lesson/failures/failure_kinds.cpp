#include <algorithm>

#include "forecourse/lesson/failures/kinds.h"
#include "forecourse/lesson/failures/replay.h"

namespace forecourse::lesson {
namespace {

using Plan = IncidentPlan (*)(const site::Site& site, const std::string& at);

template <Plan plan>
Replay run_plan(const site::Site& site, const std::string& at, const Context& context) {
  return replay_of(site, plan(site, at), context);
}

template <Plan plan>
std::string lacks_plan(const site::Site& site, const std::string& at) {
  return lacks(site, plan(site, at));
}

template <Plan plan>
constexpr FailureKind incident(std::string_view id, std::string_view title) {
  return {id, title, lacks_plan<plan>, run_plan<plan>};
}

}  // namespace

const std::vector<FailureKind>& failure_kinds() {
  static const std::vector<FailureKind> all{
      {"vapor-hose-left-off", "The vapor hose is left off", lacks_vapor_hose_off, run_vapor_hose_off},
      {"overfilled", "The tanker brings more than there is room for", lacks_overfilled, run_overfilled},
      {"valve-at-95-of-diameter", "The overfill valve is set at 95 % of the diameter", lacks_valve_at_95,
       run_valve_at_95},
      {"water-in-tank", "Water stands at the pump's inlet", lacks_water_in_tank, run_water_in_tank},
      {"vent-blocked", "The vent is blocked", lacks_vent_blocked, run_vent_blocked},
      {"check-valve-leaks", "The check valve does not hold", lacks_check_valve_leaks, run_check_valve_leaks},
      {"tank-sump-fills", "The tank sump fills", lacks_tank_sump_fills, run_tank_sump_fills},
      incident<plan_no_detector>("no-leak-detector", "A leak without a leak detector"),
      {"inner-pipe-leaks", "The inner pipe leaks", lacks_inner_pipe_leaks, run_inner_pipe_leaks},
      {"line-warms", "The shut line warms", lacks_line_warms, run_line_warms},
      incident<plan_sensor_dead>("sump-sensor-dead", "The sump sensor is dead"),
      incident<plan_struck>("struck", "A car carries the dispenser away"),
      incident<plan_unanchored>("struck-unanchored", "A car carries it away, the shear valve not anchored"),
      incident<plan_single_poppet>("single-poppet", "A car carries it away, the upper poppet missing"),
      incident<plan_cracked>("cracked", "The groove is cracked"),
      incident<plan_sump_fire>("sump-fire", "Fire in the sump"),
      {"filter-clogs", "The filter clogs", lacks_filter_clogs, run_filter_clogs},
      {"meter-runs-fast", "The meter tells more than it gives", lacks_meter_runs_fast, run_meter_runs_fast},
      incident<plan_drive_off>("drive-off", "A car drives off with the nozzle"),
      incident<plan_nozzle_open>("nozzle-left-open", "The nozzle is left open"),
      incident<plan_stop_dead>("emergency-stop-dead", "A line breaks and nobody can stop the pumps")};
  return all;
}

const FailureKind* find_failure(std::string_view id) {
  const std::vector<FailureKind>& all = failure_kinds();
  const auto found = std::find_if(all.begin(), all.end(), [&](const FailureKind& kind) { return kind.id == id; });
  return found == all.end() ? nullptr : &*found;
}

Replay run_failure(const FailureKind& kind, const site::Site& site, const std::string& at, const Context& context) {
  Replay out = kind.run(site, at, context);
  out.failure = kind.id;
  out.title = kind.title;
  return out;
}

}  // namespace forecourse::lesson
