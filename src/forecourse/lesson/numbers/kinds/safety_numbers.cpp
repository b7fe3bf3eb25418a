// What an emergency stop or an interlock acts on: the pump that it stops, the sump that it watches.
#include "forecourse/lesson/numbers/check_pick.h"
#include "forecourse/lesson/numbers/flow_pick.h"
#include "forecourse/lesson/numbers/kinds/kinds.h"
#include "forecourse/lesson/numbers/pick.h"
#include "forecourse/lesson/numbers/stopped.h"

namespace forecourse::lesson {
namespace {

constexpr const char* enter_stopped = "enter which pumps it stops";

Picked flow(const From& from) {
  const std::string pump = stopped_pump(from.ground.site, from.at);
  if (pump.empty()) return nothing(enter_stopped);
  const auto at = pump_in_flow(from.ground, pump);
  if (!at) return nothing(why_no_flow(from.ground, {}));
  return picked_flow(from.ground, at->told->flow, at->pointer + "/flow_m3_per_s", at->system, "");
}

Picked pressure(const From& from) {
  const std::string pump = stopped_pump(from.ground.site, from.at);
  if (pump.empty()) return nothing(enter_stopped);
  const auto at = pump_in_flow(from.ground, pump);
  if (!at) return nothing(why_no_flow(from.ground, {}));
  return picked_flow(from.ground, at->told->pressure_rise, at->pointer + "/pressure_rise_pa", at->system, "");
}

Picked height(const From& from) { return of_finding(from, "emergency-stop-height", "us-fire-code"); }

/// The same kind of number of the sump whose sensor trips the interlock.
Picked of_watched(const From& from, const char* kind) {
  const std::string owner = watched_sump(from.ground.site, from.at);
  if (owner.empty()) return nothing("what trips it is no sensor of a sump");
  return find_number(kind)->pick({from.ground, owner, from.incidents});
}

Picked to_sensor(const From& from) { return of_watched(from, "sump-to-sensor"); }
Picked at_sensor(const From& from) { return of_watched(from, "sump-at-sensor"); }

}  // namespace

std::vector<NumberKind> safety_numbers() {
  return {{"stopped-flow", "Pumped by the first pump that it stops", Quantity::flow, flow},
          {"stopped-pressure", "Pressure that this pump adds", Quantity::pressure, pressure},
          {"stop-height", "The switch is this high", Quantity::length, height},
          {"interlock-to-sensor", "A leak of 3 gal/h reaches its sensor in", Quantity::time, to_sensor},
          {"interlock-at-sensor", "In the sump when it trips", Quantity::volume, at_sensor}};
}

}  // namespace forecourse::lesson
