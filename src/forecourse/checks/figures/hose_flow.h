#pragma once

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

}  // namespace forecourse::checks
