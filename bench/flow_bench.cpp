// Reading a station, building its network, solving states, the whole flow study.
#include <benchmark/benchmark.h>

#include <fstream>
#include <iterator>
#include <string>

#include "forecourse/network/build.h"
#include "forecourse/network/solve.h"
#include "forecourse/site/read.h"
#include "forecourse/studies/flow/flow.h"
#include "forecourse/studies/flow/open_sets.h"

namespace {

using namespace forecourse;

std::string text_of(const char* name) {
  std::ifstream in(std::string(SITES_DIR) + "/" + name + ".toml", std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

void read_and_check(benchmark::State& state, const char* name) {
  const std::string text = text_of(name);
  for (auto _ : state) benchmark::DoNotOptimize(site::read_site(text));
}
BENCHMARK_CAPTURE(read_and_check, sixteen_hoses_and_more, "hollin-gap")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(read_and_check, forty_hoses, "marle-cross")->Unit(benchmark::kMillisecond);

void build(benchmark::State& state, const char* name) {
  const site::Site site = site::read_site(text_of(name)).value;
  for (auto _ : state) benchmark::DoNotOptimize(network::build_network(site));
}
BENCHMARK_CAPTURE(build, hollin_gap, "hollin-gap")->Unit(benchmark::kMicrosecond);

void solve_all_open(benchmark::State& state, const char* name) {
  const site::Site site = site::read_site(text_of(name)).value;
  const network::StationNetwork network = network::build_network(site);
  network::StationSolver solver(network);
  const auto all = studies::all_hoses(site).hoses;
  for (auto _ : state) benchmark::DoNotOptimize(solver.solve(all));
}
BENCHMARK_CAPTURE(solve_all_open, site_s, "site-s")->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(solve_all_open, hollin_gap, "hollin-gap")->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(solve_all_open, marle_cross_blending, "marle-cross")->Unit(benchmark::kMicrosecond);

void study(benchmark::State& state, const char* name) {
  const site::Site site = site::read_site(text_of(name)).value;
  for (auto _ : state) benchmark::DoNotOptimize(studies::study_flow(site, {}));
}
BENCHMARK_CAPTURE(study, hollin_gap, "hollin-gap")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(study, marle_cross, "marle-cross")->Unit(benchmark::kMillisecond);

}  // namespace
