#pragma once

#include "forecourse/studies/flow/flow.h"
#include "forecourse/studies/flow/flow_cap.h"

namespace forecourse::studies {

/// What bounds the flow of a hose from above and from below.
struct HoseLimits {
  std::optional<double> limiter;  ///< [m3/s]
  std::optional<FlowCap> cap;     ///< by a rule, for one of its products
  std::optional<double> keep;     ///< [m3/s] asked for by the user
};

[[nodiscard]] HoseLimits hose_limits(const site::Site& site, const site::Hose& hose, std::optional<double> keep);

/// A hose's flow with what its limits say of it.
[[nodiscard]] SummaryFlow held_against(const HoseLimits& limits, double flow);

}  // namespace forecourse::studies
