// Sequences of events: how many a second, how long a month, how long a Monte Carlo.
#include <benchmark/benchmark.h>

#include <atomic>
#include <thread>

#include "../tests/solvers/sequence/knock_down.h"
#include "forecourse/solvers/sequence/random/draws.h"

namespace {

using namespace forecourse;
using test::KnockDown;
using test::KnockDownCase;
using test::PumpedCrack;
namespace seq = solvers::sequence;

seq::SequenceOptions untraced() {
  seq::SequenceOptions options;
  options.keep_events = false;
  options.keep_steps = false;
  return options;
}

/// 600 s after a break: 0 no valve, 1 a valve that shuts, 2 no valve and a sensor that stops the pump.
void struck(benchmark::State& state) {
  KnockDownCase given;
  given.has_valve = state.range(0) == 1;
  given.sensor_stops_pump = state.range(0) == 2;
  const KnockDown model(given);
  std::size_t steps = 0, evaluations = 0;
  for ([[maybe_unused]] auto _ : state) {
    const auto result = seq::run_sequence(model, model.start(), untraced());
    steps = result.steps;
    evaluations = result.evaluations;
    benchmark::DoNotOptimize(result.hash);
  }
  state.SetItemsProcessed(state.iterations());
  state.counters["steps"] = static_cast<double>(steps);
  state.counters["evaluations"] = static_cast<double>(evaluations);
}
BENCHMARK(struck)->DenseRange(0, 2);

/// 30 days of a crack under a pump that runs 150 s of each 345 s, with a full record of events and steps or without.
void crack_of_30_days(benchmark::State& state) {
  const double compliance = 3e-9;
  const PumpedCrack model(186e3, compliance, {2.4e-9, 0.5}, 150.0, 195.0);
  seq::SequenceStart start;
  start.end = 30.0 * 86400.0;
  start.amounts = {20.0, 0.0, 0.0};
  start.timed = {{0.0, 0, PumpedCrack::starts}};
  const seq::SequenceOptions options = state.range(0) != 0 ? seq::SequenceOptions{} : untraced();
  for ([[maybe_unused]] auto _ : state) {
    const auto result = seq::run_sequence(model, start, options);
    if (result.status != seq::SequenceStatus::finished) state.SkipWithError("did not finish");
    benchmark::DoNotOptimize(result.hash);
  }
}
BENCHMARK(crack_of_30_days)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

seq::Member<KnockDown> drawn(std::size_t run) {
  const seq::Draws draws(1, run);
  KnockDownCase given;
  given.has_valve = draws.happens(0, 0.5);
  given.seat_leak = draws.happens(1, 0.2) ? draws.lognormal(2, 1e-9, 1.0) : 0.0;
  given.stop_at = draws.lognormal(3, 60.0, 0.7);
  given.break_area = draws.triangular(4, 1e-5, 4e-4, 1.14e-3);
  given.into_sump = draws.uniform(5, 0.1, 0.6);
  given.sensor_stops_pump = draws.happens(6, 0.5);
  const KnockDown model(given);
  return {model, model.start()};
}

void on_threads(std::size_t threads, std::size_t count, const std::function<void(std::size_t)>& piece) {
  std::atomic<std::size_t> next{0};
  const auto work = [&] {
    for (std::size_t i = next++; i < count; i = next++) piece(i);
  };
  std::vector<std::jthread> others;
  for (std::size_t t = 1; t < threads; ++t) others.emplace_back(work);
  work();
}

/// 100,000 runs of drawn cases on two threads.
void monte_carlo(benchmark::State& state) {
  Context context;
  context.parallel_for = [](std::size_t count, const auto& piece) { on_threads(2, count, piece); };
  const auto keep = [](std::size_t, const auto&, const seq::SequenceResult& r) {
    return r.status == seq::SequenceStatus::finished ? r.amounts[KnockDown::pool] : -1.0;
  };
  for ([[maybe_unused]] auto _ : state) {
    const auto lost = seq::run_many(100'000, drawn, keep, untraced(), context);
    if (*std::min_element(lost.begin(), lost.end()) < 0.0) state.SkipWithError("a run did not finish");
    benchmark::DoNotOptimize(lost.data());
  }
}
BENCHMARK(monte_carlo)->Unit(benchmark::kSecond)->UseRealTime()->Iterations(1);

}  // namespace
