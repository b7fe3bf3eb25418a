#include "forecourse/studies/incident/barriers/cause_effect.h"

#include <algorithm>

namespace forecourse::studies {
namespace {

std::string action_word(const site::Interlock& lock) {
  if (!lock.then) return "acts";
  switch (lock.then->value) {
    case site::InterlockAction::stop:
      return "stops";
    case site::InterlockAction::alarm:
      return "alarm";
    case site::InterlockAction::restrict:
      return "restricts";
  }
  return "acts";
}

CauseRow row(const std::string& cause, const std::vector<std::string>& columns) {
  return {cause, std::vector<std::string>(columns.size()), false, {}, {}};
}

}  // namespace

CauseEffect cause_effect(const site::Site& site) {
  CauseEffect out;
  for (const site::Pump& pump : site.pumps) out.columns.push_back(pump.id.text);
  for (const site::Dispenser& dispenser : site.dispensers) out.columns.push_back(dispenser.id.text);
  const auto column = [&](const std::string& id) {
    return std::find(out.columns.begin(), out.columns.end(), id) - out.columns.begin();
  };
  const auto put = [&](CauseRow& to, const std::string& id, const std::string& effect) {
    const auto at = static_cast<std::size_t>(column(id));
    if (at < to.effects.size()) to.effects[at] = effect;
  };
  for (const site::EmergencyStop& stop : site.emergency_stops) {
    CauseRow one = row("emergency stop " + stop.id.text, out.columns);
    for (const site::Name& pump : stop.stops) put(one, pump.text, "stops");
    for (const site::Dispenser& dispenser : site.dispensers) {
      if (stop.also_cuts_power.value_or(false)) put(one, dispenser.id.text, "cuts power");
    }
    one.tested = stop.tested.has_value();
    if (stop.acts_in) one.acts_in = stop.acts_in->likely.si();
    out.rows.push_back(std::move(one));
  }
  for (const site::Interlock& lock : site.interlocks) {
    CauseRow one = row(lock.when.text, out.columns);
    for (const site::Name& what : lock.what) put(one, what.text, action_word(lock));
    one.tested = lock.tested.has_value();
    one.fail_safe = lock.fail_safe;
    if (lock.acts_in) one.acts_in = lock.acts_in->likely.si();
    out.rows.push_back(std::move(one));
  }
  return out;
}

}  // namespace forecourse::studies
