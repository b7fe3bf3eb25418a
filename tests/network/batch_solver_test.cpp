// States solved several at once against the laws and balances themselves, and against the scalar solver.
// SOURCE: closed form
#include "forecourse/network/batch_solver.h"

#include <gtest/gtest.h>

#include <bit>
#include <cmath>
#include <iostream>
#include <thread>

#include "forecourse/base/constants.h"
#include "forecourse/network/build.h"
#include "forecourse/network/system_solver.h"
#include "network/batch_network.h"
#include "solvers/measured.h"
#include "support/stations.h"

namespace forecourse::network {
namespace {

using lanes::InstructionSet;
using solvers::SteadyStatus;
using test::Draws;

// What is asked of every solver of steady states: 1e-8 m of gasoline, and 1e-10 m3/s at each node.
constexpr double pressure_allowed = 1e-8 * 740.0 * standard_gravity;  // [Pa]
constexpr double imbalance_allowed = 1e-10;                           // [m3/s]

bool is_open(const PipingSystem& system, const BatchCase& one, std::size_t run) {
  for (std::size_t h = 0; h < system.hoses.size(); ++h) {
    if (static_cast<std::size_t>(system.hoses[h].run) == run) return (one.hoses >> h & 1U) != 0;
  }
  for (std::size_t p = 0; p < system.pumps.size(); ++p) {
    if (static_cast<std::size_t>(system.pumps[p].run) == run) {
      return system.pumps[p].running && (one.pumps >> p & 1U) != 0;
    }
  }
  return true;
}

solvers::SteadyCase steady_case(const PipingSystem& system, const BatchCase& one) {
  solvers::SteadyCase given;
  for (std::size_t r = 0; r < system.runs.size(); ++r) given.open.push_back(is_open(system, one, r) ? 1 : 0);
  return given;
}

solvers::SteadyState row(const BatchStates& states, std::size_t state) {
  const auto at = [state](const std::vector<double>& v, std::size_t width) {
    const auto begin = v.begin() + static_cast<std::ptrdiff_t>(state * width);
    return std::vector<double>(begin, begin + static_cast<std::ptrdiff_t>(width));
  };
  return {at(states.pressure, states.nodes), at(states.flow, states.runs)};
}

/// The worst of many states, found from the laws and balances alone.
struct Tally {
  std::size_t states = 0, unusable = 0, at_rest = 0;
  BatchCounts counts;
  test::Measured worst;

  void add(const PipingSystem& system, const RunLaws& laws, std::span<const BatchCase> cases,
           const BatchStates& solved) {
    for (std::size_t s = 0; s < cases.size(); ++s) {
      const test::Measured here = test::measured(system.graph->unknowns(), system.graph->edges(), laws,
                                                 steady_case(system, cases[s]), row(solved, s));
      ++states;
      unusable += solved.status[s] == SteadyStatus::not_converged ? 1 : 0;
      at_rest += solved.status[s] == SteadyStatus::at_rest || solved.status[s] == SteadyStatus::no_supply ? 1 : 0;
      worst.pressure = std::max(worst.pressure, here.pressure);
      worst.imbalance = std::max(worst.imbalance, here.imbalance);
      worst.passed = std::max(worst.passed, here.passed);
    }
  }
  void count(const BatchCounts& more) {
    counts.by_scalar += more.by_scalar;
    counts.blocks += more.blocks;
    counts.steps += more.steps;
  }
  void expect_good(const std::string& what) const {
    std::cout << what << ": " << states << " states, unusable " << unusable << ", at rest " << at_rest
              << ", one by one " << counts.by_scalar << ", steps a block "
              << static_cast<double>(counts.steps) / static_cast<double>(std::max<std::size_t>(1, counts.blocks))
              << ", pressure " << worst.pressure << " Pa, imbalance " << worst.imbalance << " m3/s\n";
    EXPECT_EQ(unusable, 0U) << what;
    EXPECT_LT(worst.pressure, pressure_allowed) << what;
    EXPECT_LT(worst.imbalance, imbalance_allowed) << what;
    EXPECT_EQ(worst.passed, 0.0) << what;
  }
};

/// Hoses open with all chances from none to all; now and then a pump is off.
BatchCase random_case(Draws& draws) {
  const double chance = draws.between(0.0, 1.0);
  BatchCase one;
  for (unsigned h = 0; h < 64; ++h) one.hoses |= std::uint64_t{draws.coin(chance)} << h;
  for (unsigned p = 0; p < 64; ++p) {
    if (draws.coin(0.05)) one.pumps &= ~(std::uint64_t{1} << p);
  }
  return one;
}

std::vector<BatchCase> random_cases(Draws& draws, int count) {
  std::vector<BatchCase> cases;
  for (int i = 0; i < count; ++i) cases.push_back(random_case(draws));
  return cases;
}

void expect_all_solved(int stations, int sets, double spread, std::uint64_t seed, const char* what) {
  for (const InstructionSet set : lanes::supported_instruction_sets()) {
    Draws draws(seed);
    Tally tally;
    for (int i = 0; i < stations; ++i) {
      const PipingSystem system = test::system_of(test::random_network(draws, spread));
      const RunLaws laws(system);
      const std::vector<BatchCase> cases = random_cases(draws, sets);
      BatchStates states;
      tally.count(BatchSolver(system, set).solve(cases, states));
      tally.add(system, laws, cases, states);
    }
    tally.expect_good(std::string(what) + ", " + lanes::name(set));
  }
}

/// Largest difference in the flow of a run to the scalar solver.
double difference_to_scalar(const PipingSystem& system, std::span<const BatchCase> cases, const BatchStates& states,
                            const solvers::SteadyOptions& options = {}) {
  double worst = 0.0;
  const RunLaws laws(system);
  solvers::SteadySolver scalar(*system.graph, laws, options);
  for (std::size_t s = 0; s < cases.size(); ++s) {
    solvers::SteadyState state;
    const auto report = scalar.solve(steady_case(system, cases[s]), state);
    EXPECT_EQ(report.status, states.status[s]) << "hoses " << cases[s].hoses;
    for (std::size_t r = 0; r < states.runs; ++r) {
      worst = std::max(worst, std::abs(state.flow[r] - states.flow_of(s, r)));
    }
  }
  return worst;
}

// Both solvers, asked for laws to 1e-8 Pa and balances to 1e-14 m3/s, must find the same flows: 1e-13 m3/s is 1e-9 of a
// trickle of 1e-4 m3/s. It is some tens of balances summed along a trunk, and 1e-8 Pa over the flattest run of these
// stations, 1e5 Pa s/m3. As the solvers are used, to 1e-5 Pa and 1e-12 m3/s, it is a thousand times that.
constexpr double flow_agreement = 1e-13;  // [m3/s]
constexpr double usual_agreement = 1000.0 * flow_agreement;
solvers::SteadyOptions strict() {
  solvers::SteadyOptions options;
  options.pressure_tolerance = 1e-8;
  options.flow_tolerance = 1e-14;
  return options;
}

class BatchSolverOn : public testing::TestWithParam<const char*> {};

TEST_P(BatchSolverOn, ExampleStationAsTheScalarSolver) {
  const StationNetwork network = build_network(test::station(test::site_text(GetParam())));
  for (const PipingSystem& system : network.systems) {
    if (!system.graph) continue;
    for (const InstructionSet set : lanes::supported_instruction_sets()) {
      Draws draws(7);
      const std::vector<BatchCase> cases = random_cases(draws, 500);
      BatchStates states;
      BatchSolver(system, set).solve(cases, states);
      EXPECT_LT(difference_to_scalar(system, cases, states), usual_agreement) << system.id << ' ' << lanes::name(set);
      BatchSolver(system, set, strict()).solve(cases, states);
      EXPECT_LT(difference_to_scalar(system, cases, states, strict()), flow_agreement)
          << system.id << ' ' << lanes::name(set);
    }
  }
}
INSTANTIATE_TEST_SUITE_P(Stations, BatchSolverOn, testing::Values("site-s", "hollin-gap", "marle-cross", "truck-lane"));

TEST(BatchSolver, RandomStationsAsTheScalarSolver) {
  for (const InstructionSet set : lanes::supported_instruction_sets()) {
    Draws draws(11);
    double worst = 0.0;
    for (int i = 0; i < 20; ++i) {
      const PipingSystem system = test::system_of(test::random_network(draws, 0.0));
      const std::vector<BatchCase> cases = random_cases(draws, 100);
      BatchStates states;
      BatchSolver(system, set, strict()).solve(cases, states);
      worst = std::max(worst, difference_to_scalar(system, cases, states, strict()));
    }
    EXPECT_LT(worst, flow_agreement) << lanes::name(set);
  }
}

TEST(BatchSolver, EverySetIsToldOnceAndSolved) {
  Draws draws(5);
  test::RandomNetwork from = test::random_network(draws, 0.0);
  while (from.hoses.size() != 12) from = test::random_network(draws, 0.0);
  const PipingSystem system = test::system_of(from);
  const RunLaws laws(system);
  for (const InstructionSet set : lanes::supported_instruction_sets()) {
    Tally tally;
    std::vector<int> told(1U << 12U, 0);
    BatchCounts counts;
    BatchSolver(system, set)
        .solve_all(
            ~0ULL,
            [&](std::span<const BatchCase> cases, const BatchStates& s) {
              for (const BatchCase& one : cases) ++told[one.hoses];
              tally.add(system, laws, cases, s);
            },
            {}, &counts);
    tally.count(counts);
    EXPECT_EQ(std::count(told.begin(), told.end(), 1), 1 << 12);
    tally.expect_good(std::string("every set, ") + lanes::name(set));
  }
}

Context with_threads(unsigned threads) {
  Context context;
  context.parallel_for = [threads](std::size_t count, const std::function<void(std::size_t)>& piece) {
    std::vector<std::thread> pool;
    for (unsigned t = 0; t < threads; ++t) {
      pool.emplace_back([&, t] {
        for (std::size_t i = t; i < count; i += threads) piece(i);
      });
    }
    for (std::thread& thread : pool) thread.join();
  };
  return context;
}

TEST(BatchSolver, AnswersAreTheSameForAnyNumberOfThreads) {
  Draws draws(5);
  test::RandomNetwork from = test::random_network(draws, 0.0);
  while (from.hoses.size() != 14) from = test::random_network(draws, 0.0);
  const PipingSystem system = test::system_of(from);
  const BatchSolver solver(system);
  const auto all_of = [&](const Context& context) {
    std::vector<double> out;
    solver.solve_all(
        ~0ULL,
        [&](std::span<const BatchCase> cases, const BatchStates& states) {
          for (const BatchCase& one : cases) out.push_back(static_cast<double>(one.hoses));
          out.insert(out.end(), states.flow.begin(), states.flow.end());
          out.insert(out.end(), states.pressure.begin(), states.pressure.begin() + 1);
        },
        context);
    return out;
  };
  const std::vector<double> alone = all_of({});
  EXPECT_EQ(alone, all_of(with_threads(2)));
  EXPECT_EQ(alone, all_of(with_threads(3)));
  const std::vector<BatchCase> cases = random_cases(draws, 5000);
  BatchStates one, many;
  solver.solve(cases, one);
  solver.solve(cases, many, with_threads(3));
  EXPECT_EQ(one.flow, many.flow);
}

TEST(BatchSolver, NothingOpenRestsAndNoPumpIsNoSupply) {
  Draws draws(3);
  const PipingSystem system = test::system_of(test::random_network(draws, 0.0));
  for (const InstructionSet set : lanes::supported_instruction_sets()) {
    const std::vector<BatchCase> cases{{0, ~0ULL}, {3, 0}, {0, 0}, {1, ~0ULL}};
    BatchStates states;
    BatchSolver(system, set).solve(cases, states);
    EXPECT_EQ(states.status[0], SteadyStatus::at_rest);
    EXPECT_EQ(states.status[1], SteadyStatus::no_supply);
    EXPECT_TRUE(std::isnan(states.pressure_of(1, 0)));
    EXPECT_EQ(states.status[2], SteadyStatus::no_supply);
    EXPECT_EQ(states.status[3], SteadyStatus::converged);
    EXPECT_EQ(difference_to_scalar(system, std::span(cases).first(3), states), 0.0);
  }
}

TEST(BatchSolver, HoseNobodyCanLiftToStaysDry) {
  Draws draws(3);
  test::RandomNetwork from = test::random_network(draws, 0.0);
  const auto high = static_cast<std::size_t>(from.hoses[0]);
  from.fixed[static_cast<std::size_t>(from.edges[high].to - from.unknowns)] = 1e7;
  const PipingSystem system = test::system_of(from);
  for (const InstructionSet set : lanes::supported_instruction_sets()) {
    const std::vector<BatchCase> cases{{1, ~0ULL}, {3, ~0ULL}, {7, ~0ULL}};
    BatchStates states;
    BatchSolver(system, set).solve(cases, states);
    EXPECT_EQ(states.status[0], SteadyStatus::at_rest);
    EXPECT_EQ(states.status[1], SteadyStatus::converged);
    EXPECT_EQ(states.flow_of(1, high), 0.0);
    EXPECT_GT(states.flow_of(1, static_cast<std::size_t>(from.hoses[1])), 0.0);
    EXPECT_LT(difference_to_scalar(system, cases, states), usual_agreement);
  }
}

TEST(BatchSolver, CancelledLeavesTheRestUnsolved) {
  Draws draws(3);
  const PipingSystem system = test::system_of(test::random_network(draws, 0.0));
  Context context;
  context.cancelled = [] { return true; };
  BatchStates states;
  BatchSolver(system).solve(std::vector<BatchCase>(3, BatchCase{1, ~0ULL}), states, context);
  EXPECT_EQ(states.status, std::vector(3, SteadyStatus::not_converged));
}

TEST(BatchSolver, OpenSetsOfOrdinaryStations) { expect_all_solved(20, 100, 0.0, 1, "open sets"); }
TEST(BatchSolver, StationsFarFromOrdinary) { expect_all_solved(1000, 1, 1.0, 2, "stations"); }
TEST(FullBatchSolver, OpenSetsOfOrdinaryStations) { expect_all_solved(50, 2000, 0.0, 3, "open sets"); }
TEST(FullBatchSolver, StationsFarFromOrdinary) { expect_all_solved(100'000, 1, 1.0, 4, "stations"); }
TEST(LongBatchSolver, OpenSetsOfOrdinaryStations) { expect_all_solved(100, 10'000, 0.0, 5, "open sets"); }
TEST(LongBatchSolver, StationsFarFromOrdinary) { expect_all_solved(1'000'000, 1, 1.0, 6, "stations"); }

}  // namespace
}  // namespace forecourse::network
