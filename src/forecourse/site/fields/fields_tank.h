#pragma once

#include "forecourse/site/fields/fields_equipment.h"
#include "forecourse/site/fields/fields_line.h"

namespace forecourse::site {

template <class Visitor>
void fields(Visitor& v, TankShape& shape) {
  v.about("tank_shape", "The shape of a tank's shell.");
  v.word("kind", shape.kind, shell_words, "Shape of the shell.", Need::required);
  v.quantity("inside_diameter", shape.inside_diameter, "Inside diameter.", positive);
  v.quantity("outside_diameter", shape.outside_diameter, "Outside diameter.", positive);
  v.quantity("length", shape.length, "Inside length of the shell, without the bulge of the heads.", positive);
  v.quantity("width", shape.width, "Inside width of a rectangular tank.", positive);
  v.quantity("height", shape.height, "Inside height of a rectangular or upright tank.", positive);
  v.word("heads", shape.heads, head_words, "Shape of the heads.");
  v.quantity("head_depth", shape.head_depth, "How far a head bulges.", not_negative);
  v.quantity("dish_radius", shape.dish_radius, "Radius of a dished head.", positive);
  v.quantity("knuckle_radius", shape.knuckle_radius, "Radius between a dished head and the shell.", positive);
  v.quantity("pitch", shape.pitch, "Slope of the tank along its length.", gradient);
  v.quantity("roll", shape.roll, "Angle by which it is turned about its length.", quarter_turn);
  v.choice("low_end", shape.low_end, tank_end_words, "The end that lies lower.");
}

template <class Visitor>
void fields(Visitor& v, LevelReading& reading) {
  v.about("reading", "A level reading.");
  v.quantity("depth", reading.depth, "Depth of the liquid, water included.", not_negative);
  v.quantity("at", reading.at, "Place along the tank, from its low end.", not_negative);
  v.quantity("water", reading.water, "Depth of the water bottom.", not_negative);
  v.quantity("temperature", reading.temperature, "Temperature of the fuel.", fuel_temperature);
  v.date("taken", reading.taken, "Day of the reading.");
}

template <class Visitor>
void fields(Visitor& v, Compartment& compartment) {
  v.about("compartment", "A part of a tank with its own product, behind an inner head.");
  v.id("id", compartment.id, IdRule::plain, "Name; a pump draws from it as from a tank.");
  v.reference("product", compartment.product, PartKind::product, "What it holds.", Need::required);
  v.quantity("from", compartment.from, "Where it begins along the tank, from its low end.", not_negative);
  v.quantity("length", compartment.length, "Its inside length.", positive);
  v.table("reading", compartment.reading, "The level in it.");
}

template <class Visitor>
void fields(Visitor& v, Displacement& displacement) {
  v.about("displacement", "What stands inside a tank and takes room, evenly between two depths.");
  v.quantity("volume", displacement.volume, "Room that it takes.", positive);
  v.quantity("from", displacement.from, "Where it begins above the lowest inside point.", not_negative);
  v.quantity("to", displacement.to, "Where it ends above the lowest inside point.", positive);
}

template <class Visitor>
void fields(Visitor& v, Calibration& calibration) {
  v.about("calibration", "Readings while the tank was filled in measured amounts.");
  v.quantity("at", calibration.at, "Place of the readings along the tank, from its low end.", not_negative);
  v.quantity("uncertainty", calibration.uncertainty, "One standard deviation of a depth.", positive);
  v.points("points", calibration.points, &CalibrationPoint::added, &CalibrationPoint::depth,
           "Pairs of the volume added since the filling began and the depth.");
  v.date("taken", calibration.taken, "Day of the readings.");
}

template <class Visitor>
void fields(Visitor& v, SiphonBar& bar) {
  v.about("siphon", "The pipe through which tanks that are siphoned find one level.");
  v.word("kind", bar.kind, siphon_words, "Over the tops (siphon), or between the bottoms (manifold).");
  v.table("pipe", bar.pipe, "Its length, bore and loss.");
  v.quantity("end_above_bottom", bar.end_above_bottom, "Height of its ends above the tanks' bottoms.", not_negative);
  v.quantity("crest_elevation", bar.crest_elevation, "Elevation of a siphon's highest point.");
}

template <class Visitor>
void fields(Visitor& v, TankGround& ground) {
  v.about("ground", "How a buried tank lies in the ground. Cover and slab stand under `flotation`.");
  v.quantity("surround", ground.surround, "Least thickness of the inert fill around it.", positive);
  v.fact("traffic", ground.traffic, "Whether vehicles may pass over it.");
  v.quantity("asphalt", ground.asphalt, "Thickness of the asphalt over it; zero where there is none.", not_negative);
  v.quantity("paving_beyond", ground.paving_beyond, "How far asphalt reaches beyond its outline.", not_negative);
  v.fact("reinforced", ground.reinforced, "Whether the slab over it has reinforcement.");
}

template <class Visitor>
void fields(Visitor& v, Tank& tank) {
  v.about("tank", "A tank with all that is fitted to it. What is not listed does not exist.");
  v.id("id", tank.id, IdRule::plain, "Name of the tank.");
  v.reference("product", tank.product, PartKind::product, "What it holds; a tank with compartments has none.");
  v.table("shape", tank.shape, "The shape of its shell.");
  v.quantity("bottom_elevation", tank.bottom_elevation, "Elevation of the inside at the low end.");
  v.quantity("surface_elevation", tank.surface_elevation, "Elevation of the liquid, instead of a reading.");
  v.table("reading", tank.reading, "A level reading.");
  v.references("siphoned_with", tank.siphoned_with, PartKind::tank, "Tanks whose levels go with this one's.");
  v.table("siphon", tank.siphon, "The pipe through which they do.");
  v.position("position", tank.position, "Position on plan.");
  v.table("sump", tank.sump, "The tank sump, around the pump's head.");
  v.list("compartment", tank.compartments, "Parts of the tank with their own products.");
  v.points("chart", tank.chart, &ChartPoint::depth, &ChartPoint::volume, "A dip chart: pairs of depth and volume.");
  v.list("displacement", tank.displacements, "What stands inside it and takes room.");
  v.table("calibration", tank.calibration, "Readings while it was filled in measured amounts.");
  v.quantity("capacity", tank.capacity, "Nominal capacity.", positive);
  v.fact("above_ground", tank.above_ground, "Whether it stands above ground.");
  v.fact("double_wall", tank.double_wall, "Whether it has two walls.");
  v.name("material", tank.material, "What it is made of.");
  v.table("interstice", tank.interstice, "The room between the two walls.");
  v.list("fill", tank.fills, "Where the tanker's hose is connected.");
  v.table("overfill_alarm", tank.overfill_alarm, "The overfill alarm.");
  v.list("vent", tank.vents, "The vents.");
  v.table("vapor_return", tank.vapor_return, "The way of vapor back to the tanker.");
  v.table("gauge", tank.gauge, "The gauge.");
  v.table("flotation", tank.flotation, "What holds it down in wet ground.");
  v.quantity("axis", tank.axis,
             "Direction on plan in which it runs from its low end, from the first axis toward the second; its position "
             "is then "
             "its middle.");
  v.table("ground", tank.ground, "How it lies in the ground.");
  v.fact("protected", tank.protected_tank, "Whether it stands above ground in a casing that withstands fire.");
  v.date("installed", tank.installed, "When it was installed.");
  v.date("tested", tank.tested, "Last tightness test.");
  v.word("monitored_by", tank.monitored_by, monitoring_words, "How leaks of it are looked for.");
  v.table("tightness_test", tank.tightness_test, "How it is tested for tightness.");
  v.table("statistics", tank.statistics, "Statistical reconciliation of its stock.");
  v.quantity("gauging_quiet", tank.gauging_quiet, "Time without flow between the readings of manual gauging.",
             positive);
  v.list("well", tank.wells, "Wells in which fuel on the ground water is looked for.");
  v.table("barrier", tank.barrier, "A barrier in the ground about it.");
  v.table("protection", tank.protection, "Cathodic protection that it was given after it was installed.");
  v.quantity("largest_transfer", tank.largest_transfer, "Most that it is filled with at one time.", positive);
  v.fact("compatible", tank.compatible, "Whether the system is shown to be compatible with what it holds.");
  v.date("changed", tank.changed, "When it was changed over to its product.");
  v.date("notified", tank.notified, "When the authority was told of that change.");
  v.date("lined", tank.lined, "When it was lined inside.");
  v.date("inspected_inside", tank.inspected_inside, "Last inspection of its inside.");
  v.date("repaired", tank.repaired, "Last repair.");
  v.names("listed_to", tank.listed_to, "Standards that it is listed to: [\"UL 1316\"].");
}

}  // namespace forecourse::site
