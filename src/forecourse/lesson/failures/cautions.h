#pragma once

namespace forecourse::lesson {

/// What stands above every number of an escape.
inline constexpr const char* caution_of_escapes = "Stop the pump. Clear people away. Call the fire service.";

/// What stands above every number of a drop that can end under pressure.
inline constexpr const char* caution_of_drops =
    "A drop that stalls, or ends with its vapor shut in, stands under pressure: never open it, neither hose nor fill "
    "nor hatch, while it does. Shut the truck's valves, let the pressure go through the vent once its way is free, and "
    "follow the carrier's and the station's own procedure.";

}  // namespace forecourse::lesson
