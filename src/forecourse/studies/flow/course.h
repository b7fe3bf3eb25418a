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
/// Empty if nothing flows at the hose. The grade line has a point at each place and, from the pump's inlet to its
/// line and from the line to the nozzle, behind each part; a part without a height of its own has that of the place
/// before it. The groove of a shear valve is a height of its own where `site` is given and has one.
/// \error rises and losses of the budget add up to nothing within the solver's residual.
[[nodiscard]] Course course_to(const network::PipingSystem& system, const network::SystemState& state,
                               const network::HosePoint& hose, const site::Site* site = nullptr);

}  // namespace forecourse::studies
