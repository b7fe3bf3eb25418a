#pragma once

#include "forecourse/site/pipe.h"
#include "forecourse/site/sump.h"

namespace forecourse::site {

/// The tube that leads the drop to the bottom of a tank.
struct DropTube {
  SourceSpan where{};
  Maybe<Length> length;
  Maybe<Length> bore;
  Maybe<Length> end_above_bottom;
  Maybe<Length> roughness;
};

/// The container around a fill that holds what drips from the hose.
struct SpillContainer {
  SourceSpan where{};
  Maybe<Volume> volume;
  Fact double_wall;
  Fact drain;  ///< it can be emptied into the tank
  Fact tight;
  std::optional<Date> tested;
  std::optional<Date> monitored;         ///< both walls were last found tight
  std::optional<Date> monitoring_ended;  ///< day from which its walls are watched no more
  std::optional<Date> repaired;
  std::optional<LiquidTest> liquid_test;  ///< the last
};

/// A valve in the drop tube that restricts and then stops a delivery.
struct OverfillValve {
  SourceSpan where{};
  Maybe<Length> restricts_at;    ///< depth of liquid at which it begins to shut
  Maybe<Length> closes_at;       ///< depth of liquid at which it is shut
  Maybe<VolumeFlow> restricted;  ///< flow it lets through between the two
  Maybe<VolumeFlow> closed;      ///< flow it lets through when shut
  std::optional<EnteredLoss> loss;
  std::optional<Date> tested;
  std::optional<Date> repaired;
  Maybe<VolumeFlow> vapor_leak;  ///< of drop tube and valve at 2 in of water
  std::vector<Name> listed_to;   ///< standards that a laboratory listed it to
};

/// An alarm that tells the driver to stop.
struct OverfillAlarm {
  SourceSpan where{};
  Maybe<Ratio> at_share;  ///< share of the capacity
  Maybe<Length> at_depth;
  Fact heard_at_fill;
  std::optional<Date> tested;
  std::optional<Date> repaired;
};

/// Where the tanker's hose is connected.
struct Fill {
  Name id;
  SourceSpan where{};
  Maybe<Length> at;  ///< place along the tank from its low end
  Maybe<Length> elevation;
  Maybe<Length> bore;
  std::optional<Pipe> pipe;  ///< of a remote fill
  std::optional<Position> position;
  Fact outside;      ///< out of doors
  Fact tight;        ///< tanker's hoses of liquid and vapor join it tightly
  Fact through_top;  ///< it enters the tank through its top
  Fact slopes;       ///< it falls toward the tank
  std::optional<EnteredLoss> loss;
  std::optional<DropTube> drop_tube;
  std::optional<SpillContainer> spill_container;
  std::optional<OverfillValve> overfill_valve;
  Name mark;               ///< shape of the mark on its cover
  Maybe<Moment> turns_at;  ///< mean moment at which its rotatable adaptor turns
};

/// One point of a vent valve's curve.
struct VentPoint {
  VolumeFlow flow;
  PressureDifference pressure;
};

/// A pressure/vacuum valve on a vent.
struct VentValve {
  SourceSpan where{};
  Maybe<PressureDifference> opens_at;         ///< tank above the atmosphere
  Maybe<PressureDifference> vacuum_opens_at;  ///< tank below the atmosphere, written without a sign
  std::vector<VentPoint> points;              ///< outward flow and tank pressure, rising
  std::vector<VentPoint> vacuum_points;       ///< inward flow and tank vacuum, rising
  Maybe<VolumeFlow> pressure_leak;            ///< measured at 2 in of water of pressure
  Maybe<VolumeFlow> vacuum_leak;              ///< measured at 4 in of water of vacuum
  std::optional<Date> tested;
  std::vector<Name> listed_to;  ///< standards that a laboratory listed it to
};

/// A tank's vent. Tanks that name the same `shared` id breathe through one outlet.
struct Vent {
  Name id;
  SourceSpan where{};
  Name shared;
  std::optional<Pipe> branch;  ///< to the common vent
  std::optional<Pipe> pipe;    ///< of the outlet; of a shared one from where branches meet
  Maybe<Length> outlet_elevation;
  std::optional<VentValve> valve;
  Fact blocked;
  Fact restrictor;  ///< a float in it restricts flow when the tank is nearly full
  std::optional<Position> position;
  Fact upward;          ///< it blows upward, or sideways away from walls
  Fact drains;          ///< it drains to the tank without a trap, and enters through its top
  Fact flame_arrester;  ///< it has one
  std::optional<Date> installed;
};

/// A static pressure test of the room above the fuel, begun at 2 in of water.
struct PressureTest {
  SourceSpan where{};
  Maybe<Volume> ullage;
  Maybe<double> nozzles;          ///< that the tested room serves
  Maybe<PressureDifference> end;  ///< above the atmosphere, after 5 minutes
  std::optional<Date> tested;
};

/// What was measured while a tank was filled with vapor going back to the tanker.
struct EfficiencyTest {
  SourceSpan where{};
  Maybe<Volume> vented;  ///< that left through the vent
  Maybe<Temperature> vapor_temperature;
  Maybe<Volume> loaded;  ///< of fuel
  std::optional<Date> tested;
};

/// The way of vapor back to the tanker (stage I).
struct VaporReturn {
  SourceSpan where{};
  Name kind;  ///< "two-point" or "coaxial"
  std::optional<Pipe> pipe;
  std::optional<EnteredLoss> loss;  ///< of the dry break and adapter
  Name shared;                      ///< id of a common vapor pipe
  Fact alternative;                 ///< another vapor balance system than the rule lists, shown to do as much
  Maybe<Ratio> efficiency;          ///< share of the displaced vapor that goes back to the tanker
  std::optional<PressureTest> pressure_test;
  std::optional<EfficiencyTest> efficiency_test;
  std::optional<Date> tested;
};

/// A gauge that reads level, water and temperature.
struct TankGauge {
  SourceSpan where{};
  Name kind;         ///< "automatic" or "stick"
  Maybe<Length> at;  ///< place along the tank from its low end
  Maybe<Length> uncertainty;
  Maybe<VolumeFlow> detects;  ///< leak rate of its own test
  Maybe<Ratio> detection;     ///< probability that this test finds such a leak
  Maybe<Ratio> false_alarm;   ///< probability that it finds one in a tight tank
  Maybe<Length> reads_to;     ///< step of its level readings
  std::optional<Date> tested;
  std::optional<Date> leak_tested;  ///< last test of the tank by it
  std::vector<Name> listed_to;      ///< standards that it was tested to
};

/// How a tank is tested for tightness; the day stands in the tank's `tested`.
struct TightnessTest {
  SourceSpan where{};
  Maybe<VolumeFlow> detects;
  Maybe<Ratio> detection;    ///< probability that it finds such a leak
  Maybe<Ratio> false_alarm;  ///< probability that it finds one in a tight tank
};

/// Statistical reconciliation of a tank's stock.
struct Statistics {
  SourceSpan where{};
  Maybe<VolumeFlow> detects;    ///< least leak rate that it can find
  Maybe<VolumeFlow> threshold;  ///< leak rate above which it calls a leak
  Maybe<Ratio> detection;       ///< probability that it finds such a leak
  Maybe<Ratio> false_alarm;     ///< probability that it finds one in a tight tank
  std::optional<Date> made;     ///< last result
};

/// A well in which fuel on the ground water is looked for.
struct Well {
  Name id;
  SourceSpan where{};
  Maybe<Length> water_depth;     ///< of the ground water below grade when it is lowest
  Maybe<Velocity> conductivity;  ///< hydraulic, of the soil from the tank to the well
  Maybe<Length> detects;         ///< least layer of fuel that is found
  std::optional<Date> read;
};

/// A barrier in the ground about a tank, instead of a second wall.
struct Barrier {
  SourceSpan where{};
  Maybe<Velocity> permeability;  ///< to the fuel stored
  Fact above_ground_water;       ///< at all times, or made for use under water
  Fact above_flood_plain;        ///< outside a 25-year flood plain, or made for it
};

/// Cathodic protection that a tank was given after it was installed.
struct Protection {
  SourceSpan where{};
  Name sound_by;                       ///< "inspection", "monitoring" or "tests": how the tank was shown to be sound
  std::optional<Date> since;           ///< it first ran
  std::optional<Date> tightness_test;  ///< the second, after it first ran
  std::optional<Date> tested;          ///< last test of the protection itself
  std::optional<Date> repaired;
};

/// A weight tied to a tank against flotation.
struct Deadman {
  SourceSpan where{};
  Maybe<double> count;
  Maybe<Length> length;
  Maybe<Length> width;
  Maybe<Length> height;
  Maybe<UnitWeight> unit_weight;
  Maybe<Length> base_depth;  ///< of its underside below grade
  Fact soil_prism;           ///< the soil above it counts
  Maybe<Length> prism_top;   ///< depth below grade up to which that soil counts; without it to grade
};

/// Straps that tie a tank to its deadmen or to a slab under it.
struct Strap {
  SourceSpan where{};
  Maybe<double> count;
  Maybe<Force> working_load;  ///< of one with its fittings, both legs together
};

/// A sump that stands on a tank and goes through slab and backfill.
struct BuriedSump {
  SourceSpan where{};
  Maybe<double> count;
  Maybe<Length> diameter;  ///< outside
  Maybe<Length> depth;     ///< of its underside below grade; without it the crown's
  Maybe<Mass> mass;        ///< empty, with lid and fittings
};

/// A concrete slab over a tank.
struct Slab {
  SourceSpan where{};
  Maybe<Length> thickness;
  Maybe<Density> density;
  Maybe<Length> overhang;   ///< beyond the tank on each side
  Maybe<Length> length;     ///< along the tank, instead of an overhang
  Maybe<Length> width;      ///< across the tank, instead of an overhang
  Maybe<Length> top_depth;  ///< below grade; without it at grade
};

/// What holds a buried tank down in wet ground.
struct Flotation {
  SourceSpan where{};
  Maybe<Mass> empty_mass;
  Maybe<Mass> fittings_mass;  ///< of pumps, pipes and manways on the tank
  Maybe<Length> cover;        ///< from grade to the crown
  Maybe<Length> water_level;  ///< ground water below grade
  Maybe<UnitWeight> backfill;
  Maybe<UnitWeight> backfill_submerged;
  Maybe<UnitWeight> water;
  Fact soil_beside_crown;      ///< the soil beside the crown counts
  Maybe<Ratio> rupture_slope;  ///< of the planes between which soil is lifted, horizontal for vertical
  Name rupture_from;           ///< "axis" or "bottom": where the planes begin
  Maybe<Density> ballast;      ///< density of what it is filled with
  Maybe<Ratio> factor;         ///< wanted safety factor
  std::optional<Slab> slab;
  std::vector<BuriedSump> sumps;
  std::vector<Deadman> deadmen;
  std::optional<Strap> strap;
};

}  // namespace forecourse::site
