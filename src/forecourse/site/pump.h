#pragma once

#include "forecourse/site/pipe.h"

namespace forecourse::site {

/// How the points of a pump curve are joined.
enum class CurveFit {
  monotone,  ///< a falling curve through every point
  power,     ///< H0 - a q^N through three points, the first at zero flow
};

/// One point of a pump curve.
struct RisePoint {
  VolumeFlow flow;
  PressureDifference rise;
};

/// Pressure rise of a pump against its flow. Exactly one way is used: `points`, `coefficients`,
/// `shutoff` with `per_flow_squared`, or `shutoff` with `run_out`.
struct PumpCurve {
  SourceSpan where{};
  Maybe<PressureDifference> shutoff;          ///< rise at zero flow
  Maybe<SquareLoss> per_flow_squared;         ///< rise = shutoff - this * q^2
  Maybe<VolumeFlow> run_out;                  ///< flow at which the rise is zero
  std::vector<Entered<double>> coefficients;  ///< c0, c1, ...: rise = c0 + c1 q + c2 q^2 ..., SI (Pa, m3/s)
  std::vector<RisePoint> points;
  CurveFit fit = CurveFit::monotone;
};

enum class LeakDetectorKind { mechanical, electronic };

/// A finer test that a leak detector makes of a line that stands still.
struct QuietTest {
  SourceSpan where{};
  Maybe<VolumeFlow> detects;  ///< leak rate that it must find
  Maybe<GaugePressure> at;    ///< line pressure at which it tests
  Maybe<Duration> takes;      ///< time without flow that it needs
};

/// The automatic line leak detector at a pump's discharge.
struct LeakDetector {
  Name id;  ///< by which an interlock calls it
  SourceSpan where{};
  std::optional<Chosen<LeakDetectorKind>> kind;
  Maybe<VolumeFlow> detects;     ///< leak rate it must find
  Maybe<GaugePressure> at;       ///< line pressure at which `detects` holds
  Maybe<Duration> acts_within;   ///< of a leak of `detects` or more, the line is stopped, restricted or alarmed
  Maybe<Duration> opening_time;  ///< until full flow is let through
  Maybe<VolumeFlow> restricted;  ///< flow it lets through until it has opened
  std::optional<EnteredLoss> loss;
  std::optional<Date> tested;
  Name tested_at;  ///< place at which the leak of its last test was simulated
  std::vector<QuietTest> quiet_tests;
  Maybe<Ratio> detection;    ///< probability that it finds such a leak
  Maybe<Ratio> false_alarm;  ///< probability that it finds one in a tight line
};

/// A submersible pump: suction in a tank, discharge into a line.
struct Pump {
  Name id;
  SourceSpan where{};
  Name kind;  ///< "submersible"; anything else is out of scope
  Name tank;
  std::optional<PumpCurve> curve;
  Maybe<Ratio> speed;  ///< share of the speed the curve was taken at
  Fact check_valve;    ///< not listed: no check valve
  std::optional<EnteredLoss> check_valve_loss;
  std::optional<EnteredLoss> standing_loss;  ///< of fuel that runs through it while it stands
  Maybe<GaugePressure> pressure_relief;      ///< opens back to the tank
  std::optional<Pipe> leg;                   ///< its own run from the discharge head to the place `id`
  std::optional<LeakDetector> leak_detector;
  Maybe<Length> discharge_elevation;  ///< of the discharge head; the gauge and the leak detector sit there
  Maybe<Power> motor_power;
  Maybe<Mass> liquid_held;  ///< liquid warmed when it runs dead-headed
  Maybe<VolumeFlow> best_efficiency_flow;
  Fact bypass;  ///< lets a little flow back to the tank when every hose is shut
  std::optional<Position> position;
  Maybe<Length> at;                  ///< place along the tank from its low end
  Maybe<Length> inlet_above_bottom;  ///< of its suction
  Fact running;                      ///< no: off for every study
  Maybe<GaugePressure> rating;       ///< marked discharge pressure
  std::vector<Name> listed_to;       ///< standards that a laboratory listed it to
};

}  // namespace forecourse::site
