// SOURCE: [hydr_watres, examples 4.6, 4.7 and 7.1 to 7.3] [scilab_tbc, book 1962 example 9.12]
//         [pandapipes, openmodelica_test_networks/water_cases_colebrook]
// Networks that others have published or computed. Tolerances are those of the rows of check_values.csv: the printed
// digits, or what an incompressible solver can give for the slightly compressible water of the reference.
#include <gtest/gtest.h>

#include <cmath>

#include "solvers/published_network.h"
#include "support/check_values.h"

namespace forecourse::test {
namespace {

using Solution = PublishedNetwork::Solution;

constexpr double pascal_per_bar = 1e5, millimeter = 1e-3;

double flow_of(const Solution& solution, std::size_t edge) { return solution.state.flow[edge]; }

// ---- three reservoirs --------------------------------------------------------------------------------

TEST(SteadyPublished, ThreeReservoirs) {
  PublishedNetwork net{.density = 1000.0, .unknowns = 1, .reservoirs = {}, .demand = {}, .edges = {}, .laws = {}};
  for (const double head : {135.0, 120.0, 112.0}) net.reservoirs.push_back(net.pressure_of_head(head));
  const auto resistance = [&](double k) { return parts::QuadraticLaw{0.0, net.pressure_of_head(k)}; };  // hf = K Q2
  net.join(net.reservoir(0), 0, {resistance(0.7594)});
  net.join(0, net.reservoir(1), {resistance(36.33)});
  net.join(0, net.reservoir(2), {resistance(8.168)});

  const Solution solution = net.solve();
  ASSERT_EQ(solution.report.status, solvers::SteadyStatus::converged);
  EXPECT_TRUE(agrees(row("3RES-EX9.12-h"), net.head_of_pressure(solution.state.pressure[0])));
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_TRUE(agrees(row("3RES-EX9.12-Q" + std::to_string(i + 1)), flow_of(solution, i)));
  }
}

// ---- ten pipes in three loops ------------------------------------------------------------------------

struct TextbookPipe {
  int from, to;
  double bore, length, factor;  // [m], [m], Darcy friction factor [1]
};

// Node 7 is the source and has its pressure fixed; demands follow from the flows the textbook starts with.
constexpr int source = 7;
const std::vector<TextbookPipe> loops{{source, 0, 0.3, 250.0, 0.01879}, {0, 1, 0.2, 100.0, 0.02075},
                                      {1, 2, 0.2, 125.0, 0.02075},      {2, 3, 0.2, 125.0, 0.02075},
                                      {3, source, 0.2, 100.0, 0.02075}, {2, 4, 0.15, 100.0, 0.02233},
                                      {4, 5, 0.25, 125.0, 0.01964},     {5, 3, 0.15, 100.0, 0.02233},
                                      {1, 6, 0.15, 100.0, 0.02233},     {6, 4, 0.25, 125.0, 0.01964}};
const std::vector<double> loop_demand{0.0, 0.0, 0.04, 0.0, 0.0, 0.02, 0.02};

template <class LawOf>
Solution solve_loops(const LawOf& law_of) {
  PublishedNetwork net{
      .density = 1000.0, .unknowns = 7, .reservoirs = {5e5}, .demand = loop_demand, .edges = {}, .laws = {}};
  for (const TextbookPipe& pipe : loops) net.join(pipe.from, pipe.to, {law_of(pipe, net.density)});
  return net.solve();
}

/// Against the converged flows, and against those printed after three rounds of hand correction.
void expect_loop_flows(const Solution& solution, const std::string& rows) {
  ASSERT_EQ(solution.report.status, solvers::SteadyStatus::converged);
  for (std::size_t i = 0; i < loops.size(); ++i) {
    const CheckRow check = row(rows + std::to_string(i + 1));
    EXPECT_TRUE(agrees(check, flow_of(solution, i)));
    const std::string printed = check.inputs.substr(check.inputs.rfind(' '));
    // Three rounds leave up to 2.5e-4 m3/s, as the row says.
    EXPECT_NEAR(flow_of(solution, i), number_in(printed).value(), 2.5e-4) << check.id;
  }
}

TEST(SteadyPublished, LoopsOfFixedFriction) {
  const auto law_of = [](const TextbookPipe& pipe, double density) {
    return parts::from_loss_coefficient(pipe.factor * pipe.length / pipe.bore, pipe.bore, density);
  };
  expect_loop_flows(solve_loops(law_of), "HC-ex4.7-fixedf-p");
}

TEST(SteadyPublished, LoopsOfColebrook) {
  const auto law_of = [](const TextbookPipe& pipe, double density) {
    return parts::pipe_law({pipe.length, pipe.bore, 0.00025, density, density * 1.023e-6});
  };
  expect_loop_flows(solve_loops(law_of), "HC-ex4.7-colebrook-p");
}

// ---- two pipes side by side --------------------------------------------------------------------------

TEST(SteadyPublished, ParallelPipes) {
  PublishedNetwork net{.density = 958.0, .unknowns = 1, .reservoirs = {5e5}, .demand = {0.5}, .edges = {}, .laws = {}};
  const double viscosity = net.density * 2.94e-7;  // water of 100 degC, as the row says
  net.join(net.reservoir(0), 0, {parts::pipe_law({400.0, 0.2, 2.5e-5, net.density, viscosity})});
  net.join(net.reservoir(0), 0, {parts::pipe_law({600.0, 0.3, 2.5e-5, net.density, viscosity})});
  const Solution solution = net.solve();
  ASSERT_EQ(solution.report.status, solvers::SteadyStatus::converged);
  EXPECT_TRUE(agrees(row("DW-ex4.6-Q1"), flow_of(solution, 0)));
  // The head loss is printed beside it: 30.0 m, to half of its last digit.
  EXPECT_NEAR(net.head_of_pressure(net.reservoirs[0] - solution.state.pressure[0]), 30.0, 0.05);
}

// ---- water networks computed by a simulator of another kind --------------------------------------------

/// The water of the reference, its pipes of one roughness, sinks in kg/s.
struct WaterNetwork : PublishedNetwork {
  WaterNetwork(int nodes, std::vector<double> reservoir_bars, double roughness) : roughness_(roughness) {
    density = 998.2060924679;
    unknowns = nodes;
    for (const double bar : reservoir_bars) reservoirs.push_back(bar * pascal_per_bar);
    demand.assign(static_cast<std::size_t>(nodes), 0.0);
  }
  void sink(int node, double mass_flow) { demand[static_cast<std::size_t>(node)] = mass_flow / density; }
  void pipe(int from, int to, double kilometers, double bore) {
    join(from, to, {parts::pipe_law({1000.0 * kilometers, bore, roughness_, density, 0.0010016053})});
    bores_.push_back(bore);
  }
  [[nodiscard]] double velocity(const Solution& solution, std::size_t pipe) const {
    return flow_of(solution, pipe) / bore_area(bores_[pipe]);
  }

 private:
  double roughness_;
  std::vector<double> bores_;
};

double bars(const Solution& solution, int node) {
  return solution.state.pressure[static_cast<std::size_t>(node)] / pascal_per_bar;
}

TEST(SteadyPublished, OnePipeOfWater) {
  WaterNetwork net(1, {5.0}, 0.1 * millimeter);
  net.sink(0, 1.3821);
  net.pipe(net.reservoir(0), 0, 2.0, 0.075);
  const Solution solution = net.solve();
  ASSERT_EQ(solution.report.status, solvers::SteadyStatus::converged);
  EXPECT_TRUE(agrees(row("OM-pipe_1-p1"), bars(solution, 0)));
}

TEST(SteadyPublished, CrossOfThreePipes) {
  enum { end_1, end_2, cross, nodes };
  WaterNetwork net(nodes, {6.0}, 0.1 * millimeter);
  net.sink(end_1, 1.33);
  net.sink(end_2, 1.33);
  net.pipe(net.reservoir(0), cross, 5.0, 0.075);
  net.pipe(cross, end_1, 5.0, 0.075);
  net.pipe(cross, end_2, 5.0, 0.075);
  const Solution solution = net.solve();
  ASSERT_EQ(solution.report.status, solvers::SteadyStatus::converged);
  EXPECT_TRUE(agrees(row("OM-t_cross-p3"), bars(solution, cross)));
  EXPECT_TRUE(agrees(row("OM-t_cross-p1"), bars(solution, end_1)));
  EXPECT_NEAR(flow_of(solution, 1), flow_of(solution, 2), 1e-12);  // alike branches, alike flows: the node balance
}

TEST(SteadyPublished, TwoReservoirsAndASink) {
  WaterNetwork net(1, {5.0, 5.0}, 0.1 * millimeter);
  net.sink(0, 13.89);
  net.pipe(net.reservoir(0), 0, 2.0, 0.1);
  net.pipe(net.reservoir(1), 0, 1.0, 0.1);
  const Solution solution = net.solve();
  ASSERT_EQ(solution.report.status, solvers::SteadyStatus::converged);
  EXPECT_TRUE(agrees(row("OM-two_pipes-v0"), net.velocity(solution, 0)));
  EXPECT_TRUE(agrees(row("OM-two_pipes-v1"), net.velocity(solution, 1)));
  EXPECT_TRUE(agrees(row("OM-two_pipes-p2"), bars(solution, 0)));
}

TEST(SteadyPublished, MixedNetworkOfWater) {
  // Node 0 of the reference is the reservoir; its nodes 1 to 5 are ours 0 to 4.
  WaterNetwork net(5, {5.0}, 0.01 * millimeter);
  const auto node = [&](int theirs) { return theirs == 0 ? net.reservoir(0) : theirs - 1; };
  const double sinks[] = {3.0, 0.5, 0.7, 7.0, -9.0};
  for (int i = 0; i < 5; ++i) net.sink(i, sinks[i]);
  net.pipe(node(1), node(5), 1.0, 0.09);
  net.pipe(node(1), node(4), 0.5, 0.075);
  net.pipe(node(4), node(5), 3.5, 0.1);
  net.pipe(node(0), node(3), 5.0, 0.08);
  net.pipe(node(3), node(2), 8.4, 0.2);
  net.pipe(node(3), node(1), 1.0, 0.08);
  const Solution solution = net.solve();
  ASSERT_EQ(solution.report.status, solvers::SteadyStatus::converged);
  for (int i = 0; i < 6; ++i) {
    const std::string n = std::to_string(i);
    EXPECT_TRUE(agrees(row("OM-mixed-p" + n), bars(solution, node(i))));
    EXPECT_TRUE(agrees(row("OM-mixed-v" + n), net.velocity(solution, static_cast<std::size_t>(i))));
  }
}

TEST(SteadyPublished, NetworkOnASlope) {
  WaterNetwork net(3, {6.0}, 0.1 * millimeter);
  const double elevation[] = {350.0, 250.0, 50.0, 0.0};  // [m], the reservoir first as in the reference
  const auto node = [&](int theirs) { return theirs == 0 ? net.reservoir(0) : theirs - 1; };
  net.reservoirs[0] += net.pressure_of_head(elevation[0]);
  net.sink(node(1), 1.0);
  net.sink(node(2), 0.5);
  net.pipe(node(0), node(3), 5.0, 0.075);
  net.pipe(node(1), node(3), 5.0, 0.075);
  net.pipe(node(3), node(2), 5.0, 0.075);
  net.pipe(node(2), node(1), 1.0, 0.075);
  const Solution solution = net.solve();
  ASSERT_EQ(solution.report.status, solvers::SteadyStatus::converged);
  for (int i = 0; i < 4; ++i) {
    const double weight = net.pressure_of_head(elevation[i]) / pascal_per_bar;
    EXPECT_TRUE(agrees(row("OM-heights-p" + std::to_string(i)), bars(solution, node(i)) - weight));
  }
}

// ---- a pump and its line -------------------------------------------------------------------------------

constexpr double foot = 0.3048;
constexpr double cubic_foot = foot * foot * foot;

double flow_from_gpm(double gpm) { return gpm * 231.0 * std::pow(0.0254, 3) / 60.0; }

/// h = a + c Q2 by least squares through the textbook's three points.
parts::PowerCurve fitted_pump(const PublishedNetwork& net) {
  const double flow[] = {0.0, flow_from_gpm(5000.0), flow_from_gpm(7850.0)}, head[] = {81.0, 60.0, 20.0};
  double x = 0.0, xx = 0.0, h = 0.0, xh = 0.0;
  for (int i = 0; i < 3; ++i) {
    const double square = flow[i] * flow[i], rise = net.pressure_of_head(head[i] * foot);
    x += square, xx += square * square, h += rise, xh += square * rise;
  }
  const double factor = (x * h - 3.0 * xh) / (3.0 * xx - x * x);
  return parts::pump_from_shutoff((h + factor * x) / 3.0, factor);
}

TEST(SteadyPublished, OperatingPointOfAPump) {
  PublishedNetwork net{.density = 998.98, .unknowns = 1, .reservoirs = {0.0}, .demand = {}, .edges = {}, .laws = {}};
  net.reservoirs.push_back(net.pressure_of_head(30.0 * foot));
  const double viscosity = net.density * 1.23e-5 * foot * foot;
  // The textbook takes the friction of its line at 1 ft3/s for all flows.
  const parts::Pipe line{3884.0 * foot, 20.0 / 12.0 * foot, 0.0005 * foot, net.density, viscosity};
  const auto line_law = parts::from_loss_at_flow(parts::pipe_loss(line, cubic_foot).pressure_loss, cubic_foot);
  net.join(net.reservoir(0), 0, {parts::PumpLaw{fitted_pump(net), 1.0, {}}}, 0.0);
  net.join(0, net.reservoir(1), {line_law});
  const Solution solution = net.solve();
  ASSERT_EQ(solution.report.status, solvers::SteadyStatus::converged);
  EXPECT_TRUE(agrees(row("PUMP-op-Q"), flow_of(solution, 0) / cubic_foot));
  EXPECT_TRUE(agrees(row("PUMP-op-h"), net.head_of_pressure(solution.state.pressure[0]) / foot));
}

}  // namespace
}  // namespace forecourse::test
