#include "forecourse/checks/figures/hose_flow.h"

#include <algorithm>
#include <array>
#include <set>

#include "forecourse/checks/figures/each_part.h"

namespace forecourse::checks {
namespace {

using studies::FlowResult;
using studies::HoseSummary;
using studies::SummaryFlow;

std::optional<SummaryFlow> flow_of(const HoseSummary& hose, HoseFlowState state) {
  switch (state) {
    case HoseFlowState::alone:
      return hose.alone;
    case HoseFlowState::one_each:
      return hose.one_each;
    case HoseFlowState::all_open:
      return hose.all_open;
    case HoseFlowState::most:
    case HoseFlowState::least:
      break;
  }
  // One of them may be missing because the state is not asked of this hose; alone and all open are asked of each.
  if (!hose.alone || !hose.all_open) return std::nullopt;
  std::optional<SummaryFlow> out = hose.alone;
  for (const auto* other : {&hose.one_each, &hose.all_open}) {
    if (!*other) continue;
    const bool further = state == HoseFlowState::most ? (*other)->flow > out->flow : (*other)->flow < out->flow;
    if (further) out = **other;
  }
  return out;
}

std::set<std::string> systems_of(const FlowResult& result, const std::string& hose) {
  std::set<std::string> out;
  for (const studies::FlowState& state : result.states) {
    for (const studies::SystemFlow& system : state.systems) {
      for (const studies::HoseFlow& one : system.hoses) {
        if (one.id == hose) out.insert(system.system);
      }
    }
  }
  return out;
}

void tell(FigureAt& at, const FlowResult& result, const SummaryFlow& flow) {
  const bool is_spread = flow.low && flow.high;
  at.value = flow.flow;
  if (is_spread && result.uncertain_values > 0) at.deviation = std::max(flow.flow - *flow.low, *flow.high - flow.flow);
  tell_rest(at, result, systems_of(result, at.subject), is_spread);
}

}  // namespace

std::string loose_default(const FlowResult& result, const std::set<std::string>& systems) {
  for (const DefaultUsed& used : result.defaults) {
    if (!is_firm(used) && used.moves_flow && systems.count(used.system) != 0) {
      return "a default that is " + std::string(word(used.status)) + ": " + used.what;
    }
  }
  return {};
}

void tell_rest(FigureAt& at, const FlowResult& result, const std::set<std::string>& systems, bool is_spread) {
  at.rests_on = loose_default(result, systems);
  if (!at.rests_on.empty()) {
    at.enter = "enter the figures of the equipment";
  } else if (result.uncertain_values > 0 && !is_spread) {
    at.rests_on = likely_alone;
    at.enter = "set each to its low and its high with --set, and look at the margin";
  }
}

std::vector<FigureAt> hose_flows(const Facts& facts, HoseFlowState state) {
  std::vector<FigureAt> out;
  each_hose_of(facts.site, [&](const site::Hose& hose, const site::Dispenser&) {
    FigureAt one;
    one.subject = hose.id.text;
    one.where = hose.where;
    one.enter = "enter what the flow study asks for";
    if (facts.flow != nullptr) {
      for (const HoseSummary& summary : facts.flow->hoses) {
        if (summary.id != hose.id.text) continue;
        if (const auto flow = flow_of(summary, state)) {
          one.enter.clear();
          tell(one, *facts.flow, *flow);
        } else if (state == HoseFlowState::one_each && summary.alone && summary.all_open) {
          one.exempt = "another hose is the one that is open at its dispenser";
        }
      }
    }
    out.push_back(std::move(one));
  });
  return out;
}

}  // namespace forecourse::checks
