// Random stations of the kinds that are built, ordinary and far out of the ordinary, with random sets of open hoses.
// What must hold is measured from the laws and the balances (measured.h), not taken from the solver's own report.
#include <gtest/gtest.h>

#include <bit>
#include <iostream>

#include "forecourse/base/constants.h"
#include "solvers/measured.h"
#include "solvers/random_network.h"

namespace forecourse::test {
namespace {

using solvers::SteadyStatus;

// What is asked: 1e-8 m of gasoline, and 1e-10 m3/s at each node.
constexpr double pressure_allowed = 1e-8 * 740.0 * standard_gravity;  // [Pa], 7.26e-5
constexpr double imbalance_allowed = 1e-10;                           // [m3/s]

/// The worst of many solves.
struct Tally {
  int solves = 0, fallbacks = 0, at_rest = 0, no_supply = 0, unusable = 0, most_steps = 0;
  long steps = 0;
  Measured worst;

  void add(const solvers::SteadyReport& report, const Measured& here) {
    ++solves;
    fallbacks += report.fallback_used ? 1 : 0;
    at_rest += report.status == SteadyStatus::at_rest ? 1 : 0;
    no_supply += report.status == SteadyStatus::no_supply ? 1 : 0;
    unusable += report.usable() ? 0 : 1;
    steps += report.iterations;
    most_steps = std::max(most_steps, report.iterations);
    worst.pressure = std::max(worst.pressure, here.pressure);
    worst.imbalance = std::max(worst.imbalance, here.imbalance);
    worst.passed = std::max(worst.passed, here.passed);
  }

  void print(const char* what) const {
    std::cout << what << ": " << solves << " solves, unusable " << unusable << ", fallback " << fallbacks
              << ", at rest " << at_rest << ", no supply " << no_supply << ", steps mean "
              << static_cast<double>(steps) / solves << " most " << most_steps << ", pressure " << worst.pressure
              << " Pa, imbalance " << worst.imbalance << " m3/s, past a bound " << worst.passed << " m3/s\n";
  }

  void expect_good() const {
    EXPECT_EQ(unusable, 0);
    EXPECT_LT(worst.pressure, pressure_allowed);
    EXPECT_LT(worst.imbalance, imbalance_allowed);
    EXPECT_EQ(worst.passed, 0.0);  // a bound is exact: no flow back through a check valve, none above a limiter
  }
};

/// Every hose open or not at random, with all chances from none to all; now and then a pump is off.
solvers::SteadyCase random_case(const RandomNetwork& network, Draws& draws) {
  const double chance = draws.between(0.0, 1.0);
  std::uint64_t open = 0;
  for (std::size_t h = 0; h < network.hoses.size(); ++h) open |= std::uint64_t{draws.coin(chance)} << h;
  solvers::SteadyCase given = with_open(network, open);
  for (const int pump : network.pumps) {
    if (draws.coin(0.05)) given.open[static_cast<std::size_t>(pump)] = 0;
  }
  return given;
}

/// `stations` random stations, `sets` random open sets on each.
Tally solve_many(int stations, int sets, double spread, std::uint64_t seed) {
  Draws draws(seed);
  Tally tally;
  for (int i = 0; i < stations; ++i) {
    const RandomNetwork network = random_network(draws, spread);
    const solvers::SteadyGraph graph(network.unknowns, network.fixed, network.edges);
    solvers::SteadySolver solver(graph, network.laws);
    for (int k = 0; k < sets; ++k) {
      const solvers::SteadyCase given = random_case(network, draws);
      solvers::SteadyState state;
      const solvers::SteadyReport report = solver.solve(given, state);
      const Measured here = measured(network.unknowns, network.edges, network.laws, given, state);
      const bool was_good = tally.unusable == 0;
      tally.add(report, here);
      if (was_good && tally.unusable > 0) ADD_FAILURE() << "first unusable: station " << i << ", set " << k;
    }
  }
  return tally;
}

void expect_all_solved(int stations, int sets, double spread, std::uint64_t seed, const char* what) {
  const Tally tally = solve_many(stations, sets, spread, seed);
  tally.print(what);
  tally.expect_good();
}

TEST(QuickSteadyRandom, OpenSetsOfOrdinaryStations) { expect_all_solved(20, 100, 0.0, 1, "open sets"); }
TEST(QuickSteadyRandom, StationsFarFromOrdinary) { expect_all_solved(2000, 1, 1.0, 2, "stations"); }
TEST(FullSteadyRandom, OpenSetsOfOrdinaryStations) { expect_all_solved(50, 2000, 0.0, 3, "open sets"); }
TEST(FullSteadyRandom, StationsFarFromOrdinary) { expect_all_solved(100'000, 1, 1.0, 4, "stations"); }
TEST(LongSteadyRandom, OpenSetsOfOrdinaryStations) { expect_all_solved(100, 10'000, 0.0, 5, "open sets"); }
TEST(LongSteadyRandom, StationsFarFromOrdinary) { expect_all_solved(1'000'000, 1, 1.0, 6, "stations"); }

}  // namespace
}  // namespace forecourse::test
