#include "forecourse/studies/tank/overfill_routes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace forecourse::studies {
namespace {

constexpr double shut_share = 0.95;           ///< \source [cfr_280, 280.20(c)(1)(ii)(A)]
constexpr double alert_share = 0.90;          ///< \source [cfr_280, 280.20(c)(1)(ii)(B)]
constexpr double alarm_before = 60.0;         ///< [s] \source [cfr_280, 280.20(c)(1)(ii)(C)]
constexpr double restricted_before = 1800.0;  ///< [s] \source [cfr_280, 280.20(c)(1)(ii)(C)]

std::optional<double> likely(const site::Maybe<Length>& entered) {
  return entered ? std::optional(entered->likely.si()) : std::nullopt;
}

/// The routes of one tank, one after the other.
class Routes {
 public:
  Routes(const site::Site& site, const site::Tank& tank, const network::TankInside& inside,
         const std::optional<parts::TankVolume>& level_chart, std::optional<double> rate)
      : site_(site),
        tank_(tank),
        inside_(inside),
        level_chart_(level_chart),
        rate_(rate),
        pitched_(level_chart.has_value()) {
    if (!tank.fills.empty()) fill_ = &tank.fills.front();
    if (fill_ != nullptr) fill_at_ = likely(fill_->at);
    if (tank.gauge) gauge_at_ = likely(tank.gauge->at);
    out_.has_fill = fill_ != nullptr;
  }

  OverfillRoutes tell() && {
    find_fitting();
    add_settings();
    if (!inside_.charted) add_wrong(level_chart_ ? *level_chart_ : inside_.volume);
    add_set();
    return std::move(out_);
  }

 private:
  [[nodiscard]] double capacity() const { return inside_.volume.capacity(); }

  /// The place of a device; of a level tank any place serves.
  [[nodiscard]] std::optional<double> place_of(OverfillDevice device) const {
    const auto& at = device == OverfillDevice::alarm ? gauge_at_ : fill_at_;
    return at || pitched_ ? at : std::optional(inside_.start);
  }

  /// The level at which the surface reaches the top of the inside where the first fitting sits.
  void find_fitting() {
    const auto take = [&](const std::string& what, const std::optional<double>& at) {
      if (!at && pitched_) return;
      const double top = inside_.volume.range_of(inside_.place(at)).top;
      if (out_.fitting_level && *out_.fitting_level <= top) return;
      out_.fitting_level = std::min(top, inside_.volume.full_level());
      out_.fitting = what;
    };
    for (const site::Fill& fill : tank_.fills)
      take("fill" + (fill.id.empty() ? "" : " " + fill.id.text), likely(fill.at));
    if (tank_.gauge) take("gauge", gauge_at_);
    for (const site::Pump& pump : site_.pumps) {
      if (pump.tank == tank_.id) take("pump " + pump.id.text, likely(pump.at));
    }
  }

  /// Fills in level and depth of a setting whose volume is known.
  void place(OverfillSetting& s) const {
    if (!s.volume) return;
    if (*s.volume <= 0.0) {
      s.impossible = "it would have to act before anything is in the tank";
      s.volume.reset();
      return;
    }
    s.share = *s.volume / capacity();
    s.level = inside_.volume.level(*s.volume);
    s.along = place_of(s.device);
    if (!s.along) {
      s.missing = s.device == OverfillDevice::alarm
                      ? "the place of the gauge along the tank: gauge = { at = ... }"
                      : "the place of the fill along the tank: at = ... in its [[tank.fill]]";
      return;
    }
    const parts::StickRange range = inside_.volume.range_of(inside_.place(s.along));
    if (*s.level > range.top) {
      s.impossible =
          "the inside at the device's place is covered before: a device there cannot wait so long, and one that "
          "acts at the top there acts earlier";
    } else if (*s.level < range.bottom) {
      s.impossible = "the surface has then not yet reached the bottom at the device's place";
    } else {
      s.depth = inside_.volume.depth_at(inside_.place(s.along), *s.level);
    }
  }

  void add(const char* route, OverfillDevice device, const char* words, std::optional<double> volume,
           const char* missing = "") {
    OverfillSetting s;
    s.route = route;
    s.device = device;
    s.words = words;
    s.volume = volume;
    if (!volume) s.missing = missing;
    place(s);
    out_.settings.push_back(std::move(s));
  }

  [[nodiscard]] std::optional<double> less(const std::optional<double>& flow, double time) const {
    return flow ? std::optional(capacity() - *flow * time) : std::nullopt;
  }

  void add_settings() {
    add("A", OverfillDevice::shutoff, "shuts off at no more than 95 % full", shut_share * capacity());
    add("B", OverfillDevice::alarm, "alerts at no more than 90 % full", alert_share * capacity());
    add("B", OverfillDevice::restriction, "restricts at no more than 90 % full", alert_share * capacity());
    add("C", OverfillDevice::alarm, "alerts 1 minute before overfilling", less(rate_, alarm_before),
        "the delivery rate: rate = ... in a [[delivery]], or --rate");
    const site::OverfillValve* valve = fill_ != nullptr && fill_->overfill_valve ? &*fill_->overfill_valve : nullptr;
    const bool known = valve != nullptr && valve->restricted;
    const std::optional<double> flow = known ? std::optional(valve->restricted->likely.si()) : rate_;
    add("C", OverfillDevice::restriction,
        known ? "restricts 30 minutes before overfilling, at the restricted flow"
              : "restricts 30 minutes before overfilling, at the delivery rate",
        less(flow, restricted_before), "the restricted flow: overfill_valve = { restricted = ... }");
    if (!known && out_.settings.back().impossible.size() > 0)
      out_.settings.back().impossible += "; with the restricted flow entered it is computed for that";
    const std::optional<double> dry =
        out_.fitting_level ? std::optional(inside_.volume.volume(*out_.fitting_level)) : std::nullopt;
    add("C", OverfillDevice::shutoff, "shuts off before a fitting at the top is wetted", dry,
        "the places of fill, gauge and pump along the tank");
  }

  void add_wrong(OverfillDevice device, const char* by, double share, double depth) {
    const auto along = place_of(device);
    if (!along) return;
    const double level = inside_.volume.level_at(inside_.place(along), depth);
    WrongSetting w;
    w.device = device;
    w.by = by;
    w.share = share;
    w.depth = depth;
    w.volume = inside_.volume.volume(level);
    w.true_share = w.volume / capacity();
    constexpr double rounding = 1e-6;
    w.late = w.true_share > share + rounding;
    out_.wrong.push_back(w);
  }

  void add_wrong(const parts::TankVolume& flat) {
    for (const auto& [device, share] :
         {std::pair(OverfillDevice::shutoff, shut_share), std::pair(OverfillDevice::alarm, alert_share)}) {
      if (pitched_) add_wrong(device, "level chart", share, flat.level(share * flat.capacity()));
      add_wrong(device, "share of the height inside", share, share * flat.full_level());
    }
  }

  void set(OverfillDevice device, std::string what, const site::Maybe<Length>& depth, SourceSpan where) {
    if (!depth) return;
    const auto along = place_of(device);
    if (!along) {
      out_.remarks.push_back(
          what + ": at what volume is not determined, since the place along the pitched tank is not entered");
      return;
    }
    DeviceSet s;
    s.device = device;
    s.what = std::move(what);
    s.along = along;
    s.depth = depth->likely.si();
    s.volume = inside_.volume.volume(inside_.volume.level_at(inside_.place(along), *s.depth));
    s.where = where;
    finish(std::move(s));
  }

  void finish(DeviceSet s) {
    s.share = s.volume / capacity();
    std::optional<double> flow = rate_;
    if (s.device == OverfillDevice::restriction)
      flow = fill_->overfill_valve->restricted ? std::optional(fill_->overfill_valve->restricted->likely.si())
                                               : std::nullopt;
    if (flow && *flow > 0.0) s.before_full = (capacity() - s.volume) / *flow;
    constexpr double rounding = 1e-9;
    if (out_.fitting_level)
      s.wets_fitting = s.volume > inside_.volume.volume(*out_.fitting_level) - rounding * capacity();
    out_.set.push_back(std::move(s));
  }

  void add_set() {
    for (const site::Fill& fill : tank_.fills) {
      if (!fill.overfill_valve) continue;
      fill_ = &fill;
      fill_at_ = likely(fill.at);
      const std::string name = "overfill valve of fill " + fill.id.text;
      set(OverfillDevice::restriction, name + " restricts", fill.overfill_valve->restricts_at,
          fill.overfill_valve->where);
      set(OverfillDevice::shutoff, name + " shuts", fill.overfill_valve->closes_at, fill.overfill_valve->where);
    }
    if (!tank_.overfill_alarm) return;
    const site::OverfillAlarm& alarm = *tank_.overfill_alarm;
    const std::size_t before = out_.set.size();
    if (alarm.at_depth) {
      set(OverfillDevice::alarm, "overfill alarm", alarm.at_depth, alarm.where);
    } else if (alarm.at_share) {
      DeviceSet s;
      s.device = OverfillDevice::alarm;
      s.what = "overfill alarm";
      s.volume = alarm.at_share->likely.si() * capacity();
      s.where = alarm.where;
      finish(std::move(s));
    }
    if (out_.set.size() > before) out_.set.back().heard = alarm.heard_at_fill;
  }

  const site::Site& site_;
  const site::Tank& tank_;
  const network::TankInside& inside_;
  const std::optional<parts::TankVolume>& level_chart_;
  std::optional<double> rate_;
  bool pitched_;
  const site::Fill* fill_ = nullptr;
  std::optional<double> fill_at_, gauge_at_;
  OverfillRoutes out_;
};

}  // namespace

const char* word(OverfillDevice device) {
  constexpr std::array<const char*, 3> words{"shutoff", "alarm", "restriction"};
  return words[static_cast<std::size_t>(device)];
}

OverfillRoutes overfill_routes(const site::Site& site, const site::Tank& tank, const network::TankInside& inside,
                               const std::optional<parts::TankVolume>& level_chart, const std::optional<double>& rate) {
  return Routes(site, tank, inside, level_chart, rate).tell();
}

}  // namespace forecourse::studies
