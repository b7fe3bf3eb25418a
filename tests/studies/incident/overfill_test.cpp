// SOURCE: [cfr_280, 280.20(c)] limits of overfill devices; closed forms of two upright vessels that become level and of
// volume over rate; a quadrature of its own; figures of an earlier prototype (computed, its truck not told). Invented
// stations.
#include "forecourse/studies/incident/overfill/overfill.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "forecourse/base/api_units.h"
#include "forecourse/base/constants.h"
#include "forecourse/network/escape/broken_end.h"
#include "forecourse/solvers/sequence/stepper.h"
#include "forecourse/studies/incident/overfill/overfill_model.h"
#include "forecourse/studies/incident/overfill/overfill_setup.h"
#include "forecourse/studies/incident/setup/groundwork.h"
#include "forecourse/studies/incident/setup/tank_contents.h"
#include "support/stations.h"

namespace forecourse::studies {
namespace {

using overfilling::Case;
using overfilling::Model;
using test::site_text;
using test::station;
namespace seq = solvers::sequence;

seq::SequenceResult run(const Case& given) {
  const Model model(given);
  seq::SequenceOptions options;
  options.keep_states = true;
  options.longest_step = 60.0;
  return seq::run_sequence(model, model.start(), options);
}

/// Time of a guard's event; -1 if it never happens.
double time_of(const seq::SequenceResult& result, Model::Guard guard) {
  for (const seq::EventRecord& record : result.trace.events) {
    if (record.event.source == seq::EventSource::guard && record.event.id == guard) return record.event.time;
  }
  return -1.0;
}

double held(const seq::SequenceResult& result, Model::Compartment compartment) { return result.amounts[compartment]; }

/// K velocity heads of a bore, and nothing else.
release::Opening velocity_heads(double k, double bore, double density) {
  release::Opening way;
  const double area = std::numbers::pi / 4.0 * bore * bore;
  way.discharge = k * network::opening_loss(density, area, 1.0);
  return way;
}

// ---- closed forms ---------------------------------------------------------------------------------------

constexpr double bore = 0.1016;  // [m] 4 in
constexpr double k = 14.0;

/// Two upright vessels: the root of the head falls evenly, sqrt(H) = sqrt(H0) - a/2 (1/A1 + 1/A2) t.
TEST(Overfill, TwoUprightVesselsBecomeLevelByTheirClosedForm) {
  Case c;
  c.tank.emplace(parts::BoxTank{5.0, 4.0, 2.5});
  c.in_tank = 20.0;
  c.in_truck = 16.0;
  c.truck_area = 10.0;
  c.truck_bottom = 3.0;
  c.density = 740.0;
  c.way = velocity_heads(k, bore, c.density);
  c.end = 300.0;
  const seq::SequenceResult result = run(c);
  const double a = std::numbers::pi / 4.0 * bore * bore * std::sqrt(2.0 * standard_gravity / k);
  const double both = 1.0 / 10.0 + 1.0 / 20.0, head = 3.0 + 1.6 - 1.0;
  const double root = std::sqrt(head) - 0.5 * a * both * c.end;
  const double dropped = (head - root * root) / both;
  EXPECT_NEAR(held(result, Model::tank) - 20.0, dropped, 1e-5 * dropped);  // 2e-6 of an amount for each step
  EXPECT_NEAR(Model(c).open_flow(16.0, 20.0), a * std::sqrt(head), 1e-12);
}

Case at_a_rate() {
  Case c;
  c.tank.emplace(parts::BoxTank{5.0, 4.0, 2.5});
  c.in_tank = 40.0;
  c.in_truck = 16.0;
  c.in_hose = 0.05;
  c.drains_in = 20.0;
  c.rate = 0.02;
  c.container = 0.019;
  return c;
}

TEST(Overfill, WithNothingToStopItTheSpillIsWhatStillComes) {
  Case c = at_a_rate();
  c.end = 700.0;
  const seq::SequenceResult result = run(c);
  const double full = time_of(result, Model::fills);
  EXPECT_NEAR(full, 10.0 / 0.02, 1e-6);  // room over rate; a guard's moment is found to 1e-8 s
  EXPECT_NEAR(held(result, Model::container), 0.019, 1e-9);
  EXPECT_NEAR(held(result, Model::container) + held(result, Model::slab), 0.02 * (700.0 - full), 1e-9);
  EXPECT_EQ(held(result, Model::hose), 0.05);  // no room: it stays
  EXPECT_TRUE(result.balance.holds);
}

TEST(Overfill, TheHoseDrainsOnceTheDriverShutsTheTruck) {
  Case c = at_a_rate();
  c.alarm_at = 2.25;
  c.hears_alarm = true;
  c.driver_acts_in = 30.0;
  const seq::SequenceResult result = run(c);
  EXPECT_NEAR(time_of(result, Model::alarms), 5.0 / 0.02, 1e-6);
  EXPECT_NEAR(time_of(result, Model::hose_empty), 5.0 / 0.02 + 30.0 + 20.0, 1e-2);  // to its last milliliter
  EXPECT_NEAR(held(result, Model::tank), 45.0 + 30.0 * 0.02 + 0.05, 1e-5);
  EXPECT_EQ(held(result, Model::slab), 0.0);
}

/// An empty truck's hose drains too; nobody has to shut anything.
TEST(Overfill, TheHoseOfAnEmptyTruckDrains) {
  Case c = at_a_rate();
  c.in_truck = 4.0;
  const seq::SequenceResult result = run(c);
  EXPECT_NEAR(held(result, Model::tank), 40.0 + 4.0 + 0.05, 1e-5);
}

TEST(Overfill, AnAlarmAboveTheShutValveLeavesTheDriverToSeeTheFlowStop) {
  Case c = at_a_rate();
  c.closes_at = 2.3;
  c.alarm_at = 2.4;
  c.hears_alarm = true;
  c.driver_acts_in = 30.0;
  c.disconnects_full = true;
  const seq::SequenceResult result = run(c);
  EXPECT_EQ(time_of(result, Model::alarms), -1.0);
  EXPECT_NEAR(held(result, Model::container) + held(result, Model::slab), 0.05, 1e-12);  // the whole hose
  EXPECT_NEAR(held(result, Model::slab), 0.05 - 0.019, 1e-12);
}

TEST(Overfill, AValveThatIsDeadForATimeActsWhenItWakes) {
  Case c = at_a_rate();
  c.closes_at = 2.25;  // at 250 s
  c.valve_dead = 400.0;
  const seq::SequenceResult result = run(c);
  EXPECT_NEAR(time_of(result, Model::closes), 400.0, 1e-6);
  EXPECT_NEAR(held(result, Model::tank), 40.0 + 400.0 * 0.02, 1e-6);
}

TEST(Overfill, TheDropStopsWhenSomebodyStopsIt) {
  Case c = at_a_rate();
  c.stop_at = 100.0;
  const seq::SequenceResult result = run(c);
  EXPECT_NEAR(held(result, Model::truck), 16.0 - 100.0 * 0.02, 1e-9);
}

// ---- a prototype's drop ---------------------------------------------------------------------------------

// A tank of 37.85 m3 at 80 %, 16 m3 in the truck, 4-in hose of 6 m, K = 14. The prototype told 15.8 L/s, 95 % at
// 338 s, and 649 L in 60 s out of a loose riser once the tank was full. Diameter 2.44 m, crown 1.0 m below grade and
// the truck's liquid 1.8 m above it are its own; the surface of its truck is not told, and is what the time of 338 s
// asks for. That leaves the flow and the 649 L as checks. Since 15 % of the tank is 5.68 m3 and 338 s at 15.8 L/s
// are 5.34 m3, its 15.8 L/s is the flow at the end, at 95 %.
Case prototype(double truck_area) {
  Case c;
  constexpr double d = 2.44, capacity = 37.85;
  c.tank.emplace(parts::RoundTank{.diameter = d, .length = capacity / (std::numbers::pi / 4.0 * d * d)});
  c.in_tank = 0.80 * capacity;
  c.in_truck = 16.0;
  c.in_hose = std::numbers::pi / 4.0 * bore * bore * 6.0;
  c.truck_area = truck_area;
  c.outlet = d + 1.0;
  c.truck_bottom = c.outlet + 1.8 - c.in_truck / truck_area;
  c.density = 740.0;
  c.way = velocity_heads(k, bore, c.density);
  c.container = 0.019;
  return c;
}

double depth_at(const Case& c, double share) { return c.tank->level(share * 37.85); }

double time_to_95(double truck_area) {
  Case c = prototype(truck_area);
  c.closes_at = depth_at(c, 0.95);
  return time_of(run(c), Model::closes);
}

double fitted_area() {
  double low = 5.0, high = 100.0;
  for (int i = 0; i < 40; ++i) {
    const double middle = 0.5 * (low + high);
    (time_to_95(middle) > 338.0 ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

/// With a truck whose surface does not fall the time is a quadrature over the tank alone: integral of dV / q(V).
TEST(Overfill, TheTimeTo95PercentIsAQuadrature) {
  constexpr double wide = 1e9;
  const double a = std::numbers::pi / 4.0 * bore * bore * std::sqrt(2.0 * standard_gravity / k);
  const double r = 1.22, length = 37.85 / (std::numbers::pi * r * r);
  const Case c = prototype(20.0);
  const double from = depth_at(c, 0.80), to = depth_at(c, 0.95);
  constexpr int n = 2000;
  double sum = 0.0;
  for (int i = 0; i <= n; ++i) {
    const double h = from + (to - from) * i / n;
    const double surface = 2.0 * std::sqrt(h * (2.0 * r - h)) * length;
    const double weight = i == 0 || i == n ? 1.0 : i % 2 == 1 ? 4.0 : 2.0;
    sum += weight * surface / (a * std::sqrt(3.44 + 1.8 - h));
  }
  const double seconds = sum * (to - from) / n / 3.0;
  EXPECT_NEAR(time_to_95(wide), seconds, 1e-5 * seconds);  // 2e-6 of an amount for each step
}

TEST(Overfill, AgreesWithAPrototypeWhoseTruckIsFitted) {
  const double area = fitted_area();
  const Case c = prototype(area);
  const Model model(c);
  const double dropped = 0.15 * 37.85;
  EXPECT_NEAR(1000.0 * model.open_flow(16.0 - dropped, 0.95 * 37.85), 15.8, 0.2);  // 338 +- 1 s moves it 0.1 L/s
  EXPECT_GT(1000.0 * model.open_flow(16.0, 0.80 * 37.85), 17.0);
  const seq::SequenceResult result = run(c);
  Case minute = c;
  minute.end = time_of(result, Model::fills) + 60.0;
  const seq::SequenceResult spilled = run(minute);
  // The prototype's tank gives way to pressure and its riser fills: 3 %.
  EXPECT_NEAR(1000.0 * (held(spilled, Model::container) + held(spilled, Model::slab)), 649.0, 0.03 * 649.0);
}

/// The valve shuts at 95 % and lets 0.19 L/s pass; the driver shuts the truck after 45 s: the hose has drained 303 s
/// after the valve shut (641 s less 338 s), with 95.16 % in the tank.
TEST(Overfill, AHoseDrainsPastAShutValve) {
  Case c = prototype(fitted_area());
  c.closes_at = depth_at(c, 0.95);
  c.closed = 0.19e-3;
  c.driver_acts_in = 45.0;
  const seq::SequenceResult result = run(c);
  const double took = time_of(result, Model::hose_empty) - time_of(result, Model::closes);
  EXPECT_NEAR(took, 303.0, 8.0);  // 0.19 is printed to 3 %
  EXPECT_NEAR(100.0 * held(result, Model::tank) / 37.85, 95.16, 0.01);
  EXPECT_EQ(held(result, Model::slab), 0.0);
}

/// Fuel must rise to the fill before it comes out: a truck below the fill spills nothing.
TEST(Overfill, ATruckBelowTheFillSpillsNothing) {
  Case c = prototype(16.0);
  c.outlet += 2.0;
  c.end = 7200.0;
  const seq::SequenceResult result = run(c);
  EXPECT_GT(time_of(result, Model::fills), 0.0);
  EXPECT_EQ(held(result, Model::container) + held(result, Model::slab), 0.0);
}

// ---- a station ------------------------------------------------------------------------------------------

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  text.replace(text.find(from), from.size(), to);
  return text;
}

const std::string shell =
    "shape = { kind = \"horizontal-cylinder\", inside_diameter = \"96 in\", length = \"260 in\", heads = \"flat\" }\n";
const std::string valve =
    "overfill_valve = { restricts_at = \"80.98 in\", closes_at = \"86.66 in\", restricted = \"380 gpm\", closed = "
    "\"0 gpm\", tested = 2026-01-10 }\n";

std::string site_of(const std::string& tank, const std::string& fill, const std::string& delivery) {
  return replaced(site_text("site-s"), "id = \"T1\"\nproduct = \"regular\"\n",
                  "id = \"T1\"\nproduct = \"regular\"\n" + tank + "[[tank.fill]]\nid = \"F1\"\n" + fill) +
         "\n[[delivery]]\nid = \"load\"\n" + delivery +
         "\n[[incident]]\nkind = \"overfill\"\nat = \"T1\"\nordered = \"4000 gal\"\ndriver_acts_in = \"30 s\"\n";
}

std::string at_380_gpm(const std::string& fill, const std::string& more = {}) {
  return site_of(shell + "reading = { depth = \"50 in\" }\n" + more, fill,
                 "rate = \"380 gpm\"\nhose = { length = \"20 ft\", bore = \"4 in\" }\n");
}

OverfillOutcome of(const std::string& text, IncidentOptions options = {}) {
  options.kind = IncidentKind::overfill;
  const site::Site site = station(text);
  Inputs inputs;
  return overfill(site, options, merged_request(site, options), inputs, {});
}

const IncidentRun* named(const OverfillOutcome& outcome, const std::string& name) {
  const auto found =
      std::find_if(outcome.runs.begin(), outcome.runs.end(), [&](const IncidentRun& r) { return r.name == name; });
  return found == outcome.runs.end() ? nullptr : &*found;
}

/// A 50-in dip: 3,043 gal to 90 %, and 1.07 min at 380 gpm from there to 95 % (an independent script's).
TEST(Overfill, A50InchDipAt380Gpm) {
  const OverfillOutcome outcome = of(at_380_gpm(valve));
  ASSERT_TRUE(outcome.problem.empty()) << outcome.problem;
  const OverfillTold& told = outcome.told;
  const double a_gallon = 60.0 / 380.0;                                      // [s]
  EXPECT_NEAR(*told.restricts_at, 3043.0 * a_gallon, 1.0 * a_gallon + 0.1);  // depths printed to a hundredth
  const IncidentRun* late = named(outcome, "without driver");
  ASSERT_NE(late, nullptr);
  const auto shut = std::find_if(late->timeline.begin(), late->timeline.end(),
                                 [](const TimelineRow& r) { return r.what == Happening::valve_closes; });
  ASSERT_NE(shut, late->timeline.end());
  EXPECT_NEAR(shut->time - *told.restricts_at, 1.07 * 60.0, 0.6);
}

const std::string alarm = "overfill_alarm = { at_share = \"90 %\", heard_at_fill = true, tested = 2026-01-10 }\n";

double sum_of_changes(const IncidentRun& r) {
  double change = 0.0;
  for (const HolderAmount& a : r.amounts) change += a.end - a.start;
  return change;
}

/// What the ledger says came into the tank, less what left it.
double told_into_tank(const IncidentRun& r) {
  double sum = 0.0;
  for (const LedgerLine& line : r.ledger) {
    if (line.to == Holder::tank) sum += line.amount;
    if (line.from == Holder::tank) sum -= line.amount;
  }
  return sum;
}

TEST(Overfill, EveryRunKeepsItsMass) {
  const OverfillOutcome outcome = of(at_380_gpm(valve + "spill_container = { volume = \"5 gal\" }\n", alarm));
  ASSERT_EQ(outcome.runs.size(), 6U);
  for (const IncidentRun& r : outcome.runs) {
    EXPECT_LE(r.balance, 1e-12) << r.name;
    EXPECT_NEAR(sum_of_changes(r), 0.0, 1e-11) << r.name;
    EXPECT_NEAR(told_into_tank(r), r.amounts[2].end - r.amounts[2].start, 1e-9) << r.name;
  }
}

TEST(Overfill, ChartsGoForwardInTime) {
  for (const IncidentRun& r : of(at_380_gpm(valve, alarm)).runs) {
    EXPECT_EQ(r.chart.time.size(), r.chart.held.front().size());
    EXPECT_TRUE(std::is_sorted(r.chart.time.begin(), r.chart.time.end()));
  }
}

TEST(Overfill, WhatNoneOfThemStopsEscapes) {
  const OverfillOutcome outcome = of(at_380_gpm(valve, alarm));
  const IncidentRun* none = named(outcome, "none of them acts");
  ASSERT_NE(none, nullptr);
  const double room = none->amounts[2].end - none->amounts[2].start;
  EXPECT_NEAR(none->escaped, cubic_meters_from_gallons(4000.0) - room, 2e-6);  // the truck keeps its last milliliter
  EXPECT_EQ(outcome.runs.front().escaped, 0.0);
}

TEST(Overfill, ThePublishedDepthsWithATestAreAssured) {
  const OverfillOutcome outcome = of(at_380_gpm(valve));
  EXPECT_EQ(outcome.barriers[0].assurance, Assurance::assured);  // 86.66 in is 95 % as printed
  EXPECT_EQ(outcome.barriers[1].assurance, Assurance::absent);
  EXPECT_EQ(outcome.barriers[2].assurance, Assurance::not_assured);
  const OverfillOutcome high = of(at_380_gpm(replaced(valve, "86.66 in", "86.8 in")));
  EXPECT_EQ(high.barriers[0].assurance, Assurance::not_assured);
  const OverfillOutcome untested = of(at_380_gpm(replaced(valve, ", tested = 2026-01-10", "")));
  EXPECT_EQ(untested.barriers[0].assurance, Assurance::not_assured);
}

TEST(Overfill, WithoutAnythingThatTellsHimTheDriverDoesNotAct) {
  const OverfillOutcome outcome = of(at_380_gpm({}));
  EXPECT_EQ(outcome.told.spilled, named(outcome, "without driver")->escaped);
  EXPECT_GT(outcome.told.spilled, 0.0);
  const auto& reasons = outcome.barriers[2].reasons;
  EXPECT_TRUE(std::any_of(reasons.begin(), reasons.end(),
                          [](const std::string& r) { return r.find("nothing tells him") == 0; }));
}

TEST(Overfill, WhatFallsIntoALeakingContainerIsInTheGround) {
  const OverfillOutcome outcome = of(at_380_gpm("spill_container = { volume = \"5 gal\", tight = false }\n"));
  const IncidentRun& r = outcome.runs.front();
  EXPECT_EQ(r.holders[3], Holder::ground);
  EXPECT_NEAR(r.amounts[3].end, cubic_meters_from_gallons(5.0), 1e-9);
  EXPECT_EQ(r.to_environment, r.escaped);
}

TEST(Overfill, ADriverWhoIsTakenOutTakesNoHoseOff) {
  IncidentOptions options;
  options.without = {Barrier::driver};
  for (const IncidentRun& r : of(at_380_gpm(valve), options).runs)
    EXPECT_EQ(r.name.find("takes off"), std::string::npos);
}

TEST(Overfill, TheSameAgainIsTheSame) {
  const OverfillOutcome a = of(at_380_gpm(valve)), b = of(at_380_gpm(valve));
  ASSERT_EQ(a.runs.size(), b.runs.size());
  for (std::size_t i = 0; i < a.runs.size(); ++i) EXPECT_EQ(a.runs[i].hash, b.runs[i].hash);
}

std::string gravity(const std::string& more) {
  return "hose = { length = \"6 m\", bore = \"4 in\", roughness = \"0 mm\", loss = 14 }\n" + more;
}

// ---- a pitched tank with bulging heads --------------------------------------------------------------------

constexpr double inch = 0.0254, along = 1.0;
const std::string dished_shell =
    "shape = { kind = \"horizontal-cylinder\", inside_diameter = \"96 in\", length = \"260 in\", heads = \"dished\", "
    "dish_radius = \"96 in\", knuckle_radius = \"6 in\", pitch = \"1.5 %\" }\n"
    "reading = { depth = \"50 in\", at = \"1 m\" }\nbottom_elevation = \"-3.4 m\"\n";

/// The tank of that shell, made without the site file.
parts::TankVolume pitched_dished() {
  const parts::Head head{parts::HeadKind::dished, 0.0, 96.0 * inch, 6.0 * inch};
  return parts::TankVolume(parts::RoundTank{96.0 * inch, 260.0 * inch, head, head, std::atan(0.015)});
}

double volume_to(double depth, double at) {
  const parts::TankVolume tank = pitched_dished();
  return tank.volume(tank.level_at({.along = at}, depth));
}

TEST(Overfill, APitchedDishedTankHoldsWhatItsShapeHolds) {
  const OverfillOutcome outcome =
      of(replaced(site_of(dished_shell, "at = \"5 m\"\n" + valve, "rate = \"380 gpm\"\n"), "4000 gal", "6000 gal"));
  ASSERT_TRUE(outcome.problem.empty()) << outcome.problem;
  const double start = volume_to(50.0 * inch, along), rate = cubic_meters_from_gallons(380.0) / 60.0;
  const IncidentRun& r = outcome.runs.front();
  EXPECT_NEAR(r.amounts[2].start, start, 1e-12 * start);
  const double restricts = volume_to(80.98 * inch, 5.0);
  EXPECT_NEAR(*outcome.told.restricts_at, (restricts - start) / rate, 1e-6);  // a guard's moment is found to 1e-8 s
  const IncidentRun* none = named(outcome, "none of them acts");
  ASSERT_NE(none, nullptr);
  EXPECT_NEAR(none->amounts[2].end, pitched_dished().capacity(), 1e-8);  // the ullage is filled, and no more
  // What it would hold as a level shell with flat heads is less by more than two hundred liters.
  const double flat = std::numbers::pi / 4.0 * std::pow(96.0 * inch, 2) * 260.0 * inch;
  EXPECT_GT(none->amounts[2].end - flat, 0.2);
}

TEST(Overfill, APitchedTankReadNowhereIsReadAtItsLowEndAndSaysSo) {
  const OverfillOutcome outcome =
      of(site_of(replaced(dished_shell, ", at = \"1 m\"", ""), valve, "rate = \"380 gpm\"\n"));
  EXPECT_NEAR(outcome.runs.front().amounts[2].start, volume_to(50.0 * inch, 0.0), 1e-9);
  EXPECT_TRUE(std::any_of(outcome.warnings.begin(), outcome.warnings.end(),
                          [](const std::string& w) { return w.find("taken at its low end") != std::string::npos; }));
}

/// A full tank gives way at the elevation of its fill, counted from where the shell's bottom begins.
TEST(Overfill, HeightsStandAboveTheLowestPointOfALowHead) {
  const site::Site site = station(
      site_of(dished_shell, "elevation = \"-0.2 m\"\n",
              gravity("  [[delivery.compartment]]\n  product = \"regular\"\n  tank = \"T1\"\n  volume = \"16 m3\"\n"
                      "  elevation = \"2 m\"\n  height = \"1 m\"\n")));
  IncidentOptions options;
  options.kind = IncidentKind::overfill;
  Inputs inputs;
  const auto setup = overfilling::set_up(site, merged_request(site, options), inputs);
  ASSERT_TRUE(setup.problem.empty()) << setup.problem;
  const double foot = pitched_dished().range_of({.along = 0.0}).bottom;
  EXPECT_GT(foot, 0.0);
  EXPECT_NEAR(setup.everything.outlet, 3.4 - 0.2 + foot, 1e-12);
  EXPECT_NEAR(setup.everything.truck_bottom, 3.4 + 2.0 - 1.0 + foot, 1e-12);
}

TEST(Overfill, WhatAPumpCanDrawFromAPitchedDishedTankIsItsVolume) {
  site::Site site = station(site_of(dished_shell, {}, "rate = \"380 gpm\"\n"));
  const Length inlet = Length::from_si(0.15), at = Length::from_si(3.0);
  site.pumps.front().inlet_above_bottom = site::Entered<Length>{inlet, inlet, inlet, {}};
  site.pumps.front().at = site::Entered<Length>{at, at, at, {}};
  const auto contents = contents_for(site, site.pumps.front().id.text, 740.0);
  const auto* known = std::get_if<Contents>(&contents);
  ASSERT_NE(known, nullptr) << std::get<std::string>(contents);
  const double usable = volume_to(50.0 * inch, along) - volume_to(0.15, 3.0);
  EXPECT_NEAR(known->usable, usable, 1e-12 * usable);
  const parts::TankVolume tank = pitched_dished();
  const double down = tank.level_at({.along = along}, 50.0 * inch) - tank.level_at({.along = 3.0}, 0.15);
  const double weight = 740.0 * standard_gravity * down;
  EXPECT_NEAR(known->fall.at(usable).value, weight, 1e-9 * weight);
}

/// A compartment from 130 in to the high end: flat inside, dished at its end.
TEST(Overfill, WhatAPumpCanDrawFromACompartmentIsItsVolume) {
  const std::string halves =
      replaced(dished_shell, "reading = { depth = \"50 in\", at = \"1 m\" }\n", "") +
      "[[tank.compartment]]\nid = \"T1-low\"\nproduct = \"regular\"\nfrom = \"0 in\"\nlength = \"130 in\"\n"
      "[[tank.compartment]]\nid = \"T1-high\"\nproduct = \"regular\"\nfrom = \"130 in\"\nlength = \"130 in\"\n"
      "reading = { depth = \"40 in\", at = \"200 in\" }\n";
  site::Site site = station(site_of(halves, {}, "rate = \"380 gpm\"\n"));
  site.pumps.front().tank.text = "T1-high";
  const auto contents = contents_for(site, site.pumps.front().id.text, 740.0);
  const auto* known = std::get_if<Contents>(&contents);
  ASSERT_NE(known, nullptr) << std::get<std::string>(contents);
  const parts::Head head{parts::HeadKind::dished, 0.0, 96.0 * inch, 6.0 * inch};
  const parts::TankVolume half(parts::RoundTank{96.0 * inch, 130.0 * inch, {}, head, std::atan(0.015)});
  const double usable = half.volume(half.level_at({.along = 70.0 * inch}, 40.0 * inch));
  EXPECT_NEAR(known->usable, usable, 1e-12 * usable);
  site.tanks.front().compartments.back().reading.reset();
  const auto missing = contents_for(site, site.pumps.front().id.text, 740.0);
  EXPECT_EQ(std::get<std::string>(missing), "how much is in compartment 'T1-high' is not entered");
}

// ---- what is missing ------------------------------------------------------------------------------------

TEST(Overfill, SaysWhatIsMissing) {
  const std::string tank = shell + "reading = { depth = \"50 in\" }\nbottom_elevation = \"-3 m\"\n";
  const auto problem = [&](const std::string& delivery) { return of(site_of(tank, {}, delivery)).problem; };
  EXPECT_NE(problem(gravity({})).find("how fast it drops is not known"), std::string::npos);
  EXPECT_NE(problem(gravity("surface_difference = \"3 m\"\n")).find("how far the liquid in the truck falls"),
            std::string::npos);
  const std::string low =
      "  [[delivery.compartment]]\n  product = \"regular\"\n  tank = \"T1\"\n  volume = \"16 m3\"\n"
      "  elevation = \"-2 m\"\n  height = \"1 m\"\n";
  EXPECT_NE(problem(gravity(low)).find("nothing drops"), std::string::npos);
  EXPECT_NE(of(site_of({}, {}, "rate = \"380 gpm\"\n")).problem.find("shape of tank 'T1'"), std::string::npos);
  EXPECT_NE(of(site_of(shell, {}, "rate = \"380 gpm\"\n")).problem.find("how much is in tank"), std::string::npos);
}

TEST(Overfill, AFixedSurfaceDifferenceGivesASteadyFlow) {
  const OverfillOutcome outcome = of(site_of(shell + "reading = { depth = \"50 in\" }\n", {},
                                             gravity("surface_difference = \"3 m\"\nsurfaces = \"fixed\"\n")));
  ASSERT_TRUE(outcome.problem.empty()) << outcome.problem;
  const IncidentRun& r = outcome.runs.front();
  const double room = r.amounts[2].end - r.amounts[2].start;
  EXPECT_NEAR(*outcome.told.full_at, room / outcome.told.truck_flow, 1e-6);
}

}  // namespace
}  // namespace forecourse::studies
