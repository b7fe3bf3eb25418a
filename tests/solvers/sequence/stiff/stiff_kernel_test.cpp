// SOURCE: closed form: exponentials, and the order that the tableau promises
#include "forecourse/solvers/sequence/stiff/stiff_kernel.h"

#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/solvers/sequence/stepper.h"

namespace forecourse {
namespace {

namespace seq = solvers::sequence;

/// A small vessel between a source that falls and a sink: it settles `ratio` times faster than they do.
struct Chain {
  static constexpr bool stiff = true;
  double ratio = 1.0;
  bool cubed = false;

  static int compartments() { return 3; }
  static int links() { return 2; }
  static int auxiliaries() { return 0; }
  static int guard_count() { return 1; }
  static seq::LinkEnds ends(int link) { return {link, link + 1}; }
  static seq::GuardRule guard_rule(int /*guard*/) { return {seq::Crossing::rising, 0, 0.0, true}; }
  void flows(double /*t*/, const seq::SequenceView& v, std::span<double> q, std::span<double> /*rate*/) const {
    q[0] = cubed ? v.amounts[0] * v.amounts[0] * v.amounts[0] : v.amounts[0];
    q[1] = ratio * v.amounts[1];
  }
  static void guards(double /*t*/, const seq::SequenceView& v, std::span<const double> /*q*/, std::span<double> value) {
    value[0] = v.amounts[2] - 0.25;
  }
  static void on_event(const seq::Event& /*event*/, seq::Mutator& /*m*/) {}
};

seq::SequenceStart start(double end) {
  seq::SequenceStart s;
  s.amounts = {1.0, 0.0, 0.0};
  s.end = end;
  return s;
}

TEST(StiffKernel, AChainOfTwoSpeedsIsMetInFewSteps) {
  seq::SequenceOptions options;
  options.relative = 1e-7;
  options.absolute = 1e-9;
  const double k = 1e6;
  const auto r = seq::run_sequence(Chain{k}, start(2.0), options);
  EXPECT_EQ(r.status, seq::SequenceStatus::finished);
  EXPECT_TRUE(r.balance.holds);
  EXPECT_NEAR(r.amounts[0], std::exp(-2.0), 1e-6);  // ten times what a step may be off
  EXPECT_NEAR(r.amounts[1], (std::exp(-2.0) - std::exp(-2.0 * k)) / (k - 1.0), 1e-9);
  EXPECT_LT(r.steps, 300U);  // an explicit step would be 2.5e-6 s long
}

TEST(StiffKernel, TheMomentOfAGuardIsFound) {
  seq::SequenceOptions options;
  options.relative = 1e-8;
  options.absolute = 1e-10;
  const double k = 1e4;
  const auto r = seq::run_sequence(Chain{k}, start(2.0), options);
  ASSERT_EQ(r.trace.events.size(), 1U);
  const double t = r.trace.events.front().event.time;
  // What has arrived: 1 - e^-t - (e^-t - e^-kt) / (k - 1).
  EXPECT_NEAR(1.0 - std::exp(-t) - std::exp(-t) / (k - 1.0), 0.25, 1e-6);
}

/// dV/dt = -V^3: V = 1 / sqrt(1 + 2 t). Of order 3 the error falls eightfold where steps are halved.
TEST(StiffKernel, ItIsOfOrderThree) {
  const auto error = [](double step) {
    seq::SequenceOptions options;
    options.relative = options.absolute = 1e6;  // every step is accepted
    options.first_step = options.longest_step = step;
    Chain chain{1.0, true};
    const auto r = seq::run_sequence(chain, start(1.0), options);
    return std::abs(r.amounts[0] - 1.0 / std::sqrt(3.0));
  };
  const double coarse = error(1.0 / 20.0), fine = error(1.0 / 40.0);
  EXPECT_GT(coarse / fine, 6.5);
  EXPECT_LT(coarse / fine, 9.5);
}

}  // namespace
}  // namespace forecourse
