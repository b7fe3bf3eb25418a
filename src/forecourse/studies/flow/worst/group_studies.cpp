#include "forecourse/studies/flow/worst/group_studies.h"

#include <algorithm>

#include "forecourse/network/sets/hose_group.h"
#include "forecourse/studies/flow/flow_cap.h"
#include "forecourse/studies/flow/ladder/make_ladders.h"
#include "forecourse/studies/flow/worst/find_worst_states.h"

namespace forecourse::studies {
namespace {

bool is_too_large(const network::HoseGroup& group) {
  return std::any_of(group.systems.begin(), group.systems.end(),
                     [](const network::PipingSystem* system) {
                       return system->hoses.size() > network::most_hoses_of_a_group;
                     }) ||
         group.hoses.size() > network::most_hoses_of_a_group;
}

Diagnostic too_large_told(const network::HoseGroup& group) {
  return {Severity::warning,
          group.id + " has " + std::to_string(group.hoses.size()) +
              " hoses that depend on each other: ladder and worst states are computed for up to 64",
          std::nullopt,
          "the flows with given sets of open hoses are not touched by this",
          {}};
}

/// The least cap among the products of a group.
std::optional<FlowCap> least_cap(const site::Site& site, const network::HoseGroup& group) {
  std::optional<FlowCap> least;
  for (const network::PipingSystem* system : group.systems) {
    const auto cap = flow_cap(site, system->product);
    if (cap && (!least || cap->flow < least->flow)) least = cap;
  }
  return least;
}

}  // namespace

void study_groups(const site::Site& site, const network::StationNetwork& network, FlowResult& result,
                  const Context& context) {
  const LadderRequest request{result.options.order, result.options.keep_flow, result.options.search};
  for (const network::HoseGroup& group : network::hose_groups(network)) {
    if (group.hoses.empty()) continue;
    if (is_too_large(group)) {
      result.warnings.push_back(too_large_told(group));
      continue;
    }
    SetSearch search(group, context);
    const auto cap = least_cap(site, group);
    for (Ladder& ladder : ladders(search, request)) {
      if (cap) ladder.rule_cap = cap->flow;
      if (cap) ladder.rule_clause = cap->clause;
      result.ladders.push_back(std::move(ladder));
    }
    result.worst_states.push_back(worst_states(search));
  }
}

}  // namespace forecourse::studies
