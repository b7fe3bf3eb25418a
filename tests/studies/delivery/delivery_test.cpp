// SOURCE: closed form: volume over rate, Boyle's law; a second computation of the time from 90 to 95 % (96 in by 260
// in)
#include "forecourse/studies/delivery/delivery.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "forecourse/base/api_units.h"
#include "forecourse/base/constants.h"
#include "support/stations.h"

namespace forecourse::studies {
namespace {

using test::station;

/// An invented tank of 96 in by 260 in that stands half full, its vapor ways, and a truck.
std::string text(const std::string& tank, const std::string& delivery, const std::string& compartment = {}) {
  return R"(format = 1
[site]
[[product]]
id = "regular"
kind = "gasoline-e10"
density = "740 kg/m3"
viscosity = "0.5 mPa.s"
[[tank]]
id = "T1"
product = "regular"
shape = { kind = "horizontal-cylinder", inside_diameter = "96 in", length = "260 in", heads = "flat" }
bottom_elevation = "-12 ft"
reading = { depth = "50 in" }
)" + tank +
         R"(
  [[tank.fill]]
  elevation = "-6 in"
  drop_tube = { length = "11 ft", bore = "4 in", roughness = "0.045 mm", end_above_bottom = "5 in" }
[[delivery]]
id = "load"
hose = { length = "20 ft", bore = "4 in", roughness = "0.0015 mm", loss = 6 }
vapor_density = "2 kg/m3"
vapor_viscosity = "0.018 mPa.s"
vapor_growth = "100 %"
)" + delivery +
         R"(
  [[delivery.compartment]]
  id = "front"
  tank = "T1"
  volume = "3000 gal"
  capacity = "3100 gal"
  elevation = "8 ft"
  height = "4 ft 6 in"
)" + compartment;
}

const std::string open_vent = R"(
  [[tank.vent]]
  id = "V1"
  pipe = { length = "40 ft", nominal = "schedule-40-two-inch", loss = 4.5 }
  outlet_elevation = "13 ft"
)";
const std::string valve_vent = R"(
  [[tank.vent]]
  id = "V1"
  pipe = { length = "40 ft", nominal = "schedule-40-two-inch", loss = 4.5 }
  valve = { opens_at = "3 inH2O", vacuum_opens_at = "8 inH2O", points = [["100 gpm", "4 inH2O"], ["400 gpm", "8 inH2O"]] }
)";
const std::string vapor_return =
    "vapor_return = { kind = \"two-point\", pipe = { length = \"5 ft\", bore = \"3 in\" } }\n";
const std::string vapor_hose = "vapor_hose = { length = \"20 ft\", bore = \"3 in\", loss = 3 }\n";

DeliveryResult study(const std::string& of, const DeliveryOptions& options = {}) {
  DeliveryResult result = study_delivery(station(of), options);
  for (const DeliveryRun& run : result.runs) {
    EXPECT_LE(run.liquid_balance, 1e-12) << run.name;
    EXPECT_LE(run.vapor_balance, 1e-12) << run.name;
    EXPECT_TRUE(run.problem.empty()) << run.problem;
  }
  return result;
}

const DeliveryRun& first(const DeliveryResult& result) { return result.runs.at(0); }

std::optional<double> when(const DeliveryRun& run, DeliveryHappening what) {
  for (const DeliveryEvent& e : run.events) {
    if (e.what == what) return e.time;
  }
  return std::nullopt;
}

TEST(Delivery, AGivenRateTakesVolumeOverRate) {
  DeliveryOptions options;
  options.rate = cubic_meters_per_second_from_gpm(380.0);
  const DeliveryResult result = study(text(open_vent, ""), options);
  EXPECT_NEAR(*when(first(result), DeliveryHappening::truck_empty), 60.0 * 3000.0 / 380.0, 1e-3);  // a microliter
  EXPECT_EQ(first(result).drops[0].end, DropEnd::emptied);
  EXPECT_NEAR(first(result).drops[0].mean_rate, *options.rate, 1e-6 * *options.rate);
}

TEST(Delivery, FromNinetyToNinetyFivePercent) {
  DeliveryOptions options;
  options.rate = cubic_meters_per_second_from_gpm(380.0);
  options.volume = cubic_meters_from_gallons(4000.0);
  const DeliveryRun run = first(study(text(open_vent, ""), options));
  const double took = *when(run, DeliveryHappening::ninety_five) - *when(run, DeliveryHappening::ninety);
  EXPECT_NEAR(minutes_from_seconds(took), 1.07, 0.005);  // printed to a hundredth
}

TEST(Delivery, GravityWithAnOpenVent) {
  const DeliveryRun run = first(study(text(open_vent, "")));
  EXPECT_TRUE(run.moves_all);
  EXPECT_GT(run.drops[0].first_rate, run.drops[0].mean_rate);
  EXPECT_GT(run.ullages[0].highest_pressure, 0.0);
  EXPECT_FALSE(run.truck.closed);
  // What left the ullage is what came in, less what is stored in it.
  EXPECT_NEAR(run.ullages[0].vented, run.dropped, 0.01 * run.dropped);
  EXPECT_NEAR(run.ullages[0].vented, -run.ullages[0].stored + run.ullages[0].grown - run.ullages[0].returned, 1e-9);
}

std::string vent_of(double bore, const std::string& more = {}) {
  return "  [[tank.vent]]\n  id = \"V1\"\n  pipe = { length = \"40 ft\", bore = \"" + std::to_string(bore) +
         " m\", roughness = \"0.045 mm\", loss = 4.5 }\n" + more;
}

/// A wider vent never makes a drop slower, nor the pressure higher; the widest is as good as no roof at all.
TEST(Delivery, VentsOfAnyBore) {
  const DeliveryRun open = first(study(text("", "")));
  constexpr int steps = 48;
  double time = 1e9, pressure = 1e9;
  for (int i = 0; i <= steps; ++i) {
    const double bore = 0.025 * std::pow(3.0 / 0.025, static_cast<double>(i) / steps);
    study(text(vapor_return + vent_of(bore), vapor_hose));  // it balances and ends, with a hose beside it too
    const DeliveryRun run = first(study(text(vent_of(bore), "")));
    EXPECT_TRUE(run.moves_all) << bore;
    EXPECT_LE(run.time, time * (1.0 + 1e-6)) << bore;  // the tolerance of a step
    EXPECT_LE(run.ullages[0].highest_pressure, pressure * 1.01) << bore;
    EXPECT_LE(run.steps, 500U) << bore;
    EXPECT_NEAR(run.ullages[0].vented, -run.ullages[0].stored + run.ullages[0].grown, 1e-9) << bore;
    time = run.time;
    pressure = run.ullages[0].highest_pressure;
  }
  EXPECT_NEAR(time, open.time, 1e-5 * time);
}

TEST(Delivery, AValveOpensAndIsToldWhen) {
  const DeliveryRun run = first(study(text(valve_vent, "")));
  ASSERT_TRUE(run.ullages[0].lifts_at);
  EXPECT_GT(run.ullages[0].highest_pressure, pascal_from_inches_of_water(3.0));
  EXPECT_NEAR(*run.ullages[0].opens_at, pascal_from_inches_of_water(3.0), 1e-6);
}

TEST(Delivery, VaporReturnKeepsAValveShut) {
  const DeliveryResult result = study(text(vapor_return + valve_vent, vapor_hose));
  const DeliveryRun& run = first(result);
  EXPECT_TRUE(run.truck.closed);
  EXPECT_FALSE(run.ullages[0].lifts_at);
  EXPECT_EQ(run.ullages[0].vented, 0.0);
  EXPECT_LT(run.truck.lowest_pressure, 0.0);
  EXPECT_NEAR(run.ullages[0].returned, run.dropped, 0.01 * run.dropped);
  ASSERT_GE(result.runs.size(), 4U);  // return alone, vent alone, all blocked
  EXPECT_EQ(result.runs[2].name, "vent alone");
  EXPECT_TRUE(result.runs[2].ullages[0].lifts_at);
  EXPECT_TRUE(result.runs[3].stalled);
  EXPECT_TRUE(result.runs[3].under_pressure);
  EXPECT_FALSE(run.under_pressure);
}

// SOURCE: closed form: a loss coefficient times the velocity head, in a gas at its mean density
TEST(Delivery, PressureAlongTheVaporReturn) {
  const std::string coefficients =
      "vapor_return = { kind = \"two-point\", pipe = { length = \"0.001 in\", bore = \"3 in\", loss = 8 }, loss = 4 "
      "}\n";
  const DeliveryRun run = first(
      study(text(coefficients + valve_vent, "vapor_hose = { length = \"0.001 in\", bore = \"3 in\", loss = 6 }\n")));
  const DeliveryChart& chart = run.chart;
  ASSERT_EQ(chart.riser.size(), 1U);
  ASSERT_EQ(chart.hose_pressure.size(), 1U);
  const double bore = meters_from_inches(3.0), area = 0.25 * 3.14159265358979 * bore * bore;
  double most = 0.0;
  for (std::size_t i = 0; i < chart.time.size(); ++i) {
    const double velocity = chart.returned[0].value[i] / area;
    const double head = 0.5 * 2.0 * velocity * std::abs(velocity);
    const double ullage = chart.ullage[0].value[i];
    const double lost = 18.0 * head;
    // The mean density is within 1 % of that at the atmosphere; the short pipes add the rest.
    EXPECT_NEAR(chart.riser[0].value[i], ullage - 8.0 * head, 0.01 * std::abs(lost) + 1e-6);
    EXPECT_NEAR(chart.hose_pressure[0].value[i], ullage - 15.0 * head, 0.01 * std::abs(lost) + 1e-6);
    // Behind the hose its last velocity head is lost. Near no flow the truck follows in steps.
    if (chart.returned[0].value[i] > 0.005) {
      EXPECT_NEAR(chart.truck_pressure[i], ullage - 19.0 * head, 0.01 * std::abs(lost));
    }
    most = std::max(most, lost);
  }
  EXPECT_GT(most, 20.0);  // [Pa]: there is something to be told
}

TEST(Delivery, AVaporReturnThatIsNotConnectedHasThePressureOfTheTank) {
  const DeliveryResult result = study(text(vapor_return + valve_vent, vapor_hose));
  const DeliveryChart& alone = result.runs.at(2).chart;  // vent alone
  ASSERT_EQ(alone.riser.size(), 1U);
  for (std::size_t i = 0; i < alone.time.size(); ++i)
    EXPECT_NEAR(alone.riser[0].value[i], alone.ullage[0].value[i], 1e-9);  // rounding
  EXPECT_TRUE(alone.hose_pressure.empty());
  EXPECT_TRUE(first(study(text(open_vent, ""))).chart.riser.empty());
}

TEST(Delivery, GrowingVaporOpensTheValveAllTheSame) {
  const std::string grows = "vapor_growth = \"130 %\"\n";
  std::string of = text(vapor_return + valve_vent, vapor_hose);
  of.replace(of.find("vapor_growth = \"100 %\"\n"), std::string("vapor_growth = \"100 %\"\n").size(), grows);
  const DeliveryRun run = first(study(of));
  EXPECT_TRUE(run.ullages[0].lifts_at);
  EXPECT_NEAR(run.ullages[0].grown, 0.3 * run.dropped, 1e-6);
}

TEST(Delivery, ABlockedVentStallsTheDropByBoyle) {
  DeliveryOptions options;
  options.blocked = {"V1"};
  const DeliveryRun run = first(study(text(open_vent, ""), options));
  EXPECT_TRUE(run.stalled);
  EXPECT_EQ(run.drops[0].end, DropEnd::stalled);
  const DeliveryTank& tank = run.tanks[0];
  const double before = tank.capacity - tank.volume_before, after = tank.capacity - tank.volume_after;
  EXPECT_NEAR(run.ullages[0].last_pressure, standard_atmosphere * (before / after - 1.0), 1e-3);
  EXPECT_GT(run.drops[0].left_in_truck, 0.0);
  EXPECT_NEAR(run.drops[0].left_in_hose, run.drops[0].hose_holds, 1e-12);
}

TEST(Delivery, WithoutAListedVentThePressureIsNotDetermined) {
  const DeliveryRun run = first(study(text("", "")));
  EXPECT_TRUE(run.moves_all);
  EXPECT_FALSE(run.ullages[0].problem.empty());
}

TEST(Delivery, TheOverfillValveHoldsTheDrop) {
  std::string of = text(open_vent, "");
  const std::string fill = "  elevation = \"-6 in\"\n";
  of.replace(
      of.find(fill), fill.size(),
      fill + "  overfill_valve = { restricts_at = \"60 in\", closes_at = \"62 in\", restricted = \"30 gpm\" }\n");
  const DeliveryRun run = first(study(of));
  EXPECT_EQ(run.drops[0].end, DropEnd::held);
  EXPECT_NEAR(run.tanks[0].depth_after, meters_from_inches(62.0), 2e-4);  // that of the curve of levels
  EXPECT_GT(run.drops[0].left_in_hose, 0.0);
  EXPECT_TRUE(when(run, DeliveryHappening::restricts));
}

TEST(Delivery, TheDriverActsAfterTheAlarm) {
  const std::string alarm = "overfill_alarm = { at_depth = \"60 in\", heard_at_fill = true }\n";
  const DeliveryRun run = first(study(text(alarm + open_vent, "driver_acts_in = \"30 s\"\n")));
  EXPECT_NEAR(*when(run, DeliveryHappening::truck_shut) - *when(run, DeliveryHappening::alarm), 30.0, 1e-6);
  EXPECT_EQ(run.drops[0].end, DropEnd::stopped);
  ASSERT_TRUE(run.tanks[0].seconds_to_shut);
  EXPECT_GT(*run.tanks[0].seconds_to_shut, 0.0);
}

TEST(Delivery, StoppedByHand) {
  DeliveryOptions options;
  options.stop_at = 100.0;
  const DeliveryRun run = first(study(text(open_vent, ""), options));
  EXPECT_NEAR(*when(run, DeliveryHappening::truck_shut), 100.0, 1e-9);
  EXPECT_EQ(run.drops[0].end, DropEnd::stopped);
  EXPECT_LT(run.drops[0].left_in_hose, 1e-5);  // it has drained
}

TEST(Delivery, AFullTankEndsIt) {
  DeliveryOptions options;
  options.volume = cubic_meters_from_gallons(6000.0);
  options.rate = cubic_meters_per_second_from_gpm(380.0);
  const DeliveryRun run = first(study(text(open_vent, ""), options));
  EXPECT_EQ(run.drops[0].end, DropEnd::tank_full);
  EXPECT_LT(run.tanks[0].room_to_95_after, 0.0);
}

TEST(Delivery, AnUncertainHeightGivesARange) {
  std::string of = text(open_vent, "");
  const std::string surface = "  elevation = \"8 ft\"\n";
  of.replace(of.find(surface), surface.size(),
             "  elevation = { low = \"7 ft\", likely = \"8 ft\", high = \"9 ft\" }\n");
  const DeliveryResult result = study(of);
  ASSERT_EQ(result.spans.size(), 1U);
  EXPECT_GT(result.spans[0].time_at_low, result.spans[0].time_at_high);
  EXPECT_LT(result.time_range->low, result.time_range->high);
}

TEST(Delivery, WhatIsMissingIsSaid) {
  std::string of = text(open_vent, "");
  const std::string surface = "  elevation = \"8 ft\"\n";
  of.replace(of.find(surface), surface.size(), "");
  EXPECT_NE(study_delivery(station(of), {}).problem.find("how fast front drops is not known"), std::string::npos);
  DeliveryOptions options;
  options.tank = "T9";
  EXPECT_EQ(check_options(station(of), options).size(), 1U);
}

// ---- branches to a shared vent ------------------------------------------------------------------------------

const std::string outlet =
    "  pipe = { length = \"40 ft\", nominal = \"schedule-40-two-inch\", loss = 4.5 }\n  outlet_elevation = \"13 ft\"\n";

std::string branched(const std::string& id, const std::string& branch, const std::string& more = {}) {
  return "  [[tank.vent]]\n  id = \"" + id + "\"\n  shared = \"stack\"\n" + branch + more;
}

std::string branch_of(const std::string& bore) {
  return "  branch = { length = \"30 ft\", bore = \"" + bore + "\", roughness = \"0.045 mm\", loss = 2 }\n";
}

/// Two tanks on one vent; the second gets no drop unless it has a compartment.
std::string manifolded(const std::string& first_branch, const std::string& second_branch,
                       const std::string& delivery = {}, const std::string& compartment = {}) {
  std::string out = text(branched("V1", first_branch, outlet), delivery, compartment);
  const std::string second =
      "[[tank]]\nid = \"T2\"\nproduct = \"regular\"\nshape = { kind = \"horizontal-cylinder\", inside_diameter = \"96 "
      "in\", length = \"260 in\", heads = \"flat\" }\nbottom_elevation = \"-12 ft\"\nreading = { depth = \"40 in\" "
      "}\n" +
      branched("V2", second_branch) +
      "  [[tank.fill]]\n  elevation = \"-6 in\"\n  drop_tube = { length = \"11 ft\", bore = \"4 in\", roughness = "
      "\"0.045 mm\", end_above_bottom = \"5 in\" }\n";
  out.insert(out.find("[[delivery]]"), second);
  return out;
}

const std::string into_second =
    "  [[delivery.compartment]]\n  id = \"rear\"\n  tank = \"T2\"\n  volume = \"1200 gal\"\n  elevation = \"8 ft\"\n"
    "  height = \"4 ft 6 in\"\n";

const UllageTold& ullage_of(const DeliveryRun& run, const std::string& id) {
  for (const UllageTold& u : run.ullages) {
    if (u.joint == id || (!u.tanks.empty() && u.tanks.front() == id)) return u;
  }
  ADD_FAILURE() << "no ullage of " << id;
  return run.ullages.front();
}

void expect_vapor_explained(const DeliveryRun& run) {
  double through = 0.0;
  for (const UllageTold& u : run.ullages) {
    EXPECT_NEAR(u.vented - u.drawn_in, u.grown - u.stored - u.returned - u.passed_on, 1e-9) << u.joint;
    through += u.passed_on;
  }
  EXPECT_NEAR(through, 0.0, 1e-9);  // what one gives the others get
}

TEST(Delivery, WideBranchesAreAsOneSpace) {
  const DeliveryRun one = first(study(manifolded("", "", "", into_second)));
  const DeliveryRun wide = first(study(manifolded(branch_of("3 m"), branch_of("3 m"), "", into_second)));
  EXPECT_EQ(one.ullages.size(), 1U);
  ASSERT_EQ(wide.ullages.size(), 3U);
  EXPECT_NEAR(wide.time, one.time, 0.02 * one.time);  // the wide pipes themselves hold 127 m3 of vapor
  expect_vapor_explained(wide);
  const UllageTold &a = ullage_of(wide, "T1"), &b = ullage_of(wide, "T2");
  EXPECT_NEAR(a.highest_pressure, b.highest_pressure, 1.0);
}

/// The first tank's drop pushes vapor through its branch into the other ullage, and the more of it the wider.
TEST(Delivery, VaporGoesThroughBranchesIntoTheOtherUllage) {
  double pressure = 1e9;
  for (const char* bore : {"1 in", "1.5 in", "2 in", "4 in"}) {
    const DeliveryRun run = first(study(manifolded(branch_of(bore), branch_of(bore))));
    expect_vapor_explained(run);
    const UllageTold &from = ullage_of(run, "T1"), &into = ullage_of(run, "T2"), &joint = ullage_of(run, "stack");
    EXPECT_GT(from.highest_pressure, joint.highest_pressure) << bore;
    EXPECT_GE(joint.highest_pressure, into.highest_pressure - 0.5) << bore;  // told to a millionth
    EXPECT_GT(into.highest_pressure, 0.0) << bore;
    EXPECT_LT(into.passed_on, 0.0) << bore;  // it takes some
    EXPECT_LT(from.highest_pressure, pressure) << bore;
    pressure = from.highest_pressure;
  }
}

/// In a steady state the branch loses what its own laws say at the rate of the drop.
TEST(Delivery, ABranchLosesWhatItsPipeLoses) {
  DeliveryOptions options;
  options.rate = cubic_meters_per_second_from_gpm(150.0);
  options.blocked = {"V2"};  // nothing is stored elsewhere
  const DeliveryRun run = first(study(manifolded(branch_of("2 in"), branch_of("2 in")), options));
  const std::size_t late = run.chart.time.size() / 2;
  const double ullage = run.chart.ullage[0].value[late], joint = run.chart.ullage[1].value[late];
  const double q = run.chart.branch[0].value[late];
  EXPECT_NEAR(q, *options.rate, 0.01 * q);
  constexpr double bore = 2.0 * 0.0254, length = 30.0 * 0.3048, rho = 2.0, mu = 1.8e-5;
  const double v = q / (std::numbers::pi / 4.0 * bore * bore), re = rho * v * bore / mu;
  double root = 8.0;  // Colebrook's 1 / sqrt(f)
  for (int i = 0; i < 50; ++i) root = -2.0 * std::log10(0.045e-3 / bore / 3.7 + 2.51 * root / re);
  const double head = 0.5 * rho * v * v * (length / bore / (root * root) + 2.0 + 1.0);
  const double mean = 1.0 + 0.5 * (ullage + joint) / standard_atmosphere;
  EXPECT_NEAR((ullage - joint) * mean, head, 0.01 * head);  // friction of another formula
}

TEST(Delivery, TwoDropsThroughBranches) {
  const std::string narrow = branch_of("1.5 in"), wide = branch_of("2 in");
  const DeliveryRun both = first(study(manifolded(narrow, wide, "at_once = 2\n", into_second)));
  const DeliveryRun after = first(study(manifolded(narrow, wide, "", into_second)));
  for (const DeliveryRun* run : {&both, &after}) {
    EXPECT_TRUE(run->moves_all);
    expect_vapor_explained(*run);
  }
  EXPECT_GT(ullage_of(both, "T1").highest_pressure, ullage_of(both, "T2").highest_pressure);
  EXPECT_GT(ullage_of(both, "T2").highest_pressure, ullage_of(after, "T2").highest_pressure);
  EXPECT_GT(ullage_of(both, "stack").highest_pressure, ullage_of(after, "stack").highest_pressure);
  // One after the other: the second tank first takes the vapor of the other's drop, then gives its own.
  const auto& second = after.chart.branch[1].value;
  const auto least = std::min_element(second.begin(), second.end()),
             most = std::max_element(second.begin(), second.end());
  EXPECT_LT(*least, -1e-4);
  EXPECT_GT(*most, 1e-3);
  EXPECT_LT(least, most);
}

TEST(Delivery, AVentIsBlockedByItsIdAndByItsTank) {
  const std::string station = manifolded(branch_of("2 in"), branch_of("2 in"));
  const auto with = [&](const std::string& blocked) {
    DeliveryOptions options;
    options.table = options.spans = false;
    options.blocked = {blocked};
    return first(study(station, options));
  };
  for (const char* own : {"V1", "T1"}) {  // its branch: nothing gets out
    const DeliveryRun run = with(own);
    EXPECT_EQ(ullage_of(run, "T1").passed_on, 0.0) << own;
    EXPECT_TRUE(ullage_of(run, "T1").no_vent) << own;
    EXPECT_FALSE(ullage_of(run, "T2").no_vent) << own;
  }
  const DeliveryRun stack = with("stack");  // the outlet: vapor still goes into the other ullage
  EXPECT_GT(ullage_of(stack, "T1").passed_on, 0.5);
  EXPECT_EQ(ullage_of(stack, "stack").vented, 0.0);
  EXPECT_TRUE(ullage_of(stack, "T1").no_vent);
  EXPECT_GT(ullage_of(with("V2"), "T1").highest_pressure, ullage_of(with("nothing"), "T1").highest_pressure - 1.0);
  // Without branches either tank's name stands for the outlet that they share.
  DeliveryOptions second;
  second.blocked = {"V2"};
  EXPECT_TRUE(ullage_of(first(study(manifolded("", ""), second)), "T1").no_vent);
}

}  // namespace
}  // namespace forecourse::studies
