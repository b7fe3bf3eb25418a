// What the workbench waits for after each change: the station for its forms, and the wants of the sheet in view.
#include <benchmark/benchmark.h>

#include <fstream>
#include <iterator>
#include <string>

#include "forecourse/server/answers/answers.h"

namespace {

using namespace forecourse;
using report::Json;

std::string text_of(const char* name) {
  std::ifstream in(std::string(SITES_DIR) + "/" + name + ".toml", std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

void station(benchmark::State& state, const char* name) {
  const std::string text = text_of(name);
  for (auto _ : state) benchmark::DoNotOptimize(server::station_json({text, 1, "a.toml", true, "", ""}).dump());
}
BENCHMARK_CAPTURE(station, hollin_gap, "hollin-gap")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(station, forty_hoses, "marle-cross")->Unit(benchmark::kMillisecond);

const Json wants{{{"study", "flow"}, {"parts", {"states"}}},
                 {{"drawing", "section"}},
                 {{"drawing", "plan"}},
                 {{"drawing", "grade-line"}},
                 {{"drawing", "budget"}},
                 {{"study", "findings"}}};

void one(benchmark::State& state, const char* name, std::size_t which) {
  const std::string text = text_of(name);
  for (auto _ : state) benchmark::DoNotOptimize(server::answer(text, "a.toml", wants[which], {}).dump());
}
BENCHMARK_CAPTURE(one, flow_states, "hollin-gap", 0)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(one, section, "hollin-gap", 1)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(one, findings, "hollin-gap", 5)->Unit(benchmark::kMillisecond);

void all(benchmark::State& state, const char* name) {
  const std::string text = text_of(name);
  for (auto _ : state) {
    server::Answers answers(text, "a.toml");
    for (const Json& want : wants) benchmark::DoNotOptimize(answers.answer(want, {}).dump());
  }
}
BENCHMARK_CAPTURE(all, hollin_gap, "hollin-gap")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(all, forty_hoses, "marle-cross")->Unit(benchmark::kMillisecond);

}  // namespace
