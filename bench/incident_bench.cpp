// Incidents on the sites' own models: how many sequences a second, how long a month, how long a Monte Carlo.
#include <benchmark/benchmark.h>

#include <atomic>
#include <fstream>
#include <iterator>
#include <thread>

#include "forecourse/site/read.h"
#include "forecourse/solvers/sequence/stepper.h"
#include "forecourse/studies/incident/release/told_run.h"
#include "forecourse/studies/incident/setup/make_case.h"
#include "forecourse/studies/incident/spread/spread.h"

namespace {

using namespace forecourse;
using namespace forecourse::studies;
namespace seq = solvers::sequence;

/// Site S struck at its last dispenser, or with a crack there, ready to be run.
struct Ready {
  explicit Ready(IncidentKind kind) {
    std::ifstream file(SITES_DIR "/site-s.toml");
    std::string text{std::istreambuf_iterator<char>(file), {}};
    text +=
        "\n[[incident]]\nkind = \"crack\"\nat = \"D3\"\nruns_for = \"150 s\"\nrests_for = \"195 s\"\n"
        "line_compliance = \"20 mL/psi\"\n[[incident.reading]]\nrate = \"2 gph\"\nat = \"10 psi\"\n";
    site = site::read_site(text).value;
    options.kind = kind;
    options.request.at.text = "D3";
    options.request.line_compliance = site::Entered<Compliance>{};
    const Compliance spring = Compliance::from_si(3e-9);
    options.request.line_compliance = site::Entered<Compliance>{spring, spring, spring, {}};
    request = merged_request(site, options);
    ground = lay_ground(site, options);
  }
  [[nodiscard]] Scene scene() const { return {site, options, request, ground}; }

  site::Site site;
  IncidentOptions options;
  site::IncidentRequest request;
  Groundwork ground;
};

/// 600 s after the blow: 0 every barrier acts, 1 no shear valve, 2 no shear valve and no sensor.
void struck(benchmark::State& state) {
  const Ready ready(IncidentKind::struck);
  std::set<Barrier> missing;
  if (state.range(0) > 0) missing.insert(Barrier::shear_valve);
  if (state.range(0) > 1) missing.insert(Barrier::sump_sensor);
  Inputs inputs;
  const release::Case given = make_case(ready.scene(), inputs, missing);
  const release::Model model(given);
  std::size_t steps = 0;
  for ([[maybe_unused]] auto _ : state) {
    const auto result = seq::run_sequence(model, model.start(), release::many_options());
    steps = result.steps;
    benchmark::DoNotOptimize(result.hash);
  }
  state.SetItemsProcessed(state.iterations());
  state.counters["steps"] = static_cast<double>(steps);
}
BENCHMARK(struck)->DenseRange(0, 2);

/// 30 days of a crack under a pump that runs 150 s of each 345 s, nothing to stop it.
void crack_of_30_days(benchmark::State& state) {
  const Ready ready(IncidentKind::crack);
  Inputs inputs;
  const release::Case given = make_case(ready.scene(), inputs, {Barrier::sump_sensor});
  const release::Model model(given);
  for ([[maybe_unused]] auto _ : state) {
    const auto result = seq::run_sequence(model, model.start(), release::many_options());
    if (result.status != seq::SequenceStatus::finished) state.SkipWithError("did not finish");
    benchmark::DoNotOptimize(result.hash);
  }
}
BENCHMARK(crack_of_30_days)->Unit(benchmark::kMillisecond);

/// What feeds the opening, from the site.
void groundwork(benchmark::State& state) {
  const Ready ready(IncidentKind::struck);
  for ([[maybe_unused]] auto _ : state) benchmark::DoNotOptimize(lay_ground(ready.site, ready.options).ends.size());
}
BENCHMARK(groundwork)->Unit(benchmark::kMicrosecond);

/// Hollin Gap struck: every run beside the likely one, and the ranges of what is uncertain, on one thread. Wanted:
/// within 200 ms.
void struck_with_ranges(benchmark::State& state) {
  std::ifstream file(SITES_DIR "/hollin-gap.toml");
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  const site::Site site = site::read_site(text).value;
  IncidentOptions options;
  options.kind = IncidentKind::struck;
  if (study_incident(site, options).drawn_for_range == 0) state.SkipWithError("nothing is uncertain");
  for ([[maybe_unused]] auto _ : state) benchmark::DoNotOptimize(study_incident(site, options).escaped.high);
}
BENCHMARK(struck_with_ranges)->Unit(benchmark::kMillisecond);

void on_two_threads(std::size_t count, const std::function<void(std::size_t)>& piece) {
  std::atomic<std::size_t> next{0};
  const auto work = [&] {
    for (std::size_t i = next++; i < count; i = next++) piece(i);
  };
  std::jthread other(work);
  work();
}

/// 100,000 runs with drawn inputs on two threads, without its shear valve.
void monte_carlo(benchmark::State& state) {
  Ready ready(IncidentKind::struck);
  ready.options.runs = 100'000;
  Context context;
  context.parallel_for = on_two_threads;
  for ([[maybe_unused]] auto _ : state) {
    const IncidentSpread spread = incident_spread(ready.scene(), {Barrier::shear_valve}, context);
    if (spread.failed > 0) state.SkipWithError("a run did not finish");
    benchmark::DoNotOptimize(spread.mean);
  }
}
BENCHMARK(monte_carlo)->Unit(benchmark::kSecond)->UseRealTime()->Iterations(1);

/// A drop into a tank with too little room, with and without each barrier, and its draws.
void overfilled(benchmark::State& state, const std::string& shape) {
  std::ifstream file(SITES_DIR "/site-s.toml");
  std::string text{std::istreambuf_iterator<char>(file), {}};
  const std::string product = "id = \"T1\"\nproduct = \"regular\"\n";
  text.replace(text.find(product), product.size(),
               product + "reading = { depth = \"50 in\" }\n" + shape +
                   "[[tank.fill]]\nid = \"F1\"\noverfill_valve = { restricts_at = \"80 in\", closes_at = \"86 in\", "
                   "restricted = \"100 gpm\" }\n");
  text +=
      "\n[[delivery]]\nid = \"load\"\nhose = { length = \"6 m\", bore = \"4 in\", roughness = \"0 mm\", loss = 14 }\n"
      "surface_difference = \"3 m\"\n  [[delivery.compartment]]\n  product = \"regular\"\n  volume = \"16 m3\"\n"
      "  height = \"1.4 m\"\n[[incident]]\nkind = \"overfill\"\nat = \"T1\"\n";
  const site::Site site = site::read_site(text).value;
  IncidentOptions options;
  options.kind = IncidentKind::overfill;
  if (!study_incident(site, options).problem.empty()) state.SkipWithError("nothing is determined");
  for ([[maybe_unused]] auto _ : state) benchmark::DoNotOptimize(study_incident(site, options).escaped.likely);
}
const std::string shell =
    "shape = { kind = \"horizontal-cylinder\", inside_diameter = \"96 in\", length = \"260 in\", ";
BENCHMARK_CAPTURE(overfilled, level_flat, shell + "heads = \"flat\" }\n")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(overfilled, pitched_dished, shell + "heads = \"dished\", pitch = \"1 %\" }\n")
    ->Unit(benchmark::kMillisecond);

}  // namespace
