// Worst states and worst ladders against every set of open hoses, solved one by one by the scalar solver.
// SOURCE: [rheinboldt_1970, M-functions and network flows] for what the argument claims
#include <gtest/gtest.h>

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdio>
#include <limits>
#include <string>
#include <vector>

#include "forecourse/network/build.h"
#include "forecourse/network/sets/hose_group.h"
#include "forecourse/network/solve.h"
#include "forecourse/studies/flow/flow.h"
#include "studies/worst/invented_station.h"
#include "support/stations.h"

namespace forecourse::studies {
namespace {

using network::HoseGroup;
using network::PipingSystem;
using network::RunKind;
using test::Draws;
using test::Layout;

/// Two solvers of the same laws accept residuals of 1e-5 Pa; with 1e9 Pa s/m3 and more of slope at a hose that is
/// 1e-14 m3/s, with the lines 1e-12 m3/s: a billionth of a hose's flow.
constexpr double agreement = 1e-9;

struct Brute {
  std::vector<double> least, greatest;  ///< per hose
  std::vector<double> run;              ///< per run, greatest
  std::vector<double> slowest, mean;    ///< per number open
  double highest_place = -INFINITY;     ///< [Pa] piezometric, over all places
};

Brute brute_force(const PipingSystem& system) {
  const std::size_t hoses = system.hoses.size();
  Brute out;
  out.least.assign(hoses, INFINITY);
  out.greatest.assign(hoses, 0.0);
  out.run.assign(system.runs.size(), 0.0);
  out.slowest.assign(hoses + 1, INFINITY);
  out.mean.assign(hoses + 1, 0.0);
  std::vector<double> count(hoses + 1, 0.0);
  network::SystemSolver solver(system);
  std::vector<char> open(hoses);
  for (std::uint64_t mask = 0; mask < std::uint64_t{1} << hoses; ++mask) {
    for (std::size_t h = 0; h < hoses; ++h) open[h] = static_cast<char>(mask >> h & 1U);
    const network::SystemState state = solver.solve(open);
    EXPECT_TRUE(state.report.usable());
    double slowest = INFINITY;
    for (std::size_t h = 0; h < hoses; ++h) {
      if (open[h] == 0) continue;
      const double flow = state.flow[static_cast<std::size_t>(system.hoses[h].run)];
      out.least[h] = std::min(out.least[h], flow);
      out.greatest[h] = std::max(out.greatest[h], flow);
      slowest = std::min(slowest, flow);
    }
    const auto n = static_cast<std::size_t>(std::popcount(mask));
    out.slowest[n] = std::min(out.slowest[n], slowest);
    if (mask != 0) out.mean[n] += slowest;
    count[n] += 1.0;
    for (std::size_t r = 0; r < system.runs.size(); ++r) out.run[r] = std::max(out.run[r], std::abs(state.flow[r]));
    for (std::size_t p = 0; p < system.places.size(); ++p) {
      out.highest_place = std::max(out.highest_place, state.pressure[p]);
    }
  }
  for (std::size_t n = 1; n <= hoses; ++n) out.mean[n] /= count[n];
  return out;
}

FlowOptions ladders_only(SearchLimits limits = {}) {
  FlowOptions options;
  options.spans = false;
  options.lines_at_rest = false;
  options.search = limits;
  return options;
}

void expect_same(double value, double expected, const std::string& what) {
  EXPECT_NEAR(value, expected, agreement * std::abs(expected)) << what;
}

std::size_t run_index(const PipingSystem& system, const RunExtreme& run) {
  for (std::size_t r = 0; r < system.runs.size(); ++r) {
    const bool kind = system.runs[r].kind == (run.is_pump ? RunKind::pump : RunKind::line);
    if (kind && system.runs[r].id == run.id) return r;
  }
  ADD_FAILURE() << run.id;
  return 0;
}

/// Flow of a run with the hoses open that an extreme names, by the scalar solver.
double flow_at(const PipingSystem& system, const std::vector<std::string>& ids, std::size_t run) {
  std::vector<char> open;
  for (const auto& hose : system.hoses) {
    open.push_back(std::find(ids.begin(), ids.end(), hose.id) != ids.end() ? 1 : 0);
  }
  return std::abs(network::SystemSolver(system).solve(open).flow[run]);
}

struct StationCase {
  const char* name;
  Layout layout;
  bool limited;
  std::uint64_t seed;
};

class FullWorstStates : public testing::TestWithParam<StationCase> {
 protected:
  site::Site site_ = [this] {
    Draws draws(GetParam().seed);
    return test::station(invented_station(draws, GetParam().layout, GetParam().limited));
  }();
  network::StationNetwork network_ = network::build_network(site_);
  const PipingSystem& system_ = network_.systems.front();
};

TEST_P(FullWorstStates, ProvedOnesAreThoseOfAllSets) {
  const std::vector<HoseGroup> groups = hose_groups(network_);
  ASSERT_EQ(groups.size(), 1U);
  ASSERT_EQ(groups.front().equal.size(), 16U);  // so that all 65,536 sets differ
  const Brute brute = brute_force(system_);
  const FlowResult result = study_flow(site_, ladders_only());
  const WorstStates& worst = result.worst_states.front();
  EXPECT_TRUE(worst.opening_never_raises);
  EXPECT_EQ(worst.sets_failed, 0U);
  for (std::size_t h = 0; h < 16; ++h) {
    expect_same(worst.hoses[h].least.value, brute.least[h], worst.hoses[h].hose);
    expect_same(worst.hoses[h].greatest.value, brute.greatest[h], worst.hoses[h].hose);
    EXPECT_EQ(worst.hoses[h].least.proof, Proof::argument);
    EXPECT_EQ(worst.hoses[h].greatest.proof, Proof::argument);
  }
  expect_same(worst.slowest.value, *std::min_element(brute.least.begin(), brute.least.end()), "slowest");
  for (const RunExtreme& run : worst.runs) {
    const std::size_t r = run_index(system_, run);
    EXPECT_NE(run.flow.proof, Proof::best_found) << run.id;
    expect_same(run.flow.value, brute.run[r], run.id);
    expect_same(flow_at(system_, run.flow.open, r), brute.run[r], run.id);
  }
  expect_same(worst.pump.gauge.value, brute.highest_place, "pump");  // lifts only: gauge counts at the liquid's level
  expect_same(worst.inlet.gauge.value, brute.highest_place, "inlet");
  const Ladder& ladder = result.ladders.front();
  ASSERT_EQ(ladder.steps.size(), 16U);
  for (std::size_t n = 1; n <= 16; ++n) {
    EXPECT_NE(ladder.steps[n - 1].proof, Proof::best_found);
    expect_same(ladder.steps[n - 1].slowest, brute.slowest[n], std::to_string(n) + " open");
    expect_same(*ladder.steps[n - 1].mean_slowest, brute.mean[n], "mean of " + std::to_string(n));
  }
}

/// Where not every set may be solved, what is found either is the worst or says "best found".
TEST_P(FullWorstStates, DescentFindsTheWorstOrSaysBestFound) {
  const Brute brute = brute_force(system_);
  const FlowResult result = study_flow(site_, ladders_only({1, 1}));
  const Ladder& ladder = result.ladders.front();
  double regret = 0.0;
  int missed = 0;
  for (std::size_t n = 1; n <= 16; ++n) {
    const double own = ladder.steps[n - 1].slowest / brute.slowest[n] - 1.0;
    EXPECT_GE(own, -agreement);
    regret = std::max(regret, own);
    if (own <= agreement) continue;
    ++missed;
    EXPECT_EQ(ladder.steps[n - 1].proof, Proof::best_found) << n;
  }
  EXPECT_LT(regret, 0.005);  // not half a percent: what cannot be told at a nozzle
  double run_regret = 0.0;
  for (const RunExtreme& run : result.worst_states.front().runs) {
    const double own = 1.0 - run.flow.value / brute.run[run_index(system_, run)];
    run_regret = std::max(run_regret, own);
    EXPECT_TRUE(own <= agreement || run.flow.proof == Proof::best_found) << run.id;
  }
  std::printf("%s: %d of 16 numbers missed, regret %.2e; flow of lines and pumps, regret %.2e; %zu sets solved\n",
              GetParam().name, missed, regret, run_regret, result.worst_states.front().sets_solved);
}

INSTANTIATE_TEST_SUITE_P(Stations, FullWorstStates,
                         testing::Values(StationCase{"tees", Layout::tees, false, 101},
                                         StationCase{"tees_limited", Layout::tees, true, 102},
                                         StationCase{"series", Layout::series, false, 103},
                                         StationCase{"series_limited", Layout::series, true, 104},
                                         StationCase{"ring", Layout::ring, false, 105},
                                         StationCase{"ring_limited", Layout::ring, true, 106}),
                         [](const auto& one) { return one.param.name; });

TEST(FullEqualHoses, CountingEqualHosesFindsWhatAllSetsFind) {
  for (const Layout layout : {Layout::tees, Layout::series, Layout::ring}) {
    Draws draws(107);
    const site::Site site = test::station(invented_station(draws, layout, true, true));
    const network::StationNetwork network = network::build_network(site);
    ASSERT_EQ(hose_groups(network).front().equal.size(), 8U);
    const Brute brute = brute_force(network.systems.front());
    const FlowResult result = study_flow(site, ladders_only());
    EXPECT_LT(result.worst_states.front().sets_solved, 7000U);  // 3^8 = 6,561 in place of 65,536
    for (std::size_t n = 1; n <= 16; ++n) {
      const LadderStep& step = result.ladders.front().steps[n - 1];
      expect_same(step.slowest, brute.slowest[n], std::to_string(n) + " open");
      expect_same(*step.mean_slowest, brute.mean[n], "mean of " + std::to_string(n));
    }
    for (std::size_t h = 0; h < 16; ++h) {
      expect_same(result.worst_states.front().hoses[h].least.value, brute.least[h], "least");
      expect_same(result.worst_states.front().hoses[h].greatest.value, brute.greatest[h], "greatest");
    }
  }
}

}  // namespace
}  // namespace forecourse::studies
