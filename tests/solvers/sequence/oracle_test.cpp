// SOURCE: [cvode, CVODE with root finding, relative tolerance 1e-10, pack held as excess]
// Twelve sequences against a stiff ODE library. Laws are shared: the library must know every one-way law, or it solves
// another problem. Goals: moments within 1 ms or 0.1 %, amounts within 0.01 %.
#include <gtest/gtest.h>

#include "solvers/sequence/cvode_run.h"
#include "solvers/sequence/knock_down.h"
#include "solvers/sequence/small_models.h"

namespace forecourse {
namespace {

namespace seq = solvers::sequence;
using test::KnockDown;
using test::KnockDownCase;

/// Below this an amount is not compared by its share: a hundredth of a milliliter.
constexpr double nothing = 1e-8;

template <class M>
void expect_same(const M& model, const seq::SequenceStart& start, const seq::SequenceOptions& options = {},
                 test::CvodeOptions cvode = {}) {
  const auto ours = seq::run_sequence(model, start, options);
  const auto theirs = test::CvodeRun<M>(model, start, cvode).run();
  EXPECT_TRUE(ours.status == seq::SequenceStatus::finished || ours.status == seq::SequenceStatus::stopped);
  EXPECT_TRUE(ours.balance.holds) << ours.balance.residual;
  ASSERT_EQ(ours.trace.events.size(), theirs.events.size());
  for (std::size_t i = 0; i < theirs.events.size(); ++i) {
    const seq::Event& a = ours.trace.events[i].event;
    const seq::Event& b = theirs.events[i];
    EXPECT_EQ(a.id, b.id) << "event " << i;
    EXPECT_EQ(a.source, b.source) << "event " << i;
    EXPECT_NEAR(a.time, b.time, std::max(1e-3, 1e-3 * b.time)) << "event " << i;
  }
  for (std::size_t c = 0; c < theirs.amounts.size(); ++c) {
    const double moved = std::abs(theirs.amounts[c] - start.amounts[c]);
    EXPECT_NEAR(ours.amounts[c] - start.amounts[c], theirs.amounts[c] - start.amounts[c], 1e-4 * moved + nothing)
        << "compartment " << c;
  }
  ::testing::Test::RecordProperty("steps", static_cast<int>(ours.steps));
}

void expect_same(const KnockDownCase& given) {
  const KnockDown model(given);
  expect_same(model, model.start());
}

TEST(FullSequenceOracle, ATankRunsDry) {
  seq::SequenceStart start;
  start.end = 400.0;
  start.amounts = {2.0, 0.0};
  expect_same(test::draining_tank(0.02, 1e-3), start);
}

TEST(FullSequenceOracle, TwoTanksBecomeLevel) {
  seq::SequenceStart start;
  start.end = 300.0;
  start.amounts = {2.0, 0.1};
  expect_same(test::joined_tanks(0.01, 1.0, 2.0, 1e-3), start);
}

TEST(FullSequenceOracle, APumpKeepsASumpBetweenTwoLevels) {
  seq::SequenceStart start;
  start.end = 1000.0;
  start.amounts = {100.0, 0.2, 0.0};
  expect_same(test::pumped_sump(5e-3, 0.03, 0.5, 0.1), start);
}

TEST(FullSequenceOracle, NoValveAndAnEmergencyStop) {
  KnockDownCase given;
  given.has_valve = false;
  expect_same(given);
}

TEST(FullSequenceOracle, NoValveAndASensorThatStopsThePump) {
  KnockDownCase given;
  given.has_valve = false;
  given.sensor_stops_pump = true;
  expect_same(given);
}

TEST(FullSequenceOracle, AllIntoTheSumpUntilItOverflows) {
  KnockDownCase given;
  given.has_valve = false;
  given.into_sump = 1.0;
  given.stop_at = 180.0;
  expect_same(given);
}

TEST(FullSequenceOracle, AValveThatShutsIn30Milliseconds) { expect_same(KnockDownCase{}); }

TEST(FullSequenceOracle, ASlowValveAndLittleAboveIt) {
  KnockDownCase given;
  given.closing = 2.0;
  given.hold_up = 8e-5;
  expect_same(given);
}

TEST(FullSequenceOracle, ALeakingSeatUnderARunningPump) {
  KnockDownCase given;
  given.seat_leak = 1.2e-9;  // [m3/s/sqrt(Pa)], 0.5 gph
  given.stop_at = 1000.0;
  expect_same(given);
}

TEST(FullSequenceOracle, ASmallBreakAndALateStop) {
  KnockDownCase given;
  given.has_valve = false;
  given.break_area = 3e-5;
  given.stop_at = 400.0;
  expect_same(given);
}

TEST(FullSequenceOracle, ACrackInClosedFormUnderACyclingPump) {
  const test::PumpedCrack model(186e3, 3e-9, {2.4e-8, 0.5}, 150.0, 45.0);
  seq::SequenceStart start;
  start.end = 2000.0;
  start.amounts = {20.0, 0.0, 0.0};
  start.timed = {{0.0, 0, test::PumpedCrack::starts}};
  expect_same(model, start);
}

TEST(FullSequenceOracle, ABallBounces) {
  const auto model = test::bouncing_ball(0.8, 8);
  seq::SequenceStart start;
  start.end = 100.0;
  start.amounts = {0.0};
  start.auxiliaries = {1.0, 0.0};
  start.marks = {0.0};
  expect_same(model, start);
}

}  // namespace
}  // namespace forecourse
