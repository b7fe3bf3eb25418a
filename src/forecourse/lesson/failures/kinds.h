#pragma once

#include "forecourse/lesson/failures/incident_plan.h"

namespace forecourse::lesson {

// What can fail. Each takes the id of a part, or of something near it; empty: the first that it can happen to.

// At the shear valve.
[[nodiscard]] IncidentPlan plan_struck(const site::Site& site, const std::string& at);
[[nodiscard]] IncidentPlan plan_single_poppet(const site::Site& site, const std::string& at);
[[nodiscard]] IncidentPlan plan_unanchored(const site::Site& site, const std::string& at);
[[nodiscard]] IncidentPlan plan_cracked(const site::Site& site, const std::string& at);
[[nodiscard]] IncidentPlan plan_sump_fire(const site::Site& site, const std::string& at);

// Leaks, and what stops the pump.
[[nodiscard]] IncidentPlan plan_sensor_dead(const site::Site& site, const std::string& at);
[[nodiscard]] IncidentPlan plan_no_detector(const site::Site& site, const std::string& at);
[[nodiscard]] IncidentPlan plan_stop_dead(const site::Site& site, const std::string& at);

// At the hose.
[[nodiscard]] IncidentPlan plan_drive_off(const site::Site& site, const std::string& at);
[[nodiscard]] IncidentPlan plan_nozzle_open(const site::Site& site, const std::string& at);

// Filling a tank.
[[nodiscard]] Replay run_overfilled(const site::Site& site, const std::string& at, const Context& context);
[[nodiscard]] std::string lacks_overfilled(const site::Site& site, const std::string& at);
[[nodiscard]] Replay run_valve_at_95(const site::Site& site, const std::string& at, const Context& context);
[[nodiscard]] std::string lacks_valve_at_95(const site::Site& site, const std::string& at);
[[nodiscard]] Replay run_vapor_hose_off(const site::Site& site, const std::string& at, const Context& context);
[[nodiscard]] std::string lacks_vapor_hose_off(const site::Site& site, const std::string& at);
[[nodiscard]] Replay run_vent_blocked(const site::Site& site, const std::string& at, const Context& context);
[[nodiscard]] std::string lacks_vent_blocked(const site::Site& site, const std::string& at);

// In tank and line.
[[nodiscard]] Replay run_water_in_tank(const site::Site& site, const std::string& at, const Context& context);
[[nodiscard]] std::string lacks_water_in_tank(const site::Site& site, const std::string& at);
[[nodiscard]] Replay run_tank_sump_fills(const site::Site& site, const std::string& at, const Context& context);
[[nodiscard]] std::string lacks_tank_sump_fills(const site::Site& site, const std::string& at);
[[nodiscard]] Replay run_check_valve_leaks(const site::Site& site, const std::string& at, const Context& context);
[[nodiscard]] std::string lacks_check_valve_leaks(const site::Site& site, const std::string& at);
[[nodiscard]] Replay run_inner_pipe_leaks(const site::Site& site, const std::string& at, const Context& context);
[[nodiscard]] std::string lacks_inner_pipe_leaks(const site::Site& site, const std::string& at);
[[nodiscard]] Replay run_line_warms(const site::Site& site, const std::string& at, const Context& context);
[[nodiscard]] std::string lacks_line_warms(const site::Site& site, const std::string& at);

// In the dispenser.
[[nodiscard]] Replay run_filter_clogs(const site::Site& site, const std::string& at, const Context& context);
[[nodiscard]] std::string lacks_filter_clogs(const site::Site& site, const std::string& at);
[[nodiscard]] Replay run_meter_runs_fast(const site::Site& site, const std::string& at, const Context& context);
[[nodiscard]] std::string lacks_meter_runs_fast(const site::Site& site, const std::string& at);

}  // namespace forecourse::lesson
