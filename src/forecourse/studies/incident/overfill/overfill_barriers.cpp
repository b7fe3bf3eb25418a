#include <algorithm>
#include <utility>

#include "forecourse/studies/incident/overfill/overfill_setup.h"

namespace forecourse::studies::overfilling {
namespace {

constexpr DefaultStatus illustrative = DefaultStatus::illustrative;
constexpr Spread driver_stand_in{15.0, 45.0, 120.0};  // [s]
constexpr Spread shut_stand_in{0.0, 0.0, 2e-4};       // [m3/s] a valve that shuts, some of which let a little pass
constexpr double shut_share = 0.95;                   ///< \source [cfr_280, 280.20(c)(1)(ii)(A)]
constexpr double alert_share = 0.90;                  ///< \source [cfr_280, 280.20(c)(1)(ii)(B)]
constexpr double rounding = 1e-4;  ///< of a share, where a depth was entered to a hundredth of an inch

double capacity(const Setup& setup) { return setup.everything.tank->capacity(); }

/// The level at which something acts that was entered as a depth at its place [m].
double level_of(const Setup& setup, Inputs& inputs, const char* what, const site::Maybe<Length>& entered,
                const site::Maybe<Length>& at) {
  if (!entered) return never;
  const std::optional<double> place = at ? std::optional(at->likely.si()) : std::nullopt;
  return setup.inside->volume.level_at(setup.inside->place(place), *inputs.take(what, entered, "m"));
}

void set_valve(const site::OverfillValve& valve, Inputs& inputs, Setup& setup) {
  Case& c = setup.everything;
  const auto& at = setup.fill->at;
  c.restricts_at = level_of(setup, inputs, "depth at which the overfill valve restricts", valve.restricts_at, at);
  c.closes_at = level_of(setup, inputs, "depth at which the overfill valve is shut", valve.closes_at, at);
  if (c.restricts_at < never && !valve.restricted) {
    setup.warnings.emplace_back(
        "what the overfill valve lets through while it restricts is not entered: counted as nothing held back");
  }
  c.restricted = inputs.take("flow past the restricting overfill valve", valve.restricted, "m3/s").value_or(never);
  if (!(c.closes_at < never)) return;
  c.closed = inputs.take("flow past the shut overfill valve", valve.closed, shut_stand_in, illustrative, "m3/s",
                         "illustrative");
}

void set_alarm(const site::OverfillAlarm& alarm, Inputs& inputs, Setup& setup) {
  Case& c = setup.everything;
  if (alarm.at_depth) {
    const auto at = setup.tank->gauge ? setup.tank->gauge->at : site::Maybe<Length>{};
    c.alarm_at = level_of(setup, inputs, "depth at which the overfill alarm sounds", alarm.at_depth, at);
  } else if (alarm.at_share) {
    const double share = *inputs.take("share of the capacity at which the overfill alarm sounds", alarm.at_share, "");
    c.alarm_at = c.tank->level(share * capacity(setup));
  }
  c.hears_alarm = alarm.heard_at_fill.value_or(false) && c.alarm_at < never;
}

void set_container(const site::SpillContainer& container, Inputs& inputs, Setup& setup) {
  setup.everything.container = inputs.take("volume of the spill container", container.volume, "m3").value_or(0.0);
  if (!container.volume)
    setup.warnings.emplace_back("the volume of the spill container is not entered: counted as none");
  setup.container_leaks = container.tight && !*container.tight;
  if (setup.container_leaks)
    setup.warnings.emplace_back(
        "the spill container is not tight: what falls into it is counted as lost to the ground");
}

struct Proof {
  BarrierState state;
  void lacks(bool missing, const char* reason) {
    if (missing) state.reasons.emplace_back(reason);
  }
  BarrierState judged() && {
    state.assurance = state.reasons.empty() ? Assurance::assured : Assurance::not_assured;
    return std::move(state);
  }
};

BarrierState absent(Barrier barrier, const std::string& owner, const char* why) {
  return {barrier, owner, Assurance::absent, {why}, {}, {}};
}

/// Share of the capacity that stands to a level.
double share_to(const Setup& setup, double level) { return setup.everything.tank->volume(level) / capacity(setup); }

BarrierState valve_state(const Setup& setup) {
  const std::string& id = setup.tank->id.text;
  if (setup.fill == nullptr || !setup.fill->overfill_valve)
    return absent(Barrier::overfill_valve, id, "no overfill valve is listed");
  const site::OverfillValve& valve = *setup.fill->overfill_valve;
  const Case& c = setup.everything;
  Proof proof{{Barrier::overfill_valve, id, {}, {}, "restricts the drop and then shuts it", valve.where}};
  const bool shuts = c.closes_at < never, restricts = c.restricts_at < never;
  proof.lacks(!shuts, "the depth at which it shuts is not entered");
  proof.lacks(shuts && share_to(setup, c.closes_at) > shut_share + rounding,
              "it shuts above 95 % of the capacity (40 CFR 280.20(c))");
  proof.lacks(!shuts && restricts && share_to(setup, c.restricts_at) > alert_share + rounding,
              "it restricts above 90 % of the capacity (40 CFR 280.20(c))");
  proof.lacks(!valve.tested, "no test is on record");
  return std::move(proof).judged();
}

BarrierState alarm_state(const Setup& setup) {
  const std::string& id = setup.tank->id.text;
  const auto& alarm = setup.tank->overfill_alarm;
  if (!alarm) return absent(Barrier::overfill_alarm, id, "no overfill alarm is listed");
  const Case& c = setup.everything;
  Proof proof{{Barrier::overfill_alarm, id, {}, {}, "tells the driver to stop", alarm->where}};
  proof.lacks(!(c.alarm_at < never), "where it sounds is not entered");
  proof.lacks(c.alarm_at < never && share_to(setup, c.alarm_at) > alert_share + rounding,
              "it sounds above 90 % of the capacity (40 CFR 280.20(c))");
  proof.lacks(!alarm->heard_at_fill, "that it is heard at the fill is not entered");
  proof.lacks(alarm->heard_at_fill && !*alarm->heard_at_fill, "it is not heard at the fill");
  proof.lacks(!alarm->tested, "no test is on record");
  return std::move(proof).judged();
}

BarrierState driver_state(const Setup& setup) {
  const Case& c = setup.everything;
  Proof proof{{Barrier::driver, setup.tank->id.text, {}, {}, "shuts the truck's valve", {}}};
  proof.lacks(true, "a person: he may be away, or late");
  proof.lacks(!c.hears_alarm && !(c.restricts_at < never) && !(c.closes_at < never),
              "nothing tells him: there is no alarm that he hears and no valve that holds the drop back");
  return std::move(proof).judged();
}

}  // namespace

void set_barriers(const site::IncidentRequest& request, Inputs& inputs, Setup& setup) {
  Case& c = setup.everything;
  if (setup.fill != nullptr && setup.fill->overfill_valve) set_valve(*setup.fill->overfill_valve, inputs, setup);
  if (setup.tank->overfill_alarm) set_alarm(*setup.tank->overfill_alarm, inputs, setup);
  if (setup.fill != nullptr && setup.fill->spill_container) set_container(*setup.fill->spill_container, inputs, setup);
  c.driver_acts_in = inputs.take("time until the driver acts", request.driver_acts_in, driver_stand_in, illustrative,
                                 "s", "illustrative");
  c.stop_at = inputs.take("when it is stopped", request.stop_at, "s").value_or(never);
  constexpr double usual_end = 3600.0;  // [s]
  c.end = inputs.take("until when it is counted", request.counts_until, Spread{usual_end, usual_end, usual_end},
                      illustrative, "s", "illustrative");
}

std::vector<BarrierState> barriers_of(const Setup& setup) {
  return {valve_state(setup), alarm_state(setup), driver_state(setup)};
}

}  // namespace forecourse::studies::overfilling
