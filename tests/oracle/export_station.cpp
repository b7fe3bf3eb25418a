// Writes the piping of an example station as network files for run.mjs:
//   oracle_export SITE FOLDER
// One file a piping system, in the form of tests/data/reference_station.json. What that form cannot hold is left out
// and said to be: blended hoses stay shut, and a system with a curve through points is not written. The flows of each
// case are first found again from the written file, so that it is the station that is compared.
#include <fmt/format.h>

#include <cmath>
#include <cstdio>
#include <exception>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <optional>

#include "forecourse/base/constants.h"
#include "forecourse/network/build.h"
#include "forecourse/network/solve.h"
#include "forecourse/site/read.h"
#include "solvers/network_file.h"
#include "solvers/random_network.h"

namespace {

using namespace forecourse;
using Json = nlohmann::ordered_json;

/// The form has no word for this part; the message says which.
struct NotInTheForm {
  std::string what;
};

std::string node_name(int node) { return "N" + std::to_string(node); }

class Exporter {
 public:
  explicit Exporter(const network::PipingSystem& system)
      : system_(system),
        weight_(system.weight_of(1.0)),
        nodes_(static_cast<int>(system.places.size() + system.openings.size())) {}

  Json write() {
    for (std::size_t r = 0; r < system_.runs.size(); ++r) {
      if (!is_blended(static_cast<int>(r))) add_run(system_.runs[r], hose_of(static_cast<int>(r)));
    }
    Json nodes = Json::array();
    for (int n = 0; n < nodes_; ++n) nodes.push_back(node(n));
    return {{"description", "piping of an invented example station"},
            {"constants", {{"kinematic_viscosity_m2_s", system_.fluid.dynamic_viscosity / system_.fluid.density}}},
            {"nodes", nodes},
            {"elements", elements_},
            {"cases", cases()}};
  }

  /// Hoses in the order of the file's numbers, as indices in the system.
  [[nodiscard]] std::vector<std::size_t> plain_hoses() const {
    std::vector<std::size_t> out;
    for (std::size_t h = 0; h < system_.hoses.size(); ++h) {
      if (system_.hoses[h].share == 1.0) out.push_back(h);
    }
    return out;
  }

 private:
  [[nodiscard]] bool is_blended(int run) const {
    for (const network::HosePoint& hose : system_.hoses) {
      if (hose.run == run) return hose.share < 1.0;
    }
    return false;
  }

  [[nodiscard]] std::optional<int> hose_of(int run) const {
    const std::vector<std::size_t> hoses = plain_hoses();
    for (std::size_t i = 0; i < hoses.size(); ++i) {
      if (system_.hoses[hoses[i]].run == run) return static_cast<int>(i);
    }
    return std::nullopt;
  }

  [[nodiscard]] Json node(int n) const {
    const int places = static_cast<int>(system_.places.size());
    const bool is_opening = n >= places && n < places + static_cast<int>(system_.openings.size());
    Json out{{"id", node_name(n)}};
    if (is_opening) out["fixed_head_m"] = system_.openings[static_cast<std::size_t>(n - places)].elevation;
    return out;
  }

  void add_run(const network::Run& run, std::optional<int> hose) {
    int from = run.from;
    for (std::size_t i = 0; i < run.elements.size(); ++i) {
      const bool last = i + 1 == run.elements.size();
      const int to = last ? run.to : nodes_++;
      add_element(run.elements[i], from, to);
      from = to;
      if (!last || !hose) continue;
      if (elements_.back()["kind"] != "component") throw NotInTheForm{"hose " + run.id + " does not end with a loss"};
      elements_.back()["kind"] = "nozzle";
      elements_.back()["hose"] = *hose;
      if (std::isfinite(run.bounds.highest)) elements_.back()["qlim"] = run.bounds.highest;
    }
  }

  void add_element(const network::Element& element, int from, int to) {
    Json out{{"id", "L" + std::to_string(elements_.size())}, {"from", node_name(from)}, {"to", node_name(to)}};
    if (const auto* pipe = std::get_if<parts::PipeLaw>(&element.law)) {
      out["kind"] = "pipe";
      out["L"] = element.length;
      out["D"] = element.bore;
      out["roughness"] = pipe->friction.roughness_term * 3.7 * element.bore;
      out["K"] = parts::loss_coefficient(pipe->fittings, element.bore, system_.fluid.density);
    } else if (const auto* loss = std::get_if<parts::QuadraticLaw>(&element.law)) {
      out["kind"] = "component";
      out["c1"] = loss->linear / weight_;
      out["c2"] = loss->quadratic / weight_;
    } else if (const auto* pump = std::get_if<parts::PumpLaw>(&element.law)) {
      out["kind"] = "pump";
      out["points"] = pump_points(*pump);
    } else {
      throw NotInTheForm{std::string(network::word(element.kind)) + " of " + element.owner +
                         " is a curve through points"};
    }
    elements_.push_back(std::move(out));
  }

  [[nodiscard]] Json pump_points(const parts::PumpLaw& pump) const {
    const auto* curve = std::get_if<parts::PowerCurve>(&pump.curve);
    if (curve == nullptr || pump.speed_ratio != 1.0) throw NotInTheForm{"a pump is a curve through points"};
    const double largest = std::pow(0.8 * curve->shutoff / curve->factor, 1.0 / curve->exponent);
    Json points = Json::array();
    for (const double flow : {0.0, 0.5 * largest, largest}) {
      points.push_back({flow, parts::rise(pump, flow).pressure_rise / weight_});
    }
    return points;
  }

  [[nodiscard]] Json cases() const {
    const int hoses = static_cast<int>(plain_hoses().size());
    test::Draws draws(17);
    std::vector<std::vector<int>> sets(1);
    for (int h = 0; h < hoses; ++h) {
      sets[0].push_back(h);
      sets.push_back({h});
    }
    for (int i = 0; i < 10; ++i) {
      std::vector<int> set;
      for (int h = 0; h < hoses; ++h) {
        if (draws.coin(0.5)) set.push_back(h);
      }
      if (!set.empty()) sets.push_back(set);
    }
    Json out = Json::array();
    for (const bool limiter : {false, true}) {
      for (const auto& set : sets) out.push_back({{"limiter", limiter}, {"open_hoses", set}});
    }
    return out;
  }

  const network::PipingSystem& system_;
  double weight_;  ///< [Pa] of a meter of liquid
  int nodes_;
  Json elements_ = Json::array();
};

/// Largest relative difference between the file's flows and the station's own, over the cases with limiters.
double worst_difference(const Json& written, const network::PipingSystem& system, const Exporter& exporter) {
  const test::NetworkFile file = test::read_network(nlohmann::json::parse(written.dump()));
  const std::vector<std::size_t> hoses = exporter.plain_hoses();
  network::SystemSolver solver(system);
  double worst = 0.0;
  for (const test::FileCase& wanted : file.cases) {
    if (!wanted.limiter) continue;
    std::vector<char> open(system.hoses.size(), 0);
    for (const int h : wanted.open_hoses) open[hoses[static_cast<std::size_t>(h)]] = 1;
    const network::SystemState state = solver.solve(open);
    const test::CaseFlows flows = test::solve_case(file, wanted, test::Method::own);
    for (const int h : wanted.open_hoses) {
      const auto i = static_cast<std::size_t>(h);
      const double station = state.flow[static_cast<std::size_t>(system.hoses[hoses[i]].run)];
      worst = std::max(worst, std::abs(flows.hose[i] - station) / station);
    }
  }
  return worst;
}

/// True unless the written file gives other flows than the station.
bool write_system(const network::PipingSystem& system, const std::filesystem::path& path) {
  try {
    Exporter exporter(system);
    const Json written = exporter.write();
    const double worst = worst_difference(written, system, exporter);
    std::ofstream(path) << written.dump(1) << "\n";
    constexpr double allowed = 1e-9;  // both solves end below it
    const std::size_t shut = system.hoses.size() - exporter.plain_hoses().size();
    fmt::print("{}: {} cases, {:.1e} from the flow study{}{}\n", path.string(), written["cases"].size(), worst,
               shut > 0 ? fmt::format(", {} blended hoses shut", shut) : "", worst <= allowed ? "" : " FAILED");
    return worst <= allowed;
  } catch (const NotInTheForm& missing) {
    fmt::print("{}: left out: {}\n", path.string(), missing.what);
    return true;
  }
}

}  // namespace

int main(int count, char** words) {
  if (count != 3) {
    fmt::print(stderr, "usage: oracle_export SITE FOLDER\n");
    return 2;
  }
  try {
    std::ifstream in(words[1], std::ios::binary);
    const std::string text(std::istreambuf_iterator<char>(in), {});
    const Parsed<site::Site> read = site::read_site(text);
    if (!read.ok()) throw std::runtime_error("is no site file");
    const std::filesystem::path folder(words[2]);
    std::filesystem::create_directories(folder);
    bool good = true;
    for (const network::PipingSystem& system : network::build_network(read.value).systems) {
      const std::string name = std::filesystem::path(words[1]).stem().string() + "-" + system.id + ".json";
      good = write_system(system, folder / name) && good;
    }
    return good ? 0 : 1;
  } catch (const std::exception& fault) {
    fmt::print(stderr, "{}: {}\n", words[1], fault.what());
    return 2;
  }
}
