// SOURCE: closed form: each law integrated by hand
// SOURCE: [scilab_tbc, book 2132, chapter 6, examples 6.17 and 6.19] inputs and formula of two tanks that empty
#include <gtest/gtest.h>

#include "solvers/sequence/knock_down.h"
#include "solvers/sequence/small_models.h"

namespace forecourse {
namespace {

namespace seq = solvers::sequence;

seq::SequenceStart from(std::vector<double> amounts, double end) {
  seq::SequenceStart start;
  start.amounts = std::move(amounts);
  start.end = end;
  return start;
}

/// Tight enough that what is left is the method's, not the default tolerance's.
seq::SequenceOptions tight() {
  seq::SequenceOptions options;
  options.absolute = 1e-11;
  options.relative = 1e-9;
  options.auxiliary_absolute = 1e-9;
  return options;
}

void expect_balance(const seq::SequenceResult& r) {
  EXPECT_TRUE(r.balance.holds) << r.balance.residual << " of " << r.balance.largest_moved;
}

TEST(SequenceExact, ATankDrainsByTheRootLawAndRunsDry) {
  // sqrt(V) falls as a straight line: V = (sqrt(V0) - k t / 2)^2.
  const double k = 0.02, first = 2.0, rest = 1e-3;
  const auto r = seq::run_sequence(test::draining_tank(k, rest), from({first, 0.0}, 400.0), tight());
  EXPECT_EQ(r.status, seq::SequenceStatus::finished);
  expect_balance(r);
  ASSERT_EQ(r.trace.events.size(), 1U);
  EXPECT_NEAR(r.trace.events[0].event.time, 2.0 * (std::sqrt(first) - std::sqrt(rest)) / k,
              1e-4);  // 2e-8 m3 of tolerances over a last flow of 6e-4 m3/s, and the width of the search
  EXPECT_NEAR(r.amounts[0], rest, 1e-9);  // closed at the event: nothing passes afterwards, nothing is clipped
  EXPECT_EQ(r.amounts[1], -(r.amounts[0] - first));
  EXPECT_EQ(r.time, 400.0);
}

/// Upright tank of area A with a hole: q = Cd a sqrt(2 g V / A).
double root_constant(double area, double hole, double discharge) {
  return discharge * hole * std::sqrt(2.0 * 9.81 / area);
}

double emptied_after(double area, double height, double hole, double discharge) {
  const double constant = root_constant(area, hole, discharge);
  const double rest = 1e-8 * area * height;  // a ten-thousandth of the time is left with a hundred-millionth
  const auto r = seq::run_sequence(test::draining_tank(constant, rest), from({area * height, 0.0}, 1e5), tight());
  expect_balance(r);
  return r.trace.events.empty() ? 0.0 : r.trace.events[0].event.time;
}

TEST(SequenceExact, PublishedTanksEmpty) {
  // Formula of the examples, evaluated: 2 A sqrt(H) / (Cd a sqrt(2 g)); the last time is printed as 103.0 s
  // (reference row DRAIN-vert).
  const double pi = std::numbers::pi;
  const double area = pi / 4.0 * 1.2 * 1.2, hole = pi / 4.0 * 0.05 * 0.05;
  EXPECT_NEAR(emptied_after(area, 3.0, hole, 0.6), 2.0 * area * std::sqrt(3.0) / 0.6 / hole / std::sqrt(2.0 * 9.81),
              0.2);
  EXPECT_NEAR(emptied_after(3.2, 5.0, 10e-4, 0.6), 2.0 * 3.2 * std::sqrt(5.0) / 0.6 / 10e-4 / std::sqrt(2.0 * 9.81),
              1.0);
  EXPECT_NEAR(emptied_after(1.0, 2.0, 0.01, 0.62), 103.0, 0.05);
}

TEST(SequenceExact, AnExponentialAndItsThirdOrder) {
  test::ModelOf model;
  model.count = 2;
  model.link_ends = {{0, 1}};
  model.law = [](double, const auto& v, auto q, auto) { q[0] = 0.1 * v.amounts[0]; };
  const auto fixed = [&](double step) {
    seq::SequenceOptions loose;
    loose.absolute = 1.0;
    loose.longest_step = loose.first_step = step;
    return std::abs(seq::run_sequence(model, from({1.0, 0.0}, 20.0), loose).amounts[0] - std::exp(-2.0));
  };
  EXPECT_NEAR(fixed(1.0) / fixed(0.5), 8.0, 0.5);  // third order: half the step, an eighth of the error
  const auto r = seq::run_sequence(model, from({1.0, 0.0}, 20.0), tight());
  expect_balance(r);
  EXPECT_NEAR(r.amounts[0], std::exp(-2.0), 1e-7);
}

TEST(SequenceExact, TwoTanksBecomeLevel) {
  // Head d = V1 / A1 - V2 / A2 falls as sqrt(d) = sqrt(d0) - k (1 / A1 + 1 / A2) t / 2.
  const double k = 0.01, first = 1.95, soft = 1e-6;
  const auto model = test::joined_tanks(k, 1.0, 2.0, soft);
  const double until = 100.0;
  const auto r = seq::run_sequence(model, from({2.0, 0.1}, until), tight());
  const double root = std::sqrt(first) - k * 1.5 * until / 2.0;
  EXPECT_NEAR(r.amounts[0] - r.amounts[1] / 2.0, root * root, 1e-6);
  expect_balance(r);
  const auto end = seq::run_sequence(model, from({2.0, 0.1}, 1000.0));
  EXPECT_NEAR(end.amounts[0], end.amounts[1] / 2.0, 5e-6);  // some steps of 2e-6 of 0.7 m3 about a sharp corner
  expect_balance(end);
}

TEST(SequenceExact, ABallKeepsItsBounces) {
  const double e = 0.8, g = 9.80665;
  seq::SequenceStart start = from({0.0}, 100.0);
  start.auxiliaries = {1.0, 0.0};
  start.marks = {0.0};
  const auto r = seq::run_sequence(test::bouncing_ball(e, 10), start, tight());
  EXPECT_EQ(r.status, seq::SequenceStatus::stopped);
  EXPECT_EQ(r.stop_reason, 1);
  ASSERT_EQ(r.trace.events.size(), 10U);
  const double fall = std::sqrt(2.0 / g);
  double expected = fall, hop = 2.0 * fall * e;
  for (const auto& record : r.trace.events) {
    EXPECT_NEAR(record.event.time, expected, 1e-6);  // ten moments, each found within 1e-8 s
    expected += hop;
    hop *= e;
  }
}

TEST(SequenceExact, ACrackInClosedFormMonthLong) {
  // Each cycle loses k sqrt(p) on, and what the blow-down gives off; the pump makes up for it.
  const double compliance = 3e-9, p = 186e3, k = 2.4e-9, on = 150.0, off = 195.0;
  const test::PumpedCrack model(p, compliance, {k, 0.5}, on, off);
  seq::SequenceStart start = from({20.0, 0.0, 0.0}, 1000.0 * (on + off));
  start.timed = {{0.0, 0, test::PumpedCrack::starts}};
  const auto r = seq::run_sequence(model, start);
  EXPECT_EQ(r.status, seq::SequenceStatus::finished);
  expect_balance(r);
  const double root = std::sqrt(p) - k * off / (2.0 * compliance);
  const double cycle = k * std::sqrt(p) * on + compliance * (p - root * root);
  // The event at the very end starts the pump once more, which moves nothing through the leak.
  EXPECT_NEAR(r.amounts[test::PumpedCrack::sump], 1000.0 * cycle, 1e-10 * 1000.0 * cycle);
  const auto wet =
      std::ranges::find_if(r.trace.events, [](const auto& e) { return e.event.source == seq::EventSource::guard; });
  ASSERT_NE(wet, r.trace.events.end());
  const double whole = std::floor(test::PumpedCrack::sensor / cycle);
  const double missing = test::PumpedCrack::sensor - whole * cycle;
  ASSERT_LT(missing, k * std::sqrt(p) * on);  // falls into a pumping phase
  EXPECT_NEAR(wet->event.time, whole * (on + off) + missing / (k * std::sqrt(p)), 1e-5);
}

/// A pump p = p0 - r q feeds a leak q = k(t) p; the pack may be algebraic up to `high`.
struct FedLeak : test::ModelOf {
  static constexpr double p0 = 2e5, r = 1e6, k = 1e-9, compliance = 3e-9;
  double high = 1e-3;

  explicit FedLeak(double fading) {
    count = 3;
    link_ends = {{0, 1}, {1, 2}};
    law = [fading](double t, const auto& v, auto q, auto) {
      const double p = v.amounts[1] / compliance;
      q[0] = (p0 - p) / r;
      q[1] = k * std::exp(-fading * t) * p;
    };
  }
  [[nodiscard]] seq::Pack pack(double /*t*/, const seq::SequenceView& /*v*/) const { return {true, 1, 0, 0.0, high}; }
};

TEST(SequenceExact, AnAlgebraicPackGivesWhatTheLeakTakes) {
  const FedLeak model(0.0);
  const auto run = seq::run_sequence(model, from({1.0, 0.0, 0.0}, 86400.0));
  EXPECT_EQ(run.status, seq::SequenceStatus::finished);
  expect_balance(run);
  const double p = FedLeak::p0 / (1.0 + FedLeak::r * FedLeak::k);
  EXPECT_NEAR(run.amounts[1], p * FedLeak::compliance, 1e-9 * p * FedLeak::compliance);
  // Steady loss, less what the first milliseconds lack (relaxation time 3 ms): tolerance a part in a million.
  EXPECT_NEAR(run.amounts[2], FedLeak::k * p * 86400.0, 1e-6 * FedLeak::k * p * 86400.0);
  EXPECT_GT(run.algebraic_time, 86000.0);
  EXPECT_LT(run.steps, 500U);
  // What the switch itself moved is in the ledger under its own cause, and small.
  EXPECT_LT(std::abs(run.passed(-1, seq::cause_pack_settles)), 1e-5 * p * FedLeak::compliance + 1e-9);
}

TEST(SequenceExact, APackThatLeavesItsBoundsIsDynamicAgain) {
  FedLeak model(0.01);
  model.high = FedLeak::p0 / (1.0 + 0.5 * FedLeak::r * FedLeak::k) * FedLeak::compliance;  // reached at half the leak
  const auto run = seq::run_sequence(model, from({1.0, 0.0, 0.0}, 100.0));
  EXPECT_EQ(run.status, seq::SequenceStatus::finished);
  expect_balance(run);
  EXPECT_GT(run.algebraic_time, 10.0);
  EXPECT_LT(run.algebraic_time, 100.0 * std::log(2.0) + 1.0);
  const double p = FedLeak::p0 / (1.0 + FedLeak::r * FedLeak::k * std::exp(-1.0));
  EXPECT_NEAR(run.amounts[1], p * FedLeak::compliance, 1e-5 * p * FedLeak::compliance);  // some tolerances of a step
}

}  // namespace
}  // namespace forecourse
