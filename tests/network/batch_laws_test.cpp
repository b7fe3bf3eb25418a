// The laws of runs as the kernels of every instruction set compute them, against the scalar ones.
// SOURCE: closed form
#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/network/batch/program.h"
#include "network/batch_network.h"

namespace forecourse::network {
namespace {

// Rounding of the friction's logarithm (see tests/parts/lanes), of the sum of a pump's constant and its losses.
constexpr double allowed = 1e-13;

TEST(BatchLaws, EveryRunLosesWhatTheScalarLawSays) {
  test::Draws draws(9);
  for (const lanes::InstructionSet set : lanes::supported_instruction_sets()) {
    const LaneKernel kernel = kernel_for(set);
    const auto count = static_cast<std::size_t>(kernel.count);
    const PipingSystem system = test::system_of(test::random_network(draws, 0.0));
    const RunLaws laws(system);
    const BatchProgram program(system, laws, {});
    BatchMemory memory(program.view(), kernel.count);
    for (int p = 0; p < program.view().pipes; ++p) {
      for (std::size_t l = 0; l < count; ++l) memory.view().friction[static_cast<std::size_t>(p) * count + l] = 7.0;
    }
    std::vector<double> loss(system.runs.size() * count), slope(loss.size());
    for (int round = 0; round < 50; ++round) {
      for (std::size_t i = 0; i < loss.size(); ++i) memory.view().flow[i] = draws.between(-3e-3, 3e-3);
      for (int settle = 0; settle < 5; ++settle) {
        kernel.ask(program.view(), memory.view(), loss.data(), slope.data());
      }
      for (std::size_t i = 0; i < loss.size(); ++i) {
        const solvers::EdgeLoss wanted = laws.loss(static_cast<int>(i / count), memory.view().flow[i]);
        EXPECT_NEAR(loss[i], wanted.loss, allowed * std::max(1.0, std::abs(wanted.loss))) << lanes::name(set);
        EXPECT_NEAR(slope[i], wanted.slope, allowed * wanted.slope) << lanes::name(set);
      }
    }
  }
}

TEST(GatheredRun, PipesOfOneBoreAndRoughnessAreOne) {
  network::Run run;
  for (const double length : {3.0, 5.0}) {
    Element& element = run.elements.emplace_back();
    element.law = parts::pipe_law({length, 0.05, 5e-6, 740.0, 5e-4});
  }
  run.elements.emplace_back().law = parts::pipe_law({3.0, 0.04, 5e-6, 740.0, 5e-4});
  run.elements.back().flow_factor = 2.0;
  const GatheredRun gathered = gather(run);
  EXPECT_EQ(gathered.pipes.size(), 2U);
  for (const double flow : {-2e-3, -1e-5, 0.0, 1e-5, 4e-4, 2e-3}) {
    parts::Loss sum;
    for (const Element& element : run.elements) sum = sum + loss(element, flow);
    const solvers::EdgeLoss got = gathered.loss(flow);
    EXPECT_NEAR(got.loss, sum.pressure_loss, 1e-14 * std::abs(sum.pressure_loss));  // rounding of three terms
    EXPECT_NEAR(got.slope, sum.slope, 1e-14 * sum.slope);
  }
}

TEST(GatheredRun, ParabolaOfAPumpIsAConstantAndAQuadraticLossBothWays) {
  network::Run run;
  run.elements.emplace_back().law = parts::PumpLaw{parts::pump_from_runout(2e5, 8e-3), 0.9, {}};
  for (const double speed : {1.0, 0.8}) {
    const GatheredRun gathered = gather(run, speed);
    EXPECT_TRUE(gathered.others.empty());
    parts::PumpLaw pump = std::get<parts::PumpLaw>(run.elements.front().law);
    pump.speed_ratio *= speed;
    for (const double flow : {-3e-3, 0.0, 2e-3, 9e-3}) {
      EXPECT_NEAR(gathered.loss(flow).loss, loss(pump, flow).pressure_loss, 1e-9);  // rounding of 2e5 Pa
      EXPECT_NEAR(gathered.loss(flow).slope, loss(pump, flow).slope, 1e-6);         // rounding of 1e7
    }
  }
}

}  // namespace
}  // namespace forecourse::network
