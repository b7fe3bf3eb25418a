// SOURCE: [cfr_280, 280.20(c)] limits of overfill devices; closed forms of steady acceleration and volume over rate;
// figures of the link and the pull as computed by an independent script (computed rows). Stations are invented.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "forecourse/base/api_units.h"
#include "forecourse/studies/incident/incident.h"
#include "support/stations.h"

namespace forecourse::studies {
namespace {

using test::site_text;
using test::station;

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  text.replace(text.find(from), from.size(), to);
  return text;
}

IncidentResult of(const std::string& text, IncidentKind kind, const std::string& at, IncidentOptions options = {}) {
  options.kind = kind;
  options.request.at.text = at;
  return study_incident(station(text), options);
}

const BarrierState* state(const IncidentResult& result, Barrier barrier) {
  const auto found = std::find_if(result.barriers.begin(), result.barriers.end(),
                                  [&](const BarrierState& s) { return s.barrier == barrier; });
  return found == result.barriers.end() ? nullptr : &*found;
}

const IncidentRun* run_without(const IncidentResult& result, const std::vector<Barrier>& missing) {
  const auto found = std::find_if(result.runs.begin(), result.runs.end(),
                                  [&](const IncidentRun& run) { return run.missing == missing; });
  return found == result.runs.end() ? nullptr : &*found;
}

// ---- a strike -------------------------------------------------------------------------------------------

TEST(IncidentKinds, AStrikeTellsItsBarriersAndItsRange) {
  const IncidentResult result = of(site_text("site-s"), IncidentKind::struck, "D3");
  EXPECT_TRUE(result.problem.empty());
  EXPECT_EQ(state(result, Barrier::shear_valve)->assurance,
            Assurance::not_assured);  // the groove's height is not known
  EXPECT_EQ(state(result, Barrier::upper_poppet)->assurance, Assurance::absent);
  EXPECT_EQ(state(result, Barrier::sump_sensor)->assurance, Assurance::assured);
  const IncidentRun* bare = run_without(result, {Barrier::shear_valve});
  ASSERT_NE(bare, nullptr);
  EXPECT_LE(result.escaped.low, result.runs.front().escaped);
  EXPECT_GE(result.escaped.high, bare->escaped);  // not assured: the range takes in that it does not act
  for (const IncidentRun& run : result.runs) EXPECT_LT(run.balance, 1e-12) << run.name;
  EXPECT_FALSE(result.return_to_service.empty());
}

// A rigid line that is shut again stands at its pump's pressure, whatever rounding left in it.
TEST(IncidentKinds, ARigidLineBehindAShutValveStandsAtItsPump) {
  const IncidentResult result = of(site_text("marle-cross"), IncidentKind::struck, "D1");
  ASSERT_FALSE(result.open_ends.front().line_compliance);
  const IncidentRun& run = result.runs.front();
  ASSERT_TRUE(run.timeline.back().pressure);
  EXPECT_NEAR(*run.timeline.back().pressure, result.open_ends.front().shutoff_at_opening, 1.0);  // [Pa]
}

TEST(IncidentKinds, AnAnchoredValveWithItsGrooveAtTheIslandIsAssured) {
  std::string text = site_text("hollin-gap");
  const IncidentResult result = of(text, IncidentKind::struck, "D1");
  const BarrierState* valve = state(result, Barrier::shear_valve);
  ASSERT_NE(valve, nullptr);
  for (const std::string& reason : valve->reasons) EXPECT_EQ(reason.find("anchored"), std::string::npos) << reason;
}

TEST(IncidentKinds, AStrikeAtADispenserOfSeveralProductsBreaksAllOfThem) {
  const IncidentResult result = of(site_text("hollin-gap"), IncidentKind::struck, "D3");
  EXPECT_EQ(result.open_ends.size(), 3U);
  double sum = 0.0;
  for (const OpenEnd& end : result.open_ends) sum += end.steady_flow;
  EXPECT_NEAR(result.runs.front().steady_flow, sum, 1e-12);
}

TEST(IncidentKinds, WithoutAndDeadBarriersAreTakenOut) {
  IncidentOptions options;
  options.without = {Barrier::shear_valve};
  options.dead = {{Barrier::sump_sensor, 60.0}};
  const IncidentResult result = of(site_text("site-s"), IncidentKind::struck, "D3", options);
  const IncidentRun& run = result.runs.front();
  EXPECT_EQ(run.missing, std::vector<Barrier>{Barrier::shear_valve});
  EXPECT_FALSE(run.sensor_at && *run.sensor_at < 60.0);
  EXPECT_NEAR(*run.isolated_at, 45.0, 1.0);  // the emergency stop comes before the sensor wakes
}

// ---- a drive-off ----------------------------------------------------------------------------------------

std::string with_hose(const std::string& more) {
  return replaced(site_text("site-s"), "id = \"D3.a\"\n  product = \"regular\"\n",
                  "id = \"D3.a\"\n  product = \"regular\"\n  breakaway = { loss = \"0 psi/gpm^2\" }\n" + more) +
         "\n[[incident]]\nkind = \"drive-off\"\nat = \"D3.a\"\n"
         "vehicle = { acceleration = \"1.5 m/s2\", slack = \"1.5 m\", angle = \"60 deg\" }\n";
}

TEST(IncidentKinds, TheHoseIsTightAfter141Seconds) {
  const IncidentResult result =
      of(with_hose("  parting = { pull = \"250 lbf\", poppet = \"double\" }\n"), IncidentKind::drive_off, "D3.a");
  ASSERT_TRUE(result.drive_off.has_value());
  EXPECT_NEAR(result.drive_off->tight_at, 1.41, 0.005);  // printed to a hundredth
  EXPECT_NEAR(result.drive_off->speed_then, 2.12, 0.005);
}

TEST(IncidentKinds, WithoutAWhipHoseTheBreakawayMayNeverRelease) {
  const std::string steep =
      replaced(with_hose("  parting = { pull = \"250 lbf\", poppet = \"double\", friction = 0.3 }\n"),
               "angle = \"60 deg\"", "angle = \"80 deg\"");
  const IncidentResult result = of(steep, IncidentKind::drive_off, "D3.a");
  EXPECT_FALSE(result.drive_off->has_whip);
  EXPECT_NEAR(result.drive_off->angle, 80.0 * std::acos(-1.0) / 180.0, 1e-12);
  EXPECT_TRUE(result.drive_off->may_never_release);
}

TEST(IncidentKinds, WhatGivesWayIsNotDeterminedWhileALimitIsUnknown) {
  const IncidentResult result =
      of(with_hose("  parting = { pull = \"250 lbf\", poppet = \"double\" }\n"), IncidentKind::drive_off, "D3.a");
  EXPECT_FALSE(result.drive_off->outcome_known);
  EXPECT_GT(result.escaped.high, result.escaped.low);  // from both ends shut to the dispenser over
}

TEST(IncidentKinds, AnOpenEndFlowsUntilThePumpsStop) {
  IncidentOptions options;
  const Duration minute = Duration::from_si(60.0);
  options.request.stop_at = site::Entered<Duration>{minute, minute, minute, {}};
  const IncidentResult result = of(with_hose("  parting = { pull = \"250 lbf\", poppet = \"single\" }\n"),
                                   IncidentKind::drive_off, "D3.a", options);
  const IncidentRun* open = run_without(result, {Barrier::breakaway});
  ASSERT_NE(open, nullptr);
  const double flows_for = 60.0 - result.drive_off->tight_at;
  EXPECT_NEAR(open->escaped, open->steady_flow * flows_for, 0.02 * open->escaped);
}

// ---- a fire ---------------------------------------------------------------------------------------------

std::string with_fire(const std::string& rating = "71.1 degC") {
  return replaced(site_text("site-s"), "fusible_link = \"165 degF\"", "fusible_link = \"" + rating + "\"") +
         "\n[[incident]]\nkind = \"sump-fire\"\nat = \"D3\"\nstop_at = \"90 s\"\nopen_area = \"0.02 in2\"\n"
         "fire = { gas_temperature = \"600 degC\", gas_speed = \"2 m/s\", start_temperature = \"20 degC\" }\n";
}

TEST(IncidentKinds, TheLinkPartsAfterSixAndAHalfSeconds) {
  const IncidentResult result = of(with_fire(), IncidentKind::sump_fire, "D3");
  ASSERT_TRUE(result.fire && result.fire->link_parts_at);
  EXPECT_NEAR(*result.fire->link_parts_at, 6.5, 0.02 * 6.5);
  const IncidentRun& run = result.runs.front();
  const auto parts = std::find_if(run.timeline.begin(), run.timeline.end(),
                                  [](const TimelineRow& row) { return row.what == Happening::link_parts; });
  ASSERT_NE(parts, run.timeline.end());
  EXPECT_NEAR(parts->time, *result.fire->link_parts_at, 1e-3);  // the stepper's rate against the closed form
  EXPECT_LT(*result.fire->fed_with_link, 0.2 * *result.fire->fed_without_link);
}

TEST(IncidentKinds, ALinkRatedBelowItsStartIsAnError) {
  IncidentOptions options;
  options.kind = IncidentKind::sump_fire;
  options.request.at.text = "D3";
  const auto problems = check_options(station(with_fire("15 degC")), options);
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_NE(problems.front().message.find("rated below"), std::string::npos);
}

// ---- an overfill ----------------------------------------------------------------------------------------

std::string with_tank(const std::string& fill = {}, const std::string& alarm = {}) {
  return replaced(site_text("site-s"), "id = \"T1\"\nproduct = \"regular\"\n",
                  "id = \"T1\"\nproduct = \"regular\"\n"
                  "shape = { kind = \"horizontal-cylinder\", inside_diameter = \"96 in\", length = \"260 in\", heads = "
                  "\"flat\" }\n"
                  "reading = { depth = \"70 in\" }\n" +
                      alarm + "[[tank.fill]]\nid = \"F1\"\n" + fill) +
         "\n[[delivery]]\nid = \"load\"\nrate = \"380 gpm\"\nhose = { length = \"20 ft\", bore = \"4 in\" }\n"
         "\n[[incident]]\nkind = \"overfill\"\nat = \"T1\"\nordered = \"4000 gal\"\ndriver_acts_in = \"30 s\"\n";
}

constexpr double rate = cubic_meters_from_gallons(380.0) / 60.0;

double time_of(const IncidentRun& run, Happening what) {
  const auto row =
      std::find_if(run.timeline.begin(), run.timeline.end(), [&](const TimelineRow& r) { return r.what == what; });
  return row == run.timeline.end() ? -1.0 : row->time;
}

TEST(IncidentKinds, ATankFillsInItsRoomOverTheRate) {
  const IncidentResult result = of(with_tank(), IncidentKind::overfill, "T1");
  ASSERT_TRUE(result.problem.empty()) << result.problem;
  const IncidentRun& run = result.runs.front();
  const double room = cubic_meters_from_gallons(8147.0) - run.amounts[2].start;  // an independent script's
  EXPECT_NEAR(time_of(run, Happening::tank_full), room / rate, 0.5);             // a gallon of 8,147 is 0.16 s
  EXPECT_NEAR(run.escaped, cubic_meters_from_gallons(4000.0) - room,
              cubic_meters_from_gallons(0.6));  // printed to a gallon
  EXPECT_LT(run.balance, 1e-12);
}

TEST(IncidentKinds, From90To95PercentTakesOneMinuteAnd4Seconds) {
  const std::string valve =
      "overfill_valve = { restricts_at = \"80.98 in\", closes_at = \"86.66 in\", restricted = \"380 gpm\" }\n";
  const std::string late = replaced(with_tank(valve), "driver_acts_in = \"30 s\"", "driver_acts_in = \"600 s\"");
  const IncidentResult result = of(late, IncidentKind::overfill, "T1");
  const IncidentRun& run = result.runs.front();
  EXPECT_NEAR(time_of(run, Happening::valve_closes) - time_of(run, Happening::restricts), 1.07 * 60.0, 0.6);
  EXPECT_EQ(run.escaped, 0.0);
}

TEST(IncidentKinds, AnAlarmCallsTheDriver) {
  const IncidentResult result =
      of(with_tank({}, "overfill_alarm = { at_share = \"90 %\", heard_at_fill = true, tested = 2026-01-10 }\n"),
         IncidentKind::overfill, "T1");
  const IncidentRun& run = result.runs.front();
  EXPECT_NEAR(time_of(run, Happening::driver_closes) - time_of(run, Happening::alarm), 30.0, 1e-6);
  EXPECT_EQ(run.escaped, 0.0);
  EXPECT_EQ(state(result, Barrier::overfill_alarm)->assurance, Assurance::assured);
  const IncidentRun* bare = run_without(result, {Barrier::overfill_alarm});
  ASSERT_NE(bare, nullptr);
  EXPECT_GT(bare->escaped, 0.0);
}

TEST(IncidentKinds, AValveSetAbove95PercentIsNotAssured) {
  const IncidentResult result =
      of(with_tank("overfill_valve = { closes_at = \"92 in\", tested = 2026-01-10 }\n"), IncidentKind::overfill, "T1");
  EXPECT_EQ(state(result, Barrier::overfill_valve)->assurance, Assurance::not_assured);
}

TEST(IncidentKinds, AFullHoseTakenOffIsSpilled) {
  const IncidentResult result = of(with_tank("spill_container = { volume = \"5 gal\" }\n",
                                             "overfill_alarm = { at_share = \"90 %\", heard_at_fill = true }\n"),
                                   IncidentKind::overfill, "T1");
  const IncidentRun& run = result.runs.back();
  const double hose = std::acos(-1.0) / 4.0 * 0.1016 * 0.1016 * 6.096;
  EXPECT_NEAR(run.escaped, hose, 1e-9);
  EXPECT_NEAR(run.to_environment, hose - cubic_meters_from_gallons(5.0), 1e-9);
}

/// A gravity drop: the pressure of the height is what pipe, hose and tube lose.
TEST(IncidentKinds, AGravityDropSpendsItsHeight) {
  std::string text =
      replaced(with_tank(), "rate = \"380 gpm\"\nhose = { length = \"20 ft\", bore = \"4 in\" }\n",
               "hose = { length = \"6 m\", bore = \"4 in\", roughness = \"0 mm\", loss = 14 }\n"
               "  [[delivery.compartment]]\n  product = \"regular\"\n  tank = \"T1\"\n  volume = \"16 m3\"\n"
               "  elevation = \"2 m\"\n  height = \"1.5 m\"\n");
  text =
      replaced(text, "reading = { depth = \"70 in\" }", "bottom_elevation = \"-3 m\"\nreading = { depth = \"70 in\" }");
  const IncidentResult result = of(text, IncidentKind::overfill, "T1");
  ASSERT_TRUE(result.problem.empty()) << result.problem;
  const double q = result.overfill->truck_flow;
  const double area = std::acos(-1.0) / 4.0 * 0.1016 * 0.1016, v = q / area;
  const double head = 2.0 - (-3.0 + 70.0 * 0.0254);
  // One velocity head out of the hose, fittings of K = 14, and the wall: 0.013 to 0.02 of 59 diameters.
  const double heads = head / (v * v / (2.0 * 9.80665));
  EXPECT_GT(heads, 15.0 + 0.010 * 59.0);
  EXPECT_LT(heads, 15.0 + 0.022 * 59.0);
}

// ---- bad options ----------------------------------------------------------------------------------------

std::string first_problem(IncidentKind kind, const std::string& at) {
  IncidentOptions options;
  options.kind = kind;
  options.request.at.text = at;
  const auto problems = check_options(station(site_text("site-s")), options);
  return problems.empty() ? std::string() : problems.front().message;
}

TEST(IncidentKinds, BadOptionsAreErrors) {
  EXPECT_NE(first_problem(IncidentKind::struck, "D9").find("'D9' is no dispenser or inlet"), std::string::npos);
  EXPECT_NE(first_problem(IncidentKind::line_break, "D1").find("is no line"), std::string::npos);
  EXPECT_NE(first_problem(IncidentKind::crack, "D3").find("how much the crack leaks"), std::string::npos);
  IncidentOptions early;
  early.request.at.text = "D3";
  const Duration before = Duration::from_si(-5.0);
  early.request.stop_at = site::Entered<Duration>{before, before, before, {}};
  const auto problems = check_options(station(site_text("site-s")), early);
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_NE(problems.front().message.find("stopped before the incident"), std::string::npos);
}

}  // namespace
}  // namespace forecourse::studies
