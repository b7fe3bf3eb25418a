#include "forecourse/studies/flow/hose_limits.h"

namespace forecourse::studies {

HoseLimits hose_limits(const site::Site& site, const site::Hose& hose, std::optional<double> keep) {
  HoseLimits limits;
  if (hose.limiter) limits.limiter = hose.limiter->likely.si();
  limits.cap = flow_cap(site, hose.product.text);
  for (const site::BlendShare& share : hose.blend) {
    if (!limits.cap) limits.cap = flow_cap(site, share.product.text);
  }
  limits.keep = keep;
  return limits;
}

SummaryFlow held_against(const HoseLimits& limits, double flow) {
  constexpr double slack = 1e-9;  // relative: a flow held at a limit meets it to rounding
  SummaryFlow out{flow, false, false, false};
  out.at_limit = limits.limiter && flow >= *limits.limiter * (1.0 - slack);
  out.above_rule_cap = limits.cap && flow > limits.cap->flow * (1.0 + slack);
  out.below_keep_flow = limits.keep && flow < *limits.keep * (1.0 - slack);
  return out;
}

}  // namespace forecourse::studies
