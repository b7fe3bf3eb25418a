#pragma once

#include <string>

#include "forecourse/report/units.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::report {

/// How many hoses at once: for each group of hoses the ladder drawn, what it says, its table, and the worst states.
/// Empty without ladders.
[[nodiscard]] std::string ladder_sections(const studies::FlowResult& result, site::Display display);

}  // namespace forecourse::report
