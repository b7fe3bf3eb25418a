#pragma once

#include <optional>
#include <vector>

#include "forecourse/handover/drawings/drawing.h"
#include "forecourse/handover/drawings/part_places.h"
#include "forecourse/handover/drawings/pen.h"
#include "forecourse/site/site.h"

namespace forecourse::handover {

/// The place on plan of a point along a tank, counted from the end at which its axis begins; empty: the tank's
/// position, axis or length is not entered.
[[nodiscard]] std::optional<Point> along_tank(const site::Tank& tank, double at);

/// Where parts stand on plan. A pump without a position of its own stands at its place along its tank, else at its
/// tank; a vent at the outlet it shares.
[[nodiscard]] PartPlaces plan_places(const site::Site& site);

/// All of the plan that has its size on the ground: outlines, marks, reach of hoses, classified areas.
void draw_plan(const site::Site& site, const std::vector<StationPart>& parts, Drawing& out);

/// All of it that depends on the scale: lines side by side, names, dimensions, notes.
void letter_plan(const site::Site& site, const std::vector<StationPart>& parts, Drawing& out);

}  // namespace forecourse::handover
