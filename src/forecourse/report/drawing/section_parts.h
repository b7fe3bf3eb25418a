#pragma once

#include <string>

#include "forecourse/report/drawing/frame.h"
#include "forecourse/report/drawing/section.h"

namespace forecourse::report::drawing {

/// Pieces of the section, in the order they are laid over one another.

/// Soil, ground line, scale of heights.
[[nodiscard]] std::string ground(const Section& section, const Frame& frame);

/// Tanker and fill, tank with its liquid, pump, vent.
[[nodiscard]] std::string tank_side(const Section& section, const Frame& frame);

/// The line with the places it passes.
[[nodiscard]] std::string line_run(const Section& section, const Frame& frame);

/// Sump, riser, shear valve, dispenser, hose, nozzle, vehicle.
[[nodiscard]] std::string dispenser_side(const Section& section, const Frame& frame);

}  // namespace forecourse::report::drawing
