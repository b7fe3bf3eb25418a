#include "forecourse/studies/incident/barriers/cause_effect.h"

#include <algorithm>
#include <utility>

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

class Matrix {
 public:
  explicit Matrix(const site::Site& site) : site_(site) {
    for (const site::Pump& pump : site.pumps) out_.columns.push_back(pump.id.text);
    for (const site::Dispenser& dispenser : site.dispensers) out_.columns.push_back(dispenser.id.text);
  }

  CauseEffect all() {
    for (const site::EmergencyStop& stop : site_.emergency_stops) add(stop);
    for (const site::Interlock& lock : site_.interlocks) add(lock);
    add_what_stops_nothing();
    return std::move(out_);
  }

 private:
  [[nodiscard]] CauseRow row(std::string cause) const {
    return {std::move(cause), std::vector<std::string>(out_.columns.size()), false, {}, {}};
  }

  void put(CauseRow& to, const std::string& id, const std::string& effect) const {
    const auto found = std::find(out_.columns.begin(), out_.columns.end(), id);
    if (found != out_.columns.end()) to.effects[static_cast<std::size_t>(found - out_.columns.begin())] = effect;
  }

  void add(const site::EmergencyStop& stop) {
    CauseRow one = row("emergency stop " + stop.id.text);
    for (const site::Name& pump : stop.stops) put(one, pump.text, "stops");
    for (const site::Dispenser& dispenser : site_.dispensers) {
      if (stop.also_cuts_power.value_or(false)) put(one, dispenser.id.text, "cuts power");
    }
    one.tested = stop.tested.has_value();
    if (stop.acts_in) one.acts_in = stop.acts_in->likely.si();
    out_.rows.push_back(std::move(one));
  }

  void add(const site::Interlock& lock) {
    CauseRow one = row(lock.when.text);
    for (const site::Name& what : lock.what) put(one, what.text, action_word(lock));
    one.tested = lock.tested.has_value();
    one.fail_safe = lock.fail_safe;
    if (lock.acts_in) one.acts_in = lock.acts_in->likely.si();
    out_.rows.push_back(std::move(one));
  }

  [[nodiscard]] bool has_interlock(const site::Name& id, const site::Name& bearer) const {
    return std::any_of(site_.interlocks.begin(), site_.interlocks.end(), [&](const site::Interlock& lock) {
      return lock.when == bearer || (!id.empty() && lock.when == id);
    });
  }

  /// A row without effects for each sensor and leak detector that no interlock knows: what it sees stops nothing.
  void add_what_stops_nothing() {
    for (const site::Tank& tank : site_.tanks) add(tank.sump, tank.id);
    for (const site::Dispenser& dispenser : site_.dispensers) add(dispenser.sump, dispenser.id);
    for (const site::Pump& pump : site_.pumps) {
      if (!pump.leak_detector) continue;
      add_without_effect(pump.leak_detector->id, "leak detector of ", pump.id, pump.leak_detector->tested.has_value());
    }
  }

  void add(const std::optional<site::Sump>& sump, const site::Name& bearer) {
    if (!sump || (!sump->sensor && !sump->sensor_height)) return;
    const site::Name id = sump->sensor ? sump->sensor->id : site::Name{};
    add_without_effect(id, "sump sensor of ", bearer, sump->sensor && sump->sensor->tested);
  }

  void add_without_effect(const site::Name& id, const char* what, const site::Name& bearer, bool tested) {
    if (has_interlock(id, bearer)) return;
    CauseRow one = row(id.empty() ? what + bearer.text : id.text);
    one.tested = tested;
    out_.rows.push_back(std::move(one));
  }

  const site::Site& site_;
  CauseEffect out_;
};

}  // namespace

CauseEffect cause_effect(const site::Site& site) { return Matrix(site).all(); }

}  // namespace forecourse::studies
