#include "forecourse/lesson/numbers/stopped.h"

#include <algorithm>

namespace forecourse::lesson {
namespace {

std::string first_pump(const site::Site& site, const std::vector<site::Name>& stopped) {
  for (const site::Name& one : stopped) {
    const auto same = [&](const site::Pump& pump) { return pump.id == one; };
    if (std::any_of(site.pumps.begin(), site.pumps.end(), same)) return one.text;
  }
  return {};
}

/// Whether an interlock calls this sump: by the id of its sensor, or by that of what bears it.
bool is_called(const std::optional<site::Sump>& sump, const site::Name& owner, const std::string& when) {
  return sump && (owner.text == when || (sump->sensor && sump->sensor->id.text == when));
}

}  // namespace

std::string stopped_pump(const site::Site& site, const std::string& id) {
  for (const site::EmergencyStop& stop : site.emergency_stops) {
    if (stop.id.text == id) return first_pump(site, stop.stops);
  }
  for (const site::Interlock& interlock : site.interlocks) {
    if (interlock.id.text == id) return first_pump(site, interlock.what);
  }
  return {};
}

std::string watched_sump(const site::Site& site, const std::string& interlock) {
  for (const site::Interlock& one : site.interlocks) {
    if (one.id.text != interlock) continue;
    for (const site::Dispenser& dispenser : site.dispensers) {
      if (is_called(dispenser.sump, dispenser.id, one.when.text)) return dispenser.id.text;
    }
    for (const site::Tank& tank : site.tanks) {
      if (is_called(tank.sump, tank.id, one.when.text)) return tank.id.text;
    }
  }
  return {};
}

}  // namespace forecourse::lesson
