// The station of the benchmarks for against_library.mjs:
//   library_rate write HOSES LIMITED    its networks as JSON, reduced and element by element, and sets of open hoses
//   library_rate time HOSES LIMITED     states a second of CPU time, per instruction set
#include <fmt/format.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <exception>
#include <nlohmann/json.hpp>

#include "bench_station.h"
#include "forecourse/network/batch_solver.h"
#include "forecourse/network/run_laws.h"

namespace {

using namespace forecourse;
using Json = nlohmann::ordered_json;
using network::BatchCase;
using network::PipingSystem;
using network::Run;

constexpr int written_sets = 4096;
constexpr int checked_sets = 16;

std::vector<BatchCase> random_cases(int count) {
  std::uint64_t seed = 1;
  std::vector<BatchCase> cases;
  for (int i = 0; i < count; ++i) cases.push_back({bench::random_bits(seed), ~0ULL});
  return cases;
}

std::vector<BatchCase> neighbor_cases(int count) {
  std::vector<BatchCase> cases;
  for (std::uint64_t i = 0; i < static_cast<std::uint64_t>(count); ++i) {
    const std::uint64_t group = (i >> 3U) + 0x0000'5a5a'5a5a'5a5aULL;
    cases.push_back({(group ^ group >> 1U) << 3U | (i & 7U), ~0ULL});
  }
  return cases;
}

class Writer {
 public:
  explicit Writer(const PipingSystem& system) : system_(system), laws_(system) {}

  Json network(bool reduced) {
    links_ = Json::array();
    nodes_ = static_cast<int>(system_.places.size() + system_.openings.size());
    for (std::size_t r = 0; r < system_.runs.size(); ++r) reduced ? add_reduced(r) : add_elements(r);
    Json fixed = Json::object();
    for (std::size_t i = 0; i < system_.openings.size(); ++i) {
      fixed[std::to_string(system_.node_of_opening(i))] = system_.openings[i].elevation;
    }
    return {{"nodes", nodes_}, {"fixed_head_m", fixed}, {"links", links_}};
  }

 private:
  /// The run of a pump becomes one pump, its curve less the losses of its leg; any other run one pipe, its one bore.
  void add_reduced(std::size_t r) {
    const Run& run = system_.runs[r];
    if (run.kind == network::RunKind::pump) return add_pump(run.from, run.to, laws_.runs()[r]);
    Json pipe;
    double quadratic = 0.0, length = 0.0;
    for (const network::Element& element : run.elements) {
      length += element.length;
      if (const auto* law = std::get_if<parts::PipeLaw>(&element.law)) {
        pipe = pipe_of(element, *law);
        quadratic += law->fittings.quadratic;
      } else {
        quadratic += std::get<parts::QuadraticLaw>(element.law).quadratic;
      }
    }
    pipe["L"] = length;
    pipe["K"] = loss_coefficient(quadratic, pipe["D"]);
    add_hose_end(r, pipe);
  }

  void add_elements(std::size_t r) {
    const Run& run = system_.runs[r];
    int from = run.from;
    for (std::size_t i = 0; i < run.elements.size(); ++i) {
      const bool last = i + 1 == run.elements.size();
      const network::Element& element = run.elements[i];
      const int to = last ? run.to : nodes_++;
      Json link = component(element);
      if (const auto* law = std::get_if<parts::PipeLaw>(&element.law)) {
        link = pipe_of(element, *law);
        link["K"] = loss_coefficient(law->fittings.quadratic, element.bore);
      }
      if (std::holds_alternative<parts::PumpLaw>(element.law)) {
        network::Run alone;
        alone.elements = {element};
        add_pump(from, to, network::gather(alone));
      } else if (last) {
        add_hose_end(r, link, from);
      } else {
        add(link, from, to);
      }
      from = to;
    }
  }

  Json pipe_of(const network::Element& element, const parts::PipeLaw& law) const {
    return {{"kind", "pipe"},
            {"L", element.length},
            {"D", element.bore},
            {"roughness", law.friction.roughness_term * 3.7 * element.bore}};
  }

  /// A part without length: a short smooth pipe with a minor loss.
  Json component(const network::Element& element) const {
    const double bore = element.bore > 0.0 ? element.bore : 0.019;
    const auto* law = std::get_if<parts::QuadraticLaw>(&element.law);
    const double coefficient = law != nullptr ? loss_coefficient(law->quadratic, bore) : 0.0;
    return {{"kind", "pipe"}, {"L", 1e-3}, {"D", bore}, {"roughness", 1e-6}, {"K", coefficient}};
  }

  [[nodiscard]] double loss_coefficient(double quadratic, double bore) const {
    return parts::loss_coefficient({0.0, quadratic}, bore, system_.fluid.density);
  }

  void add(Json link, int from, int to) {
    link["from"] = from;
    link["to"] = to;
    links_.push_back(std::move(link));
  }

  void add_pump(int from, int to, const network::GatheredRun& law) {
    Json points = Json::array();
    for (const double flow : {0.0, 2e-3, 4e-3}) points.push_back({flow, -law.loss(flow).loss / system_.weight_of(1.0)});
    add({{"kind", "pump"}, {"points", points}}, from, to);
  }

  /// The last link of a run; a hose's is the one that opens and shuts, its limiter stands before it.
  void add_hose_end(std::size_t r, Json link, int from = -1) {
    const Run& run = system_.runs[r];
    if (from < 0) from = run.from;
    if (run.kind == network::RunKind::hose) {
      if (std::isfinite(run.bounds.highest)) {
        const int between = nodes_++;
        add({{"kind", "limiter"}, {"limit", run.bounds.highest}}, from, between);
        from = between;
      }
      for (std::size_t h = 0; h < system_.hoses.size(); ++h) {
        if (static_cast<std::size_t>(system_.hoses[h].run) == r) link["hose"] = h;
      }
    }
    add(link, from, run.to);
  }

  const PipingSystem& system_;
  network::RunLaws laws_;
  Json links_;
  int nodes_ = 0;
};

Json flows_of(const PipingSystem& system, const std::vector<BatchCase>& cases) {
  network::BatchStates states;
  network::BatchSolver(system).solve(cases, states);
  Json all = Json::array();
  for (std::size_t s = 0; s < cases.size(); ++s) {
    Json flows = Json::array();
    for (const auto& hose : system.hoses) flows.push_back(states.flow_of(s, static_cast<std::size_t>(hose.run)));
    all.push_back(std::move(flows));
  }
  return all;
}

Json written(const PipingSystem& system) {
  const std::vector<BatchCase> cases = random_cases(written_sets);
  Json sets = Json::array();
  for (const BatchCase& one : cases) {
    std::string bits;
    for (std::size_t h = 0; h < system.hoses.size(); ++h) bits += (one.hoses >> h & 1U) != 0 ? '1' : '0';
    sets.push_back(bits);
  }
  Writer writer(system);
  return {{"kinematic_viscosity_m2_s", system.fluid.dynamic_viscosity / system.fluid.density},
          {"reduced", writer.network(true)},
          {"elements", writer.network(false)},
          {"sets", sets},
          {"flows", flows_of(system, {cases.begin(), cases.begin() + checked_sets})}};
}

double thread_seconds() {
  std::timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

double rate(const network::BatchSolver& solver, const std::vector<BatchCase>& cases) {
  network::BatchStates states;
  solver.solve(cases, states);
  const double begin = thread_seconds();
  int rounds = 0;
  do {
    solver.solve(cases, states);
    ++rounds;
  } while (thread_seconds() < begin + 0.1);
  return rounds * static_cast<double>(cases.size()) / (thread_seconds() - begin);
}

Json timed(const PipingSystem& system) {
  Json out = Json::object();
  for (const lanes::InstructionSet set : lanes::supported_instruction_sets()) {
    const network::BatchSolver solver(system, set);
    const double begin = thread_seconds();
    double every = 0.0;
    if (system.hoses.size() == 16) {
      solver.solve_all(~0ULL, [](auto, const auto&) {});
      every = thread_seconds() - begin;
    }
    out[lanes::name(set)] = {{"random", rate(solver, random_cases(written_sets))},
                             {"neighbors", rate(solver, neighbor_cases(written_sets))},
                             {"every_set_s", every}};
  }
  return out;
}

}  // namespace

int main(int count, char** words) {
  if (count != 4) {
    fmt::print(stderr, "usage: library_rate write|time HOSES LIMITED\n");
    return 2;
  }
  try {
    const int hoses = std::atoi(words[2]);
    const PipingSystem system = bench::station(hoses, bench::pumps_of(hoses), std::atoi(words[3]) != 0, 0.0);
    fmt::print("{}\n", (std::string(words[1]) == "write" ? written(system) : timed(system)).dump());
  } catch (const std::exception& fault) {
    fmt::print(stderr, "{}\n", fault.what());
    return 2;
  }
  return 0;
}
