#pragma once

#include "forecourse/site/fields/fields_pipe.h"
#include "forecourse/site/fields/fields_sump.h"

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
  v.date("monitored", container.monitored, "When both its walls were last found tight by what watches them.");
  v.date("monitoring_ended", container.monitoring_ended, "When that watch was given up.");
  v.date("repaired", container.repaired, "Last repair.");
  v.table("liquid_test", container.liquid_test, "How that test was made.");
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
  v.date("repaired", valve.repaired, "Last repair.");
  v.quantity("vapor_leak", valve.vapor_leak, "Leak of drop tube and valve at 2 in of water.", not_negative);
  v.names("listed_to", valve.listed_to, "Standards that it is listed to.");
}

template <class Visitor>
void fields(Visitor& v, OverfillAlarm& alarm) {
  v.about("overfill_alarm", "An alarm that tells the driver to stop.");
  v.quantity("at_share", alarm.at_share, "Share of the capacity at which it sounds.", share_of_one);
  v.quantity("at_depth", alarm.at_depth, "Depth of liquid at which it sounds.", positive);
  v.fact("heard_at_fill", alarm.heard_at_fill, "Whether the driver hears or sees it at the fill.");
  v.date("tested", alarm.tested, "Last test.");
  v.date("repaired", alarm.repaired, "Last repair.");
}

template <class Visitor>
void fields(Visitor& v, Fill& fill) {
  v.about("fill", "Where the tanker's hose is connected.");
  v.optional_id("id", fill.id, IdRule::dotted, "Name in reports.");
  v.quantity("at", fill.at, "Place along the tank, from its low end.", not_negative);
  v.quantity("elevation", fill.elevation, "Elevation of the connection.");
  v.quantity("bore", fill.bore, "Inside diameter of the fill.", positive);
  v.pipe("pipe", fill.pipe, "The pipe of a remote fill.");
  v.position("position", fill.position, "Position on plan.");
  v.fact("outside", fill.outside, "Whether it lies out of doors.");
  v.fact("tight", fill.tight, "Whether the tanker's hoses of liquid and vapor join it tightly.");
  v.fact("through_top", fill.through_top, "Whether it enters the tank through its top.");
  v.fact("slopes", fill.slopes, "Whether it falls toward the tank.");
  v.loss("loss", fill.loss, "Loss of the connection.");
  v.table("drop_tube", fill.drop_tube, "The drop tube.");
  v.table("spill_container", fill.spill_container, "The spill container.");
  v.table("overfill_valve", fill.overfill_valve, "The overfill valve.");
  v.word("mark", fill.mark, fill_mark_words, "Shape of the mark on its cover.");
  v.quantity("turns_at", fill.turns_at, "Mean moment at which its rotatable adaptor turns.", positive);
}

template <class Visitor>
void fields(Visitor& v, VentValve& valve) {
  v.about("vent_valve", "A pressure/vacuum valve on a vent.");
  v.quantity("opens_at", valve.opens_at, "Tank pressure above the atmosphere at which it opens.", not_negative);
  v.quantity("vacuum_opens_at", valve.vacuum_opens_at, "Tank vacuum at which it opens, without a sign.", not_negative);
  v.points("points", valve.points, &VentPoint::flow, &VentPoint::pressure, "Pairs of outward flow and tank pressure.");
  v.points("vacuum_points", valve.vacuum_points, &VentPoint::flow, &VentPoint::pressure,
           "Pairs of inward flow and tank vacuum.");
  v.quantity("pressure_leak", valve.pressure_leak, "Leak of the shut valve at 2 in of water of pressure.",
             not_negative);
  v.quantity("vacuum_leak", valve.vacuum_leak, "Leak of the shut valve at 4 in of water of vacuum.", not_negative);
  v.date("tested", valve.tested, "Last test.");
  v.names("listed_to", valve.listed_to, "Standards that it is listed to.");
}

template <class Visitor>
void fields(Visitor& v, Vent& vent) {
  v.about("vent", "A tank's vent.");
  v.optional_id("id", vent.id, IdRule::dotted, "Name in reports.");
  v.name("shared", vent.shared, "Tanks that name the same id here breathe through one outlet.");
  v.pipe("branch", vent.branch, "The pipe from this tank to where it joins a shared vent.");
  v.pipe("pipe", vent.pipe, "The pipe from the tank, or from where branches join, to the outlet.");
  v.quantity("outlet_elevation", vent.outlet_elevation, "Elevation of the outlet.");
  v.table("valve", vent.valve, "The pressure/vacuum valve.");
  v.fact("blocked", vent.blocked, "Whether it is blocked.");
  v.fact("restrictor", vent.restrictor, "Whether a float in it restricts flow when the tank is nearly full.");
  v.position("position", vent.position, "Position of its outlet on plan.");
  v.fact("upward", vent.upward, "Whether it blows upward, or sideways away from walls.");
  v.fact("drains", vent.drains, "Whether it drains to the tank without a trap and enters through its top.");
  v.fact("flame_arrester", vent.flame_arrester, "Whether it has one.");
  v.date("installed", vent.installed, "When it was installed.");
}

template <class Visitor>
void fields(Visitor& v, PressureTest& test) {
  v.about("pressure_test", "A static pressure test of the room above the fuel, begun at 2 in of water.");
  v.quantity("ullage", test.ullage, "The room tested.", positive);
  v.number("nozzles", test.nozzles, "Nozzles that this room serves.", at_least_one);
  v.quantity("end", test.end, "Pressure above the atmosphere after 5 minutes.", not_negative);
  v.date("tested", test.tested, "Day of the test.");
}

template <class Visitor>
void fields(Visitor& v, EfficiencyTest& test) {
  v.about("efficiency_test", "What was measured while a tank was filled with vapor going back to the tanker.");
  v.quantity("vented", test.vented, "Volume that left through the vent.", not_negative);
  v.quantity("vapor_temperature", test.vapor_temperature, "Temperature of it.", fuel_temperature);
  v.quantity("loaded", test.loaded, "Volume of fuel that was dropped.", positive);
  v.date("tested", test.tested, "Day of the test.");
}

template <class Visitor>
void fields(Visitor& v, VaporReturn& vapor) {
  v.about("vapor_return", "The way of vapor back to the tanker (stage I).");
  v.word("kind", vapor.kind, vapor_return_words, "Connection at the tank.");
  v.pipe("pipe", vapor.pipe, "The pipe from the tank to the connection.");
  v.loss("loss", vapor.loss, "Loss of the dry break and adapter.");
  v.name("shared", vapor.shared, "Id of a vapor pipe that several tanks use.");
  v.fact("alternative", vapor.alternative,
         "Whether it is another balance system than the rule lists, which needs proof of its efficiency.");
  v.quantity("efficiency", vapor.efficiency, "Share of the displaced vapor that goes back to the tanker.",
             share_of_one);
  v.table("pressure_test", vapor.pressure_test, "The last static pressure test.");
  v.table("efficiency_test", vapor.efficiency_test, "The last test of its efficiency.");
  v.date("tested", vapor.tested, "Last test.");
}

template <class Visitor>
void fields(Visitor& v, TankGauge& gauge) {
  v.about("gauge", "What reads level, water and temperature.");
  v.word("kind", gauge.kind, gauge_words, "Kind of gauge.");
  v.quantity("at", gauge.at, "Place along the tank, from its low end.", not_negative);
  v.quantity("uncertainty", gauge.uncertainty, "Of a level, one standard deviation.", not_negative);
  v.quantity("detects", gauge.detects, "Leak rate that its own test must find.", positive);
  v.quantity("detection", gauge.detection, "Probability that this test finds such a leak.", share_of_one);
  v.quantity("false_alarm", gauge.false_alarm, "Probability that it finds one where there is none.", share_of_one);
  v.quantity("reads_to", gauge.reads_to, "Step of its level readings.", positive);
  v.date("tested", gauge.tested, "Last test of the gauge itself.");
  v.date("leak_tested", gauge.leak_tested, "Last leak test of the tank by it.");
  v.names("listed_to", gauge.listed_to, "Standards that it was tested to.");
}

template <class Visitor>
void fields(Visitor& v, TightnessTest& test) {
  v.about("tightness_test", "How a tank is tested for tightness.");
  v.quantity("detects", test.detects, "Leak rate that it must find.", positive);
  v.quantity("detection", test.detection, "Probability that it finds such a leak.", share_of_one);
  v.quantity("false_alarm", test.false_alarm, "Probability that it finds one where there is none.", share_of_one);
}

template <class Visitor>
void fields(Visitor& v, Statistics& statistics) {
  v.about("statistics", "Statistical reconciliation of a tank's stock.");
  v.quantity("detects", statistics.detects, "Least leak rate that it can find.", positive);
  v.quantity("threshold", statistics.threshold, "Leak rate above which it calls a leak.", positive);
  v.quantity("detection", statistics.detection, "Probability that it finds such a leak.", share_of_one);
  v.quantity("false_alarm", statistics.false_alarm, "Probability that it finds one where there is none.", share_of_one);
  v.date("made", statistics.made, "Day of the last result.");
}

template <class Visitor>
void fields(Visitor& v, Well& well) {
  v.about("well", "A well in which fuel on the ground water is looked for.");
  v.optional_id("id", well.id, IdRule::dotted, "Name in reports.");
  v.quantity("water_depth", well.water_depth, "Depth of the ground water below grade when it is lowest.", not_negative);
  v.quantity("conductivity", well.conductivity, "Hydraulic conductivity of the soil from the tank to it.", positive);
  v.quantity("detects", well.detects, "Least layer of fuel that is found.", positive);
  v.date("read", well.read, "Last reading.");
}

template <class Visitor>
void fields(Visitor& v, Barrier& barrier) {
  v.about("barrier", "A barrier in the ground about a tank, instead of a second wall.");
  v.quantity("permeability", barrier.permeability, "Its permeability to the fuel stored.", positive);
  v.fact("above_ground_water", barrier.above_ground_water,
         "Whether it lies above the ground water at all times, or is made for use in it.");
  v.fact("above_flood_plain", barrier.above_flood_plain,
         "Whether it lies outside a 25-year flood plain, or is made for use in one.");
}

template <class Visitor>
void fields(Visitor& v, Protection& protection) {
  v.about("protection", "Cathodic protection that a tank was given after it was installed.");
  v.word("sound_by", protection.sound_by, sound_words, "How the tank was shown to be sound.");
  v.date("since", protection.since, "When it first ran.");
  v.date("tightness_test", protection.tightness_test, "The tightness test of the tank after that.");
  v.date("tested", protection.tested, "Last test of the protection itself.");
  v.date("repaired", protection.repaired, "Last repair.");
}

template <class Visitor>
void fields(Visitor& v, Slab& slab) {
  v.about("slab", "A concrete slab over a tank.");
  v.quantity("thickness", slab.thickness, "Its thickness.", positive);
  v.quantity("density", slab.density, "Density of the concrete.", positive);
  v.quantity("overhang", slab.overhang, "Beyond the tank on each side.", not_negative);
  v.quantity("length", slab.length, "Along the tank, instead of an overhang.", positive);
  v.quantity("width", slab.width, "Across the tank, instead of an overhang.", positive);
  v.quantity("top_depth", slab.top_depth, "Of its top below grade; without it, it lies at grade.", not_negative);
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
  v.quantity("prism_top", deadman.prism_top, "Depth below grade up to which that soil counts; without it to grade.",
             not_negative);
}

template <class Visitor>
void fields(Visitor& v, Strap& strap) {
  v.about("strap", "Straps that tie a tank to its deadmen or to a slab under it.");
  v.number("count", strap.count, "How many.", at_least_one);
  v.quantity("working_load", strap.working_load, "Working load of one with its fittings, both legs together.",
             positive);
}

template <class Visitor>
void fields(Visitor& v, BuriedSump& sump) {
  v.about("buried_sump", "A sump that stands on a tank and goes through slab and backfill.");
  v.number("count", sump.count, "How many of these; without it one.", at_least_one);
  v.quantity("diameter", sump.diameter, "Outside diameter.", positive);
  v.quantity("depth", sump.depth, "Of its underside below grade; without it that of the crown.", positive);
  v.quantity("mass", sump.mass, "Mass of it, empty, with lid and fittings.", not_negative);
}

template <class Visitor>
void fields(Visitor& v, Flotation& flotation) {
  v.about("flotation", "What holds a buried tank down in wet ground.");
  v.quantity("empty_mass", flotation.empty_mass, "Mass of the empty tank.", positive);
  v.quantity("fittings_mass", flotation.fittings_mass, "Mass of pumps, pipes and manways on it.", not_negative);
  v.quantity("cover", flotation.cover, "From grade to the crown.", not_negative);
  v.quantity("water_level", flotation.water_level, "Depth of the ground water below grade.", below_grade);
  v.quantity("backfill", flotation.backfill, "Unit weight of the backfill above water.", positive);
  v.quantity("backfill_submerged", flotation.backfill_submerged, "Unit weight of the backfill under water.", positive);
  v.quantity("water", flotation.water, "Unit weight of the ground water.", positive);
  v.fact("soil_beside_crown", flotation.soil_beside_crown, "Whether the soil beside the crown counts.");
  v.quantity("rupture_slope", flotation.rupture_slope,
             "Slope of the planes between which soil is lifted, horizontal for vertical; without it upright.",
             not_negative);
  v.word("rupture_from", flotation.rupture_from, rupture_words,
         "Where these planes begin: at the tank's axis (without this key) or its bottom.");
  v.quantity("ballast", flotation.ballast, "Density of what the tank is filled with.", positive);
  v.quantity("factor", flotation.factor, "Factor wanted.", positive);
  v.table("slab", flotation.slab, "The slab over the tank.");
  v.list("sump", flotation.sumps, "The sumps on the tank.");
  v.list("deadman", flotation.deadmen, "The deadmen.");
  v.table("strap", flotation.strap, "The straps.");
}

}  // namespace forecourse::site
