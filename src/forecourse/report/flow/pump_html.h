#pragma once

#include <string>

#include "forecourse/report/units.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::report {

/// What stands under the table of the pumps of one state: the ways in which a control can run them, and what there is
/// to say of each. Empty where there is nothing.
[[nodiscard]] std::string pump_details(const studies::SystemFlow& system, site::Display display);

}  // namespace forecourse::report
