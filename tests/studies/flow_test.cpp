// The figures of Site S and of the truck lane were computed by an independent script, not by this program:
// computed rows, a second computation. SOURCE: common practice, no source
#include "forecourse/studies/flow/flow.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "support/stations.h"

namespace forecourse::studies {
namespace {

using test::in_gpm;
using test::in_psi;
using test::site_text;
using test::station;
using test::with;

constexpr double half_percent = 0.005;  // the agreement asked of these figures, which are printed to 0.01 gpm

FlowResult flow_of(const std::string& text, std::vector<OpenSet> sets = {}) {
  return study_flow(station(text), {std::move(sets), {}});
}

std::map<std::string, double> flows(const FlowState& state) {
  std::map<std::string, double> out;
  for (const SystemFlow& system : state.systems) {
    for (const HoseFlow& hose : system.hoses) out[hose.id] += in_gpm(hose.flow);
  }
  return out;
}

std::map<std::string, double> flows_with_open(const std::string& text, const std::vector<std::string>& open) {
  return flows(flow_of(text, {{"asked", open}}).states.front());
}

void expect_near(double value, double expected) { EXPECT_NEAR(value, expected, half_percent * expected); }

struct SiteSCase {
  const char* trunk;
  double alone;
  double each[3];
  double all[3];
};

class SiteS : public testing::TestWithParam<SiteSCase> {};

TEST_P(SiteS, FlowsAgreeWithIndependentComputation) {
  const SiteSCase& c = GetParam();
  const std::string text = with(site_text("site-s"), "line.trunk.bore", c.trunk);
  expect_near(flows_with_open(text, {"D3.a"}).at("D3.a"), c.alone);
  auto each = flows_with_open(text, {"D1.a", "D2.a", "D3.a"});
  auto all = flows_with_open(text, {"D1.a", "D1.b", "D2.a", "D2.b", "D3.a", "D3.b"});
  for (int d = 0; d < 3; ++d) {
    const std::string id = "D" + std::to_string(d + 1);
    expect_near(each.at(id + ".a"), c.each[d]);
    expect_near(all.at(id + ".a"), c.all[d]);
    expect_near(all.at(id + ".b"), c.all[d]);
  }
}

INSTANTIATE_TEST_SUITE_P(Trunks, SiteS,
                         testing::Values(SiteSCase{"2.00 in", 12.25, {11.48, 11.46, 11.45}, {9.68, 9.60, 9.58}},
                                         SiteSCase{"3.00 in", 12.29, {11.73, 11.71, 11.70}, {10.25, 10.17, 10.15}}));

TEST(FlowStudy, SiteSPumpDutyAgreesWithIndependentComputation) {
  const FlowResult result = flow_of(site_text("site-s"));
  const SystemFlow& all = result.states.front().systems.front();
  expect_near(in_gpm(all.total_flow), 57.7);
  expect_near(in_psi(all.pumps.front().pressure_rise), 23.3);
}

TEST(FlowStudy, NoHosePassesItsLimiter) {
  std::string text = with(site_text("site-s"), "line.trunk.bore", "3.00 in");
  for (const char* hose : {"D1.a", "D1.b", "D2.a", "D2.b", "D3.a", "D3.b"}) {
    text =
        with(text, std::string("dispenser.") + std::string(hose).substr(0, 2) + ".hose." + hose + ".limiter", "10 gpm");
  }
  const FlowResult result = flow_of(text);
  ASSERT_FALSE(result.states.empty());
  for (const FlowState& state : result.states) {
    for (const HoseFlow& hose : state.systems.front().hoses) {
      EXPECT_LE(in_gpm(hose.flow), 10.0 + 1e-9) << hose.id;
      EXPECT_EQ(hose.at_limit, hose.open) << hose.id;
    }
  }
}

TEST(FlowStudy, TruckLaneAgreesWithIndependentComputation) {
  struct Case {
    const char* trunk;
    double one, two;
  };
  for (const Case& c : {Case{"2.00 in", 49.6, 39.2}, Case{"3.00 in", 52.8, 45.8}}) {
    const std::string text = with(site_text("truck-lane"), "line.trunk.bore", c.trunk);
    expect_near(flows_with_open(text, {"D1.a"}).at("D1.a"), c.one);
    expect_near(flows_with_open(text, {"D1.a", "D1.b"}).at("D1.b"), c.two);
  }
}

// Two pumps on one line: a strong one and one whose shutoff the line stays above while little flows.
std::string with_second_pump(const std::string& shutoff) {
  return site_text("site-s") + "\n[[pump]]\nid = \"P2\"\ntank = \"T1\"\ncheck_valve = true\ncurve = { shutoff = \"" +
         shutoff +
         "\", per_flow_squared = \"0.0020 psi/gpm^2\" }\n"
         "[[line]]\nid = \"leg-2\"\nfrom = \"P2\"\nto = \"D1.regular\"\nlength = \"150 ft\"\nbore = \"2.00 in\"\n"
         "roughness = \"0.0015 mm\"\nloss = 4\n";
}

TEST(FlowStudy, WeakerPumpWaitsUntilTheLineFallsBelowItsShutoff) {
  const std::string text = with_second_pump("26 psi");
  double last = -1.0;
  bool has_waited = false;
  bool has_run = false;
  std::vector<std::string> open;
  for (const char* hose : {"D1.a", "D1.b", "D2.a", "D2.b", "D3.a", "D3.b"}) {
    open.emplace_back(hose);
    const SystemFlow system = flow_of(text, {{"asked", open}}).states.front().systems.front();
    const PumpDuty& weak = system.pumps.back();
    double line = 0.0;  // pressure where the weaker pump would deliver
    for (const PlacePressure& place : system.places) {
      if (place.id == "P2") line = in_psi(place.pressure_gauge);
    }
    ASSERT_EQ(weak.id, "P2");
    EXPECT_GE(weak.flow, 0.0);
    EXPECT_GE(weak.flow, last);
    EXPECT_EQ(weak.dead_headed, line > 26.0) << line;
    has_waited = has_waited || weak.dead_headed;
    has_run = has_run || weak.flow > 0.0;
    last = weak.flow;
  }
  EXPECT_TRUE(has_waited);
  EXPECT_TRUE(has_run);
}

TEST(FlowStudy, AllHosesShutStandsAtTheStrongestShutoff) {
  const SystemFlow system = flow_of(with_second_pump("26 psi"), {{"none", {}}}).states.front().systems.front();
  EXPECT_EQ(system.status, FlowStatus::at_rest);
  for (const PlacePressure& place : system.places) EXPECT_NEAR(in_psi(place.pressure_gauge), 30.0, 1e-9);
  for (const PumpDuty& pump : system.pumps) EXPECT_TRUE(pump.dead_headed) << pump.id;
}

TEST(FlowStudy, PumpsOffSupplyNothing) {
  const std::string text = with(site_text("site-s"), "pump.P1.running", "false");
  const SystemFlow system = flow_of(text).states.front().systems.front();
  EXPECT_EQ(system.status, FlowStatus::no_supply);
  EXPECT_EQ(system.total_flow, 0.0);
}

/// The pump stands and the tank's liquid is higher than a nozzle: something runs, and no number is told for it.
TEST(FlowStudy, ATankAboveTheNozzlesIsNotToldAsNoFlow) {
  std::string text = with(site_text("site-s"), "pump.P1.running", "false");
  text = with(text, "dispenser.D1.hose.D1.a.lift", "\"-3 ft\"");
  const FlowResult result = flow_of(text);
  const SystemFlow system = result.states.front().systems.front();
  EXPECT_EQ(system.status, FlowStatus::not_determined);
  EXPECT_NE(system.reason.find("by gravity through a pump that stands is not computed"), std::string::npos)
      << system.reason;
  EXPECT_TRUE(system.hoses.empty());
  ASSERT_FALSE(result.hoses.empty());
  EXPECT_FALSE(result.hoses.front().all_open.has_value());
}

class Examples : public testing::TestWithParam<const char*> {};

// Law of nature: along the course to every open hose, what the pump adds is what the parts take.
TEST_P(Examples, BudgetsCloseAndMassIsConserved) {
  const FlowResult result = flow_of(site_text(GetParam()));
  for (const FlowState& state : result.states) {
    for (const SystemFlow& system : state.systems) {
      ASSERT_EQ(system.status, FlowStatus::determined) << system.system << ": " << system.reason;
      double delivered = 0.0;
      for (const HoseFlow& hose : system.hoses) {
        delivered += hose.flow;
        double sum = 0.0;
        for (const BudgetRow& row : hose.budget) sum += row.loss;
        EXPECT_EQ(hose.budget.empty(), !hose.open) << hose.id;
        EXPECT_NEAR(sum, 0.0, 1e-3) << hose.id;  // [Pa] the solver's 1e-5 Pa per run along the course
      }
      EXPECT_NEAR(delivered, system.total_flow, 1e-10);  // [m3/s] 1e-12 per place
    }
  }
}

TEST_P(Examples, BlendedHosesDrawTheirShares) {
  const FlowResult result = flow_of(site_text(GetParam()));
  for (const FlowState& state : result.states) {
    std::map<std::string, double> total;
    for (const SystemFlow& system : state.systems) {
      for (const HoseFlow& hose : system.hoses) total[hose.id] += hose.flow;
    }
    for (const SystemFlow& system : state.systems) {
      for (const HoseFlow& hose : system.hoses) {
        EXPECT_NEAR(hose.flow, hose.share * total[hose.id], 1e-8 * total[hose.id]) << hose.id;
      }
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Sites, Examples,
                         testing::Values("site-s", "truck-lane", "hollin-gap", "thornby", "marle-cross"));

TEST(FlowStudy, UncertainValuesAreTakenAsLikelyAndSaidToBe) {
  const std::string text =
      with(site_text("site-s"), "line.trunk.length", "{ low = \"140 ft\", likely = \"150 ft\", high = \"170 ft\" }");
  FlowOptions without_spans;
  without_spans.spans = false;
  const FlowResult result = study_flow(station(text), without_spans);
  ASSERT_EQ(result.warnings.size(), 1U);
  EXPECT_EQ(result.warnings.front().message, "1 value of the site is uncertain: the flow study takes what is likely");
  expect_near(flows(result.states.front()).at("D3.a"), 9.58);
}

TEST(FlowStudy, PumpWithoutCheckValveStandsAtRestToo) {
  const std::string text = with(site_text("site-s"), "pump.P1.check_valve", "false");
  EXPECT_EQ(flow_of(text, {{"none", {}}}).states.front().systems.front().status, FlowStatus::at_rest);
  expect_near(flows_with_open(text, {"D3.a"}).at("D3.a"), 12.25);
}

TEST(FlowStudy, FuelRunsBackThroughAPumpWithoutCheckValve) {
  const std::string text = with(with_second_pump("12 psi"), "pump.P2.check_valve", "false");
  const PumpDuty weak = flow_of(text, {{"asked", {"D1.a"}}}).states.front().systems.front().pumps.back();
  EXPECT_LT(weak.flow, 0.0);
  EXPECT_TRUE(weak.runs_back);
  EXPECT_FALSE(weak.dead_headed);
}

TEST(FlowStudy, UnknownHoseIsAnErrorThatOffersTheNearest) {
  const auto problems = check_options(station(site_text("site-s")), {{{"asked", {"D1.c"}}}, {}});
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems.front().message, "there is no hose 'D1.c'");
  EXPECT_NE(problems.front().hint.find("D1."), std::string::npos);
}

}  // namespace
}  // namespace forecourse::studies
