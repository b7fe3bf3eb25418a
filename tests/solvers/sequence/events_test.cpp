// SOURCE: closed form
#include <gtest/gtest.h>

#include <atomic>
#include <thread>

#include "forecourse/solvers/sequence/random/draws.h"
#include "solvers/sequence/knock_down.h"
#include "solvers/sequence/small_models.h"

namespace forecourse {
namespace {

namespace seq = solvers::sequence;

/// One link of constant flow that nothing needs; events are what is tested.
test::ModelOf clockwork() {
  test::ModelOf model;
  model.count = 2;
  model.link_ends = {{0, 1}};
  model.law = [](double, const auto&, auto q, auto) { q[0] = 1e-3; };
  return model;
}

seq::SequenceStart two(double end) {
  seq::SequenceStart start;
  start.amounts = {10.0, 0.0};
  start.end = end;
  return start;
}

std::vector<int> ids(const seq::SequenceResult& r) {
  std::vector<int> ids;
  for (const auto& e : r.trace.events) ids.push_back(e.event.id);
  return ids;
}

TEST(SequenceEvents, QueueOrdersByTimeKindIdAndScheduling) {
  seq::EventQueue queue;
  for (const seq::TimedEvent& e : {seq::TimedEvent{2.0, 0, 0, 0.0},
                                   {1.0, 1, 0, 1.0},
                                   {1.0, 0, 7, 2.0},
                                   {1.0, 0, 3, 3.0},
                                   {1.0, 0, 3, 4.0},
                                   {1.0, 0, 7, 5.0}}) {
    queue.add(e);
  }
  std::vector<double> order;
  for (; !queue.empty(); queue.drop_next()) order.push_back(queue.next().value);
  EXPECT_EQ(order, (std::vector<double>{3.0, 4.0, 2.0, 5.0, 1.0, 0.0}));
}

TEST(SequenceEvents, AtOneInstantKindThenIdThenTimedBeforeGuard) {
  auto model = clockwork();
  model.rules = {{seq::Crossing::rising, 1}, {seq::Crossing::rising, 0}, {seq::Crossing::rising, 1}};
  model.guard_law = [](double t, const auto&, auto value) { value[0] = value[1] = value[2] = t - 3.0; };
  auto start = two(5.0);
  start.timed = {{3.0, 1, 0, 0.0}, {3.0, 0, 9, 0.0}, {3.0, 2, 8, 0.0}};
  const auto r = seq::run_sequence(model, start);
  EXPECT_EQ(ids(r), (std::vector<int>{1, 9, 0, 0, 2, 8}));
  for (const auto& e : r.trace.events) EXPECT_EQ(e.event.time, 3.0);
  EXPECT_EQ(r.trace.events[2].event.source, seq::EventSource::timed);
  EXPECT_EQ(r.trace.events[3].event.source, seq::EventSource::guard);
}

TEST(SequenceEvents, ATimedEventComesAtItsOwnTimeExactly) {
  auto model = clockwork();
  std::vector<double> seen;
  model.event_law = [&](const auto&, auto& m) { seen.push_back(m.time()); };
  auto start = two(10.0);
  std::vector<double> wanted;
  for (int i = 1; i <= 40; ++i) {
    wanted.push_back(0.1 * i + 1e-7 * i * i);
    start.timed.push_back({wanted.back(), 0, i, 0.0});
  }
  const auto r = seq::run_sequence(model, start);
  EXPECT_EQ(seen, wanted);  // bit for bit
  EXPECT_EQ(r.time, 10.0);
}

TEST(SequenceEvents, AnEventThatTakesAwayACauseTakesAwayItsEvent) {
  auto model = clockwork();
  model.rules = {{seq::Crossing::rising, 0}, {seq::Crossing::rising, 1}};
  model.guard_law = [](double t, const auto& v, auto value) {
    value[0] = t - 3.0;
    value[1] = v.flag(0) ? -1.0 : t - 3.0;
  };
  model.event_law = [](const auto& e, auto& m) { m.set_flag(0, e.id == 0); };
  EXPECT_EQ(ids(seq::run_sequence(model, two(5.0))), std::vector<int>{0});
}

TEST(SequenceEvents, ACascadeThatNeverEndsIsStoppedAndNamed) {
  auto model = clockwork();
  model.rules = {{seq::Crossing::rising}, {seq::Crossing::falling}};
  model.guard_law = [](double t, const auto& v, auto value) {
    value[0] = value[1] = v.flag(0) == (t < 1.0) ? 1.0 : -1.0;
  };
  model.rules[1].waits = false;
  model.event_law = [](const auto&, auto& m) { m.set_flag(0, !m.flag(0)); };
  const auto r = seq::run_sequence(model, two(5.0));
  EXPECT_EQ(r.status, seq::SequenceStatus::cascade_limit);
  ASSERT_EQ(r.cascade.size(), 65U);
  EXPECT_EQ(r.cascade[63].id + r.cascade[64].id, 1);  // the two that make each other happen
  EXPECT_NEAR(r.time, 1.0, 1e-6);
  EXPECT_NEAR(r.amounts[1], 1e-3, 1e-9);  // what it had is kept
  EXPECT_TRUE(r.balance.holds);
}

TEST(SequenceEvents, AGuardComesAgainOnlyAfterItsHysteresis) {
  auto model = clockwork();
  model.rules = {{seq::Crossing::rising, 0, 0.0},
                 {seq::Crossing::rising, 0, 0.5},
                 {seq::Crossing::rising, 0, 0.0, true},
                 {seq::Crossing::either, 0, 0.2}};
  model.guard_law = [](double t, const auto&, auto value) {
    for (double& v : value) v = std::sin(t) * (t < 14.0 ? 0.4 : 1.0);
  };
  seq::SequenceOptions options;
  options.longest_step = 0.1;
  auto start = two(20.0);
  start.time = 6.0;  // below zero; zero is passed upward at 2 pi, 4 pi and 6 pi, downward at 3 pi and 5 pi
  const auto r = seq::run_sequence(model, start, options);
  std::vector<int> counts(4);
  for (const int id : ids(r)) ++counts[static_cast<std::size_t>(id)];
  EXPECT_EQ(counts, (std::vector<int>{3, 2, 1, 5}));
}

TEST(SequenceEvents, StepLimitAndCancelKeepWhatThereWas) {
  const auto model = clockwork();
  seq::SequenceOptions options;
  options.longest_step = 1e-3;
  options.step_limit = 100;
  const auto limited = seq::run_sequence(model, two(5.0), options);
  EXPECT_EQ(limited.status, seq::SequenceStatus::step_limit);
  EXPECT_NEAR(limited.time, 0.1, 1e-9);
  EXPECT_NEAR(limited.amounts[1], 1e-4, 1e-12);
  options.step_limit = 100'000;
  Context context;
  context.cancelled = [] { return true; };
  const auto cancelled = seq::run_sequence(model, two(50.0), options, {}, context);
  EXPECT_EQ(cancelled.status, seq::SequenceStatus::cancelled);
  EXPECT_GT(cancelled.time, 0.0);
}

TEST(SequenceEvents, ALawThatGivesNoNumberEndsTheRun) {
  auto model = clockwork();
  model.law = [](double t, const auto&, auto q, auto) { q[0] = t < 1.0 ? 1e-3 : std::nan(""); };
  const auto r = seq::run_sequence(model, two(5.0));
  EXPECT_EQ(r.status, seq::SequenceStatus::step_too_small);
  EXPECT_NEAR(r.time, 1.0, 1e-6);
  EXPECT_TRUE(r.balance.holds);
}

TEST(SequenceEvents, AStartThatDoesNotFitIsSaid) {
  const auto status = [](const auto& model, const auto& start) { return seq::run_sequence(model, start).status; };
  auto start = two(5.0);
  start.amounts.push_back(1.0);
  EXPECT_EQ(status(clockwork(), start), seq::SequenceStatus::bad_start);
  start = two(-1.0);
  EXPECT_EQ(status(clockwork(), start), seq::SequenceStatus::bad_start);
  start = two(5.0);
  start.amounts[0] = std::nan("");
  EXPECT_EQ(status(clockwork(), start), seq::SequenceStatus::bad_start);
  auto model = clockwork();
  model.link_ends = {{0, 2}};
  EXPECT_EQ(status(model, two(5.0)), seq::SequenceStatus::bad_start);
}

TEST(SequenceEvents, AnErrorOfZeroMakesTheStepGrow) { EXPECT_LT(seq::run_sequence(clockwork(), two(1e6)).steps, 20U); }

TEST(SequenceBalance, EveryAmountHasACause) {
  test::KnockDownCase given;
  const test::KnockDown model(given);
  const auto r = seq::run_sequence(model, model.start());
  using M = test::KnockDown;
  EXPECT_TRUE(r.balance.holds);
  EXPECT_LE(r.balance.residual, 1e-12 * r.balance.largest_moved);
  const double closing = r.passed(M::break_sump, M::closing_break) + r.passed(M::break_pool, M::closing_break);
  const double seat = r.passed(M::break_sump, M::leaking_seat) + r.passed(M::break_pool, M::leaking_seat);
  const double drained = r.passed(M::drain_sump) + r.passed(M::drain_pool);
  EXPECT_GT(closing, 0.0);
  EXPECT_EQ(seat, 0.0);
  EXPECT_NEAR(closing + drained, r.amounts[M::sump] + r.amounts[M::pool] + r.amounts[M::air], 1e-15);
  EXPECT_NEAR(r.passed(M::break_sump) / (r.passed(M::break_sump) + r.passed(M::break_pool)), given.into_sump, 1e-12);
}

TEST(SequenceBalance, ATamperedAmountIsFound) {
  const std::vector<seq::LinkEnds> ends = {{0, 1}};
  seq::SequenceStart start = two(1.0);
  seq::SequenceState state(start, ends);
  state.transfer(0, 1, 0.25, 4);
  EXPECT_TRUE(seq::balance_of(state).holds);
  state.change[1].add(1e-11);
  const auto off = seq::balance_of(state);
  EXPECT_FALSE(off.holds);
  EXPECT_EQ(off.worst_compartment, 1);
  EXPECT_NEAR(off.total, 1e-11, 1e-15);
}

TEST(SequenceBalance, MillilitersOutOfALargeTankKeepTheirDigits) {
  auto model = clockwork();
  model.law = [](double t, const auto&, auto q, auto) { q[0] = 1e-9 * (1.0 + std::sin(t)); };
  auto start = two(600.0);
  start.amounts[0] = 1e6;
  seq::SequenceOptions options;
  options.longest_step = 0.05;
  const auto r = seq::run_sequence(model, start, options);
  EXPECT_TRUE(r.balance.holds) << r.balance.residual;
  EXPECT_GT(r.steps, 10'000U);
}

TEST(SequenceTrace, AReplayIsTheSameAndAChangeIsFound) {
  test::KnockDownCase given;
  given.sensor_stops_pump = true;
  given.has_valve = false;
  const test::KnockDown model(given);
  const auto first = seq::run_sequence(model, model.start(), {}, {7, {1.0, 2.0}, 3, 4, "build"});
  EXPECT_TRUE(seq::replay(model, model.start(), {}, first.trace).same());
  EXPECT_EQ(first.trace.steps.back().hash, first.hash);
  given.relay += 3e-9;
  const test::KnockDown other(given);
  const auto changed = seq::replay(other, other.start(), {}, first.trace);
  EXPECT_EQ(changed.difference, seq::TraceDifference::event);
  EXPECT_EQ(changed.index, 1U);  // the relay drops a little later
  const auto second = seq::run_sequence(other, other.start());
  EXPECT_TRUE(seq::compare_events(first.trace, second.trace).same());  // within what two builds may differ
}

TEST(SequenceTrace, RecordsHoldTheStateAfterEachEvent) {
  const test::KnockDown model(test::KnockDownCase{});
  const auto r = seq::run_sequence(model, model.start());
  using M = test::KnockDown;
  ASSERT_EQ(r.trace.events[0].event.id, M::shut);
  EXPECT_EQ(r.trace.events[0].flags_before ^ r.trace.events[0].flags_after, 1U << M::valve_shut);
  EXPECT_EQ(r.trace.flows(0)[M::break_pool], 0.0);
  EXPECT_GT(r.trace.passed(0)[M::break_pool], 0.0);
  const auto last = r.trace.events.size() - 1;
  EXPECT_GE(r.amounts[M::air], r.trace.amounts(last)[M::air]);
  seq::SequenceOptions options;
  options.keep_states = true;
  const auto kept = seq::run_sequence(model, model.start(), options);
  EXPECT_EQ(kept.trace.state(kept.steps - 1)[M::pool], kept.amounts[M::pool]);
  EXPECT_EQ(kept.hash, r.hash);
}

void on_threads(std::size_t threads, std::size_t count, const std::function<void(std::size_t)>& piece) {
  std::atomic<std::size_t> next{0};
  std::vector<std::jthread> all;
  for (std::size_t t = 0; t < threads; ++t) {
    all.emplace_back([&] {
      for (std::size_t i = next++; i < count; i = next++) piece(i);
    });
  }
}

std::vector<std::uint64_t> hashes(std::size_t threads) {
  const auto make = [](std::size_t i) {
    const seq::Draws draws(11, i);
    test::KnockDownCase given;
    given.has_valve = draws.happens(0, 0.5);
    given.stop_at = draws.lognormal(1, 60.0, 0.7);
    given.break_area = draws.triangular(2, 1e-5, 4e-4, 1.14e-3);
    const test::KnockDown model(given);
    return seq::Member<test::KnockDown>{model, model.start()};
  };
  Context context;
  if (threads > 1) {
    context.parallel_for = [=](std::size_t count, const auto& piece) { on_threads(threads, count, piece); };
  }
  const auto keep = [](std::size_t, const auto&, const seq::SequenceResult& r) {
    return r.status == seq::SequenceStatus::finished ? r.hash : std::uint64_t{0};
  };
  return seq::run_many(1000, make, keep, {}, context);
}

TEST(SequenceMany, OneTwoAndFourThreadsGiveTheSameBits) {
  const auto one = hashes(1);
  EXPECT_EQ(one, hashes(2));
  EXPECT_EQ(one, hashes(4));
  EXPECT_EQ(std::ranges::count(one, std::uint64_t{0}), 0);  // all finished, all balanced
}

}  // namespace
}  // namespace forecourse
