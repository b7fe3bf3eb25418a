#pragma once

#include <optional>
#include <string>

#include "forecourse/handover/drawings/drawing.h"
#include "forecourse/handover/drawings/part_places.h"
#include "forecourse/handover/parts/station_parts.h"
#include "forecourse/site/site.h"

namespace forecourse::handover {

/// Extents of classified areas around fills, vents and pumps of gasoline. \source [ifc_2018, table 5703.1.1]
namespace zone_size {
[[nodiscard]] double loose_fill();     ///< [m] around a fill whose hose is not joined tightly
[[nodiscard]] double tight_fill();     ///< [m]
[[nodiscard]] double above_grade();    ///< [m] up to which these reach
[[nodiscard]] double vent_inner();     ///< [m] of Division 1 around the outlet of a vent that blows upward
[[nodiscard]] double vent_outer();     ///< [m] of Division 2
[[nodiscard]] double pump_near();      ///< [m] in all directions from a pump out of doors
[[nodiscard]] double pump_at_grade();  ///< [m] around it, up to `above_grade`
}  // namespace zone_size

enum class View { plan, section };

/// Draws the classified areas that are known of what is placed, and lists all others as gaps: an extent whose text was
/// not seen, or for which something is not entered. Of a station that lives under European rules alone none is drawn.
void draw_zones(const site::Site& site, const std::vector<StationPart>& parts, const PartPlaces& places, View view,
                Drawing& out);

}  // namespace forecourse::handover
