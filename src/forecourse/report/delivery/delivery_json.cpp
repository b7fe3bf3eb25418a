#include "forecourse/report/delivery/delivery_report.h"
#include "forecourse/report/findings.h"

namespace forecourse::report {
namespace {

using namespace studies;

Json drop_json(const DropTold& d) {
  return {{"compartment", d.compartment},
          {"tank", d.tank},
          {"product", d.product},
          {"end", word(d.end)},
          {"begins_s", number_or_null(d.begins)},
          {"ends_s", number_or_null(d.ends)},
          {"brought_m3", d.brought},
          {"dropped_m3", d.dropped},
          {"first_rate_m3_per_s", d.first_rate},
          {"highest_rate_m3_per_s", d.highest_rate},
          {"mean_rate_m3_per_s", d.mean_rate},
          {"left_in_truck_m3", d.left_in_truck},
          {"left_in_hose_m3", d.left_in_hose},
          {"hose_holds_m3", d.hose_holds},
          {"hose_velocity_m_per_s", number_or_null(d.hose_velocity)},
          {"hose_velocity_limit_m_per_s", number_or_null(d.hose_limit)},
          {"tube_velocity_m_per_s", number_or_null(d.tube_velocity)},
          {"tube_velocity_limit_m_per_s", number_or_null(d.tube_limit)},
          {"start_velocity_m_per_s", number_or_null(d.start_velocity)},
          {"covered_at_s", number_or_null(d.covered_at)},
          {"pressure_holds_it_back", d.takes_pressure_into_account}};
}

Json tank_json(const DeliveryTank& t) {
  return {{"tank", t.tank},
          {"capacity_m3", t.capacity},
          {"volume_before_m3", t.volume_before},
          {"volume_after_m3", t.volume_after},
          {"depth_before_m", t.depth_before},
          {"depth_after_m", t.depth_after},
          {"brought_m3", t.for_it},
          {"room_to_90_percent_m3", t.room_to_90},
          {"room_to_95_percent_m3", t.room_to_95},
          {"room_to_95_percent_after_m3", t.room_to_95_after},
          {"alarm_at_s", number_or_null(t.alarm_at)},
          {"alarm_to_shutoff_s", number_or_null(t.seconds_to_shut)},
          {"has_spill_container", t.has_container},
          {"spill_container_m3", number_or_null(t.container)}};
}

Json ullage_json(const UllageTold& u) {
  const bool known = u.problem.empty();
  const auto told = [&](double value) { return known ? Json(value) : Json(); };
  return {{"tanks", u.tanks},
          {"joint_of_shared_vent", text_or_null(u.joint)},
          {"vents", u.vents},
          {"problem", text_or_null(u.problem)},
          {"highest_is_least", u.at_least},
          {"no_way_out", u.no_vent},
          {"highest_pressure_gauge_pa", told(u.highest_pressure)},
          {"highest_at_s", told(u.highest_at)},
          {"lowest_pressure_gauge_pa", told(u.lowest_pressure)},
          {"last_pressure_gauge_pa", told(u.last_pressure)},
          {"vent_opens_at_pa", number_or_null(u.opens_at)},
          {"vent_opens_to_vacuum_at_pa", number_or_null(u.vacuum_opens_at)},
          {"vent_opens_s", number_or_null(u.lifts_at)},
          {"vent_draws_air_s", number_or_null(u.draws_at)},
          {"vented_m3", told(u.vented)},
          {"air_drawn_in_m3", told(u.drawn_in)},
          {"to_truck_m3", told(u.returned)},
          {"through_branches_m3", told(u.passed_on)},
          {"given_off_m3", told(u.grown)},
          {"stored_m3", told(u.stored)}};
}

Json event_json(const DeliveryEvent& e) {
  return {{"time_s", e.time},
          {"event", word(e.what)},
          {"of", text_or_null(e.subject)},
          {"what", e.words},
          {"rate_m3_per_s", e.rate},
          {"depth_m", number_or_null(e.depth)},
          {"ullage_pressure_gauge_pa", number_or_null(e.ullage_pressure)}};
}

Json courses(const std::vector<DeliveryCourse>& all) {
  Json out = Json::object();
  for (const DeliveryCourse& course : all) out[course.name] = course.value;
  return out;
}

/// Every course over one base of time.
Json chart_json(const DeliveryChart& c) {
  return {{"time_s", c.time},
          {"rate_m3_per_s", courses(c.rate)},
          {"truck_m3", courses(c.truck)},
          {"hose_m3", courses(c.hose)},
          {"tank_m3", courses(c.volume)},
          {"depth_m", courses(c.depth)},
          {"ullage_pressure_gauge_pa", courses(c.ullage)},
          {"return_riser_pressure_gauge_pa", courses(c.riser)},
          {"vapor_hose_pressure_gauge_pa", courses(c.hose_pressure)},
          {"truck_pressure_gauge_pa", c.truck_pressure.empty() ? Json() : Json(c.truck_pressure)},
          {"vented_m3_per_s", courses(c.vent)},
          {"to_shared_vent_m3_per_s", courses(c.branch)},
          {"to_truck_m3_per_s", courses(c.returned)}};
}

Json run_json(const DeliveryRun& run) {
  Json out = {{"name", run.name},
              {"problem", text_or_null(run.problem)},
              {"stalled", run.stalled},
              {"under_pressure", run.under_pressure},
              {"all_dropped", run.moves_all},
              {"time_s", run.time},
              {"dropped_m3", run.dropped},
              {"mean_rate_m3_per_s", run.mean_rate},
              {"drops", array_of(run.drops, drop_json)},
              {"tanks", array_of(run.tanks, tank_json)},
              {"ullages", array_of(run.ullages, ullage_json)}};
  out["truck"] = {{"closed_to_ullage", run.truck.closed},
                  {"highest_pressure_gauge_pa", run.truck.closed ? Json(run.truck.highest_pressure) : Json()},
                  {"lowest_pressure_gauge_pa", run.truck.closed ? Json(run.truck.lowest_pressure) : Json()},
                  {"stored_m3", run.truck.closed ? Json(run.truck.stored) : Json()}};
  out["events"] = array_of(run.events, event_json);
  out["ledger"] = array_of(run.moves, [](const DeliveryMove& m) {
    return Json{{"from", m.from}, {"to", m.to}, {"of", m.what}, {"amount_m3", m.amount}};
  });
  out["liquid_balance"] = run.liquid_balance;
  out["vapor_balance"] = run.vapor_balance;
  out["chart"] = run.chart.time.empty() ? Json() : chart_json(run.chart);
  return out;
}

Json span_json(const DeliverySpan& s) {
  return {{"value", s.path},
          {"low", s.low},
          {"high", s.high},
          {"time_at_low_s", s.time_at_low},
          {"time_at_high_s", s.time_at_high},
          {"highest_ullage_pressure_at_low_gauge_pa", s.pressure_at_low},
          {"highest_ullage_pressure_at_high_gauge_pa", s.pressure_at_high}};
}

Json range_json(const std::optional<DeliveryRange>& range) {
  return range ? Json{{"low", range->low}, {"high", range->high}} : Json();
}

}  // namespace

Json delivery_document(const DeliveryResult& result, const std::vector<checks::Finding>& findings,
                       const DeliveryFacts& facts) {
  JsonDocument out;
  out.study = "delivery";
  out.version = result.version;
  out.cautions = delivery_cautions();
  if (any_under_pressure(result)) out.cautions.insert(out.cautions.begin(), stalled_caution);
  out.options = {{"delivery", text_or_null(result.options.delivery)},
                 {"tank", text_or_null(result.options.tank)},
                 {"volume_m3", number_or_null(result.options.volume)},
                 {"rate_m3_per_s", number_or_null(result.options.rate)},
                 {"stop_at_s", number_or_null(result.options.stop_at)},
                 {"without", array_of(result.options.without, [](DeliveryPart p) { return Json(word(p)); })},
                 {"blocked", result.options.blocked}};
  out.defaults = result.defaults;
  out.warnings = result.warnings;
  out.findings = findings_json(findings, facts.texts);
  out.result = {{"delivery", text_or_null(result.delivery)},
                {"problem", text_or_null(result.problem)},
                {"vapor_density_kg_per_m3", result.vapor_density},
                {"vapor_viscosity_pa_s", result.vapor_viscosity},
                {"vapor_growth", result.vapor_growth},
                {"runs", array_of(result.runs, run_json)},
                {"spans", array_of(result.spans, span_json)},
                {"time_range_s", range_json(result.time_range)},
                {"highest_ullage_pressure_range_gauge_pa", range_json(result.pressure_range)},
                {"notes", result.notes}};
  return document(out, facts.texts);
}

}  // namespace forecourse::report
