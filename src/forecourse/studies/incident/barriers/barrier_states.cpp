#include "forecourse/studies/incident/barriers/barrier_states.h"

#include <algorithm>
#include <utility>

#include "forecourse/network/containment/sump_room.h"
#include "forecourse/studies/incident/barriers/proofs.h"
#include "forecourse/studies/incident/barriers/valve_states.h"

namespace forecourse::studies {
namespace {

bool listed(const std::vector<site::Name>& names, const std::string& id) {
  return std::any_of(names.begin(), names.end(), [&](const site::Name& name) { return name.text == id; });
}

bool listed(const std::vector<std::string>& ids, const std::string& id) {
  return std::find(ids.begin(), ids.end(), id) != ids.end();
}

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : ", ") + word;
  return out;
}

class States {
 public:
  explicit States(const Scene& scene) : s_(scene) {
    for (const EndGround& end : s_.ground.ends) {
      for (const std::string& pump : end.pumps) {
        if (!listed(pumps_, pump)) pumps_.push_back(pump);
      }
    }
  }

  std::vector<BarrierState> all() {
    const IncidentKind kind = s_.options.kind;
    for (const EndGround& end : s_.ground.ends) {
      for (BarrierState& state : valve_states(s_, end)) add(std::move(state));
    }
    if (kind == IncidentKind::drive_off) breakaway();
    if (kind == IncidentKind::crack || kind == IncidentKind::line_break) leak_detectors();
    const bool in_sump = kind == IncidentKind::struck || kind == IncidentKind::crack || kind == IncidentKind::sump_fire;
    if (in_sump && !s_.ground.dispenser.empty()) {
      sensor();
      sump();
    }
    emergency_stop();
    check_valves();
    return std::move(out_);
  }

 private:
  void add(BarrierState state) { out_.push_back(std::move(state)); }

  [[nodiscard]] const std::optional<site::Date>& today() const { return s_.options.today; }

  // ---- hoses -------------------------------------------------------------------------------------------

  void breakaway() {
    if (s_.ground.ends.empty() || s_.ground.ends.front().hose == nullptr) return;
    const site::Hose& hose = *s_.ground.ends.front().hose;
    StateBuilder state(Barrier::breakaway, hose.id.text, "parts the hose and shuts its ends");
    state.at(hose.where);
    if (!hose.breakaway && !hose.parting) return add(state.absent("no breakaway is listed"));
    const site::Parting parting = hose.parting.value_or(site::Parting{});
    const bool both = parting.poppet && parting.poppet->value == site::Poppet::double_poppet;
    add(state.needs(parting.pull.has_value(), "the pull at which it parts is not entered")
            .needs(parting.poppet.has_value(), "whether one of its ends shuts or both is not entered")
            .needs(both || !parting.poppet, "only one of its ends shuts")
            .needs(hose.whip.has_value(), "no whip hose: it may not turn into the pull")
            .needs(parting.installed.has_value() || parting.tested.has_value(), "no inspection is on record")
            .done());
  }

  // ---- what sees ---------------------------------------------------------------------------------------

  void leak_detectors() {
    for (const EndGround& end : s_.ground.ends) add(leak_detector(end));
  }

  [[nodiscard]] BarrierState leak_detector(const EndGround& end) const {
    const bool crack = s_.options.kind == IncidentKind::crack;
    const site::LeakDetector* detector = detector_of(s_, end);
    StateBuilder state(Barrier::leak_detector, end.product,
                       crack ? "restricts or stops a line whose leak it sees"
                             : "is made to find small leaks while the line rests, not this");
    if (detector == nullptr) return state.absent("no leak detector is listed");
    return state.at(detector->where)
        .needs(crack, "it is not made for a break: that it acts is not counted on")
        .needs(test_within_a_year("test of the leak detector", detector->tested, today()))
        .needs(detector->detects && detector->at, "what it detects, and at which pressure, is not entered")
        .needs(!crack || !detector->detects || acts_in_known_time(*detector),
               "within which time it acts on a leak so small is not entered (acts_within): the hour of 40 CFR "
               "280.44(a) is for 3 gal/h")
        .needs(!crack || sees(detector),
               "the leak is less than what it must find at its own pressure: it is not bound to see it")
        .done();
  }

  /// Whether nothing says that the crack's leak is too small for it.
  [[nodiscard]] bool sees(const site::LeakDetector* detector) const {
    Inputs inputs;
    const auto law = crack_law(s_.request, inputs);
    return !law || must_be_seen(detector, *law).value_or(true);
  }

  void sensor() {
    const site::Sump* sump = s_.ground.sump;
    const site::Interlock* lock = stopping_interlock(s_);
    StateBuilder state(Barrier::sump_sensor, s_.ground.dispenser,
                       lock != nullptr ? "stops the pump once fuel stands at it" : "stops nothing");
    if (sump == nullptr || (!sump->sensor && !sump->sensor_height))
      return add(state.absent("no sump sensor is listed"));
    state.at(sump->sensor ? sump->sensor->where : sump->where)
        .needs(lock != nullptr, "no interlock stops a pump on its signal")
        .needs(test_within_a_year("test of the sensor", sump->sensor ? sump->sensor->tested : std::nullopt, today()));
    if (lock != nullptr) {
      state.needs(test_on_record("test of the interlock", lock->tested, today()));
      for (const std::string& pump : pumps_) {
        if (!listed(lock->what, pump)) state.needs("its interlock is not said to stop pump " + pump);
      }
    }
    add(state.done());
  }

  void sump() {
    const site::Sump* sump = s_.ground.sump;
    StateBuilder state(Barrier::sump, s_.ground.dispenser, "holds what falls into it");
    if (sump == nullptr) return add(state.absent("no sump is listed"));
    state.at(sump->where)
        .needs(sump->tight, "whether it is tight is not entered", "it was found not tight")
        .needs(test_on_record("test of the sump", sump->tested, today()))
        .needs(network::sump_room(*sump).has_value(), "its sizes are not entered: what it holds is not determined");
    for (const site::EntrySeal& seal : sump->seals) {
      if (!seal.tight.value_or(true)) state.needs("entry seal " + seal.id.text + " was found not tight");
    }
    add(state.done());
  }

  // ---- what stops and holds ----------------------------------------------------------------------------

  [[nodiscard]] bool stops_all(const site::EmergencyStop& stop) const {
    return std::all_of(pumps_.begin(), pumps_.end(), [&](const std::string& p) { return listed(stop.stops, p); });
  }

  [[nodiscard]] bool stops_one(const site::EmergencyStop& stop) const {
    return std::any_of(pumps_.begin(), pumps_.end(), [&](const std::string& p) { return listed(stop.stops, p); });
  }

  /// The stop that the request names; else one that stops every pump of the place; else one that stops some. Null if
  /// there is none.
  [[nodiscard]] const site::EmergencyStop* stop_here() const {
    const auto& stops = s_.site.emergency_stops;
    auto found = std::find_if(stops.begin(), stops.end(), [&](const site::EmergencyStop& s) {
      return !s.id.empty() && s.id == s_.request.stop_by;
    });
    if (found == stops.end()) {
      found = std::find_if(stops.begin(), stops.end(), [&](const site::EmergencyStop& s) { return stops_all(s); });
    }
    if (found == stops.end()) {
      found = std::find_if(stops.begin(), stops.end(), [&](const site::EmergencyStop& s) { return stops_one(s); });
    }
    return found == stops.end() ? nullptr : &*found;
  }

  void emergency_stop() {
    const std::string does = "stops " + (pumps_.empty() ? "the pumps" : joined(pumps_)) + " when somebody presses it";
    if (!s_.request.stop_at) {
      const StateBuilder nobody(Barrier::emergency_stop, {}, does);
      return add(nobody.not_asked("nobody is said to press it: enter stop_at"));
    }
    const site::EmergencyStop* stop = stop_here();
    StateBuilder state(Barrier::emergency_stop, stop == nullptr ? std::string() : stop->id.text, does);
    if (stop == nullptr) return add(state.needs(false, "no emergency stop is listed that stops these pumps").done());
    state.at(stop->where);
    for (const std::string& pump : pumps_) {
      if (!listed(stop->stops, pump)) state.needs("it is not said to stop pump " + pump);
    }
    const bool named = !s_.request.stop_by.empty() && s_.request.stop_by.text != stop->id.text;
    add(state.needs(test_on_record("test of the emergency stop", stop->tested, today()))
            .needs(named || !stop->by_whom.empty(), "who presses it is not entered")
            .done());
  }

  void check_valves() {
    for (const site::Pump& pump : s_.site.pumps) {
      if (listed(pumps_, pump.id.text)) add(check_valve(pump));
    }
  }

  [[nodiscard]] static BarrierState check_valve(const site::Pump& pump) {
    StateBuilder state(Barrier::check_valve, pump.id.text, "keeps the line from running back into the tank");
    state.at(pump.where);
    if (!pump.check_valve) return state.absent("whether there is a check valve is not entered: counted as none");
    return *pump.check_valve ? state.done() : state.absent("no check valve is listed");
  }

  const Scene& s_;
  std::vector<std::string> pumps_;  ///< that feed the place
  std::vector<BarrierState> out_;
};

}  // namespace

std::vector<BarrierState> barrier_states(const Scene& scene) {
  if (scene.options.kind == IncidentKind::overfill) return {};
  return States(scene).all();
}

}  // namespace forecourse::studies
