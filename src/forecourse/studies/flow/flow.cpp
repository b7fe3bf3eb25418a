#include "forecourse/studies/flow/flow.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "forecourse/base/index.h"
#include "forecourse/base/nearest_word.h"
#include "forecourse/network/build.h"
#include "forecourse/network/solve.h"
#include "forecourse/studies/flow/blend_ratio.h"
#include "forecourse/studies/flow/hose_limits.h"
#include "forecourse/studies/flow/ladder/hose_order.h"
#include "forecourse/studies/flow/open_sets.h"
#include "forecourse/studies/flow/pumps/pump_limits.h"
#include "forecourse/studies/flow/pumps/waiting_controls.h"
#include "forecourse/studies/flow/rest/rest.h"
#include "forecourse/studies/flow/spans/spans.h"
#include "forecourse/studies/flow/system_flow.h"
#include "forecourse/studies/flow/uncertain.h"
#include "forecourse/studies/flow/without_flow.h"
#include "forecourse/studies/flow/worst/group_studies.h"

namespace forecourse::studies {
namespace {

using network::PipingSystem;
using network::StationNetwork;
using network::StationState;

/// Shares of each blended hose that could be computed, so that a hose with a missing product is not told.
std::map<std::string, double> shares_found(const StationNetwork& network) {
  std::map<std::string, double> sum;
  for (const PipingSystem& system : network.systems) {
    if (!system.graph) continue;
    for (const network::HosePoint& hose : system.hoses) sum[hose.id] += hose.share;
  }
  return sum;
}

/// Flows of hoses in solved states.
class HoseFlows {
 public:
  explicit HoseFlows(const StationNetwork& network) : network_(network), shares_(shares_found(network)) {}

  /// Flow of a hose; empty: not determined.
  [[nodiscard]] std::optional<double> of(const std::string& id, const StationState& state) const {
    const auto shares = shares_.find(id);
    if (shares == shares_.end() || std::abs(shares->second - 1.0) > 1e-6) return std::nullopt;
    std::optional<double> flow;
    for (std::size_t s = 0; s < network_.systems.size(); ++s) {
      if (!network_.systems[s].graph || !state.systems[s].report.usable()) continue;
      for (const network::HosePoint& hose : network_.systems[s].hoses) {
        if (hose.id != id) continue;
        if (!what_gravity_feeds(network_.systems[s], state.systems[s]).empty()) return std::nullopt;
        flow = flow.value_or(0.0) + state.systems[s].flow[at(hose.run)];
      }
    }
    return flow;
  }

 private:
  const StationNetwork& network_;
  std::map<std::string, double> shares_;
};

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

std::optional<SummaryFlow> held(std::optional<double> flow, const HoseLimits& limits) {
  return flow ? std::optional(held_against(limits, *flow)) : std::nullopt;
}

std::vector<HoseSummary> summaries(const site::Site& site, const StationNetwork& network,
                                   network::StationSolver& solver, std::optional<double> keep_flow) {
  const HoseFlows flows(network);
  const OpenSet first_each = one_hose_each(site);
  const StationState all = solver.solve(all_hoses(site).hoses);
  const StationState each = solver.solve(first_each.hoses);
  std::vector<HoseSummary> out;
  for (const site::Dispenser& d : site.dispensers) {
    for (const site::Hose& hose : d.hoses) {
      const std::string& id = hose.id.text;
      HoseSummary summary{id, d.id.text, product_words(hose), {}, {}, {}};
      const HoseLimits limits = hose_limits(site, hose, keep_flow);
      summary.alone = held(flows.of(id, solver.solve({id})), limits);
      const bool in_each = std::find(first_each.hoses.begin(), first_each.hoses.end(), id) != first_each.hoses.end();
      if (in_each) summary.one_each = held(flows.of(id, each), limits);
      summary.all_open = held(flows.of(id, all), limits);
      out.push_back(std::move(summary));
    }
  }
  return out;
}

FlowState tell_state(const site::Site& site, const StationNetwork& network, const StationState& solved, OpenSet set,
                     std::optional<double> keep_flow, PumpLimits& pumps) {
  FlowState state{std::move(set), {}};
  for (std::size_t s = 0; s < network.systems.size(); ++s) {
    state.systems.push_back(system_flow(site, network.systems[s], solved.systems[s], keep_flow));
    pumps.tell(network.systems[s], solved.systems[s], state.systems.back());
  }
  tell_ratios(state);
  return state;
}

/// That the study takes the likely of each uncertain value.
std::optional<Diagnostic> likely_values_told(const site::Site& site) {
  const std::vector<SourceSpan> uncertain = uncertain_in_flow(site);
  if (uncertain.empty()) return std::nullopt;
  const std::size_t count = uncertain.size();
  return Diagnostic{Severity::warning,
                    (count == 1 ? "1 value of the site is" : std::to_string(count) + " values of the site are") +
                        std::string(" uncertain: the flow study takes what is likely"),
                    uncertain.front(),
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
      const std::string offered = hoses_offered(site, hose);
      problems.push_back({Severity::error,
                          "there is no hose '" + hose + "'",
                          std::nullopt,
                          !offered.empty() ? offered
                          : near           ? "did you mean '" + std::string(*near) + "'?"
                                           : "name a hose of the site",
                          {}});
    }
  }
  const std::vector<Diagnostic> order = check_order(site, options);
  problems.insert(problems.end(), order.begin(), order.end());
  return problems;
}

FlowResult study_flow(const site::Site& site, const FlowOptions& options, const Context& context) {
  FlowResult result;
  result.version = FORECOURSE_VERSION;
  result.options = options;
  result.options.open_sets = asked_sets(site, options);
  result.options.order = asked_order(site, options);
  if (!options.keep_flow && site.flow.keep) result.options.keep_flow = site.flow.keep->likely.si();
  const StationNetwork network = network::build_network(site);
  network::StationSolver solver(network);
  PumpLimits pumps(site);
  result.systems = system_summaries(network);
  result.hoses = summaries(site, network, solver, result.options.keep_flow);
  for (const OpenSet& set : result.options.open_sets) {
    result.states.push_back(tell_state(site, network, solver.solve(set.hoses), set, result.options.keep_flow, pumps));
    if (context.progress) {
      context.progress(static_cast<double>(result.states.size()) /
                       static_cast<double>(result.options.open_sets.size()));
    }
  }
  result.uncertain_values = static_cast<int>(uncertain_in_flow(site).size());
  if (options.spans) add_spans(site, network, solver, result, context);
  if (options.lines_at_rest) result.lines_at_rest = lines_at_rest(site, network);
  result.defaults = network.defaults;
  result.warnings = network.warnings;
  if (options.ladders) study_groups(site, network, result, context);
  for (const Diagnostic& waits : waiting_controls(site, network, solver.solve(all_hoses(site).hoses))) {
    result.warnings.push_back(waits);
  }
  for (const Diagnostic& unmet : unmet_ratios(site, result.states)) result.warnings.push_back(unmet);
  if (!options.spans) {
    if (const auto told = likely_values_told(site)) result.warnings.push_back(*told);
  }
  for (const PipingSystem& system : network.systems) {
    result.warnings.insert(result.warnings.end(), system.problems.begin(), system.problems.end());
  }
  return result;
}

}  // namespace forecourse::studies
