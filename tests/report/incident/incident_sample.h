#pragma once

#include "forecourse/report/incident/incident_report.h"

namespace forecourse::report {

/// A run put together by hand: 12 L in a minute, a third of it into the sump.
[[nodiscard]] inline studies::IncidentRun sample_run(const std::string& name,
                                                     const std::vector<studies::Barrier>& missing, double escaped) {
  using studies::Happening;
  using studies::Holder;
  studies::IncidentRun run;
  run.name = name;
  run.missing = missing;
  run.counted = 600.0;
  run.escaped = escaped;
  run.to_environment = 0.75 * escaped;
  run.peak_flow = 0.0052;
  run.steady_flow = 0.005;
  run.isolated_at = 14.0;
  run.holders = {Holder::tank, Holder::sump, Holder::slab};
  const auto row = [&](double time, Happening what, const char* owner, const char* words, double flow) {
    const double out = what == Happening::begins ? 0.0 : escaped;
    run.timeline.push_back({time, what, owner, words, out, flow, 1e5, {-out, 0.25 * out, 0.75 * out}});
  };
  row(0.0, Happening::begins, "D1", "it happens", 0.005);
  row(11.0, Happening::sensor_wet, "S1", "the sump sensor gets wet", 0.005);
  row(14.0, Happening::sensor_stops, "S1", "the sump sensor stops the pumps", 0.0);
  row(600.0, Happening::counting_ends, "", "counting ends", 0.0);
  run.timeline.back().pressure.reset();
  run.amounts = {
      {Holder::tank, 0.0, -escaped}, {Holder::sump, 0.0, 0.25 * escaped}, {Holder::slab, 0.0, 0.75 * escaped}};
  run.ledger = {{Holder::line, Holder::sump, "regular", "while the shear valve was closing", 0.25 * escaped},
                {Holder::line, Holder::slab, "regular", "while the shear valve was closing", 0.75 * escaped}};
  run.chart.time = {0.0, 0.5, 1.0, 14.0, 14.0, 600.0};
  run.chart.escaping = {0.005, 0.005, 0.005, 0.005, 0.0, 0.0};
  run.chart.pumped = {0.0, 0.004, 0.005, 0.005, 0.0, 0.0};
  run.chart.elsewhere = {0.001, 0.0005, 0.0005, 0.0005, 0.0, 0.0};
  run.chart.pressure = {1.8e5, 1e5, 5e4, 3e4, 0.0, 0.0};
  run.chart.held = {{0.0, 0.0, 0.0, 0.0, 0.0, 0.0},
                    {0.0, 0.001, 0.002, 0.25 * escaped, 0.25 * escaped, 0.25 * escaped},
                    {0.0, 0.002, 0.004, 0.75 * escaped, 0.75 * escaped, 0.75 * escaped}};
  run.balance = 3e-16;
  run.hash = 0x0123456789abcdefULL;
  return run;
}

/// Barriers, runs and what stands around them; round numbers of the right size.
[[nodiscard]] inline studies::IncidentResult sample_incident(studies::IncidentKind kind) {
  using studies::Assurance;
  using studies::Barrier;
  studies::IncidentResult r;
  r.options.kind = kind;
  r.options.runs = 1000;
  r.options.seed = 7;
  r.options.today = site::Date{2026, 11, 25, {}};
  r.options.dead = {{Barrier::sump_sensor, 60.0}};
  r.options.request.stop_at =
      site::Entered<Duration>{Duration::from_si(60.0), Duration::from_si(40.0), Duration::from_si(180.0), {}};
  r.version = "1.2.3";
  r.at = "D1";
  r.dispenser = "D1";
  r.sump_brim = 0.2;
  r.first_line = "barriers are not assured: the range runs from all of them acting to only the assured ones acting";
  r.escaped = {0.002, 0.002, 0.08};
  r.to_environment = {0.0015, 0.0015, 0.06};
  r.drawn_for_range = 256;
  r.barriers = {{Barrier::shear_valve,
                 "D1.regular",
                 Assurance::not_assured,
                 {"no trip test on record"},
                 "shuts the riser at the base of the dispenser",
                 {}},
                {Barrier::sump_sensor, "S1", Assurance::assured, {}, "stops the pump once fuel stands at it", {}},
                {Barrier::upper_poppet, "D1.regular", Assurance::absent, {"the valve has one poppet"}, "", {}}};
  r.cause_effect.columns = {"P1", "P2"};
  r.cause_effect.rows = {{"S1", {"stops", ""}, true, true, 3.0}, {"E1", {"stops", "stops"}, false, {}, {}}};
  r.runs = {sample_run("every barrier that is there acts", {}, 0.002),
            sample_run("without shear valve", {Barrier::shear_valve}, 0.08)};
  r.runs[1].isolated_at.reset();
  r.runs[1].reportable = true;
  for (std::size_t i = 0; i < r.runs.size(); ++i) {
    r.barrier_table.push_back({r.runs[i].name, r.runs[i].missing, r.runs[i].escaped, r.runs[i].to_environment, i});
  }
  r.pool = studies::PoolTold{0.06, {0.0007, 0.001, 0.005}, {12.0, 60.0, 85.0}, {2.0, 4.4, 5.2}, 0.01};
  r.return_to_service = {{"the shear valve is tripped, and nothing may flow then", "test", "certified tester",
                          "common practice, no source"}};
  r.inputs = {
      {"when the pumps are stopped", {40.0, 60.0, 180.0}, "s", true, DefaultStatus::illustrative, ""},
      {"share that falls into the sump", {0.1, 0.3, 0.6}, "", false, DefaultStatus::illustrative, "illustrative"},
      {"discharge coefficient", {0.61, 0.61, 0.61}, "", false, DefaultStatus::published, "sharp-edged orifice"}};
  r.warnings = {{Severity::warning, "no trip test of the shear valve is on record", {}, {}, {}}};
  return r;
}

/// A strike, with all that is told of one and a Monte Carlo.
[[nodiscard]] inline studies::IncidentResult sample_strike() {
  studies::IncidentResult r = sample_incident(studies::IncidentKind::struck);
  studies::OpenEnd end;
  end.product = "regular";
  end.system = "regular";
  end.height_above_liquid = 2.7;
  end.shutoff_at_opening = 1.8e5;
  end.steady_flow = 0.005;
  end.pump_flow = 0.0055;
  end.steady_figure = 0.0005;
  end.in_45_seconds = 0.225;
  end.compliance_reason = "line of trunk: enter wall";
  end.elsewhere = {{"D2.a", 0.0006, 0.0003}};
  r.open_ends = {end};
  r.pack_and_column = studies::PackAndColumn{0.0005, 0.0007, 0.0001, 0.0002};
  r.jets = {{1.0, 0.005, 4.0, 0.25, 0.8, 0.3}, {0.05, 0.0009, 22.0, 7.5, 25.0, 0.05}};
  studies::IncidentSpread spread;
  spread.runs = 1000;
  spread.seed = 7;
  spread.mean = 0.01;
  spread.quantiles = {0.001, 0.002, 0.004, 0.01, 0.03};
  spread.environment_quantiles = {0.0008, 0.0015, 0.003, 0.008, 0.02};
  for (int i = 0; i < 21; ++i) {
    spread.exceeded.push_back(0.002 * i);
    spread.exceedance.push_back(1.0 - 0.05 * i);
  }
  spread.weights = {{"when the pumps are stopped", 0.91, false}, {"share that falls into the sump", -0.12, true}};
  spread.drawn = {"when the pumps are stopped"};
  r.spread = spread;
  return r;
}

/// What the other kinds tell besides, all in one result.
[[nodiscard]] inline studies::IncidentResult sample_of_all_kinds() {
  using studies::Spread;
  studies::IncidentResult r = sample_incident(studies::IncidentKind::sump_fire);
  studies::CrackTold crack;
  crack.exponent = {0.5, 0.5, 1.0};
  crack.at_running = {3e-6, 5e-6, 9e-6};
  crack.at_holding = crack.mean = crack.at_10_psi = crack.at_detector = crack.at_test = {1e-6, 2e-6, 3e-6};
  crack.hole_diameter = 0.0006;
  crack.running_pressure = 2e5;
  crack.holding_pressure = 7e4;
  crack.running_share = 0.3;
  crack.detects = 3.2e-6;
  crack.detects_at = 7e4;
  crack.bound_to_be_seen = false;
  crack.seen_reason = "at the detector's own pressure it is less than what it detects";
  crack.to_sensor = Spread{600.0, 900.0, 1800.0};
  crack.to_seal = Spread{7200.0, 7200.0, 7200.0};
  crack.to_brim = Spread{86400.0, 90000.0, 180000.0};
  r.crack = crack;
  studies::DriveOffTold pull;
  pull.slack = 1.5;
  pull.tight_at = 1.41;
  pull.speed_then = 2.12;
  pull.angle = 1.0;
  pull.may_never_release = true;
  pull.limits = {{"breakaway", Spread{800.0, 1200.0, 2200.0}, false}, {"anchorage", {}, false}};
  pull.outcome = "What gives way first is not determined";
  pull.base_force = 1200.0;
  pull.base_moment = 2400.0;
  r.drive_off = pull;
  studies::FireTold fire;
  fire.fuel = "gasoline";
  fire.pool_diameter = 0.6;
  fire.heat_release = {1e5, 2e5, 5e5};
  fire.flame_height = {1.0, 1.5, 2.0};
  fire.burning_rate = {0.018, 0.03, 0.055};
  fire.distances = {1.0, 3.0};
  fire.radiation = {{5e3, 8e3, 1.2e4}, {1e3, 2e3, 4e3}};
  fire.gas_temperature = 873.15;
  fire.gas_speed = 2.0;
  fire.response_index = 100.0;
  fire.rated = 344.25;
  fire.start_temperature = 293.15;
  fire.link_parts_at = 6.5;
  fire.fed_with_link = 0.001;
  fire.fed_without_link = 0.06;
  r.fire = fire;
  studies::OverfillTold drop;
  drop.tank = "T1";
  drop.truck_flow = 0.025;
  drop.alarm_at = 300.0;
  drop.closes_at = 400.0;
  drop.spilled = 0.03;
  drop.in_container = 0.019;
  drop.notes = {"the vent is taken as open"};
  r.overfill = drop;
  return r;
}

[[nodiscard]] inline site::Site sample_incident_site() {
  site::Site site;
  site.name.text = "Marlow Reach (invented)";
  return site;
}

[[nodiscard]] inline IncidentFacts sample_incident_facts() {
  return {
      "25 Nov 2026", "forecourse incident s.toml struck", {}, {"out/incident-struck.html"}, {"line.trunk.bore=3 in"}};
}

}  // namespace forecourse::report
