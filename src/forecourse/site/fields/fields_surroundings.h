#pragma once

#include "forecourse/site/fields/rules.h"
#include "forecourse/site/surroundings.h"

namespace forecourse::site {

template <class Visitor>
void fields(Visitor& v, Opening& opening) {
  v.about("opening", "A door, window or other opening of a building.");
  v.optional_id("id", opening.id, IdRule::dotted, "Name in reports.");
  v.position("position", opening.position, "Position on plan.");
}

template <class Visitor>
void fields(Visitor& v, Building& building) {
  v.about("building", "A building near the station; on plan a rectangle along the axes.");
  v.optional_id("id", building.id, IdRule::dotted, "Name in reports.");
  v.position("corner", building.corner, "One corner on plan.");
  v.position("opposite", building.opposite, "The corner opposite to it.");
  v.fact("combustible", building.combustible, "Whether its walls toward the station burn.");
  v.quantity("fire_rating", building.fire_rating, "How long these walls withstand fire.", not_negative);
  v.fact("basement", building.basement, "Whether it has a basement, a cellar or a pit.");
  v.list("opening", building.openings, "Its openings.");
}

template <class Visitor>
void fields(Visitor& v, LotLine& line) {
  v.about("lot_line", "A straight part of the lot's border.");
  v.optional_id("id", line.id, IdRule::dotted, "Name in reports.");
  v.position("from", line.from, "Where it begins on plan.");
  v.position("to", line.to, "Where it ends.");
  v.fact("buildable", line.buildable, "Whether there may be built beyond it.");
}

template <class Visitor>
void fields(Visitor& v, IgnitionSource& source) {
  v.about("ignition", "Something fixed that can ignite vapor, such as a switch that is not made for it.");
  v.optional_id("id", source.id, IdRule::dotted, "Name in reports.");
  v.position("position", source.position, "Position on plan.");
  v.quantity("elevation", source.elevation, "Its elevation.");
}

template <class Visitor>
void fields(Visitor& v, VaporProcessor& processor) {
  v.about("vapor_processor", "What treats recovered vapor.");
  v.optional_id("id", processor.id, IdRule::dotted, "Name in reports.");
  v.position("position", processor.position, "Position on plan.");
}

template <class Visitor>
void fields(Visitor& v, Surroundings& around) {
  v.about("surroundings", "What stands around the equipment.");
  v.fact("complete", around.complete, "Whether all buildings, openings, lot lines and sources near are listed.");
  v.list("building", around.buildings, "The buildings.");
  v.list("lot_line", around.lot_lines, "The lot's border.");
  v.list("ignition", around.ignitions, "Fixed sources of ignition.");
  v.list("vapor_processor", around.vapor_processors, "What treats recovered vapor.");
  v.quantity("flood_elevation", around.flood_elevation, "Elevation of the greatest stage of a flood.");
}

}  // namespace forecourse::site
