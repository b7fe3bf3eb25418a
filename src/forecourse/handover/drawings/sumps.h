#pragma once

#include <optional>

#include "forecourse/checks/figures/plan.h"
#include "forecourse/handover/drawings/drawing.h"
#include "forecourse/site/sump.h"

namespace forecourse::handover {

// How a sump is drawn about its place; empty where a size that it takes is not entered.

/// Its inside at the top, a box with its two sizes along the axes of the plan.
[[nodiscard]] std::optional<checks::Outline> sump_on_plan(const site::Sump& sump, Point middle);

/// Its inside from the floor to the top; without floor_elevation with its top at grade.
[[nodiscard]] std::optional<Path> sump_in_section(const site::Sump& sump, double x);

}  // namespace forecourse::handover
