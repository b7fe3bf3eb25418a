#pragma once

#include "forecourse/site/fields/rules.h"

namespace forecourse::site {

template <class Visitor>
void fields(Visitor& v, EmergencyStop& stop) {
  v.about("emergency_stop", "A switch that stops the flow of fuel. What is not stated about it stays unknown.");
  v.id("id", stop.id, IdRule::plain, "Name of the switch.");
  v.position("position", stop.position, "Position on plan.");
  v.quantity("elevation", stop.elevation, "Elevation of the switch.");
  v.references("stops", stop.stops, PartKind::pump, "Pumps that it stops.");
  v.quantity("acts_in", stop.acts_in, "Time from the event until the pumps stop.", not_negative);
  v.word("by_whom", stop.by_whom, actor_words, "Who acts.");
  v.name("reset", stop.reset, "Who resets it, and how.");
  v.fact("also_cuts_power", stop.also_cuts_power, "Whether it cuts the power of the dispensers.");
  v.quantity("height", stop.height, "Above the floor in front of it.", not_negative);
  v.fact("sign", stop.sign, "Whether a sign tells what it does.");
  v.fact("manual_reset", stop.manual_reset, "Whether only a hand at the switch sets it back.");
  v.fact("keeps_monitoring", stop.keeps_monitoring, "Whether the monitoring of the tanks goes on when it is pressed.");
  v.date("tested", stop.tested, "Last test.");
}

template <class Visitor>
void fields(Visitor& v, Extinguisher& extinguisher) {
  v.about("extinguisher", "A fire extinguisher that hangs ready.");
  v.id("id", extinguisher.id, IdRule::plain, "Name of it.");
  v.position("position", extinguisher.position, "Position on plan.");
  v.name("rating", extinguisher.rating, "Rating as on its label: \"2-A:20-B:C\".");
}

template <class Visitor>
void fields(Visitor& v, Interlock& interlock) {
  v.about("interlock", "When one thing trips, another acts.");
  v.id("id", interlock.id, IdRule::plain, "Name of the interlock.");
  v.reference("when", interlock.when, PartKind::tripping_part,
              "A sump sensor, a leak detector, an emergency stop, or the pump or dispenser that bears it.",
              Need::required);
  v.choice("then", interlock.then, action_words, "What happens.");
  v.references("what", interlock.what, PartKind::pump_or_dispenser, "Pumps and dispensers that it acts on.");
  v.quantity("acts_in", interlock.acts_in, "Time from the trip until it acts.", not_negative);
  v.fact("fail_safe", interlock.fail_safe, "Whether a broken wire or lost power acts like a trip.");
  v.date("tested", interlock.tested, "Last test.");
}

}  // namespace forecourse::site
