#pragma once

#include "forecourse/site/fields/fields_pipe.h"

namespace forecourse::site {

template <class Visitor>
void fields(Visitor& v, DropTube& tube) {
  v.about("drop_tube", "The tube that leads the drop to the bottom of a tank.");
  v.quantity("length", tube.length, "Its length.", positive);
  v.quantity("bore", tube.bore, "Inside diameter.", positive);
  v.quantity("end_above_bottom", tube.end_above_bottom, "Height of its end above the tank's bottom.", not_negative);
  v.quantity("roughness", tube.roughness, "Roughness of the inside.", not_negative);
}

template <class Visitor>
void fields(Visitor& v, SpillContainer& container) {
  v.about("spill_container", "The container around a fill that holds what drips from the hose.");
  v.quantity("volume", container.volume, "What it holds.", positive);
  v.fact("double_wall", container.double_wall, "Whether it has two walls.");
  v.fact("drain", container.drain, "Whether it can be emptied into the tank.");
  v.fact("tight", container.tight, "Whether it was found tight.");
  v.date("tested", container.tested, "Last test.");
}

template <class Visitor>
void fields(Visitor& v, OverfillValve& valve) {
  v.about("overfill_valve", "A valve in the drop tube that restricts and then stops a delivery.");
  v.quantity("restricts_at", valve.restricts_at, "Depth of liquid at which it begins to shut.", positive);
  v.quantity("closes_at", valve.closes_at, "Depth of liquid at which it is shut.", positive);
  v.quantity("restricted", valve.restricted, "Flow that it lets through between the two.", not_negative);
  v.quantity("closed", valve.closed, "Flow that it lets through when shut.", not_negative);
  v.loss("loss", valve.loss, "Its loss when open.");
  v.date("tested", valve.tested, "Last test.");
}

template <class Visitor>
void fields(Visitor& v, OverfillAlarm& alarm) {
  v.about("overfill_alarm", "An alarm that tells the driver to stop.");
  v.quantity("at_share", alarm.at_share, "Share of the capacity at which it sounds.", share_of_one);
  v.quantity("at_depth", alarm.at_depth, "Depth of liquid at which it sounds.", positive);
  v.fact("heard_at_fill", alarm.heard_at_fill, "Whether the driver hears or sees it at the fill.");
  v.date("tested", alarm.tested, "Last test.");
}

template <class Visitor>
void fields(Visitor& v, Fill& fill) {
  v.about("fill", "Where the tanker's hose is connected.");
  v.optional_id("id", fill.id, IdRule::dotted, "Name in reports.");
  v.quantity("at", fill.at, "Place along the tank, from its low end.", not_negative);
  v.quantity("elevation", fill.elevation, "Elevation of the connection.");
  v.quantity("bore", fill.bore, "Inside diameter of the fill.", positive);
  v.pipe("pipe", fill.pipe, "The pipe of a remote fill.");
  v.loss("loss", fill.loss, "Loss of the connection.");
  v.table("drop_tube", fill.drop_tube, "The drop tube.");
  v.table("spill_container", fill.spill_container, "The spill container.");
  v.table("overfill_valve", fill.overfill_valve, "The overfill valve.");
}

template <class Visitor>
void fields(Visitor& v, VentValve& valve) {
  v.about("vent_valve", "A pressure/vacuum valve on a vent.");
  v.quantity("opens_at", valve.opens_at, "Tank pressure above the atmosphere at which it opens.", not_negative);
  v.quantity("vacuum_opens_at", valve.vacuum_opens_at, "Tank vacuum at which it opens, without a sign.", not_negative);
  v.points("points", valve.points, &VentPoint::flow, &VentPoint::pressure, "Pairs of outward flow and tank pressure.");
  v.points("vacuum_points", valve.vacuum_points, &VentPoint::flow, &VentPoint::pressure,
           "Pairs of inward flow and tank vacuum.");
  v.date("tested", valve.tested, "Last test.");
}

template <class Visitor>
void fields(Visitor& v, Vent& vent) {
  v.about("vent", "A tank's vent.");
  v.optional_id("id", vent.id, IdRule::dotted, "Name in reports.");
  v.name("shared", vent.shared, "Tanks that name the same id here breathe through one outlet.");
  v.pipe("pipe", vent.pipe, "The pipe from the tank to the outlet.");
  v.quantity("outlet_elevation", vent.outlet_elevation, "Elevation of the outlet.");
  v.table("valve", vent.valve, "The pressure/vacuum valve.");
  v.fact("blocked", vent.blocked, "Whether it is blocked.");
}

template <class Visitor>
void fields(Visitor& v, VaporReturn& vapor) {
  v.about("vapor_return", "The way of vapor back to the tanker (stage I).");
  v.word("kind", vapor.kind, vapor_return_words, "Connection at the tank.");
  v.pipe("pipe", vapor.pipe, "The pipe from the tank to the connection.");
  v.loss("loss", vapor.loss, "Loss of the dry break and adapter.");
  v.name("shared", vapor.shared, "Id of a vapor pipe that several tanks use.");
  v.date("tested", vapor.tested, "Last test.");
}

template <class Visitor>
void fields(Visitor& v, TankGauge& gauge) {
  v.about("gauge", "What reads level, water and temperature.");
  v.word("kind", gauge.kind, gauge_words, "Kind of gauge.");
  v.quantity("at", gauge.at, "Place along the tank, from its low end.", not_negative);
  v.quantity("uncertainty", gauge.uncertainty, "Of a level, one standard deviation.", not_negative);
  v.quantity("detects", gauge.detects, "Leak rate that its own test must find.", positive);
  v.date("tested", gauge.tested, "Last test.");
}

template <class Visitor>
void fields(Visitor& v, Slab& slab) {
  v.about("slab", "A concrete slab over a tank.");
  v.quantity("thickness", slab.thickness, "Its thickness.", positive);
  v.quantity("density", slab.density, "Density of the concrete.", positive);
  v.quantity("overhang", slab.overhang, "Beyond the tank on each side.", not_negative);
}

template <class Visitor>
void fields(Visitor& v, Deadman& deadman) {
  v.about("deadman", "A weight tied to a tank against flotation.");
  v.number("count", deadman.count, "How many of these.", at_least_one);
  v.quantity("length", deadman.length, "Length of one.", positive);
  v.quantity("width", deadman.width, "Width of one.", positive);
  v.quantity("height", deadman.height, "Height of one.", positive);
  v.quantity("unit_weight", deadman.unit_weight, "Unit weight of what it is made of.", positive);
  v.quantity("base_depth", deadman.base_depth, "Depth of its underside below grade.", positive);
  v.fact("soil_prism", deadman.soil_prism, "Whether the soil above it counts.");
}

template <class Visitor>
void fields(Visitor& v, Flotation& flotation) {
  v.about("flotation", "What holds a buried tank down in wet ground.");
  v.quantity("empty_mass", flotation.empty_mass, "Mass of the empty tank.", positive);
  v.quantity("cover", flotation.cover, "Soil above the crown.", not_negative);
  v.quantity("water_level", flotation.water_level, "Ground water, below grade.");
  v.quantity("backfill", flotation.backfill, "Unit weight of the backfill above water.", positive);
  v.quantity("backfill_submerged", flotation.backfill_submerged, "Unit weight of the backfill under water.", positive);
  v.quantity("water", flotation.water, "Unit weight of the ground water.", positive);
  v.fact("soil_beside_crown", flotation.soil_beside_crown, "Whether the soil beside the crown counts.");
  v.quantity("ballast", flotation.ballast, "Density of what the tank is filled with.", positive);
  v.quantity("factor", flotation.factor, "Factor wanted.", positive);
  v.table("slab", flotation.slab, "The slab over the tank.");
  v.list("deadman", flotation.deadmen, "The deadmen.");
}

}  // namespace forecourse::site
