#pragma once

#include <set>
#include <string>

#include "forecourse/checks/figures/figure.h"

namespace forecourse::checks {

/// Which of the flows that the flow study tells of a hose.
enum class HoseFlowState { alone, one_each, all_open, most, least };

/// The flow of each hose, its spread as the deviation, and the first default that it rests on and that is not firm.
[[nodiscard]] std::vector<FigureAt> hose_flows(const Facts& facts, HoseFlowState state);

template <HoseFlowState state>
[[nodiscard]] std::vector<FigureAt> hose_flow(const Facts& facts) {
  return hose_flows(facts, state);
}

/// What a figure rests on that was worked out for the likely of each uncertain value alone.
inline constexpr const char* likely_alone = "values that are uncertain, of which only what is likely was computed";

/// The first default that is not firm and that moves the flow of one of these systems, in words; empty: none.
[[nodiscard]] std::string loose_default(const studies::FlowResult& result, const std::set<std::string>& systems);

/// Tells what a figure of these systems rests on beside what was entered.
/// \param is_spread whether it is known how far uncertain values move the figure
void tell_rest(FigureAt& at, const studies::FlowResult& result, const std::set<std::string>& systems, bool is_spread);

}  // namespace forecourse::checks
