// Writes the piping of an example station as network files for run.mjs:
//   oracle_export SITE FOLDER
// One file a piping system, in the form of tests/data/reference_station.json. What that form cannot hold is left out
// and said to be: blended hoses stay shut, and a system with a curve through points, or with pumps that a control
// starts, stops or slows, is not written. The flow study's flows of each case are first found again from the written
// file, so that it is the station that is compared.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <exception>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>

#include "forecourse/network/build.h"
#include "forecourse/site/read.h"
#include "forecourse/studies/flow/flow.h"
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
      if (!is_out_of_use(static_cast<int>(r))) add_run(system_.runs[r], hose_of(static_cast<int>(r)));
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
  /// Blended hoses stay shut, and a pump that does not run lets nothing pass.
  [[nodiscard]] bool is_out_of_use(int run) const {
    const auto blended = [run](const network::HosePoint& hose) { return hose.run == run && hose.share < 1.0; };
    const auto stopped = [run](const network::PumpPoint& pump) { return pump.run == run && !pump.running; };
    return std::any_of(system_.hoses.begin(), system_.hoses.end(), blended) ||
           std::any_of(system_.pumps.begin(), system_.pumps.end(), stopped);
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
    // In the form a pump always holds back what would run through it backward, and a line or riser never does. A hose
    // does at the station only; were that to matter, the flows would differ.
    const bool is_pump = run.kind == network::RunKind::pump;
    if (!hose && std::isfinite(run.bounds.lowest) != is_pump) {
      throw NotInTheForm{run.id + (is_pump ? " has no" : " has a") + " check valve"};
    }
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
    if (curve == nullptr) throw NotInTheForm{"a pump is a curve through points"};
    const double largest = pump.speed_ratio * std::pow(0.8 * curve->shutoff / curve->factor, 1.0 / curve->exponent);
    Json points = Json::array();
    for (const double flow : {0.0, 0.5 * largest, largest}) {
      points.push_back({flow, parts::rise(pump, flow).pressure_rise / weight_});
    }
    return points;
  }

  /// All hoses, one at each dispenser, each alone, and some at random; no set twice.
  [[nodiscard]] std::vector<std::vector<int>> open_sets() const {
    const std::vector<std::size_t> hoses = plain_hoses();
    std::vector<std::vector<int>> sets(2);
    std::set<std::string> seen;
    for (std::size_t i = 0; i < hoses.size(); ++i) {
      const int h = static_cast<int>(i);
      sets[0].push_back(h);
      if (seen.insert(system_.hoses[hoses[i]].dispenser).second) sets[1].push_back(h);
      sets.push_back({h});
    }
    test::Draws draws(17);
    for (int i = 0; i < 10; ++i) {
      std::vector<int>& set = sets.emplace_back();
      for (const int h : sets[0]) {
        if (draws.coin(0.5)) set.push_back(h);
      }
    }
    std::vector<std::vector<int>> out;
    for (const std::vector<int>& set : sets) {
      if (!set.empty() && std::find(out.begin(), out.end(), set) == out.end()) out.push_back(set);
    }
    return out;
  }

  [[nodiscard]] Json cases() const {
    Json out = Json::array();
    for (const bool limiter : {false, true}) {
      for (const auto& set : open_sets()) out.push_back({{"limiter", limiter}, {"open_hoses", set}});
    }
    return out;
  }

  const network::PipingSystem& system_;
  double weight_;  ///< [Pa] of a meter of liquid
  int nodes_;
  Json elements_ = Json::array();
};

/// Largest relative difference of an open hose's flow; infinite where one of both ways gave no answer.
double worst_difference(const std::vector<std::size_t>& hoses, const test::FileCase& wanted,
                        const test::CaseFlows& written, const studies::SystemFlow& study) {
  constexpr double none = INFINITY;
  constexpr double least_flow = 1e-6;  // [m3/s] a hose that gets less is held to that much of this
  if (!written.report.usable() || study.status == studies::FlowStatus::not_determined) return none;
  double worst = 0.0;
  for (const int h : wanted.open_hoses) {
    const double expected = study.hoses[hoses[static_cast<std::size_t>(h)]].flow;
    const double flow = written.hose[static_cast<std::size_t>(h)];
    const double difference = std::abs(flow - expected) / std::max(std::abs(expected), least_flow);
    if (std::isnan(difference)) return none;
    worst = std::max(worst, difference);
  }
  return worst;
}

/// The same over the cases with limiters, for a station has them.
double worst_difference(const site::Site& site, const network::PipingSystem& system, const Json& written,
                        const std::vector<std::size_t>& hoses) {
  const test::NetworkFile file = test::read_network(nlohmann::json::parse(written.dump()));
  std::vector<test::FileCase> cases;
  std::copy_if(file.cases.begin(), file.cases.end(), std::back_inserter(cases),
               [](const auto& c) { return c.limiter; });
  studies::FlowOptions options;
  options.spans = options.lines_at_rest = options.ladders = false;
  for (const test::FileCase& wanted : cases) {
    studies::OpenSet& set = options.open_sets.emplace_back();
    for (const int h : wanted.open_hoses) set.hoses.push_back(system.hoses[hoses[static_cast<std::size_t>(h)]].id);
  }
  const studies::FlowResult study = studies::study_flow(site, options);
  double worst = 0.0;
  for (std::size_t c = 0; c < cases.size(); ++c) {
    const std::vector<studies::SystemFlow>& systems = study.states[c].systems;
    const auto own = std::find_if(systems.begin(), systems.end(), [&](const auto& s) { return s.system == system.id; });
    const test::CaseFlows flows = test::solve_case(file, cases[c], test::Method::own);
    worst = std::max(worst, worst_difference(hoses, cases[c], flows, *own));
  }
  return worst;
}

/// True unless the written file gives other flows than the flow study.
bool write_system(const site::Site& site, const network::PipingSystem& system, const std::filesystem::path& path) {
  try {
    if (!system.graph) throw NotInTheForm{"its piping is not complete"};
    if (system.has_moving_control()) throw NotInTheForm{"its pumps run as a control says"};
    Exporter exporter(system);
    const Json written = exporter.write();
    const std::vector<std::size_t> hoses = exporter.plain_hoses();
    const double worst = worst_difference(site, system, written, hoses);
    std::ofstream(path) << written.dump(1) << "\n";
    constexpr double allowed = 1e-9;  // both solves end below it
    const std::size_t shut = system.hoses.size() - hoses.size();
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
      good = write_system(read.value, system, folder / name) && good;
    }
    return good ? 0 : 1;
  } catch (const std::exception& fault) {
    fmt::print(stderr, "{}: {}\n", words[1], fault.what());
    return 2;
  }
}
