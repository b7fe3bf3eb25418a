// Failures of Hollin Gap, both scenes: how long until a replay can begin. Wanted: within 1 s, struck within 200 ms.
#include <benchmark/benchmark.h>

#include <fstream>
#include <iterator>

#include "forecourse/lesson/failures/replay.h"
#include "forecourse/site/read.h"

namespace {

using namespace forecourse;

void replay(benchmark::State& state, const lesson::FailureKind* kind, const site::Site* site) {
  for (auto _ : state) benchmark::DoNotOptimize(lesson::run_failure(*kind, *site, {}).scenes.size());
}

/// One benchmark for each kind that the station can have.
const bool registered = [] {
  std::ifstream file(SITES_DIR "/hollin-gap.toml");
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  static const site::Site site = site::read_site(text).value;
  for (const lesson::FailureKind& kind : lesson::failure_kinds()) {
    if (!kind.lacks(site, {}).empty()) continue;
    benchmark::RegisterBenchmark(("replay/" + std::string(kind.id)).c_str(), replay, &kind, &site)
        ->Unit(benchmark::kMillisecond);
  }
  return true;
}();

}  // namespace
