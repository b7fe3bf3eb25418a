#include "forecourse/studies/incident/setup/make_case.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "forecourse/network/containment/sump_room.h"
#include "forecourse/site/places.h"
#include "forecourse/studies/incident/fire/fire_inputs.h"

namespace forecourse::studies {
namespace {

using release::never;

constexpr DefaultStatus illustrative = DefaultStatus::illustrative;

/// Spreads that stand in for what is not entered. All are illustrative: they show a mechanism, they are no facts.
constexpr Spread closing_stand_in{0.05, 0.10, 0.20};       // [s]
constexpr Spread liquid_above_stand_in{2e-3, 5e-3, 8e-3};  // [m3]
constexpr Spread drains_stand_in{0.5, 0.7, 1.0};           // [1]
constexpr Spread into_sump_stand_in{0.1, 0.3, 0.6};        // [1]
constexpr Spread film_stand_in{0.7e-3, 1e-3, 5e-3};        // [m]
constexpr Spread relay_stand_in{1.0, 3.0, 5.0};            // [s]
constexpr double drain_time = 10.0;                        // [s]

double days(double n) { return n * 86400.0; }

parts::ClosingLaw closing_law(const site::ShearValve& valve, const std::string& place, Inputs& inputs) {
  const auto& closing = valve.closing;
  if (closing && closing->stroke_time) {
    const double delay =
        inputs.take("delay of the shear valve of " + place, closing->delay, {}, illustrative, "s", "none");
    return parts::steady_stroke(delay,
                                *inputs.take("stroke time of the shear valve of " + place, closing->stroke_time, "s"));
  }
  if (closing && !closing->points.empty()) {
    parts::ClosingLaw law{
        inputs.take("delay of the shear valve of " + place, closing->delay, {}, illustrative, "s", "none"), {}};
    for (const site::ClosingPoint& p : closing->points) law.points.push_back({p.time.si(), p.open.si()});
    return law;
  }
  const site::Maybe<Duration> none;
  return parts::full_flow_for(inputs.take("equivalent full-flow time of the shear valve of " + place,
                                          closing ? closing->equivalent_time : none, closing_stand_in, illustrative,
                                          "s", "illustrative"));
}

/// One case being put together.
class CaseMaker {
 public:
  CaseMaker(const Scene& scene, Inputs& inputs, const std::set<Barrier>& missing, Breakage breakage, Standing standing)
      : s_(scene), in_(inputs), missing_(missing), torn_(breakage == Breakage::torn_in_sump), standing_(standing) {}

  release::Case make() {
    add_catch();
    add_stops();
    add_slab();
    for (const EndGround& end : s_.ground.ends) case_.broken.push_back(broken(end));
    add_fire();
    case_.reportable = reportable_quantity;
    const double usual = kind() == IncidentKind::crack ? days(30.0) : 600.0;
    case_.end = s_.request.counts_until ? *in_.take("when counting ends", s_.request.counts_until, "s") : usual;
    return std::move(case_);
  }

 private:
  [[nodiscard]] IncidentKind kind() const { return s_.options.kind; }
  [[nodiscard]] bool has(Barrier barrier) const { return missing_.count(barrier) == 0; }
  [[nodiscard]] double dead_for(Barrier barrier) const {
    for (const DeadBarrier& dead : s_.options.dead) {
      if (dead.barrier == barrier) return dead.dead_for.value_or(never);
    }
    return 0.0;
  }

  // ---- the opening -----------------------------------------------------------------------------------

  [[nodiscard]] const site::ShearValve* valve_of(const EndGround& end) const {
    return end.inlet != nullptr && end.inlet->shear_valve ? &*end.inlet->shear_valve : nullptr;
  }

  void set_leak(release::Opening& opening, const network::PipingSystem& piping) {
    if (kind() == IncidentKind::crack || kind() == IncidentKind::sump_fire) {
      if (const auto law = crack_law(s_.request, in_)) {
        opening.leak_coefficient = law->coefficient;
        opening.leak_exponent = law->exponent;
        return;
      }
    }
    if (!s_.request.open_area) return;
    const double area = *in_.take("open area", s_.request.open_area, "m2");
    const double cd = in_.take("discharge coefficient", s_.request.discharge_coefficient,
                               {usual_discharge, usual_discharge, usual_discharge}, DefaultStatus::common_practice, "",
                               "sharp opening");
    if (kind() == IncidentKind::crack || kind() == IncidentKind::sump_fire) {
      opening.leak_coefficient = cd * area * std::sqrt(2.0 / piping.fluid.density);
      opening.leak_exponent = 0.5;
    } else {
      opening.discharge = network::opening_loss(piping.fluid.density, area, cd);
    }
  }

  release::Opening opening_of(const EndGround& end) {
    const network::PipingSystem& piping = s_.ground.network.systems[end.system];
    const network::BrokenEnd& broken = torn_ && end.torn ? *end.torn : end.end;
    release::Opening opening;
    opening.weight = piping.weight_of(broken.elevation);
    opening.path = torn_ && end.torn ? end.torn_path : end.path;
    opening.discharge = broken.discharge;
    opening.inertance = follows_columns() ? broken.inertance : 0.0;
    opening.limit = broken.limit;
    set_leak(opening, piping);
    opening.valve = broken.valve > 0.0 ? broken.valve : opening.discharge;
    if (const site::ShearValve* valve = valve_of(end); valve != nullptr && valve->seat_leak && valve->seat_leak->rate) {
      const double rate = *in_.take("seat leak of " + end.place, valve->seat_leak->rate, "m3/s");
      opening.seat_leak = rate / std::sqrt(valve->seat_leak->at->likely.si());
    }
    return opening;
  }

  [[nodiscard]] bool follows_columns() const { return s_.request.columns.value_or(true); }

  // ---- what shuts it ---------------------------------------------------------------------------------

  release::Shutting shutting_of(const EndGround& end) {
    release::Shutting shutting;
    const site::ShearValve* valve = valve_of(end);
    if (valve == nullptr || torn_ || end.hose != nullptr) return shutting;
    shutting.law = closing_law(*valve, end.place, in_);
    const bool struck = kind() == IncidentKind::struck || kind() == IncidentKind::drive_off;
    if (struck && has(Barrier::shear_valve)) {
      shutting.triggers_at = dead_for(Barrier::shear_valve);
    }
    const bool fire = kind() == IncidentKind::sump_fire;
    shutting.by_link = fire && has(Barrier::fusible_link) && has(Barrier::shear_valve) &&
                       valve->fusible_link.has_value() && valve->response_index.has_value();
    const bool trips = kind() == IncidentKind::crack && valve->crack_trip.value_or(false) && has(Barrier::crack_trip) &&
                       has(Barrier::shear_valve);
    if (trips && valve->trip_volume) {
      const network::PipingSystem& piping = s_.ground.network.systems[end.system];
      shutting.trip_volume = *in_.take("leak until the crack trip of " + end.place + " acts", valve->trip_volume, "m3");
      if (const auto pressure = in_.take("pressure for the crack trip of " + end.place, valve->trip_pressure, "Pa")) {
        shutting.trip_pressure = *pressure + piping.weight_of(end.end.elevation);
      }
    }
    return shutting;
  }

  release::Above above_of(const EndGround& end) {
    release::Above above;
    const bool dispenser_down = kind() == IncidentKind::struck;
    if (!dispenser_down || end.inlet == nullptr) return above;
    const site::ShearValve* valve = valve_of(end);
    const bool is_double = valve != nullptr && valve->poppet && valve->poppet->value == site::Poppet::double_poppet;
    if (is_double && has(Barrier::upper_poppet) && has(Barrier::shear_valve) && !torn_) return above;
    const double liquid = in_.take("liquid above the groove of " + end.place, end.inlet->liquid_above,
                                   liquid_above_stand_in, illustrative, "m3", "illustrative");
    above.volume = liquid * in_.take("share of it that drains at " + end.place, end.inlet->drains, drains_stand_in,
                                     illustrative, "", "illustrative");
    above.drains_in = drain_time;
    return above;
  }

  // ---- the line --------------------------------------------------------------------------------------

  void set_cycle(release::Broken& broken) {
    if (kind() != IncidentKind::crack) return;
    const auto& r = s_.request;
    if (r.runs_for && r.rests_for) {
      broken.runs_for = *in_.take("pump runs for", r.runs_for, "s");
      broken.rests_for = *in_.take("pump rests for", r.rests_for, "s");
      broken.starts_running = false;
      broken.pump_on = {0.0};
    } else if (r.running_share) {
      constexpr double cycle = 345.0;  // [s] where only the share of time is entered
      const double share = *in_.take("share of time the pump runs", r.running_share, "");
      const double length = in_.take("length of a pump's cycle", site::Maybe<Duration>{}, {cycle, cycle, cycle},
                                     illustrative, "s", "illustrative");
      if (share >= 1.0 || share <= 0.0) {
        broken.starts_running = share >= 1.0;
        return;
      }
      broken.runs_for = share * length;
      broken.rests_for = length - broken.runs_for;
      broken.starts_running = false;
      broken.pump_on = {0.0};
    }
  }

  /// What the tank gives: by gravity too, unless its standing pump is to let nothing through.
  void set_tank(const EndGround& end, release::Broken& b) {
    if (end.stock) b.stock = *end.stock;
    b.fall = end.fall;
    if (standing_ == Standing::shut && b.stopped.supplied) b.stopped = {};
  }

  /// Line pressures as measured, at the height of the opening.
  void set_pressures(const EndGround& end, release::Broken& b) {
    const auto& r = s_.request;
    const auto entered = [&](const char* what, const site::Maybe<GaugePressure>& pressure) {
      return pressure ? *in_.take(what, pressure, "Pa") + b.opening.weight : never;
    };
    if (kind() == IncidentKind::crack) b.runs_at = entered("line pressure while the pump runs", r.running_pressure);
    b.holds_at = entered("line pressure while the pump rests", r.holding_pressure);
    const bool runs = b.starts_running && end.running.supplied;
    b.starts_at = runs ? b.runs_at : std::min(b.runs_at, b.holds_at);
  }

  release::Broken broken(const EndGround& end) {
    release::Broken b;
    b.running = end.running;
    b.stopped = end.stopped;
    b.opening = opening_of(end);
    b.shutting = shutting_of(end);
    b.above = above_of(end);
    b.compliance = end.compliance.value_or(0.0);
    b.inertance = follows_columns() ? end.trunk_inertance : 0.0;
    b.rest_pressure = end.rest_pressure;
    b.relief = end.relief.value_or(never);
    b.checked = end.checked && has(Barrier::check_valve);
    b.starts_running = s_.request.pump_runs.value_or(true);
    set_tank(end, b);
    set_pressures(end, b);
    set_cycle(b);
    if (kind() == IncidentKind::crack && has(Barrier::leak_detector) && b.opening.leak_coefficient > 0.0) {
      const CrackLaw law{b.opening.leak_coefficient, b.opening.leak_exponent};
      b.detector_sees = must_be_seen(detector_of(s_, end), law).value_or(false);
    }
    return b;
  }

  // ---- around it -------------------------------------------------------------------------------------

  void add_catch() {
    release::Catch& c = case_.catches;
    if (kind() == IncidentKind::line_break || (kind() == IncidentKind::crack && s_.ground.dispenser.empty())) {
      c.share = 1.0;  // into the ground
      return;
    }
    if (kind() == IncidentKind::nozzle_left_open || kind() == IncidentKind::drive_off) return;
    const bool inside = torn_ || kind() == IncidentKind::crack || kind() == IncidentKind::sump_fire;
    c.share = inside ? 1.0
                     : in_.take("share that falls into the sump", s_.request.into_sump, into_sump_stand_in,
                                illustrative, "", "illustrative");
    const site::Sump* sump = s_.ground.sump;
    if (sump == nullptr || !has(Barrier::sump)) return;
    const auto room = network::sump_room(*sump);
    c.exists = room.has_value();
    if (!room) return;
    c.brim_volume = parts::brim_volume(*room);
    const auto at_height = [&](std::optional<double> height) {
      return height ? parts::volume_at(*room, *height).value_or(never) : never;
    };
    c.seal_volume = at_height(network::lowest_seal(*sump));
    c.sensor_volume = at_height(network::sensor_height(*sump));
  }

  void add_stops() {
    if (s_.request.stop_at && has(Barrier::emergency_stop)) {
      const double pressed = *in_.take("when the pumps are stopped", s_.request.stop_at, "s");
      case_.stops.emergency_stop = std::max(pressed, dead_for(Barrier::emergency_stop));
    }
    if (const site::Interlock* lock = stopping_interlock(s_); lock != nullptr && has(Barrier::sump_sensor)) {
      case_.stops.sensor_acts_in = in_.take("time from the wet sensor to the stop", lock->acts_in, relay_stand_in,
                                            illustrative, "s", "illustrative");
    }
    case_.stops.sensor_dead_until = dead_for(Barrier::sump_sensor);
    if (s_.request.sensor_dead_for) {
      case_.stops.sensor_dead_until =
          *in_.take("time for which the sump sensor is dead", s_.request.sensor_dead_for, "s");
    }
    add_detector();
  }

  void add_detector() {
    if (kind() != IncidentKind::crack || !has(Barrier::leak_detector) || s_.ground.ends.empty()) return;
    const site::LeakDetector* detector = detector_of(s_, s_.ground.ends.front());
    if (detector == nullptr || !acts_in_known_time(*detector)) return;
    const double within = in_.take("time within which the leak detector acts", detector->acts_within,
                                   {detector_time, detector_time, detector_time}, DefaultStatus::published, "s",
                                   "40 CFR 280.44(a): 3 gal/h at 10 psi within an hour");
    case_.stops.detector_at = std::max(within, dead_for(Barrier::leak_detector));
  }

  void add_slab() {
    const auto& forecourt = s_.site.forecourt;
    const site::Maybe<Length> none;
    case_.slab.film = in_.take("thickness of fuel on the slab", forecourt ? forecourt->film : none, film_stand_in,
                               illustrative, "m", "illustrative");
    if (!forecourt || !forecourt->drain_distance || forecourt->drains_to.text == "none") return;
    const double reach = *in_.take("distance to the drain", forecourt->drain_distance, "m");
    case_.slab.reaches_drain = std::numbers::pi * reach * reach * case_.slab.film;
    if (forecourt->interceptor_volume) {
      case_.slab.interceptor = *in_.take("what the interceptor holds", forecourt->interceptor_volume, "m3");
    }
  }

  void add_fire();

  const Scene& s_;
  Inputs& in_;
  const std::set<Barrier>& missing_;
  bool torn_;
  Standing standing_;
  release::Case case_;
};

}  // namespace

std::optional<CrackLaw> crack_law(const site::IncidentRequest& request, Inputs& inputs) {
  std::vector<const site::LeakReading*> whole;
  for (const site::LeakReading& reading : request.readings) {
    if (reading.rate && reading.at) whole.push_back(&reading);
  }
  if (whole.empty()) return std::nullopt;
  const double rate = *inputs.take("leak of the crack", whole[0]->rate, "m3/s");
  const double pressure = whole[0]->at->likely.si();
  CrackLaw law;
  if (whole.size() > 1) {
    const double second = *inputs.take("leak of the crack at the second pressure", whole[1]->rate, "m3/s");
    law.exponent = std::log(second / rate) / std::log(whole[1]->at->likely.si() / pressure);
  } else {
    law.exponent =
        inputs.take("exponent of the crack", request.exponent, {0.5, 0.5, 1.0}, DefaultStatus::common_practice, "",
                    "0.5 a hole, 1 a fine slit; one reading does not tell");
  }
  law.coefficient = rate / std::pow(pressure, law.exponent);
  return law;
}

const site::Interlock* stopping_interlock(const Scene& scene) {
  if (scene.ground.sump == nullptr) return nullptr;
  for (const site::Interlock& lock : scene.site.interlocks) {
    const bool of_sensor = scene.ground.sump->sensor && lock.when == scene.ground.sump->sensor->id;
    const bool of_dispenser = lock.when.text == scene.ground.dispenser;
    const bool stops = lock.then && lock.then->value == site::InterlockAction::stop;
    if (stops && (of_sensor || of_dispenser)) return &lock;
  }
  return nullptr;
}

const site::LeakDetector* detector_of(const Scene& scene, const EndGround& end) {
  for (const site::Pump& pump : scene.site.pumps) {
    const bool feeds = std::find(end.pumps.begin(), end.pumps.end(), pump.id.text) != end.pumps.end();
    if (feeds && pump.leak_detector) return &*pump.leak_detector;
  }
  return nullptr;
}

bool acts_in_known_time(const site::LeakDetector& detector) {
  if (!detector.detects || !detector.at) return false;
  constexpr double rounding = 1e-6;  // of a rate written in other units
  return detector.acts_within || detector.detects->likely.si() >= hourly_leak * (1.0 - rounding);
}

std::optional<bool> must_be_seen(const site::LeakDetector* detector, const CrackLaw& law) {
  if (detector == nullptr || !detector->detects || !detector->at) return std::nullopt;
  const double leak = law.coefficient * std::pow(detector->at->likely.si(), law.exponent);
  return leak >= detector->detects->likely.si() * (1.0 - 1e-9);
}

namespace {

void CaseMaker::add_fire() {
  if (kind() != IncidentKind::sump_fire) return;
  const FireInputs asked = fire_inputs(s_, in_);
  release::Fire& fire = case_.fire;
  fire.burns = true;
  fire.start = asked.start;
  fire.burning = asked.burning;
  if (asked.diameter) fire.sump_area = 0.25 * std::numbers::pi * *asked.diameter * *asked.diameter;
  if (!asked.rated || !asked.response_index || !asked.gas_temperature || !asked.gas_speed) return;
  if (*asked.rated <= asked.start) return;
  if (!has(Barrier::fusible_link)) return;
  fire.rated = *asked.rated;
  fire.response_index = *asked.response_index;
  fire.conduction = asked.conduction;
  fire.gas_temperature = *asked.gas_temperature;
  fire.gas_speed = *asked.gas_speed;
}

}  // namespace

release::Case make_case(const Scene& scene, Inputs& inputs, const std::set<Barrier>& missing, Breakage breakage,
                        Standing standing) {
  return CaseMaker(scene, inputs, missing, breakage, standing).make();
}

}  // namespace forecourse::studies
