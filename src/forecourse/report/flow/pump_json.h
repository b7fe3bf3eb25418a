#pragma once

#include "forecourse/report/json_document.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::report {

/// A pump of one state.
[[nodiscard]] Json pump_json(const studies::PumpDuty& pump);

/// What a control makes of its pumps in one state; null where none moves them.
[[nodiscard]] Json control_json(const std::optional<studies::ControlTold>& control);

}  // namespace forecourse::report
