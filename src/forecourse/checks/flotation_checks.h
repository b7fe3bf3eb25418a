#pragma once

#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/studies/flotation/flotation.h"

namespace forecourse::checks {

/// For each tank: whether it is held down, empty and as filled, by the factor that the user wants, and whether the
/// straps take the pull of the deadmen. Without a factor wanted, a level of the water or a working load: not
/// determined. The factor is that of hold-down.
[[nodiscard]] std::vector<Finding> check_flotation(const studies::FlotationResult& result);

}  // namespace forecourse::checks
