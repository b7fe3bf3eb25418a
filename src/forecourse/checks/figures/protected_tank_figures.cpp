#include <algorithm>

#include "forecourse/checks/figures/each_part.h"

namespace forecourse::checks {
namespace {

/// Whether such a tank relies on a slow end of the drop, in place of a notice.
bool slows(const site::Tank& tank) {
  return !tank.overfill_alarm && std::any_of(tank.fills.begin(), tank.fills.end(), [](const site::Fill& fill) {
    return fill.overfill_valve && (fill.overfill_valve->restricted || fill.overfill_valve->restricts_at);
  });
}

template <class Read>
std::vector<FigureAt> each_protected_tank(const Facts& facts, Read read) {
  return each_tank(facts, [&](const site::Tank& tank) {
    FigureAt out = of_part(tank.id.text, tank.where);
    const std::optional<bool> buried = is_buried(tank);
    if (buried.value_or(false) || !tank.protected_tank.value_or(true)) {
      out.exempt = "it is no protected tank above ground";
    } else if (!buried || !tank.protected_tank) {
      out.enter = "enter above_ground and protected of the tank";
    } else {
      read(tank, out);
    }
    return out;
  });
}

/// Highest share at which a device of a kind acts, from the study of the tanks.
std::optional<double> share_of(const Facts& facts, const site::Tank& tank, studies::OverfillDevice device) {
  std::optional<double> out;
  if (facts.tank == nullptr) return out;
  for (const studies::TankTold& told : facts.tank->tanks) {
    if (told.tank != tank.id.text) continue;
    for (const studies::DeviceSet& set : told.overfill.set) {
      if (set.device == device) out = std::max(out.value_or(set.share), set.share);
    }
  }
  return out;
}

template <studies::OverfillDevice Device>
std::vector<FigureAt> share_of_protected(const Facts& facts) {
  return each_protected_tank(facts, [&](const site::Tank& tank, FigureAt& out) {
    if (slows(tank)) {
      out.exempt = "it slows the drop in place of it";
      return;
    }
    out.value = share_of(facts, tank, Device);
    if (!out.value) out.enter = "enter overfill_alarm of the tank, and overfill_valve of its fill";
  });
}

std::vector<FigureAt> slow_flow(const Facts& facts) {
  return each_protected_tank(facts, [](const site::Tank& tank, FigureAt& out) {
    if (!slows(tank)) {
      out.exempt = "it gives notice and shuts off in place of it";
      return;
    }
    double most = 0.0;
    bool known = true;
    for (const site::Fill& fill : tank.fills) {
      if (!fill.overfill_valve) continue;
      const auto& valve = *fill.overfill_valve;
      if (valve.restricted) most = std::max(most, valve.restricted->likely.si());
      known = known && (valve.restricted || !valve.restricts_at);
    }
    if (known)
      out.value = most;
    else
      out.enter = "enter restricted of the overfill valve";
  });
}

/// From where it is slowed until the tank is full, at the flow that is left.
std::vector<FigureAt> slow_time(const Facts& facts) {
  return each_protected_tank(facts, [&](const site::Tank& tank, FigureAt& out) {
    if (!slows(tank)) {
      out.exempt = "it gives notice and shuts off in place of it";
      return;
    }
    out.enter = "enter restricts_at and restricted of the overfill valve, and the shape of the tank";
    if (facts.tank == nullptr) return;
    for (const studies::TankTold& told : facts.tank->tanks) {
      if (told.tank != tank.id.text) continue;
      for (const studies::DeviceSet& set : told.overfill.set) {
        if (set.device != studies::OverfillDevice::restriction || !set.before_full) continue;
        out.value = std::min(out.value.value_or(*set.before_full), *set.before_full);
      }
    }
  });
}

/// Whether each shutoff of a tank is dry: one that is not settles it; else empty where that is not known of one, or
/// there is none.
site::Fact shuts_dry(const studies::TankTold& told) {
  site::Fact dry;
  bool known = true;
  for (const studies::DeviceSet& set : told.overfill.set) {
    if (set.device != studies::OverfillDevice::shutoff) continue;
    if (set.wets_fitting) dry = dry.value_or(true) && !*set.wets_fitting;
    known = known && set.wets_fitting.has_value();
  }
  return known || !dry.value_or(true) ? dry : site::Fact{};
}

/// Whether a slowed drop is shut off before a fitting at the top is wet.
std::vector<FigureAt> slow_shuts_dry(const Facts& facts) {
  return each_protected_tank(facts, [&](const site::Tank& tank, FigureAt& out) {
    if (!slows(tank)) {
      out.exempt = "it gives notice and shuts off in place of it";
      return;
    }
    if (facts.tank != nullptr) {
      const auto& tanks = facts.tank->tanks;
      const auto told =
          std::find_if(tanks.begin(), tanks.end(), [&](const auto& one) { return one.tank == tank.id.text; });
      if (told != tanks.end()) out.fact = shuts_dry(*told);
    }
    if (!out.fact) out.enter = "enter closes_at of the overfill valve, and where the fittings at the tank's top stand";
  });
}

}  // namespace

std::vector<Figure> protected_tank_figures() {
  using studies::OverfillDevice;
  return {
      amount_figure<Ratio>("protected-notice-share", "share at which a protected tank above ground gives notice",
                           "share", share_of_protected<OverfillDevice::alarm>),
      amount_figure<Ratio>("protected-shutoff-share", "share at which the drop into a protected tank is shut off",
                           "share", share_of_protected<OverfillDevice::shutoff>),
      amount_figure<VolumeFlow>("protected-slow-flow", "flow to which the drop into a protected tank is slowed", "m3/s",
                                slow_flow),
      amount_figure<Duration>("protected-slow-time", "time from there until a protected tank is full", "s", slow_time),
      fact_figure("protected-slow-dry", "a slowed drop into a protected tank that is shut off before a fitting is wet",
                  slow_shuts_dry),
  };
}

}  // namespace forecourse::checks
