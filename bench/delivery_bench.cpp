// A whole delivery, from the station to the told run: the goal is 5 ms.
#include <benchmark/benchmark.h>

#include <fstream>
#include <sstream>
#include <string>

#include "forecourse/site/read.h"
#include "forecourse/studies/delivery/delivery.h"

namespace {

using namespace forecourse;

/// Two compartments into two tanks that share a vent, with vapor return; with cases and ranges, nine runs.
void run(benchmark::State& state, bool all) {
  std::ifstream file(std::string(SITES_DIR) + "/marle-cross.toml");
  std::stringstream text;
  text << file.rdbuf();
  const site::Site site = site::read_site(text.str()).value;
  studies::DeliveryOptions options;
  options.table = options.spans = all;
  for (auto _ : state) benchmark::DoNotOptimize(studies::study_delivery(site, options));
}

void delivery(benchmark::State& state) { run(state, false); }
void delivery_with_cases_and_ranges(benchmark::State& state) { run(state, true); }

BENCHMARK(delivery)->Unit(benchmark::kMillisecond);
BENCHMARK(delivery_with_cases_and_ranges)->Unit(benchmark::kMillisecond);

}  // namespace
