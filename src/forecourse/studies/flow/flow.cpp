#include "forecourse/studies/flow/flow.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <utility>

#include "forecourse/base/nearest_word.h"
#include "forecourse/network/build.h"
#include "forecourse/network/solve.h"
#include "forecourse/studies/flow/course.h"
#include "forecourse/studies/flow/flow_cap.h"
#include "forecourse/studies/flow/open_sets.h"

namespace forecourse::studies {
namespace {

using network::PipingSystem;
using network::StationNetwork;
using network::StationState;
using network::SystemState;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

FlowStatus status_of(const solvers::SteadyReport& report) {
  switch (report.status) {
    case solvers::SteadyStatus::converged:
      return FlowStatus::determined;
    case solvers::SteadyStatus::at_rest:
      return FlowStatus::at_rest;
    case solvers::SteadyStatus::no_supply:
      return FlowStatus::no_supply;
    case solvers::SteadyStatus::not_converged:
      return FlowStatus::not_determined;
  }
  return FlowStatus::not_determined;
}

/// Where a solve failed, in words of the site.
std::string failure(const PipingSystem& system, const solvers::SteadyReport& report) {
  std::string text = "no solution was found";
  if (report.worst_edge >= 0) text += ": the law of '" + system.runs[at(report.worst_edge)].id + "' is not met";
  if (report.worst_node >= 0) text += "; the flows at '" + system.places[at(report.worst_node)].id + "' do not balance";
  return text;
}

/// Fills one system's part of a state.
class SystemTeller {
 public:
  SystemTeller(const site::Site& site, const PipingSystem& system, const SystemState& state,
               std::optional<double> keep_flow)
      : site_(site), system_(system), state_(state), keep_flow_(keep_flow) {}

  SystemFlow tell() {
    out_.system = system_.id;
    out_.product = system_.product;
    if (!system_.graph) {
      out_.reason = system_.problems.empty() ? "its piping is not complete" : system_.problems.front().message;
      return std::move(out_);
    }
    out_.status = status_of(state_.report);
    out_.iterations = state_.report.iterations;
    out_.pressure_residual = state_.report.pressure_residual;
    out_.flow_residual = state_.report.flow_residual;
    if (out_.status == FlowStatus::not_determined) {
      out_.reason = failure(system_, state_.report);
      return std::move(out_);
    }
    for (const network::PumpPoint& pump : system_.pumps) tell_pump(pump);
    for (std::size_t i = 0; i < system_.places.size(); ++i) {
      const network::Place& place = system_.places[i];
      out_.places.push_back({place.id, place.elevation, gauge(static_cast<int>(i), place.elevation)});
    }
    for (std::size_t r = 0; r < system_.runs.size(); ++r) tell_line(r);
    for (const network::HosePoint& hose : system_.hoses) tell_hose(hose);
    return std::move(out_);
  }

 private:
  [[nodiscard]] double gauge(int node, double elevation) const {
    return state_.pressure[at(node)] - system_.weight_of(elevation);
  }

  void tell_pump(const network::PumpPoint& pump) {
    const network::Run& run = system_.runs[at(pump.run)];
    PumpDuty duty{pump.id, pump.tank, pump.running, state_.flow[at(pump.run)], 0.0, 0.0, {}, false, false};
    double pressure = state_.pressure[at(run.from)];
    const double level = system_.weight_of(pump.discharge_elevation);
    for (const network::Element& element : run.elements) {
      const double loss = network::loss(element, duty.flow).pressure_loss;
      if (pump.running) pressure -= loss;
      if (element.kind == network::ElementKind::pump) {
        duty.pressure_rise = pump.running ? -loss : 0.0;
        duty.discharge_pressure_gauge = pressure - level;
      }
    }
    if (has_leak_detector(pump.id)) duty.leak_detector_pressure_gauge = gauge(run.to, pump.discharge_elevation);
    constexpr double least = 1e-9;  // [m3/s] above the solver's residual, below what anyone measures
    duty.dead_headed = pump.running && std::abs(duty.flow) < least;
    duty.runs_back = duty.flow <= -least;
    out_.total_flow += duty.flow;
    out_.pumps.push_back(std::move(duty));
  }

  [[nodiscard]] bool has_leak_detector(const std::string& pump) const {
    return std::any_of(site_.pumps.begin(), site_.pumps.end(),
                       [&](const site::Pump& p) { return p.id.text == pump && p.leak_detector.has_value(); });
  }

  void tell_line(std::size_t r) {
    const network::Run& run = system_.runs[r];
    if (run.kind != network::RunKind::line) return;
    const double flow = state_.flow[r];
    const double bore = run.elements.empty() ? 0.0 : run.elements.front().bore;
    const double area = 0.25 * std::numbers::pi * bore * bore;
    double loss = 0.0;
    for (const network::Element& element : run.elements) loss += network::loss(element, flow).pressure_loss;
    out_.lines.push_back({run.id, flow, area > 0.0 ? flow / area : 0.0, loss});
  }

  void tell_hose(const network::HosePoint& point) {
    HoseFlow hose;
    hose.id = point.id;
    hose.dispenser = point.dispenser;
    hose.open = state_.open[at(point.run)] != 0;
    hose.share = point.share;
    hose.flow = state_.flow[at(point.run)];
    hose.hose_flow = hose.flow / hose.share;
    const int start = system_.runs[at(point.run)].from;
    hose.pressure_gauge = gauge(start, system_.places[at(start)].elevation);
    if (std::isfinite(point.limit)) hose.limit = point.limit;
    const double slack = 1e-9;  // relative: a capped flow meets its cap to rounding
    hose.at_limit = hose.open && hose.limit && hose.hose_flow >= *hose.limit * (1.0 - slack);
    if (const auto cap = flow_cap(site_, system_.product)) {
      hose.rule_cap = cap->flow;
      hose.rule_clause = cap->clause;
      hose.above_rule_cap = hose.hose_flow > cap->flow * (1.0 + slack);
    }
    hose.below_keep_flow = hose.open && keep_flow_ && hose.hose_flow < *keep_flow_;
    if (hose.open) {
      Course course = course_to(system_, state_, point);
      hose.budget = std::move(course.budget);
      hose.grade_line = std::move(course.grade_line);
    }
    out_.hoses.push_back(std::move(hose));
  }

  const site::Site& site_;
  const PipingSystem& system_;
  const SystemState& state_;
  std::optional<double> keep_flow_;
  SystemFlow out_;
};

/// Shares of each blended hose that could be computed, so that a hose with a missing product is not told.
std::map<std::string, double> shares_found(const StationNetwork& network) {
  std::map<std::string, double> sum;
  for (const PipingSystem& system : network.systems) {
    if (!system.graph) continue;
    for (const network::HosePoint& hose : system.hoses) sum[hose.id] += hose.share;
  }
  return sum;
}

/// Flow of each hose in one state; a hose that is not determined is absent.
std::map<std::string, double> hose_flows(const StationNetwork& network, const StationState& state) {
  std::map<std::string, double> flows;
  const std::map<std::string, double> shares = shares_found(network);
  for (std::size_t s = 0; s < network.systems.size(); ++s) {
    if (!network.systems[s].graph || !state.systems[s].report.usable() || !state.blends_agree) continue;
    for (const network::HosePoint& hose : network.systems[s].hoses) {
      if (std::abs(shares.at(hose.id) - 1.0) > 1e-6) continue;
      flows[hose.id] += state.systems[s].flow[at(hose.run)];
    }
  }
  return flows;
}

std::string percent(double share) {
  const int tenths = static_cast<int>(std::lround(share * 1000.0));
  return std::to_string(tenths / 10) + (tenths % 10 == 0 ? "" : "." + std::to_string(tenths % 10)) + " %";
}

std::string product_words(const site::Hose& hose) {
  std::string words = hose.product.text;
  for (const site::BlendShare& share : hose.blend) {
    words += (words.empty() ? "" : " + ") + share.product.text + " " + percent(share.share.likely.si());
  }
  return words;
}

std::optional<double> find(const std::map<std::string, double>& flows, const std::string& hose) {
  const auto found = flows.find(hose);
  return found == flows.end() ? std::nullopt : std::optional<double>(found->second);
}

std::vector<HoseSummary> summaries(const site::Site& site, const StationNetwork& network,
                                   network::StationSolver& solver) {
  const auto all = hose_flows(network, solver.solve(all_hoses(site).hoses));
  const OpenSet first_each = one_hose_each(site);
  const auto each = hose_flows(network, solver.solve(first_each.hoses));
  std::vector<HoseSummary> out;
  for (const site::Dispenser& d : site.dispensers) {
    for (const site::Hose& hose : d.hoses) {
      HoseSummary summary{hose.id.text, d.id.text, product_words(hose), {}, {}, {}};
      summary.alone = find(hose_flows(network, solver.solve({hose.id.text})), hose.id.text);
      const bool in_each =
          std::find(first_each.hoses.begin(), first_each.hoses.end(), hose.id.text) != first_each.hoses.end();
      if (in_each) summary.one_each = find(each, hose.id.text);
      summary.all_open = find(all, hose.id.text);
      out.push_back(std::move(summary));
    }
  }
  return out;
}

FlowState tell_state(const site::Site& site, const StationNetwork& network, const StationState& solved, OpenSet set,
                     std::optional<double> keep_flow) {
  FlowState state{std::move(set), {}};
  for (std::size_t s = 0; s < network.systems.size(); ++s) {
    state.systems.push_back(SystemTeller(site, network.systems[s], solved.systems[s], keep_flow).tell());
    if (!solved.blends_agree && state.systems.back().status == FlowStatus::determined) {
      state.systems.back().status = FlowStatus::not_determined;
      state.systems.back().reason = "the shares of the blended hoses did not settle";
    }
  }
  return state;
}

/// That the study takes the likely of each uncertain value.
std::optional<Diagnostic> likely_values_told(const site::Site& site) {
  if (site.uncertain.empty()) return std::nullopt;
  const std::size_t count = site.uncertain.size();
  return Diagnostic{Severity::warning,
                    (count == 1 ? "1 value of the site is" : std::to_string(count) + " values of the site are") +
                        std::string(" uncertain: the flow study takes what is likely"),
                    site.uncertain.front(),
                    "change one with --set to see what its low and high make of the flows",
                    {}};
}

std::vector<SystemSummary> system_summaries(const StationNetwork& network) {
  std::vector<SystemSummary> out;
  for (const PipingSystem& s : network.systems) {
    out.push_back({s.id, s.product, s.fluid.density, s.fluid.dynamic_viscosity, s.fluid.temperature, s.elevations_known,
                   static_cast<int>(s.hoses.size()), static_cast<int>(s.pumps.size())});
  }
  return out;
}

}  // namespace

std::vector<Diagnostic> check_options(const site::Site& site, const FlowOptions& options) {
  const std::vector<std::string> known = all_hoses(site).hoses;
  std::vector<Diagnostic> problems;
  for (const OpenSet& set : options.open_sets) {
    for (const std::string& hose : set.hoses) {
      if (std::find(known.begin(), known.end(), hose) != known.end()) continue;
      const auto near = nearest_word(hose, known);
      problems.push_back({Severity::error,
                          "there is no hose '" + hose + "'",
                          std::nullopt,
                          near ? "did you mean '" + std::string(*near) + "'?" : "name a hose of the site",
                          {}});
    }
  }
  return problems;
}

FlowResult study_flow(const site::Site& site, const FlowOptions& options, const Context& context) {
  FlowResult result;
  result.version = FORECOURSE_VERSION;
  result.options = options;
  result.options.open_sets = asked_sets(site, options);
  if (!options.keep_flow && site.flow.keep) result.options.keep_flow = site.flow.keep->likely.si();
  const StationNetwork network = network::build_network(site);
  network::StationSolver solver(network);
  result.systems = system_summaries(network);
  result.hoses = summaries(site, network, solver);
  for (const OpenSet& set : result.options.open_sets) {
    result.states.push_back(tell_state(site, network, solver.solve(set.hoses), set, result.options.keep_flow));
    if (context.progress) {
      context.progress(static_cast<double>(result.states.size()) /
                       static_cast<double>(result.options.open_sets.size()));
    }
  }
  result.defaults = network.defaults;
  result.warnings = network.warnings;
  if (const auto told = likely_values_told(site)) result.warnings.push_back(*told);
  for (const PipingSystem& system : network.systems) {
    result.warnings.insert(result.warnings.end(), system.problems.begin(), system.problems.end());
  }
  return result;
}

}  // namespace forecourse::studies
