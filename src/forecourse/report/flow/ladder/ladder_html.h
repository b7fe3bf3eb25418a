#pragma once

#include <optional>
#include <string>

#include "forecourse/report/flow/ladder/ladder_view.h"
#include "forecourse/report/svg/ladder.h"
#include "forecourse/report/units.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::report {

/// The slowest hose of a group against the number open.
[[nodiscard]] svg::LadderChart ladder_chart(const LadderGroup& group, const std::optional<double>& keep_flow,
                                            site::Display display, const std::string& id);

/// How to read it.
inline constexpr const char* ladder_note = "the shaded side of a limit is the one not wanted";

/// How many hoses at once: for each group of hoses the ladder drawn, what it says, its table, and the worst states.
/// Empty without ladders.
[[nodiscard]] std::string ladder_sections(const studies::FlowResult& result, site::Display display);

}  // namespace forecourse::report
