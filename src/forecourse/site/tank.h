#pragma once

#include "forecourse/site/equipment/tank_equipment.h"
#include "forecourse/site/line.h"

namespace forecourse::site {

/// The end of a tank from which places along it are measured.
enum class TankEnd { fill, gauge, pump };

/// The shape of a tank's shell.
struct TankShape {
  SourceSpan where{};
  Name kind;  ///< "horizontal-cylinder", "vertical-cylinder" or "rectangular"
  Maybe<Length> inside_diameter;
  Maybe<Length> outside_diameter;
  Maybe<Length> length;          ///< of the inside, without the bulge of the heads
  Maybe<Length> width;           ///< rectangular: across
  Maybe<Length> height;          ///< rectangular or upright: inside
  Name heads;                    ///< "flat", "dished", "elliptical", "hemispherical" or "conical"
  Maybe<Length> head_depth;      ///< how far a head bulges; without it from its kind
  Maybe<Length> dish_radius;     ///< of a dished head; without it the inside diameter
  Maybe<Length> knuckle_radius;  ///< between a dished head and the shell; without it 0.06 inside diameters
  Maybe<Ratio> pitch;
  Maybe<Angle> roll;  ///< turned about its length
  std::optional<Chosen<TankEnd>> low_end;
};

/// A level reading: depth of liquid at a place along the tank.
struct LevelReading {
  SourceSpan where{};
  Maybe<Length> depth;
  Maybe<Length> at;     ///< along the tank from its low end
  Maybe<Length> water;  ///< depth of the water bottom
  Maybe<Temperature> temperature;
  std::optional<Date> taken;
};

/// A part of a tank with its own product, behind an inner head.
struct Compartment {
  Name id;
  SourceSpan where{};
  Name product;
  Maybe<Length> from;  ///< where it begins along the tank, from its low end
  Maybe<Length> length;
  std::optional<LevelReading> reading;
};

/// A point of a dip chart.
struct ChartPoint {
  Length depth;
  Volume volume;
};

/// What stands inside a tank and takes room, evenly between two depths.
struct Displacement {
  SourceSpan where{};
  Maybe<Volume> volume;
  Maybe<Length> from;  ///< above the lowest inside point
  Maybe<Length> to;
};

/// A reading while a tank was filled in measured amounts.
struct CalibrationPoint {
  Volume added;  ///< since the filling began
  Length depth;
};

/// Readings by which a tank's shape can be corrected.
struct Calibration {
  SourceSpan where{};
  Maybe<Length> at;           ///< place of the readings along the tank, from its low end
  Maybe<Length> uncertainty;  ///< of one depth
  std::vector<CalibrationPoint> points;
  std::optional<Date> taken;
};

/// The pipe through which siphoned or manifolded tanks find one level.
struct SiphonBar {
  SourceSpan where{};
  Name kind;  ///< "siphon" over the tops, or "manifold" between the bottoms
  std::optional<Pipe> pipe;
  Maybe<Length> end_above_bottom;  ///< of both its ends, in a siphon
  Maybe<Length> crest_elevation;   ///< of a siphon's highest point
};

/// How a buried tank lies in the ground. Cover and slab stand under its flotation.
struct TankGround {
  SourceSpan where{};
  Maybe<Length> surround;       ///< least thickness of the inert fill around it
  Fact traffic;                 ///< vehicles may pass over it
  Maybe<Length> asphalt;        ///< thickness of asphalt over it
  Maybe<Length> paving_beyond;  ///< how far asphalt reaches beyond its outline
  Fact reinforced;              ///< the slab over it has reinforcement
};

/// A buried or above-ground tank with all that is fitted to it. What is not listed does not exist.
struct Tank {
  Name id;
  SourceSpan where{};
  Name product;
  std::optional<TankShape> shape;
  Maybe<Length> bottom_elevation;   ///< of the inside at the low end
  Maybe<Length> surface_elevation;  ///< of the liquid, entered instead of a reading
  std::optional<LevelReading> reading;
  std::vector<Name> siphoned_with;  ///< tanks whose levels go with this one's
  std::optional<SiphonBar> siphon;  ///< through which they do
  std::optional<Position> position;
  std::optional<Sump> sump;               ///< around the pump's head
  std::vector<Compartment> compartments;  ///< none: the tank holds one product
  std::vector<ChartPoint> chart;          ///< a dip chart entered instead of a shape
  Maybe<Volume> capacity;                 ///< nominal
  std::vector<Displacement> displacements;
  std::optional<Calibration> calibration;
  Fact above_ground;
  Fact double_wall;
  Name material;
  std::optional<Interstice> interstice;  ///< of a double-walled tank
  std::vector<Fill> fills;
  std::optional<OverfillAlarm> overfill_alarm;
  std::vector<Vent> vents;
  std::optional<VaporReturn> vapor_return;
  std::optional<TankGauge> gauge;
  std::optional<Flotation> flotation;
  Maybe<Angle> axis;  ///< direction of its length on plan, from the first axis; its position is then its middle
  std::optional<TankGround> ground;
  Fact protected_tank;  ///< above ground, in a casing that withstands fire
  std::optional<Date> installed;
  std::optional<Date> tested;  ///< last tank tightness test
  Name monitored_by;           ///< "interstice", "gauge", "inventory", "manual-gauging", "statistics" or "wells"
  std::optional<TightnessTest> tightness_test;
  std::optional<Statistics> statistics;
  Maybe<Duration> gauging_quiet;  ///< time without flow between the readings of manual gauging
  std::vector<Well> wells;
  std::optional<Barrier> barrier;
  std::optional<Protection> protection;
  Maybe<Volume> largest_transfer;  ///< most that it is filled with at one time
  Fact compatible;                 ///< the system is shown to be compatible with what it holds
  std::optional<Date> changed;     ///< day from which it holds its product
  std::optional<Date> notified;    ///< day on which the authority was told of that change
  std::optional<Date> lined;
  std::optional<Date> inspected_inside;
  std::optional<Date> repaired;
  std::vector<Name> listed_to;  ///< standards that a laboratory listed it to
};

}  // namespace forecourse::site
