#pragma once

#include "forecourse/site/fields/rules.h"

namespace forecourse::site {

template <class Visitor>
void fields(Visitor& v, SumpSensor& sensor) {
  v.about("sump_sensor", "A liquid sensor in a sump.");
  v.optional_id("id", sensor.id, IdRule::dotted, "Name by which an interlock calls it.");
  v.quantity("height", sensor.height, "Where it trips, above the sump's floor.", not_negative);
  v.word("kind", sensor.kind, sensor_words, "Kind of sensor.");
  v.fact("tells_fuel_from_water", sensor.tells_fuel_from_water, "Whether it tells fuel from water.");
  v.date("tested", sensor.tested, "Last test.");
}

template <class Visitor>
void fields(Visitor& v, EntrySeal& seal) {
  v.about("entry_seal", "Where a line or conduit enters a sump.");
  v.optional_id("id", seal.id, IdRule::dotted, "Name in reports.");
  v.quantity("height", seal.height, "Of its lower edge above the sump's floor.", not_negative);
  v.fact("tight", seal.tight, "Whether it was found tight.");
  v.quantity("opening", seal.opening, "Opening through which it leaks, where it does not hold.", positive);
  v.date("tested", seal.tested, "Last test.");
}

template <class Visitor>
void fields(Visitor& v, LiquidTest& test) {
  v.about("liquid_test", "A test of a sump or a spill container with water.");
  v.quantity("below_top", test.below_top, "Water below the top when the test began.", not_negative);
  v.quantity("above_seal", test.above_seal, "Water above the highest penetration or seam.");
  v.quantity("settled", test.settled, "Time until the first reading.", not_negative);
  v.quantity("waited", test.waited, "Time from the first reading to the last.", not_negative);
  v.quantity("change", test.change, "Change of the level between the two, without a sign.", not_negative);
  v.fact("boots_fitted", test.boots_fitted, "Whether the test boots were fitted.");
}

template <class Visitor>
void fields(Visitor& v, Sump& sump) {
  v.about("sump", "A tank sump or a dispenser sump.");
  v.word("kind", sump.kind, sump_words, "Its shape.");
  v.position("floor", sump.floor, "Two horizontal sizes of the inside at the floor.");
  v.position("top", sump.top, "Two horizontal sizes of the inside at the top.");
  v.quantity("diameter", sump.diameter, "Inside diameter of a round one.", positive);
  v.quantity("depth", sump.depth, "Depth of the inside.", positive);
  v.quantity("volume", sump.volume, "Volume up to the brim, entered instead of sizes.", positive);
  v.quantity("parts_share", sump.parts_share, "Share of the room taken by parts.", share_of_one);
  v.quantity("sensor_height", sump.sensor_height, "Where the sensor trips, above the floor.", not_negative);
  v.quantity("lowest_seal", sump.lowest_seal, "Lowest entry seal, above the floor.", not_negative);
  v.quantity("floor_elevation", sump.floor_elevation, "Elevation of the floor.");
  v.table("sensor", sump.sensor, "The sensor, when more than its height is known.");
  v.list("seal", sump.seals, "The entry seals one by one.");
  v.fact("tight", sump.tight, "Whether it was found tight.");
  v.fact("double_wall", sump.double_wall, "Whether it has two walls.");
  v.fact("open_to_view", sump.open_to_view, "Whether all in it can be looked at and reached.");
  v.date("tested", sump.tested, "Last test.");
  v.date("monitored", sump.monitored, "When both its walls were last found tight by what watches them.");
  v.date("monitoring_ended", sump.monitoring_ended, "When that watch was given up.");
  v.date("repaired", sump.repaired, "Last repair.");
  v.table("liquid_test", sump.liquid_test, "How that test was made.");
  v.names("listed_to", sump.listed_to, "Standards that it is listed to: [\"UL 2447\"].");
}

}  // namespace forecourse::site
