// What the flow study says of pumps under control, and of a pump that a stronger one holds shut.
// SOURCE: common practice, no source
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "forecourse/studies/flow/flow.h"
#include "support/stations.h"

namespace forecourse::studies {
namespace {

using test::in_gpm;
using test::in_psi;
using test::site_text;
using test::station;
using test::with;

SystemFlow regular(const std::string& text, const std::vector<std::string>& open) {
  return study_flow(station(text), {{{"asked", open}}, {}}).states.front().systems.front();
}

const PumpDuty& pump(const SystemFlow& system, const std::string& id) {
  return *std::find_if(system.pumps.begin(), system.pumps.end(), [&](const PumpDuty& p) { return p.id == id; });
}

const std::vector<std::string> every{"D1.a", "D1.b", "D2.a", "D2.b", "D3.a", "D3.b", "D4.a", "D4.b"};

TEST(PumpsTold, LeadRunsAloneUntilTheLineFalls) {
  const SystemFlow one = regular(site_text("pell-ridge"), {"D1.a"});
  ASSERT_TRUE(one.control);
  EXPECT_FALSE(pump(one, "P2").running);
  EXPECT_EQ(one.control->taken, 0U);
  const SystemFlow all = regular(site_text("pell-ridge"), every);
  EXPECT_TRUE(pump(all, "P2").running);
  EXPECT_LT(in_psi(all.control->steps[0].line_pressure_gauge), 22.0);
  EXPECT_EQ(in_psi(all.control->steps[1].line_pressure_gauge), in_psi(*pump(all, "P1").leak_detector_pressure_gauge));
}

// The weaker pump opens where the first's rise, less what its own way takes, is down to 27 psi: 31 - 0.0022 Q2 -
// 0.0002 Q2 less 8 ft of leg is 27 psi near 40 gpm; without the leg sqrt(4 / 0.0024) = 40.8 gpm.
TEST(PumpsTold, OpeningFlowIsBelowThatWithoutTheLeg) {
  const SystemFlow system = regular(site_text("pell-ridge"), every);
  ASSERT_TRUE(pump(system, "P2").opening);
  EXPECT_FALSE(pump(system, "P1").opening);
  const double flow = in_gpm(pump(system, "P2").opening->total_flow);
  EXPECT_LT(flow, std::sqrt(4.0 / 0.0024));
  EXPECT_GT(flow, 0.95 * std::sqrt(4.0 / 0.0024));
}

TEST(PumpsTold, WarmingIsTheHeatBalanceOverItsSpread) {
  const SystemFlow system = regular(site_text("pell-ridge"), every);
  const PumpHeat& heat = *pump(system, "P2").heat;
  ASSERT_TRUE(heat.rate);
  EXPECT_DOUBLE_EQ(*heat.rate, 750.0 / (6.0 * 2100.0));
  EXPECT_DOUBLE_EQ(heat.rate_low, 750.0 / (8.0 * 2100.0));
  EXPECT_DOUBLE_EQ(heat.rate_high, 750.0 / (5.0 * 2100.0));
  EXPECT_DOUBLE_EQ(heat.time_to_rise, 10.0 * 6.0 * 2100.0 / 750.0);
}

TEST(PumpsTold, WarmingWithoutItsInputsIsNotDetermined) {
  const SystemFlow diesel =
      study_flow(station(site_text("pell-ridge")), {{{"asked", {"D1.a"}}}, {}}).states.front().systems.back();
  const PumpDuty& shut = pump(diesel, "P3");
  EXPECT_TRUE(shut.dead_headed);
  ASSERT_TRUE(shut.heat);
  EXPECT_FALSE(shut.heat->rate);
  EXPECT_EQ(shut.heat->missing, "motor_power, liquid_held, specific_heat of diesel");
}

TEST(PumpsTold, SpeedHoldsThePressureAndTheBudgetAddsUp) {
  const FlowResult result = study_flow(station(site_text("pell-ridge")), {});
  const SystemFlow& diesel = result.states.front().systems.back();
  EXPECT_NEAR(in_psi(pump(diesel, "P3").discharge_pressure_gauge), 26.0, 1e-6);
  EXPECT_LT(pump(diesel, "P3").speed, 1.0);
  for (const HoseFlow& hose : diesel.hoses) {
    double sum = 0.0;
    for (const BudgetRow& row : hose.budget) sum += row.loss;
    EXPECT_NEAR(sum, 0.0, 1e-2) << hose.id;  // Pa; a hundred times the residual of the runs
  }
}

TEST(PumpsTold, ShareOfBestEfficiencyFlowGoesWithTheFlow) {
  const SystemFlow system = regular(site_text("pell-ridge"), every);
  EXPECT_NEAR(*pump(system, "P1").share_of_best_efficiency_flow, in_gpm(pump(system, "P1").flow) / 48.0, 1e-9);
  EXPECT_FALSE(pump(system, "P2").share_of_best_efficiency_flow);
}

TEST(PumpsTold, AlternatingGivesTheRangeOfEachHose) {
  const std::string text = with(site_text("pell-ridge"), "control.regular-pumps.kind", "alternating");
  const SystemFlow system = regular(text, every);
  ASSERT_EQ(system.control->hoses.size(), every.size());
  for (const HoseRange& hose : system.control->hoses) EXPECT_LT(hose.least, hose.most) << hose.id;
}

}  // namespace
}  // namespace forecourse::studies
