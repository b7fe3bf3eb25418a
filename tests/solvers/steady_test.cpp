// SOURCE: [rheinboldt_1970, network flows as M-functions] opening a hose can only slow the others.
// Laws of nature and closed forms that every solution keeps.
#include "forecourse/solvers/steady.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <iostream>

#include "solvers/measured.h"
#include "solvers/random_network.h"

namespace forecourse::test {
namespace {

using solvers::SteadyCase;
using solvers::SteadyReport;
using solvers::SteadyState;
using solvers::SteadyStatus;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// A network made by hand, with its solver.
struct Network {
  int unknowns = 0;
  std::vector<double> fixed;
  std::vector<solvers::SteadyEdge> edges;
  SeriesLaws laws;

  int join(int from, int to, parts::Law law, double lowest = -solvers::unbounded, double highest = solvers::unbounded) {
    edges.push_back({from, to, lowest, highest});
    laws.terms.push_back({std::move(law)});
    return static_cast<int>(edges.size()) - 1;
  }
  [[nodiscard]] SteadyCase all_open() const { return {std::vector<char>(edges.size(), 1), {}, {}}; }
  SteadyReport solve(const SteadyCase& given, SteadyState& state) const {
    const solvers::SteadyGraph graph(unknowns, fixed, edges);
    solvers::SteadySolver solver(graph, laws);
    return solver.solve(given, state);
  }
};

parts::Law pump(double shutoff, double factor) {
  return parts::PumpLaw{parts::pump_from_shutoff(shutoff, factor), 1.0, {}};
}
parts::Law square(double factor) { return parts::QuadraticLaw{0.0, factor}; }

// ---- two pumps on one line -----------------------------------------------------------------------------

constexpr double strong_shutoff = 2.1e5, weak_shutoff = 1.6e5;  // [Pa]
constexpr double pump_factor = 6e9;                             // [Pa s2/m6]

/// Node 0 is the line; both tanks at no pressure; the line's flow is taken out at node 0.
Network two_pumps() {
  Network net{.unknowns = 1, .fixed = {0.0, 0.0}, .edges = {}, .laws = {}};
  net.join(1, 0, pump(strong_shutoff, pump_factor), 0.0);
  net.join(2, 0, pump(weak_shutoff, pump_factor), 0.0);
  return net;
}

double pump_flow(double shutoff, double line) {
  return line < shutoff ? std::sqrt((shutoff - line) / pump_factor) : 0.0;
}

TEST(Steady, WeakerPumpWaitsForTheLine) {
  const Network net = two_pumps();
  const double joins = pump_flow(strong_shutoff, weak_shutoff);  // [m3/s] taken when the weaker one begins
  for (int i = 1; i <= 300; ++i) {
    SteadyCase given = net.all_open();
    given.demand = {0.02 * joins * i};
    SteadyState state;
    ASSERT_EQ(net.solve(given, state).status, SteadyStatus::converged) << i;
    const double line = state.pressure[0], strong = state.flow[0], weak = state.flow[1];
    EXPECT_GE(weak, 0.0);
    EXPECT_EQ(weak > 1e-9, line < weak_shutoff - 1e-7) << line;  // at 1e-9 m3/s the curve lies 6e-9 Pa under shutoff
    // Closed form: the flow of each pump at the pressure of the line. 1e-5 Pa is what the solver leaves; where the
    // weaker one begins, its curve is flat and that much moves sqrt(1e-5/6e9) m3/s.
    EXPECT_NEAR(strong, pump_flow(strong_shutoff, line), 1e-12);
    EXPECT_NEAR(weak, pump_flow(weak_shutoff, line), 5e-8);
    EXPECT_NEAR(strong + weak, given.demand[0], 1e-12);
  }
}

TEST(Steady, WeakerPumpAloneDelivers) {
  const Network net = two_pumps();
  SteadyCase given = net.all_open();
  given.open[0] = 0;
  given.demand = {2e-3};
  SteadyState state;
  ASSERT_EQ(net.solve(given, state).status, SteadyStatus::converged);
  EXPECT_EQ(state.flow[0], 0.0);
  EXPECT_NEAR(state.flow[1], 2e-3, 1e-12);
  EXPECT_NEAR(state.pressure[0], weak_shutoff - pump_factor * 2e-3 * 2e-3, 2e-5);  // the solver's own 1e-5 Pa
}

// ---- at rest -------------------------------------------------------------------------------------------

TEST(Steady, NoHoseOpenStandsAtTheStrongestPump) {
  Draws draws(11);
  for (int i = 0; i < 200; ++i) {
    const RandomNetwork network = random_network(draws, i % 2);
    const solvers::SteadyGraph graph(network.unknowns, network.fixed, network.edges);
    solvers::SteadySolver solver(graph, network.laws);
    SteadyState state;
    ASSERT_EQ(solver.solve(with_open(network, 0), state).status, SteadyStatus::at_rest);
    double strongest = -solvers::unbounded;
    for (const int p : network.pumps) {
      const double tank = network.fixed[at(network.edges[at(p)].from - network.unknowns)];
      strongest = std::max(strongest, tank - network.laws.loss(p, 0.0).loss);
    }
    for (int n = 0; n < network.unknowns; ++n) EXPECT_EQ(state.pressure[at(n)], strongest);
    for (const double flow : state.flow) EXPECT_EQ(flow, 0.0);
  }
}

TEST(Steady, EveryPumpOffIsNoSupply) {
  Draws draws(12);
  for (int i = 0; i < 200; ++i) {
    const RandomNetwork network = random_network(draws, i % 2);
    SteadyCase given = with_open(network, draws.bits());
    for (const int p : network.pumps) given.open[at(p)] = 0;
    const solvers::SteadyGraph graph(network.unknowns, network.fixed, network.edges);
    solvers::SteadySolver solver(graph, network.laws);
    SteadyState state;
    const SteadyReport report = solver.solve(given, state);
    EXPECT_EQ(report.status, SteadyStatus::no_supply);
    EXPECT_TRUE(report.usable());
    EXPECT_TRUE(std::isnan(state.pressure[0]));
    for (const double flow : state.flow) EXPECT_EQ(flow, 0.0);
  }
}

TEST(Steady, PumpThatCannotLiftToTheHoseIsAtRest) {
  Network net{.unknowns = 1, .fixed = {0.0, 3e5}, .edges = {}, .laws = {}};
  net.join(1, 0, pump(2.1e5, pump_factor), 0.0);
  net.join(0, 2, square(1e11), 0.0);
  SteadyState state;
  EXPECT_EQ(net.solve(net.all_open(), state).status, SteadyStatus::at_rest);
  EXPECT_EQ(state.pressure[0], 2.1e5);
  EXPECT_EQ(state.flow, (std::vector<double>{0.0, 0.0}));
}

TEST(Steady, DemandWithoutSupplyIsNotUsable) {
  Network net = two_pumps();
  SteadyCase given = net.all_open();
  given.open = {0, 0};
  given.demand = {1e-3};
  SteadyState state;
  const SteadyReport report = net.solve(given, state);
  EXPECT_FALSE(report.usable());
  EXPECT_EQ(report.worst_node, 0);
}

// ---- limits --------------------------------------------------------------------------------------------

TEST(Steady, LimiterHoldsItsFlowAndDropsTheRest) {
  Network net{.unknowns = 1, .fixed = {0.0, 0.0}, .edges = {}, .laws = {}};
  net.join(1, 0, pump(2.1e5, pump_factor), 0.0);
  const int hose = net.join(0, 2, square(1e11), 0.0, 6.3e-4);
  SteadyState state;
  ASSERT_EQ(net.solve(net.all_open(), state).status, SteadyStatus::converged);
  EXPECT_EQ(state.flow[at(hose)], 6.3e-4);
  EXPECT_NEAR(state.pressure[0], 2.1e5 - pump_factor * 6.3e-4 * 6.3e-4, 2e-5);  // the solver's own 1e-5 Pa

  SteadyCase given = net.all_open();
  given.highest = {solvers::unbounded, 5e-4};  // a case's own limit goes before the edge's
  ASSERT_EQ(net.solve(given, state).status, SteadyStatus::converged);
  EXPECT_EQ(state.flow[at(hose)], 5e-4);
  given.highest = {solvers::unbounded, solvers::unbounded};
  ASSERT_EQ(net.solve(given, state).status, SteadyStatus::converged);
  // Closed form: sqrt(shutoff / (pump + hose)).
  EXPECT_NEAR(state.flow[at(hose)], std::sqrt(2.1e5 / (pump_factor + 1e11)), 1e-12);
}

TEST(Steady, BalancesWhereNextToNothingIsLost) {
  // Pressures of 2e5 Pa are known to 3e-11 Pa; through an edge without a slope at no flow, here a dead end beside the
  // hose and a piece of next to no loss before it, that must not turn up as a flow.
  Draws draws(16);
  for (int i = 0; i < 200; ++i) {
    Network net{.unknowns = 3, .fixed = {-2e4, 6e3}, .edges = {}, .laws = {}};
    net.join(3, 0, pump(draws.between(1.5e5, 3e5), pump_factor), 0.0);
    const int dead_end = net.join(0, 1, square(draws.between(0.0, 1e6)));
    net.join(0, 2, square(draws.between(0.0, 1e6)));
    net.join(2, 4, square(draws.between(1e10, 1e12)), 0.0);
    SteadyState state;
    const SteadyReport report = net.solve(net.all_open(), state);
    ASSERT_EQ(report.status, SteadyStatus::converged) << report.flow_residual;
    EXPECT_FALSE(report.fallback_used);
    EXPECT_NEAR(state.flow[at(dead_end)], 0.0, 1e-12);
  }
}

// ---- alike parts, alike flows ----------------------------------------------------------------------------

/// A header with two equal pumps; from it `arms` equal lines, each to a place with two equal hoses.
Network star(int arms) {
  Network net{.unknowns = 1 + arms, .fixed = {-2e4, -2e4}, .edges = {}, .laws = {}};
  const int first_outlet = net.unknowns + 2;
  for (int p = 0; p < 2; ++p) net.join(net.unknowns + p, 0, pump(2.1e5, pump_factor), 0.0);
  for (int a = 0; a < arms; ++a) {
    net.join(0, 1 + a, parts::pipe_law({20.0, 0.0525, 5e-6, 740.0, 5e-4}));
    for (int h = 0; h < 2; ++h) {
      net.fixed.push_back(6e3);
      net.join(1 + a, first_outlet + 2 * a + h, parts::QuadraticLaw{8e6, 1.2e11}, 0.0);
    }
  }
  return net;
}

TEST(Steady, EqualArmsShareAlike) {
  const Network net = star(4);
  SteadyState state;
  ASSERT_EQ(net.solve(net.all_open(), state).status, SteadyStatus::converged);
  EXPECT_NEAR(state.flow[0], state.flow[1], 1e-12);  // pumps; as near as the balance of a node
  for (std::size_t a = 1; a < 4; ++a) {
    for (std::size_t k = 0; k < 3; ++k) EXPECT_NEAR(state.flow[2 + 3 * a + k], state.flow[2 + k], 1e-12);
  }
  EXPECT_NEAR(state.flow[3], state.flow[4], 1e-12);  // the two hoses of one arm
  EXPECT_NEAR(state.flow[3] + state.flow[4], state.flow[2], 1e-12);
}

TEST(Steady, RingSplitsAlikeBothWays) {
  // Header, left, right, far end: the two ways round are equal, so the far hose draws half through each.
  Network net{.unknowns = 4, .fixed = {-2e4, 6e3}, .edges = {}, .laws = {}};
  const parts::Law pipe = parts::pipe_law({20.0, 0.0525, 5e-6, 740.0, 5e-4});
  net.join(4, 0, pump(2.1e5, pump_factor), 0.0);
  const int left = net.join(0, 1, pipe), right = net.join(0, 2, pipe);
  net.join(1, 3, pipe);
  net.join(3, 2, pipe);  // drawn the other way: its flow is negative
  const int hose = net.join(3, 5, parts::QuadraticLaw{8e6, 1.2e11}, 0.0);
  SteadyState state;
  ASSERT_EQ(net.solve(net.all_open(), state).status, SteadyStatus::converged);
  // Two equal pipes one after the other lose alike; 1e-5 Pa over their slope of 1e6 Pa s/m3 moves 1e-11 m3/s.
  EXPECT_NEAR(state.flow[at(left)], 0.5 * state.flow[at(hose)], 2e-11);
  EXPECT_NEAR(state.flow[at(right)], 0.5 * state.flow[at(hose)], 2e-11);
  EXPECT_LT(state.flow[4], 0.0);
}

// ---- opening a hose slows the others ---------------------------------------------------------------------

/// Largest gain and largest loss in flow of any other hose when one more is opened [m3/s].
struct Change {
  double gain = 0.0, loss = 0.0;
};

Change of_opening(const RandomNetwork& network, Draws& draws) {
  const solvers::SteadyGraph graph(network.unknowns, network.fixed, network.edges);
  solvers::SteadySolver solver(graph, network.laws);
  const std::uint64_t more = std::uint64_t{1} << draws.below(static_cast<int>(network.hoses.size()));
  const std::uint64_t fewer = draws.bits() & ~more;
  SteadyState before, after;
  EXPECT_TRUE(solver.solve(with_open(network, fewer), before).usable());
  EXPECT_TRUE(solver.solve(with_open(network, fewer | more), after).usable());
  Change change;
  for (std::size_t h = 0; h < network.hoses.size(); ++h) {
    if (((more >> h) & 1U) != 0) continue;
    const auto edge = at(network.hoses[h]);
    change.gain = std::max(change.gain, after.flow[edge] - before.flow[edge]);
    change.loss = std::max(change.loss, before.flow[edge] - after.flow[edge]);
  }
  return change;
}

TEST(Steady, OpeningAHoseSpeedsUpNoOther) {
  Draws draws(13);
  Change worst;
  for (int i = 0; i < 5000; ++i) {
    const Change change = of_opening(random_network(draws, 0.0), draws);
    worst = {std::max(worst.gain, change.gain), std::max(worst.loss, change.loss)};
  }
  std::cout << "of another hose: largest gain " << worst.gain << ", largest loss " << worst.loss << " m3/s\n";
  EXPECT_GT(worst.loss, 1e-4);
  EXPECT_LT(worst.gain, 1e-11);  // [m3/s] what 1e-5 Pa moves through the slope of a hose, 1e6 Pa s/m3 and more
}

// ---- starts ----------------------------------------------------------------------------------------------

TEST(Steady, AnyStartLeadsToTheSameState) {
  Draws draws(14);
  for (int i = 0; i < 500; ++i) {
    const RandomNetwork network = random_network(draws, 0.0);
    const solvers::SteadyGraph graph(network.unknowns, network.fixed, network.edges);
    solvers::SteadySolver solver(graph, network.laws);
    const SteadyCase given = with_open(network, draws.bits());
    SteadyState cold, warm;
    ASSERT_TRUE(solver.solve(with_open(network, draws.bits()), warm).usable());
    if (draws.coin(0.1)) warm.flow[0] = NAN;
    if (draws.coin(0.1)) std::fill(warm.pressure.begin(), warm.pressure.end(), NAN);  // as every pump off leaves it
    ASSERT_TRUE(solver.solve(given, cold).usable());
    ASSERT_TRUE(solver.solve(given, warm).usable());
    for (const int hose : network.hoses) EXPECT_NEAR(cold.flow[at(hose)], warm.flow[at(hose)], 1e-11);
  }
}

TEST(Steady, StartsAgainFromItsOwnAnswer) {
  const Network net = star(3);
  SteadyState state;
  ASSERT_EQ(net.solve(net.all_open(), state).status, SteadyStatus::converged);
  const SteadyReport again = net.solve(net.all_open(), state);
  EXPECT_EQ(again.status, SteadyStatus::converged);
  EXPECT_EQ(again.iterations, 0);
}

TEST(Steady, ReportsWhatIsMeasured) {
  Draws draws(15);
  for (int i = 0; i < 500; ++i) {
    const RandomNetwork network = random_network(draws, 1.0);
    const solvers::SteadyGraph graph(network.unknowns, network.fixed, network.edges);
    solvers::SteadySolver solver(graph, network.laws);
    const SteadyCase given = with_open(network, draws.bits());
    SteadyState state;
    const SteadyReport report = solver.solve(given, state);
    const Measured here = measured(network.unknowns, network.edges, network.laws, given, state);
    EXPECT_NEAR(here.imbalance, report.flow_residual, 1e-15);   // sums of flows of 1e-3, in another order
    EXPECT_LE(here.pressure, report.pressure_residual + 1e-9);  // a bound may have taken up part of it
  }
}

}  // namespace
}  // namespace forecourse::test
