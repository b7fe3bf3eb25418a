// States of a station solved several at once, per instruction set: random sets from a cold start, neighbors after
// neighbors, and every set of a product of 16 hoses. Time is CPU time of the one thread.
#include <benchmark/benchmark.h>

#include "bench_station.h"
#include "forecourse/network/batch_solver.h"
#include "forecourse/network/system_solver.h"

namespace {

using namespace forecourse;
using lanes::InstructionSet;

std::vector<network::BatchCase> random_cases(int count) {
  std::uint64_t seed = 1;
  std::vector<network::BatchCase> cases;
  for (int i = 0; i < count; ++i) cases.push_back({bench::random_bits(seed), ~0ULL});
  return cases;
}

/// One hose opens or shuts from each eight states to the next.
std::vector<network::BatchCase> gray_cases(int count) {
  std::vector<network::BatchCase> cases;
  for (std::uint64_t i = 0; i < static_cast<std::uint64_t>(count); ++i) {
    // A reflected binary code in the upper bits, far from its start, where about half of the hoses are open.
    const std::uint64_t group = (i >> 3U) + 0x0000'5a5a'5a5a'5a5aULL;
    cases.push_back({(group ^ group >> 1U) << 3U | (i & 7U), ~0ULL});
  }
  return cases;
}

void report(benchmark::State& state, const network::BatchCounts& counts, std::size_t solved) {
  state.counters["states/s"] = benchmark::Counter(static_cast<double>(solved), benchmark::Counter::kIsRate);
  state.counters["steps"] = static_cast<double>(counts.steps) / static_cast<double>(counts.blocks);
  state.counters["one_by_one"] = static_cast<double>(counts.by_scalar);
}

void solve(benchmark::State& state, InstructionSet set, bool gray) {
  const int hoses = static_cast<int>(state.range(0));
  const network::PipingSystem system = bench::station(hoses, bench::pumps_of(hoses), state.range(1) != 0);
  const network::BatchSolver solver(system, set);
  const auto cases = gray ? gray_cases(16384) : random_cases(16384);
  network::BatchStates states;
  network::BatchCounts counts;
  std::size_t solved = 0;
  for (auto _ : state) {
    counts = solver.solve(cases, states);
    solved += cases.size();
  }
  report(state, counts, solved);
}

void every_set_of_sixteen(benchmark::State& state, InstructionSet set) {
  const network::PipingSystem system = bench::station(16, 2, state.range(0) != 0);
  const network::BatchSolver solver(system, set);
  network::BatchCounts counts;
  std::size_t solved = 0;
  double sum = 0.0;
  for (auto _ : state) {
    solver.solve_all(
        ~0ULL,
        [&](auto cases, const network::BatchStates& states) {
          solved += cases.size();
          sum += states.flow.front();
        },
        {}, &counts);
  }
  benchmark::DoNotOptimize(sum);
  report(state, counts, solved);
}

void one_by_one(benchmark::State& state) {
  const int hoses = static_cast<int>(state.range(0));
  const network::PipingSystem system = bench::station(hoses, bench::pumps_of(hoses), state.range(1) != 0);
  network::SystemSolver solver(system);
  std::uint64_t seed = 1;
  std::vector<char> open(static_cast<std::size_t>(hoses));
  for (auto _ : state) {
    const std::uint64_t bits = bench::random_bits(seed);
    for (std::size_t h = 0; h < open.size(); ++h) open[h] = static_cast<char>(bits >> h & 1U);
    benchmark::DoNotOptimize(solver.solve(open));
  }
}

const int registered = [] {
  const auto sizes = [](benchmark::internal::Benchmark* b) {
    for (const int hoses : {16, 32, 48}) b->Args({hoses, 0})->Args({hoses, 1});
    b->ArgNames({"hoses", "limited"})->Unit(benchmark::kMillisecond);
  };
  for (const InstructionSet set : lanes::supported_instruction_sets()) {
    const std::string of = std::string("/") + lanes::name(set);
    sizes(benchmark::RegisterBenchmark(("random_sets" + of).c_str(), solve, set, false));
    sizes(benchmark::RegisterBenchmark(("neighbors" + of).c_str(), solve, set, true));
    benchmark::RegisterBenchmark(("every_set_of_16_hoses" + of).c_str(), every_set_of_sixteen, set)
        ->ArgName("limited")
        ->Arg(0)
        ->Arg(1)
        ->Unit(benchmark::kMillisecond);
  }
  sizes(benchmark::RegisterBenchmark("one_by_one", one_by_one)->Unit(benchmark::kMicrosecond));
  return 0;
}();

}  // namespace
