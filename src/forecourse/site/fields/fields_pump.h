#pragma once

#include "forecourse/site/fields/fields_pipe.h"

namespace forecourse::site {

template <class Visitor>
void fields(Visitor& v, PumpCurve& curve) {
  v.about("pump_curve",
          "Pressure rise of a pump against its flow, given in exactly one way: points, coefficients, shutoff with "
          "per_flow_squared, or shutoff with run_out.");
  v.quantity("shutoff", curve.shutoff, "Rise at zero flow.", positive);
  v.quantity("per_flow_squared", curve.per_flow_squared, "What the rise loses per flow squared.", positive);
  v.quantity("run_out", curve.run_out, "Flow at which the rise is zero.", positive);
  v.coefficients("coefficients", curve.coefficients,
                 "c0, c1, c2 ... of rise = c0 + c1 q + c2 q^2 ...: [\"30 psi\", \"-0.1 psi/gpm\", ...].");
  v.points("points", curve.points, &RisePoint::flow, &RisePoint::rise,
           "Measured pairs of flow and rise: [[\"0 gpm\", \"30 psi\"], ...].");
  v.choice("fit", curve.fit, curve_fit_words, "How the points are joined.");
}

template <class Visitor>
void fields(Visitor& v, QuietTest& test) {
  v.about("quiet_test", "A finer test that a leak detector makes of a line that stands still.");
  v.quantity("detects", test.detects, "Leak rate that it must find.", positive);
  v.quantity("at", test.at, "Line pressure at which it tests.", positive);
  v.quantity("takes", test.takes, "Time without flow that it needs.", positive);
}

template <class Visitor>
void fields(Visitor& v, LeakDetector& detector) {
  v.about("leak_detector", "The automatic line leak detector at a pump's discharge.");
  v.optional_id("id", detector.id, IdRule::dotted, "Name by which an interlock calls it.");
  v.choice("kind", detector.kind, leak_detector_words, "Kind of detector.");
  v.quantity("detects", detector.detects, "Leak rate that it must find.", positive);
  v.quantity("at", detector.at, "Line pressure at which `detects` holds.", positive);
  v.quantity("acts_within", detector.acts_within,
             "Time within which it acts on a leak of `detects` or more; an incident takes an hour without it, for 3 "
             "gal/h or more.",
             positive);
  v.quantity("opening_time", detector.opening_time, "Time until it lets the full flow through.", not_negative);
  v.quantity("restricted", detector.restricted, "Flow that it lets through until it has opened.", not_negative);
  v.loss("loss", detector.loss, "Its loss when open.");
  v.date("tested", detector.tested, "Last test.");
  v.quantity("detection", detector.detection, "Probability that it finds such a leak.", share_of_one);
  v.quantity("false_alarm", detector.false_alarm, "Probability that it finds one where there is none.", share_of_one);
  v.reference("tested_at", detector.tested_at, PartKind::place, "Place at which the leak of that test was simulated.");
  v.list("quiet_tests", detector.quiet_tests, "Finer tests of a line that stands still: 0.2 gal/h, 0.1 gal/h.");
}

template <class Visitor>
void fields(Visitor& v, Pump& pump) {
  v.about("pump", "A submersible pump: suction in a tank, discharge into a line.");
  v.id("id", pump.id, IdRule::plain, "Name of the pump, and of the place where its line begins.");
  v.word("kind", pump.kind, pump_words, "Only \"submersible\".");
  v.reference("tank", pump.tank, PartKind::tank, "Tank that it draws from.", Need::required);
  v.table("curve", pump.curve, "Pressure rise against flow.");
  v.quantity("speed", pump.speed, "Share of the speed at which the curve was taken.", pump_speed);
  v.fact("check_valve", pump.check_valve, "A check valve at its discharge.");
  v.loss("check_valve_loss", pump.check_valve_loss, "Loss of that check valve.");
  v.loss("standing_loss", pump.standing_loss,
         "Its loss while it stands and fuel runs through it by gravity, out of a tank that stands higher.");
  v.quantity("pressure_relief", pump.pressure_relief, "Line pressure at which it relieves into the tank.", positive);
  v.pipe("leg", pump.leg, "Its own run from the discharge to the place with its name.");
  v.table("leak_detector", pump.leak_detector, "The line leak detector.");
  v.quantity("discharge_elevation", pump.discharge_elevation, "Elevation of gauge and leak detector.");
  v.quantity("motor_power", pump.motor_power, "Power of the motor.", positive);
  v.quantity("liquid_held", pump.liquid_held, "Liquid that warms when nothing flows.", positive);
  v.quantity("best_efficiency_flow", pump.best_efficiency_flow, "Flow of best efficiency.", positive);
  v.fact("bypass", pump.bypass, "Whether a little flows back to the tank when every hose is shut.");
  v.position("position", pump.position, "Position on plan.");
  v.quantity("at", pump.at, "Place along the tank, from its low end.", not_negative);
  v.quantity("inlet_above_bottom", pump.inlet_above_bottom, "Height of its suction above the tank's bottom.",
             not_negative);
  v.fact("running", pump.running, "`false`: off in every study.");
  v.quantity("rating", pump.rating, "Discharge pressure that it is marked for.", positive);
  v.names("listed_to", pump.listed_to, "Standards that it is listed to: [\"UL 79\"].");
}

template <class Visitor>
void fields(Visitor& v, PumpControl& control) {
  v.about("control", "How the pumps of one product are run. Without it each runs while a hose calls.");
  v.id("id", control.id, IdRule::plain, "Name of the control.");
  v.reference("product", control.product, PartKind::product, "Product of the pumps.", Need::required);
  v.references("pumps", control.pumps, PartKind::pump, "The pumps in the order they start; none: all of the product.");
  v.choice("kind", control.kind, control_words, "Way of control.");
  v.quantity("starts_below", control.starts_below, "Line pressure below which the next pump starts.");
  v.quantity("stops_above", control.stops_above, "Line pressure above which the last pump stops.");
  v.number("hoses_calling", control.hoses_calling, "The next pump starts when more hoses than this call.",
           not_negative);
  v.quantity("alternates_after", control.alternates_after, "Running time after which the pumps change turn.", positive);
  v.quantity("holds", control.holds, "Line pressure that a variable speed holds.", positive);
  v.quantity("least_speed", control.least_speed, "Lowest share of full speed.", pump_speed);
  v.quantity("most_speed", control.most_speed, "Highest share of full speed.", pump_speed);
}

}  // namespace forecourse::site
