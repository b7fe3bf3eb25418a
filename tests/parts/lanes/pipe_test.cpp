// The lanes' wall friction against the scalar law, on every instruction set of this machine.
// SOURCE: [colebrook_1939, the transition law] through friction_factor.h, which is held against it in its own test.
#include "forecourse/parts/lanes/pipe.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "forecourse/parts/pipe_friction.h"

namespace forecourse::parts {
namespace {

LanePipe lane_pipe(const PipeLaw& law) {
  LanePipe pipe{.reynolds_per_flow = law.reynolds_per_flow,
                .quadratic = law.quadratic,
                .laminar = law.laminar,
                .roughness_term = law.friction.roughness_term};
  for (std::size_t i = 0; i < 4; ++i) pipe.transition[i] = law.friction.transition[i];
  return pipe;
}

// Rounding of a logarithm of size 16 in an x of 4 to 15, doubled by the square: 1e-13 leaves a margin of ten.
constexpr double allowed = 1e-13;

void expect_same(double roughness) {
  using Lanes = lanes::Baseline;
  const PipeLaw law = pipe_law({10.0, 0.05, roughness, 740.0, 4.5e-4});
  const LanePipe pipe = lane_pipe(law);
  Lanes::Real x = Lanes::all(7.0);
  for (double reynolds = 1.0; reynolds < 1e8; reynolds *= 1.0137) {
    const double flow = reynolds / law.reynolds_per_flow;
    auto answer = PipeLanes<Lanes>::loss(pipe, Lanes::all(flow), x);
    for (int i = 0; i < 20 && answer.step[0] > trusted_friction_step; ++i) {
      answer = PipeLanes<Lanes>::loss(pipe, Lanes::all(flow), x);
    }
    const Loss wanted = loss(law, flow);
    EXPECT_NEAR(answer.per_flow[0] * flow / wanted.pressure_loss, 1.0, allowed) << reynolds;
    // The slope is taken before the last step of x, which trusted_friction_step bounds.
    EXPECT_NEAR(answer.slope[1] / wanted.slope, 1.0, trusted_friction_step) << reynolds;
  }
}

TEST(PipeLanes, SmoothPipeAsTheScalarLaw) { expect_same(0.0); }
TEST(PipeLanes, PlasticPipeAsTheScalarLaw) { expect_same(5e-6); }
TEST(PipeLanes, RoughPipeAsTheScalarLaw) { expect_same(2.5e-3); }

TEST(PipeLanes, StepsNotTrustedUntilSettled) {
  using Lanes = lanes::Baseline;
  const PipeLaw law = pipe_law({10.0, 0.05, 5e-6, 740.0, 4.5e-4});
  Lanes::Real x = Lanes::all(15.0);
  const auto answer = PipeLanes<Lanes>::loss(lane_pipe(law), Lanes::all(1e-3), x);
  EXPECT_GT(answer.step[0], trusted_friction_step);
}

}  // namespace
}  // namespace forecourse::parts
