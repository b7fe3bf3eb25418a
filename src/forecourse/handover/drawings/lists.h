#pragma once

#include <string>
#include <vector>

#include "forecourse/handover/drawings/drawing.h"

namespace forecourse::handover {

// What a drawing lists, in sentences: one for each reason, in the order in which the reasons first come.

/// "fill, drop-tube F1; fill F2: enter position of the fill"
[[nodiscard]] std::vector<std::string> not_placed_in_words(const Drawing& drawing);

/// "pump P1, pump P2: Division 2 within 3 ft in all directions"
[[nodiscard]] std::vector<std::string> zones_in_words(const Drawing& drawing);

/// "dispenser D1: text of the extent around and inside dispensers not seen"
[[nodiscard]] std::vector<std::string> zone_gaps_in_words(const Drawing& drawing);

}  // namespace forecourse::handover
