#include "forecourse/report/flow/flow_view.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "forecourse/base/unit_text.h"
#include "report/flow_sample.h"

namespace forecourse::report {
namespace {

using site::Display;
using studies::HoseFlow;

const studies::SystemFlow& first_system(const studies::FlowResult& result) { return result.states[0].systems[0]; }

long sum_of_changes(const ShownBudget& budget) {
  long sum = 0;
  for (const ShownBudgetRow& row : budget.rows) sum += row.change;
  return sum;
}

TEST(FlowBudget, AddsUpInShownDigits) {
  const studies::FlowResult result = sample_result();
  for (const Display display : {Display::us, Display::si}) {
    for (const HoseFlow& hose : first_system(result).hoses) {
      const ShownBudget budget = shown_budget(hose, display);
      ASSERT_FALSE(budget.rows.empty());
      EXPECT_EQ(sum_of_changes(budget), 0) << hose.id;
      EXPECT_EQ(budget.rows.back().left, 0) << hose.id;
    }
  }
}

TEST(FlowBudget, AddsUpForAnyLossesAndStaysNearThem) {
  std::mt19937 generator(1);
  std::uniform_real_distribution<double> loss(0.0, 30e3);
  for (int trial = 0; trial < 2000; ++trial) {
    HoseFlow hose;
    double rise = 0.0;
    for (int part = 0; part < 12; ++part) {
      hose.budget.push_back({network::ElementKind::line, "line", std::to_string(part), 0.0, 0.0, loss(generator)});
      rise += hose.budget.back().loss;
    }
    hose.budget.insert(hose.budget.begin(), {network::ElementKind::pump, "pump", "P1", 0.0, 0.0, -rise});
    const ShownBudget budget = shown_budget(hose, Display::us);
    ASSERT_EQ(sum_of_changes(budget), 0);
    for (std::size_t i = 0; i < budget.rows.size(); ++i) {
      const double exact = from_si(-hose.budget[i].loss, "psi");
      // A rounding down or up, never further than one step of the last shown decimal.
      ASSERT_LE(std::abs(budget.value(budget.rows[i].change) - exact), 0.1 + 1e-9);
    }
  }
}

TEST(FlowBudget, RowsOfOnePartAreOne) {
  const studies::FlowResult result = sample_result();
  const ShownBudget budget = shown_budget(first_system(result).hoses[0], Display::us);
  ASSERT_EQ(budget.rows.size(), 5U);
  EXPECT_EQ(budget.rows[0].part, "pump");
  EXPECT_EQ(budget.signed_text(budget.rows[0].change), "+23.3");
  EXPECT_EQ(budget.rows[1].owner, "trunk");
  EXPECT_EQ(budget.signed_text(budget.rows[1].change), "\u22123.2");
  EXPECT_GT(budget.rows[1].velocity, 0.0);
}

TEST(FlowBudget, ALiftThatHelpsAdds) {
  HoseFlow hose;
  hose.budget = {{network::ElementKind::line, "line", "trunk", 0.0, 0.0, 20e3},
                 {network::ElementKind::nozzle, "lift", "D1.a", 0.0, 0.0, -20e3}};
  const ShownBudget budget = shown_budget(hose, Display::si);
  EXPECT_EQ(budget.rows[0].change, -20);
  EXPECT_EQ(budget.rows[1].change, 20);
  EXPECT_EQ(budget.rows[1].left, 0);
}

TEST(FlowBudget, IsEmptyWhereALossIsNoNumber) {
  HoseFlow hose;
  hose.budget = {{network::ElementKind::line, "line", "trunk", 0.0, 0.0, std::nan("")}};
  EXPECT_TRUE(shown_budget(hose, Display::us).rows.empty());
  EXPECT_TRUE(shown_budget({}, Display::us).rows.empty());
}

TEST(FlowView, PicksTheSlowestAndTheFastestOpenHose) {
  const studies::FlowResult result = sample_result();
  EXPECT_EQ(slowest(first_system(result))->id, "D3.a");
  EXPECT_EQ(fastest(first_system(result))->id, "D1.a");
  studies::SystemFlow closed = first_system(result);
  for (HoseFlow& hose : closed.hoses) hose.open = false;
  EXPECT_EQ(slowest(closed), nullptr);
  EXPECT_EQ(fastest({}), nullptr);
}

TEST(FlowView, NotesSayWhen) {
  const studies::FlowResult result = sample_result();
  const std::vector<HoseGroup> groups = hose_groups(result);
  ASSERT_EQ(groups.size(), 1U);
  EXPECT_EQ(groups[0].rows[0].note, "above the cap: alone, one each");
  EXPECT_EQ(groups[0].rows[5].note, "above the cap: alone; below the flow to keep: all open");
}

TEST(FlowView, NotesSayWhatALimiterHolds) {
  studies::FlowResult result = sample_result();
  result.options.keep_flow = {};
  const studies::SummaryFlow held{to_si(10.0, "gpm"), true, false, false};
  result.hoses[0].alone = held;
  result.hoses[0].one_each = held;
  result.hoses[0].all_open->below_keep_flow = false;
  EXPECT_EQ(hose_groups(result)[0].rows[0].note, "limiter holds it: alone, one each");
}

TEST(FlowView, EveryHoseIsInOneGroup) {
  studies::FlowResult result = sample_result();
  add_undetermined(result);
  result.hoses.push_back(
      {"D2.m", "D2", "regular 60 % + premium 40 %", studies::SummaryFlow{to_si(9.0, "gpm")}, {}, {}});
  const std::vector<HoseGroup> groups = hose_groups(result);
  ASSERT_EQ(groups.size(), 3U);
  EXPECT_EQ(groups[0].rows.size(), 6U);
  EXPECT_EQ(groups[1].system->id, "diesel");
  EXPECT_EQ(groups[1].rows[0].note, "not determined");
  EXPECT_EQ(groups[2].system, nullptr);
  EXPECT_EQ(groups[2].rows[0].hose->id, "D2.m");
}

TEST(FlowView, WhatIsNotDeterminedIsSaidOnce) {
  studies::FlowResult result = sample_result();
  EXPECT_TRUE(not_determined(result).empty());
  add_undetermined(result);
  const std::vector<std::string> reasons = not_determined(result);
  ASSERT_EQ(reasons.size(), 2U);
  EXPECT_EQ(reasons[0], "diesel is not determined: the viscosity of diesel is neither entered nor known for its kind.");
}

TEST(FlowView, DefaultsOfOneKindAndValueAreToldAsOne) {
  const auto used = [](const char* what, double value) {
    return DefaultUsed{what, value, "m", DefaultStatus::illustrative, "a guess", "regular"};
  };
  const std::vector<DefaultUsed> defaults{
      used("roughness of whip hose of D1.a", 1.0), used("loss of breakaway of D1.a (a-model)", 2.0),
      used("roughness of whip hose of D1.b", 1.0), used("loss of breakaway of D1.b (a-model)", 2.0),
      used("roughness of whip hose of D1.c", 3.0), used("alone", 1.0)};
  const std::vector<DefaultGroup> groups = grouped(defaults);
  ASSERT_EQ(groups.size(), 4U);
  EXPECT_EQ(groups[0].what, "roughness of whip hose of D1.a, D1.b");
  EXPECT_EQ(groups[1].what, "loss of breakaway of D1.a, D1.b (a-model)");
  EXPECT_EQ(groups[2].what, "roughness of whip hose of D1.c");
  EXPECT_EQ(groups[3].what, "alone");
}

TEST(FlowView, CountsDefaultsAndListsSources) {
  const studies::FlowResult result = sample_result();
  EXPECT_EQ(count_by_status(result.defaults), "2 published, 1 common practice, 1 illustrative");
  EXPECT_EQ(count_by_status({}), "");
  EXPECT_EQ(sources_used(result),
            (std::vector<std::string>{"40 CFR 1090.1550(b)", "plastic pipe, smooth [key2020, table 2]"}));
}

}  // namespace
}  // namespace forecourse::report
