#pragma once

#include <limits>

namespace forecourse::parts {

/// The flows a part lets pass, beside its loss law.
///
/// A bound is not a steep loss. Where the flow lies inside the bounds, the law of the part holds as it is. Where it
/// sits on one, the pressure across the part is free, and what the law does not use up is held by the part:
///
///   held = (pressure in - pressure out) - loss(flow)
///   flow at `highest`  ->  held >= 0   (a limiter drops the rest)
///   flow at `lowest`   ->  held <= 0   (a shut check valve holds back the rest)
///   in between         ->  held  = 0
///
/// This pair of conditions is what a solver closes; see docs/theory/bounds.md.
struct FlowBounds {
  double lowest = -std::numeric_limits<double>::infinity();  ///< [m3/s]
  double highest = std::numeric_limits<double>::infinity();  ///< [m3/s], >= lowest

  friend constexpr bool operator==(const FlowBounds&, const FlowBounds&) = default;
};

/// Bounds of a part that lets everything pass.
constexpr FlowBounds open_both_ways() { return {}; }

/// Bounds of a check valve: nothing flows back.
constexpr FlowBounds one_way() { return {.lowest = 0.0}; }

/// Bounds of a flow limiter; backward flow is not limited.
/// \param limit largest forward flow [m3/s], >= 0
constexpr FlowBounds limited_to(double limit) { return {.highest = limit}; }

/// Bounds of two parts passed by the same flow; empty (lowest > highest) never arises when both contain 0.
constexpr FlowBounds operator&(FlowBounds a, FlowBounds b) {
  return {a.lowest > b.lowest ? a.lowest : b.lowest, a.highest < b.highest ? a.highest : b.highest};
}

}  // namespace forecourse::parts
