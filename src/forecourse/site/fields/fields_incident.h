#pragma once

#include "forecourse/site/fields/fields_dispenser.h"
#include "forecourse/site/running/incident_request.h"

namespace forecourse::site {

template <class Visitor>
void fields(Visitor& v, Vehicle& vehicle) {
  v.about("vehicle", "A vehicle that drives off with the nozzle.");
  v.quantity("acceleration", vehicle.acceleration, "From rest.", positive);
  v.quantity("speed", vehicle.speed, "When the hose comes tight, instead of an acceleration from rest.", positive);
  v.quantity("slack", vehicle.slack, "Way until the hose is tight.", not_negative);
  v.quantity("angle", vehicle.angle, "Of the pull off the breakaway's axis, without a whip hose.", not_negative);
  v.quantity("nozzle_height", vehicle.nozzle_height, "Of the nozzle in the vehicle, above the island.", not_negative);
  v.quantity("distance", vehicle.distance, "From the dispenser to the filler neck, on plan.", positive);
}

template <class Visitor>
void fields(Visitor& v, FireRequest& fire) {
  v.about("fire", "A fire under a dispenser.");
  v.quantity("diameter", fire.diameter, "Of the burning pool.", positive);
  v.quantity("gas_temperature", fire.gas_temperature, "Around the fusible link.");
  v.quantity("gas_speed", fire.gas_speed, "Past the fusible link.", positive);
  v.quantity("start_temperature", fire.start_temperature, "Of the fusible link before the fire.");
  v.quantity("link_above", fire.link_above, "Fusible link above the burning surface.", not_negative);
}

template <class Visitor>
void fields(Visitor& v, IncidentRequest& request) {
  v.about("incident", "What is asked of an incident. Options of the command win over it.");
  v.optional_id("id", request.id, IdRule::plain, "Name, where one kind is asked more than once.");
  v.word("kind", request.kind, incident_words, "What goes wrong.", Need::required);
  v.reference("at", request.at, PartKind::incident_place, "A dispenser, an inlet's place, a hose, a line or a tank.");
  v.references("open", request.open, PartKind::hose, "Hoses open elsewhere.");
  v.quantity("stop_at", request.stop_at, "When the pumps are stopped, from the incident on.", not_negative);
  v.name("stop_by", request.stop_by, "Who or what stops them then.");
  v.quantity("counts_until", request.counts_until, "When counting ends.", positive);
  v.quantity("open_area", request.open_area, "Opening through which fuel escapes; without it the full bore.", positive);
  v.number("discharge_coefficient", request.discharge_coefficient, "Of that opening.", positive);
  v.quantity("along", request.along, "Place of a break along a line, from its `from`.", share_of_one);
  v.fact("pump_runs", request.pump_runs, "Whether the pump runs when it begins; not stated: yes.");
  v.list("reading", request.readings, "Leak of a crack as measured, once or at two pressures.");
  v.number("exponent", request.exponent, "Of a crack's leak to pressure: 0.5 a hole, 1 a fine slit.", positive);
  v.quantity("running_pressure", request.running_pressure, "Line pressure while the pump runs.", positive);
  v.quantity("holding_pressure", request.holding_pressure, "Line pressure between.", not_negative);
  v.quantity("running_share", request.running_share, "Share of the time for which the pump runs.", share_of_one);
  v.quantity("runs_for", request.runs_for, "Of a pump's cycle.", positive);
  v.quantity("rests_for", request.rests_for, "Of a pump's cycle.", not_negative);
  v.quantity("line_compliance", request.line_compliance, "Volume the line takes up per pressure; zero: rigid.",
             not_negative);
  v.fact("columns", request.columns, "No: the weight of the columns of fuel is left out.");
  v.quantity("sensor_dead_for", request.sensor_dead_for, "Time for which the sump sensor sees nothing.", not_negative);
  v.quantity("into_sump", request.into_sump, "Share of what escapes that falls into the sump.", share_of_one);
  v.table("vehicle", request.vehicle, "The vehicle that drives off.");
  v.table("fire", request.fire, "The fire.");
  v.reference("delivery", request.delivery, PartKind::delivery, "The delivery that overfills.");
  v.quantity("driver_acts_in", request.driver_acts_in, "After the alarm is heard, or after the overfill valve acts.",
             not_negative);
  v.quantity("ordered", request.ordered, "What the tanker brings, instead of its compartment.", positive);
}

template <class Visitor>
void fields(Visitor& v, Forecourt& forecourt) {
  v.about("forecourt", "The forecourt around the dispensers.");
  v.quantity("slope", forecourt.slope, "Its fall.", gradient);
  v.quantity("film", forecourt.film, "Thickness of fuel lying on it.", positive);
  v.word("drains_to", forecourt.drains_to, drain_words, "Where it drains to.");
  v.quantity("drain_distance", forecourt.drain_distance, "From a dispenser to the nearest drain.", positive);
  v.quantity("interceptor_volume", forecourt.interceptor_volume, "What the interceptor holds.", positive);
}

}  // namespace forecourse::site
