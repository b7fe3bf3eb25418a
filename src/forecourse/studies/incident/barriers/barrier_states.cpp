#include "forecourse/studies/incident/barriers/barrier_states.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "forecourse/site/places.h"

namespace forecourse::studies {
namespace {

/// Builds the state of one barrier: there or not, and what keeps it from being assured.
class State {
 public:
  State(Barrier barrier, std::string owner, std::string does) {
    state_.barrier = barrier;
    state_.owner = std::move(owner);
    state_.does = std::move(does);
    state_.assurance = Assurance::assured;
  }

  State& at(SourceSpan where) {
    state_.where = where;
    return *this;
  }
  State& needs(bool proof, const char* reason) {
    if (!proof) state_.reasons.emplace_back(reason);
    return *this;
  }
  State& needs(const site::Fact& fact, const char* unknown, const char* no) {
    if (!fact) return needs(false, unknown);
    return needs(*fact, no);
  }

  [[nodiscard]] BarrierState done() {
    if (!state_.reasons.empty()) state_.assurance = Assurance::not_assured;
    return state_;
  }
  [[nodiscard]] BarrierState absent(const char* reason) {
    state_.assurance = Assurance::absent;
    state_.reasons = {reason};
    return state_;
  }
  [[nodiscard]] BarrierState not_asked(const char* reason) {
    state_.assurance = Assurance::not_asked;
    state_.reasons = {reason};
    return state_;
  }

 private:
  BarrierState state_;
};

class States {
 public:
  explicit States(const Scene& scene) : s_(scene) {}

  std::vector<BarrierState> all() {
    const IncidentKind kind = s_.options.kind;
    for (const EndGround& end : s_.ground.ends) of_valve(end);
    if (kind == IncidentKind::drive_off) breakaway();
    if (kind == IncidentKind::crack || kind == IncidentKind::line_break) leak_detector();
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

  // ---- the shear valve ---------------------------------------------------------------------------------

  void of_valve(const EndGround& end) {
    const IncidentKind kind = s_.options.kind;
    const bool meets = kind == IncidentKind::struck || kind == IncidentKind::drive_off ||
                       kind == IncidentKind::sump_fire || (kind == IncidentKind::crack && !s_.ground.dispenser.empty());
    if (!meets || end.inlet == nullptr) return;
    const std::string place = site::place_name(*end.dispenser, *end.inlet);
    if (!end.inlet->shear_valve) {
      add(State(Barrier::shear_valve, place, "").absent("no shear valve is listed"));
      return;
    }
    const site::ShearValve& valve = *end.inlet->shear_valve;
    const bool acts = kind != IncidentKind::crack || valve.crack_trip.value_or(false);
    if (acts) add(shear_valve(end, place, valve));
    if (kind == IncidentKind::struck) add(upper_poppet(place, valve));
    if (kind == IncidentKind::sump_fire) add(fusible_link(place, valve));
    if (kind == IncidentKind::crack) add(crack_trip(place, valve));
  }

  BarrierState shear_valve(const EndGround& end, const std::string& place, const site::ShearValve& valve) {
    State state(Barrier::shear_valve, place, "shuts the riser at the base of the dispenser");
    state.at(valve.where)
        .needs(valve.anchored, "whether it is anchored is not entered",
               "it is not anchored: the riser may be torn off instead")
        .needs(valve.tested.has_value(), "no trip test is on record");
    groove(*end.dispenser, valve, state);
    return state.done();
  }

  /// The groove lies at the island's top, or the valve's body breaks where it should not.
  void groove(const site::Dispenser& dispenser, const site::ShearValve& valve, State& state) {
    if (!valve.groove_elevation || !dispenser.elevation) {
      state.needs(false, "the height of its groove against the island's top is not entered");
      return;
    }
    const double off = valve.groove_elevation->likely.si() - dispenser.elevation->likely.si();
    state.needs(std::abs(off) <= groove_band * (1.0 + 1e-9), "its groove is more than 1/2 in from the island's top");
  }

  BarrierState upper_poppet(const std::string& place, const site::ShearValve& valve) {
    State state(Barrier::upper_poppet, place, "holds what is in the dispenser above the groove");
    state.at(valve.where);
    if (!valve.poppet) return state.absent("whether it has one poppet or two is not entered: counted as one");
    if (valve.poppet->value == site::Poppet::single_poppet) return state.absent("the valve has one poppet");
    return state.needs(valve.tested.has_value(), "no trip test is on record").done();
  }

  BarrierState fusible_link(const std::string& place, const site::ShearValve& valve) {
    State state(Barrier::fusible_link, place, "shuts the shear valve when its link parts in the heat");
    state.at(valve.where);
    if (!valve.fusible_link) return state.absent("no fusible link is listed");
    return state.needs(valve.tested.has_value(), "no trip test of the valve is on record")
        .needs(valve.response_index.has_value(),
               "the response index of the link is not entered: when it parts is not determined")
        .done();
  }

  BarrierState crack_trip(const std::string& place, const site::ShearValve& valve) {
    State state(Barrier::crack_trip, place, "shuts the shear valve when its groove leaks");
    state.at(valve.where);
    if (!valve.crack_trip || !*valve.crack_trip) return state.absent("no crack trip is listed");
    return state
        .needs(valve.trip_volume.has_value(), "the leak at which it acts is not entered, so it is not counted on")
        .needs(valve.tested.has_value(), "no trip test is on record")
        .done();
  }

  // ---- hoses -------------------------------------------------------------------------------------------

  void breakaway() {
    if (s_.ground.ends.empty() || s_.ground.ends.front().hose == nullptr) return;
    const site::Hose& hose = *s_.ground.ends.front().hose;
    State state(Barrier::breakaway, hose.id.text, "parts the hose and shuts its ends");
    state.at(hose.where);
    if (!hose.breakaway && !hose.parting) {
      add(state.absent("no breakaway is listed"));
      return;
    }
    const site::Parting parting = hose.parting.value_or(site::Parting{});
    const bool both = parting.poppet && parting.poppet->value == site::Poppet::double_poppet;
    add(state.needs(parting.pull.has_value(), "the pull at which it parts is not entered")
            .needs(both, "that both its ends shut is not entered")
            .needs(hose.whip.has_value(), "no whip hose: it may not turn into the pull")
            .needs(parting.installed.has_value() || parting.tested.has_value(), "no inspection is on record")
            .done());
  }

  // ---- what sees and stops -------------------------------------------------------------------------------

  void leak_detector() {
    for (const EndGround& end : s_.ground.ends) {
      const site::LeakDetector* detector = detector_of(s_, end);
      State state(Barrier::leak_detector, end.product,
                  s_.options.kind == IncidentKind::crack
                      ? "restricts or stops a line whose leak it sees"
                      : "is made to find small leaks while the line rests, not this");
      if (detector == nullptr) {
        add(state.absent("no leak detector is listed"));
        continue;
      }
      add(state.at(detector->where)
              .needs(detector->tested.has_value(), "no test is on record")
              .needs(detector->detects && detector->at, "what it detects, and at which pressure, is not entered")
              .done());
    }
  }

  void sensor() {
    const site::Sump* sump = s_.ground.sump;
    State state(Barrier::sump_sensor, s_.ground.dispenser, "stops the pump once fuel stands at it");
    const bool there = sump != nullptr && (sump->sensor || sump->sensor_height);
    if (!there) {
      add(state.absent("no sump sensor is listed"));
      return;
    }
    const site::Interlock* lock = stopping_interlock(s_);
    const bool tested = sump->sensor && sump->sensor->tested;
    state.at(sump->where)
        .needs(lock != nullptr, "no interlock stops a pump on its signal")
        .needs(tested, "no test of it is on record");
    if (lock != nullptr) state.needs(lock->tested.has_value(), "no test of the interlock is on record");
    add(state.done());
  }

  void sump() {
    const site::Sump* sump = s_.ground.sump;
    State state(Barrier::sump, s_.ground.dispenser, "holds what falls into it");
    if (sump == nullptr) {
      add(state.absent("no sump is listed"));
      return;
    }
    add(state.at(sump->where)
            .needs(sump->tight, "whether it is tight is not entered", "it was found not tight")
            .needs(sump->tested.has_value(), "no test is on record")
            .done());
  }

  [[nodiscard]] bool stops_all_pumps(const site::EmergencyStop& stop) const {
    return std::all_of(s_.ground.ends.begin(), s_.ground.ends.end(), [&](const EndGround& end) {
      return std::all_of(end.pumps.begin(), end.pumps.end(), [&](const std::string& pump) {
        return std::any_of(stop.stops.begin(), stop.stops.end(), [&](const site::Name& n) { return n.text == pump; });
      });
    });
  }

  void emergency_stop() {
    State state(Barrier::emergency_stop, {}, "stops the pumps when somebody presses it");
    if (!s_.request.stop_at) {
      add(state.not_asked("nobody is said to stop the pumps: enter stop_at"));
      return;
    }
    const auto& stops = s_.site.emergency_stops;
    const auto found =
        std::find_if(stops.begin(), stops.end(), [&](const site::EmergencyStop& s) { return stops_all_pumps(s); });
    if (found == stops.end()) {
      add(state.needs(false, "no emergency stop is listed that stops these pumps").done());
      return;
    }
    State of_switch(Barrier::emergency_stop, found->id.text, "stops the pumps when somebody presses it");
    add(of_switch.at(found->where)
            .needs(found->tested.has_value(), "no test is on record")
            .needs(!found->by_whom.empty(), "who presses it is not entered")
            .done());
  }

  void check_valves() {
    for (const EndGround& end : s_.ground.ends) {
      for (const site::Pump& pump : s_.site.pumps) {
        const bool feeds = std::find(end.pumps.begin(), end.pumps.end(), pump.id.text) != end.pumps.end();
        if (!feeds) continue;
        State state(Barrier::check_valve, pump.id.text, "keeps the line from running back into the tank");
        state.at(pump.where);
        if (!pump.check_valve || !*pump.check_valve) {
          add(state.absent("no check valve is listed"));
        } else {
          add(state.done());
        }
      }
    }
  }

  const Scene& s_;
  std::vector<BarrierState> out_;
};

}  // namespace

std::vector<BarrierState> barrier_states(const Scene& scene) { return States(scene).all(); }

}  // namespace forecourse::studies
