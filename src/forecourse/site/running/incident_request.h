#pragma once

#include "forecourse/site/dispenser.h"

namespace forecourse::site {

/// A vehicle that drives off.
struct Vehicle {
  SourceSpan where{};
  Maybe<Acceleration> acceleration;
  Maybe<Velocity> speed;        ///< when the hose comes tight, instead of an acceleration from rest
  Maybe<Length> slack;          ///< of the hose, before it is tight
  Maybe<Angle> angle;           ///< of the pull off the breakaway's axis
  Maybe<Length> nozzle_height;  ///< above the island
  Maybe<Length> distance;       ///< from dispenser to filler neck, on plan
};

/// A fire under a dispenser.
struct FireRequest {
  SourceSpan where{};
  Maybe<Length> diameter;              ///< of the burning pool
  Maybe<Temperature> gas_temperature;  ///< around the link
  Maybe<Velocity> gas_speed;           ///< past the link
  Maybe<Temperature> start_temperature;
  Maybe<Length> link_above;  ///< link above the burning surface
};

/// What is asked of an incident.
struct IncidentRequest {
  Name id;
  SourceSpan where{};
  Name kind;               ///< "struck", "drive-off", "sump-fire", "crack", "line-break", "overfill", ...
  Name at;                 ///< a dispenser, an inlet's place, a hose, a line or a tank
  std::vector<Name> open;  ///< hoses open elsewhere
  Maybe<Duration> stop_at;
  Name stop_by;  ///< who or what stops the pumps then
  Maybe<Duration> counts_until;
  Maybe<Area> open_area;  ///< without it the full bore
  Maybe<double> discharge_coefficient;
  Maybe<Ratio> along;                 ///< place of a break along a line, from its `from`
  Fact pump_runs;                     ///< when it begins; not stated: yes
  std::vector<LeakReading> readings;  ///< of a crack
  Maybe<double> exponent;             ///< of a crack's leak to pressure
  Maybe<GaugePressure> running_pressure;
  Maybe<GaugePressure> holding_pressure;
  Maybe<Ratio> running_share;  ///< of the time the pump runs
  Maybe<Duration> runs_for;    ///< of a pump's cycle
  Maybe<Duration> rests_for;
  Maybe<Compliance> line_compliance;  ///< instead of pipe data; zero: rigid
  Fact columns;                       ///< no: the weight of the columns is left out
  Maybe<Duration> sensor_dead_for;
  Maybe<Ratio> into_sump;  ///< share of what escapes that falls into the sump
  std::optional<Vehicle> vehicle;
  std::optional<FireRequest> fire;
  Name delivery;                   ///< of an overfill
  Maybe<Duration> driver_acts_in;  ///< after the alarm, or from the start of the drop
  Maybe<Volume> ordered;           ///< that the tanker brings, instead of its compartment
};

/// The forecourt around the dispensers.
struct Forecourt {
  SourceSpan where{};
  Maybe<Ratio> slope;
  Maybe<Length> film;  ///< thickness of fuel lying on it
  Name drains_to;      ///< "interceptor", "storm-drain" or "none"
  Maybe<Length> drain_distance;
  Maybe<Volume> interceptor_volume;
};

}  // namespace forecourse::site
