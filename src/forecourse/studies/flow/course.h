#pragma once

#include "forecourse/network/solve.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::studies {

/// The way of the fuel from a tank to a hose.
struct Course {
  std::vector<BudgetRow> budget;
  std::vector<GradePoint> grade_line;
};

/// Follows the fuel of one open hose back along the strongest inflow to its tank, then tells the way forward.
/// Empty if nothing flows at the hose.
/// \error rises and losses of the budget add up to nothing within the solver's residual.
[[nodiscard]] Course course_to(const network::PipingSystem& system, const network::SystemState& state,
                               const network::HosePoint& hose);

}  // namespace forecourse::studies
