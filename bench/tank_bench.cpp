// How many volumes and levels a second, and how long a tank takes to build.
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdint>
#include <vector>

#include "forecourse/parts/tank/tank_volume.h"

namespace forecourse::parts {
namespace {

constexpr std::size_t count = 1024;

/// Shares of the whole, in mixed order.
std::vector<double> shares() {
  std::vector<double> all(count);
  std::uint64_t state = 1;
  for (double& share : all) {
    state = state * 6364136223846793005ULL + 1442695040888963407ULL;
    share = static_cast<double>(state >> 11) * 0x1p-53;
  }
  return all;
}

RoundTank flat() { return {.diameter = 2.438, .length = 6.604}; }

RoundTank dished(double pitch) {
  return {.diameter = 2.438,
          .length = 6.604,
          .low = {.kind = HeadKind::dished},
          .high = {.kind = HeadKind::dished},
          .incline = std::atan(pitch)};
}

template <class Ask>
void time_asking(benchmark::State& state, const Ask& ask) {
  const std::vector<double> at = shares();
  std::size_t i = 0;
  for (auto _ : state) {
    benchmark::DoNotOptimize(ask(at[i]));
    i = (i + 1) % count;
  }
  state.SetItemsProcessed(state.iterations());
}

void volumes(benchmark::State& state, const TankShape& shape) {
  const TankVolume tank(shape);
  time_asking(state, [&](double share) { return tank.volume(share * tank.full_level()); });
}

void levels(benchmark::State& state, const TankShape& shape) {
  const TankVolume tank(shape);
  time_asking(state, [&](double share) { return tank.level(share * tank.capacity()); });
}

void building(benchmark::State& state, const TankShape& shape) {
  for (auto _ : state) benchmark::DoNotOptimize(TankVolume(shape).capacity());
}

/// A chart of a line for each hundredth of the depth, its tank built first.
void chart(benchmark::State& state, const TankShape& shape) {
  for (auto _ : state) {
    const TankVolume tank(shape);
    double sum = 0.0;
    for (int i = 0; i <= 100; ++i) sum += tank.volume(tank.level_at({.along = 1.0}, 0.01 * i * tank.full_level()));
    benchmark::DoNotOptimize(sum);
  }
}

BENCHMARK_CAPTURE(volumes, level_flat, flat());
BENCHMARK_CAPTURE(volumes, level_dished, dished(0.0));
BENCHMARK_CAPTURE(volumes, pitched_dished, dished(0.01));
BENCHMARK_CAPTURE(volumes, box, BoxTank{6.0, 2.0, 2.0, 0.01, 0.0});
BENCHMARK_CAPTURE(levels, level_flat, flat());
BENCHMARK_CAPTURE(levels, pitched_dished, dished(0.01));
BENCHMARK_CAPTURE(building, level_dished, dished(0.0));
BENCHMARK_CAPTURE(building, pitched_dished, dished(0.01));
BENCHMARK_CAPTURE(chart, pitched_dished, dished(0.01));

}  // namespace
}  // namespace forecourse::parts
