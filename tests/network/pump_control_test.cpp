// Pumps under control against closed forms and laws of nature. SOURCE: common practice, no source
#include "forecourse/network/pump_control.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <string>

#include "forecourse/network/build.h"
#include "forecourse/network/solve.h"
#include "support/stations.h"

namespace forecourse::network {
namespace {

using test::in_gpm;
using test::in_psi;
using test::site_text;
using test::station;

const std::vector<std::string> all{"D1.a", "D1.b", "D1.c", "D1.d", "D1.e", "D1.f"};

std::string pump_text(const std::string& id, double shutoff, double factor) {
  return "[[pump]]\nid = \"" + id + "\"\ntank = \"T1\"\ncheck_valve = true\ndischarge_elevation = \"0 ft\"\n" +
         "curve = { shutoff = \"" + std::to_string(shutoff) + " psi\", per_flow_squared = \"" + std::to_string(factor) +
         " psi/gpm^2\" }\n";
}

std::string line_text(const std::string& from, const std::string& to) {
  return "[[line]]\nid = \"" + from + "-line\"\nfrom = \"" + from + "\"\nto = \"" + to +
         "\"\nlength = \"20 ft\"\nbore = \"2 in\"\nroughness = \"0.0015 mm\"\n";
}

/// Two pumps that meet at the first, six hoses; the liquid stands at the height of the discharge.
StationNetwork two_pumps(const std::string& control, double weaker = 26.0) {
  std::string text =
      "format = 1\n[[product]]\nid = \"regular\"\ndensity = \"740 kg/m3\"\nviscosity = \"0.5 mPa.s\"\n"
      "[[tank]]\nid = \"T1\"\nproduct = \"regular\"\nsurface_elevation = \"0 ft\"\n";
  text += pump_text("P1", 30.0, 0.002) + pump_text("P2", weaker, 0.0015);
  text += line_text("P2", "P1") + line_text("P1", "D1.regular");
  text += "[[dispenser]]\nid = \"D1\"\n[[dispenser.inlet]]\nproduct = \"regular\"\n";
  for (const std::string& hose : all) {
    text += "[[dispenser.hose]]\nid = \"" + hose +
            "\"\nproduct = \"regular\"\noutlet_elevation = \"3 ft\"\nloss = \"0.17 psi/gpm^2\"\n";
  }
  return build_network(station(text + "[[control]]\nid = \"C1\"\nproduct = \"regular\"\n" + control));
}

const char* const by_pressure = "kind = \"lead-lag\"\nstarts_below = \"10 psi\"\nstops_above = \"29 psi\"\n";
const char* const by_speed =
    "kind = \"variable-speed\"\npumps = [\"P1\"]\nholds = \"20 psi\"\nleast_speed = \"60 %\"\nmost_speed = \"100 %\"\n";

std::vector<char> open(std::size_t hoses) {
  std::vector<char> out(all.size(), 0);
  for (std::size_t i = 0; i < hoses; ++i) out[i] = 1;
  return out;
}

SystemState solve(const PipingSystem& system, std::size_t hoses) { return ControlledSolver(system).solve(open(hoses)); }

/// Line pressure with the first one, and with both pumps.
std::pair<double, double> pressures(const PipingSystem& system, std::size_t hoses) {
  const SystemState state = solve(system, hoses);
  return {state.control->steps[0].line_pressure, state.control->steps[1].line_pressure};
}

double flow_out(const PipingSystem& system, const SystemState& state) {
  double sum = 0.0;
  for (const HosePoint& hose : system.hoses) sum += state.flow[static_cast<std::size_t>(hose.run)];
  return sum;
}

TEST(OpeningFlow, OfTheWeakerOfTwoPumpsIsTheClosedForm) {
  const StationNetwork network = two_pumps("kind = \"all\"\n");
  const PipingSystem& system = network.systems.front();
  SystemSolver solver(system);
  const PumpSetting both{{1, 1}, {}};
  const auto place = static_cast<std::size_t>(system.runs[static_cast<std::size_t>(system.hoses[0].run)].from);
  const auto flow = opening_flow(solver, both, 1, place);
  ASSERT_TRUE(flow);
  // H01 - a1 Q2 = H02, to 1e-3 Pa of 27 kPa
  EXPECT_NEAR(in_gpm(*flow), std::sqrt((30.0 - 26.0) / 0.002), 1e-5);
  EXPECT_FALSE(opening_flow(solver, both, 0, place)) << "nothing holds the stronger one shut";
}

// Just below that flow the weaker pump delivers nothing, just above it does.
TEST(OpeningFlow, IsWhereTheWeakerPumpBeginsToDeliver) {
  const StationNetwork network = two_pumps("kind = \"all\"\n");
  const PipingSystem& system = network.systems.front();
  SystemSolver solver(system);
  const auto place = static_cast<std::size_t>(system.runs[static_cast<std::size_t>(system.hoses[0].run)].from);
  const double opens = *opening_flow(solver, {{1, 1}, {}}, 1, place);
  SystemCase asked{open(0), {}, {}, std::vector<double>(system.places.size(), 0.0)};
  asked.demand[place] = 0.999 * opens;
  EXPECT_EQ(solver.solve(asked).flow[static_cast<std::size_t>(system.pumps[1].run)], 0.0);
  asked.demand[place] = 1.001 * opens;
  EXPECT_GT(solver.solve(asked).flow[static_cast<std::size_t>(system.pumps[1].run)], 0.0);
}

TEST(LeadAndLag, BothRestingStatesAreFound) {
  StationNetwork network = two_pumps(by_pressure);
  PipingSystem& system = network.systems.front();
  const auto [one, two] = pressures(system, 6);
  ASSERT_LT(one, two);
  system.control->starts_below = 0.9 * one;
  system.control->stops_above = 1.1 * two;
  const SystemState state = solve(system, 6);
  EXPECT_EQ(state.control->taken, 0U) << "from one pump up";
  EXPECT_TRUE(state.control->steps[0].rests);
  EXPECT_TRUE(state.control->steps[1].rests);
  EXPECT_FALSE(state.runs(system.pumps[1]));
}

TEST(LeadAndLag, LagJoinsWhereTheLineFallsBelow) {
  StationNetwork network = two_pumps(by_pressure);
  PipingSystem& system = network.systems.front();
  const auto [one, two] = pressures(system, 6);
  system.control->starts_below = 1.001 * one;
  system.control->stops_above = 1.1 * two;
  const SystemState state = solve(system, 6);
  EXPECT_EQ(state.control->taken, 1U);
  EXPECT_FALSE(state.control->steps[0].rests);
  EXPECT_FALSE(state.control->hunts_with);
  EXPECT_TRUE(state.runs(system.pumps[1]));
}

TEST(LeadAndLag, HuntsWhereTheLagPumpLiftsTheLineAboveItsStop) {
  StationNetwork network = two_pumps(by_pressure);
  PipingSystem& system = network.systems.front();
  const auto [one, two] = pressures(system, 6);
  system.control->starts_below = one + 0.3 * (two - one);
  system.control->stops_above = one + 0.7 * (two - one);
  const SystemState state = solve(system, 6);
  ASSERT_TRUE(state.control->hunts_with);
  EXPECT_EQ(*state.control->hunts_with, 1U);
  EXPECT_EQ(state.control->taken, 0U);
  EXPECT_LT(state.control->steps[0].total_flow, state.control->steps[1].total_flow);
}

TEST(LeadAndLag, StartsByHosesCalling) {
  const StationNetwork network = two_pumps("kind = \"lead-lag\"\nhoses_calling = 2\n");
  const PipingSystem& system = network.systems.front();
  for (std::size_t hoses = 0; hoses <= 6; ++hoses) {
    EXPECT_EQ(solve(system, hoses).control->taken, hoses > 2 ? 1U : 0U) << hoses;
  }
}

TEST(Alternating, TellsTheFirstAndKeepsTheOthers) {
  const StationNetwork network = two_pumps("kind = \"alternating\"\npumps = [\"P2\", \"P1\"]\n");
  const PipingSystem& system = network.systems.front();
  const SystemState state = solve(system, 6);
  EXPECT_FALSE(state.runs(system.pumps[0]));
  EXPECT_TRUE(state.runs(system.pumps[1]));
  ASSERT_EQ(state.control->steps.size(), 2U);
  EXPECT_EQ(state.control->steps[1].on, std::vector<std::size_t>{0});
  EXPECT_GT(state.control->steps[1].total_flow, state.control->steps[0].total_flow);
}

// With every hose shut the line stands at the shutoff of the pump, which goes with the square of the speed.
TEST(VariableSpeed, WithEveryHoseShutIsTheClosedForm) {
  const StationNetwork network = two_pumps(by_speed, 0.01);
  const SystemState state = solve(network.systems.front(), 0);
  EXPECT_EQ(state.control->held, PressureHeld::held);
  EXPECT_NEAR(state.control->speed, std::sqrt(20.0 / 30.0), 1e-8);  // 1e-3 Pa of 138 kPa
}

// s2 H0 - a Q2 is the pressure held, whatever the losses behind it are.
TEST(VariableSpeed, WithHosesOpenIsTheClosedForm) {
  const StationNetwork network = two_pumps(by_speed, 0.01);
  const PipingSystem& system = network.systems.front();
  const SystemState state = solve(system, 3);
  ASSERT_EQ(state.control->held, PressureHeld::held);
  EXPECT_NEAR(in_psi(line_pressure(system, state)), 20.0, 1e-6);
  const double flow = in_gpm(flow_out(system, state));
  EXPECT_GT(flow, 20.0);
  EXPECT_NEAR(state.control->speed, std::sqrt((20.0 + 0.002 * flow * flow) / 30.0), 1e-7);
}

TEST(VariableSpeed, SaysWhereItsLimitsDoNotHoldThePressure) {
  StationNetwork network = two_pumps(by_speed, 0.01);
  PipingSystem& system = network.systems.front();
  system.control->most_speed = 0.8;
  SystemState state = solve(system, 6);
  EXPECT_EQ(state.control->held, PressureHeld::not_reached);
  EXPECT_EQ(state.control->speed, 0.8);
  EXPECT_LT(in_psi(line_pressure(system, state)), 20.0);
  system.control->most_speed = 1.0;
  system.control->least_speed = 0.95;
  state = solve(system, 1);
  EXPECT_EQ(state.control->held, PressureHeld::passed);
  EXPECT_EQ(state.control->speed, 0.95);
  EXPECT_GT(in_psi(line_pressure(system, state)), 20.0);
}

// The same station with its pump entered at the speed found, and no control.
TEST(VariableSpeed, IsThePumpEnteredAtThatSpeed) {
  const StationNetwork network = two_pumps(by_speed, 0.01);
  const SystemState state = solve(network.systems.front(), 4);
  ASSERT_EQ(state.control->held, PressureHeld::held);
  StationNetwork other = two_pumps("kind = \"all\"\n", 0.01);
  for (Element& element :
       other.systems.front().runs[static_cast<std::size_t>(other.systems.front().pumps[0].run)].elements) {
    element.law = at_speed(element.law, state.control->speed);
  }
  const SystemState fixed = SystemSolver(other.systems.front()).solve(open(4));
  for (std::size_t r = 0; r < state.flow.size(); ++r) EXPECT_NEAR(state.flow[r], fixed.flow[r], 1e-10);
}

TEST(PumpControl, KeepsABlendAtItsShares) {
  const std::string text = site_text("marle-cross") +
                           "\n[[control]]\nid = \"C1\"\nproduct = \"regular\"\nkind = \"lead-lag\"\n"
                           "starts_below = \"26 psi\"\nstops_above = \"31 psi\"\n";
  const StationNetwork network = build_network(station(text));
  StationSolver solver(network);
  const StationState state = solver.solve({"D1.middle-a", "D2.middle-a", "D3.regular-a", "D4.premium-a"});
  ASSERT_TRUE(state.blends_agree);
  double regular = 0.0;
  double premium = 0.0;
  for (std::size_t s = 0; s < network.systems.size(); ++s) {
    for (const HosePoint& hose : network.systems[s].hoses) {
      if (hose.id != "D1.middle-a") continue;
      (network.systems[s].product == "regular" ? regular : premium) =
          state.systems[s].flow[static_cast<std::size_t>(hose.run)];
    }
  }
  EXPECT_GT(regular, 0.0);
  EXPECT_NEAR(regular / (regular + premium), 0.6, 1e-8);
}

TEST(PumpControl, AThousandAtRandomHoldTheirPressureOrSaySo) {
  std::mt19937 random(11);
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  StationNetwork lag = two_pumps(by_pressure);
  StationNetwork speed = two_pumps(by_speed);
  for (int i = 0; i < 1000; ++i) {
    PipingSystem& system = (i % 2 == 0 ? lag : speed).systems.front();
    ControlPoint& control = *system.control;
    if (i % 2 == 0) {
      control.starts_below = 6894.757 * between(0.0, 32.0);
      control.stops_above = *control.starts_below + 6894.757 * between(0.0, 10.0);
    } else {
      control.holds = 6894.757 * between(1.0, 40.0);
      control.least_speed = between(0.3, 0.9);
      control.most_speed = between(control.least_speed, 1.2);
    }
    const SystemState state = solve(system, random() % 7);
    ASSERT_TRUE(state.report.usable());
    ASSERT_TRUE(state.control);
    double in = 0.0;
    for (const PumpPoint& pump : system.pumps) in += state.flow[static_cast<std::size_t>(pump.run)];
    EXPECT_NEAR(in, flow_out(system, state), 1e-11);  // one balance of 1e-12 m3/s at each place
    const ControlOutcome& out = *state.control;
    const double pressure = line_pressure(system, state);
    if (control.kind == site::ControlKind::lead_lag) {
      const bool rests = out.taken == 1 || pressure >= *control.starts_below;
      EXPECT_TRUE(rests || out.hunts_with) << i;
    } else {
      EXPECT_EQ(out.held == PressureHeld::held, std::abs(pressure - *control.holds) <= 2e-3) << i;
      EXPECT_GE(out.speed, control.least_speed);
      EXPECT_LE(out.speed, control.most_speed);
    }
  }
}

}  // namespace
}  // namespace forecourse::network
