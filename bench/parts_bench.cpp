// Time of one call of each law, over a spread of flows that the processor cannot guess.
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdint>
#include <vector>

#include "forecourse/parts/law.h"

namespace forecourse::parts {
namespace {

constexpr std::size_t count = 1024;

// Flows [m3/s] spread evenly in the logarithm, in mixed order.
std::vector<double> flows(double lowest, double highest) {
  std::vector<double> all(count);
  std::uint64_t state = 1;
  for (double& flow : all) {
    state = state * 6364136223846793005ULL + 1442695040888963407ULL;
    flow = lowest * std::pow(highest / lowest, static_cast<double>(state >> 11) * 0x1p-53);
  }
  return all;
}

// A 2 in line of 30 m with gasoline: Re = 2000 at 0.0435 L/s.
PipeLaw line() { return pipe_law({30.0, 0.0525, 4.5e-5, 740.0, 5.0e-4}); }

const std::vector<CurvePoint> loss_points{{2e-4, 3e3}, {5e-4, 1e4}, {1e-3, 3e4}, {2e-3, 1.1e5}, {3e-3, 2.4e5}};

template <class AnyLaw>
void time_losses(benchmark::State& state, const AnyLaw& law, const std::vector<double>& at) {
  std::size_t i = 0;
  for (auto _ : state) {
    benchmark::DoNotOptimize(loss(law, at[i]));
    i = (i + 1) % count;
  }
}

void turbulent_pipe(benchmark::State& state) { time_losses(state, line(), flows(1e-4, 1e-2)); }
BENCHMARK(turbulent_pipe);

void any_regime_pipe(benchmark::State& state) { time_losses(state, line(), flows(1e-6, 1e-2)); }
BENCHMARK(any_regime_pipe);

void laminar_pipe(benchmark::State& state) { time_losses(state, line(), flows(1e-6, 3e-5)); }
BENCHMARK(laminar_pipe);

void quadratic(benchmark::State& state) { time_losses(state, QuadraticLaw{1e6, 1e9}, flows(1e-6, 1e-2)); }
BENCHMARK(quadratic);

void curve(benchmark::State& state) {
  time_losses(state, std::get<CurveLaw>(curve_law(loss_points)), flows(1e-5, 4e-3));
}
BENCHMARK(curve);

void pump(benchmark::State& state) {
  time_losses(state, PumpLaw{.curve = pump_from_runout(2.2e5, 5e-3), .speed_ratio = 1.0, .efficiency = {}},
              flows(1e-5, 4e-3));
}
BENCHMARK(pump);

void pipe_as_any_law(benchmark::State& state) { time_losses(state, Law{line()}, flows(1e-4, 1e-2)); }
BENCHMARK(pipe_as_any_law);

void turbulent_pipe_backwards(benchmark::State& state) {
  const PipeLaw law = line();
  std::vector<double> pressures;
  for (const double flow : flows(1e-4, 1e-2)) pressures.push_back(loss(law, flow).pressure_loss);
  std::size_t i = 0;
  for (auto _ : state) {
    benchmark::DoNotOptimize(flow_at(law, pressures[i]));
    i = (i + 1) % count;
  }
}
BENCHMARK(turbulent_pipe_backwards);

}  // namespace
}  // namespace forecourse::parts
