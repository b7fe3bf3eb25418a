#include "forecourse/studies/incident/drive_off/pull.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "forecourse/base/constants.h"
#include "forecourse/parts/pull/base_load.h"
#include "forecourse/parts/pull/breakaway.h"
#include "forecourse/parts/pull/drive_off.h"
#include "forecourse/parts/pull/pull_direction.h"
#include "forecourse/parts/pull/pull_limits.h"

namespace forecourse::studies {
namespace {

constexpr DefaultStatus illustrative = DefaultStatus::illustrative;
/// Told where the breakaway at hand has no figure; nothing is computed with it.
/// \source [ul_567, clause 6.3, excerpt] parts::published_separation
constexpr const char* published =
    "; published for listed breakaways pulled straight, by an excerpt: 100 to 350 lbf, which is no figure of this one";

constexpr double degree = std::numbers::pi / 180.0;

/// Spreads that stand in for what is not entered. All are illustrative.
constexpr Spread acceleration_stand_in{1.0, 1.5, 3.0};                           // [m/s2]
constexpr Spread slack_stand_in{0.5, 1.5, 3.0};                                  // [m]
constexpr Spread angle_stand_in{15.0 * degree, 60.0 * degree, 85.0 * degree};    // [rad]
constexpr Spread friction_stand_in{0.05, 0.15, 0.3};                             // [1]
constexpr Spread bend_radius_stand_in{0.10, 0.15, 0.25};                         // [m]
constexpr Spread residual_stand_in{5.0 * degree, 15.0 * degree, 30.0 * degree};  // [rad]
constexpr Spread nozzle_height_stand_in{0.6, 0.8, 1.0};                          // [m]
constexpr Spread distance_stand_in{1.0, 2.0, 4.0};                               // [m]

template <class Q>
std::optional<parts::PullRange> range_of(const site::Maybe<Q>& entered) {
  if (!entered) return std::nullopt;
  const Spread s = Inputs::spread_of(*entered);
  return parts::PullRange{s.low, s.likely, s.high};
}

Spread spread_of(const parts::PullRange& range) { return {range.low, range.likely, range.high}; }

/// The least and the most of everything, each with a friction of its own.
parts::PullRange askew(const parts::PullRange& straight, const parts::AngleRange& angle, const Spread& friction) {
  return {parts::separation_pull(straight.low, angle.low, friction.low),
          parts::separation_pull(straight.likely, angle.likely, friction.likely),
          parts::separation_pull(straight.high, angle.high, friction.high)};
}

const char* word(parts::PullLimit limit) {
  switch (limit) {
    case parts::PullLimit::nozzle_pull_out:
      return "nozzle out of the vehicle";
    case parts::PullLimit::breakaway:
      return "breakaway";
    case parts::PullLimit::hose:
      return "hose";
    case parts::PullLimit::swivel:
      return "swivel";
    case parts::PullLimit::anchorage:
      return "dispenser pulled over";
    case parts::PullLimit::shear_valve:
      return "shear valve";
  }
  return "";
}

class Puller {
 public:
  Puller(const Scene& scene, Inputs& inputs)
      : s_(scene), in_(inputs), vehicle_(scene.request.vehicle.value_or(site::Vehicle{})) {
    const EndGround& end = scene.ground.ends.front();
    hose_ = end.hose;
    dispenser_ = end.dispenser;
  }

  Pull pull() {
    tighten();
    align();
    set_limits();
    find_first();
    load_base();
    return std::move(out_);
  }

 private:
  void tighten() {
    out_.told.slack = in_.take("slack of the hose", vehicle_.slack, slack_stand_in, illustrative, "m", "illustrative");
    double speed = 0.0;
    if (vehicle_.speed) {
      speed = *in_.take("speed of the vehicle", vehicle_.speed, "m/s");
    } else {
      acceleration_ = in_.take("acceleration of the vehicle", vehicle_.acceleration, acceleration_stand_in,
                               illustrative, "m/s2", "illustrative");
    }
    tight_ = parts::after_travel(speed, acceleration_, out_.told.slack);
    out_.told.tight_at = tight_.time;
    out_.told.speed_then = tight_.speed;
  }

  /// A figure with its whole spread, as entered or as stands in for it.
  template <class Q>
  Spread taken(const char* what, const site::Maybe<Q>& entered, const Spread& other, const char* unit) {
    in_.take(what, entered, other, illustrative, unit, "illustrative");
    return entered ? Inputs::spread_of(*entered) : other;
  }

  /// Between the breakaway and the pull; a whip hose that is long enough lets it turn.
  void align() {
    const Spread whole = taken("angle of the pull off the breakaway's axis", vehicle_.angle, angle_stand_in, "rad");
    out_.told.has_whip = hose_->whip.has_value();
    Spread radius, residual;
    const bool length_known = hose_->whip && hose_->whip->length;
    if (length_known) {
      const site::Maybe<Length> no_radius;
      const site::Maybe<Angle> no_angle;
      radius = taken("least radius to which the whip hose bends", no_radius, bend_radius_stand_in, "m");
      residual = taken("angle that stays when the whip hose has turned", no_angle, residual_stand_in, "rad");
    }
    const auto at = [&](double angle, double bend, double stays) {
      std::optional<parts::WhipHose> whip;
      if (hose_->whip) whip = parts::WhipHose{};
      if (length_known)
        whip = parts::WhipHose{hose_->whip->length->likely.si(), parts::needed_length(bend, angle), stays};
      return parts::misalignment(angle, whip);
    };
    angle_ = {at(whole.low, radius.low, residual.low).low, at(whole.likely, radius.likely, residual.likely).likely,
              at(whole.high, radius.high, residual.high).high};
    out_.told.angle = angle_.likely;
  }

  /// It is there, and is not asked to be left out of this incident.
  [[nodiscard]] bool breakaway_acts() const {
    const auto& without = s_.options.without;
    const bool gone = std::find(without.begin(), without.end(), Barrier::breakaway) != without.end();
    const auto& dead = s_.options.dead;
    const bool sleeps = std::any_of(dead.begin(), dead.end(), [&](const DeadBarrier& one) {
      return one.barrier == Barrier::breakaway && (!one.dead_for || *one.dead_for > tight_.time);
    });
    return (hose_->breakaway || hose_->parting) && !gone && !sleeps;
  }

  /// Where the breakaway locks does not depend on the pull at which it parts.
  std::optional<parts::PullRange> breakaway() {
    const site::Parting parting = hose_->parting.value_or(site::Parting{});
    const Spread friction =
        taken("friction of the breakaway under a side pull", parting.friction, friction_stand_in, "");
    out_.told.may_never_release = std::isinf(askew({1.0, 1.0, 1.0}, angle_, friction).high);
    const auto straight = range_of(parting.pull);
    if (!straight) return std::nullopt;
    const parts::PullRange parts_at = askew(*straight, angle_, friction);
    if (std::isfinite(parts_at.low)) out_.told.separation_force = spread_of(parts_at);
    return parts_at;
  }

  void set_limits() {
    out_.breakaway_acts = breakaway_acts();
    if (out_.breakaway_acts) limits_.push_back({parts::PullLimit::breakaway, breakaway()});
    limits_.push_back({parts::PullLimit::nozzle_pull_out, range_of(hose_->nozzle_pull_out)});
    limits_.push_back({parts::PullLimit::hose, hose_->curb ? range_of(hose_->curb->strength) : std::nullopt});
    limits_.push_back({parts::PullLimit::anchorage, pull_over()});
  }

  [[nodiscard]] std::optional<parts::DispenserBase> base() const {
    if (!dispenser_->outlet_height || !dispenser_->mass || !dispenser_->base_width) return std::nullopt;
    return parts::DispenserBase{dispenser_->outlet_height->likely.si(),
                                dispenser_->mass->likely.si() * standard_gravity,
                                0.5 * dispenser_->base_width->likely.si()};
  }

  [[nodiscard]] double elevation() {
    if (!dispenser_->outlet_height) return 0.0;
    const double nozzle = in_.take("height of the nozzle in the vehicle", vehicle_.nozzle_height,
                                   nozzle_height_stand_in, illustrative, "m", "illustrative");
    const double reach = in_.take("distance to the filler neck", vehicle_.distance, distance_stand_in, illustrative,
                                  "m", "illustrative");
    return parts::pull_direction({dispenser_->outlet_height->likely.si(), nozzle, reach, 0.0}).elevation;
  }

  [[nodiscard]] std::optional<parts::PullRange> pull_over() {
    const auto foot = base();
    if (!foot || !dispenser_->anchorage) return std::nullopt;
    const Spread moment = Inputs::spread_of(*dispenser_->anchorage);
    const double up = elevation();
    const auto at = [&](double m) { return parts::pull_for_moment(m, up, *foot); };
    return parts::PullRange{at(moment.low), at(moment.likely), at(moment.high)};
  }

  void find_first() {
    const parts::FirstLimit first = parts::first_limit(limits_);
    std::vector<parts::GivenLimit> ordered = limits_;
    std::stable_sort(ordered.begin(), ordered.end(), [](const parts::GivenLimit& a, const parts::GivenLimit& b) {
      if (a.pull && b.pull) return a.pull->likely < b.pull->likely;
      return a.pull.has_value() && !b.pull.has_value();
    });
    for (const parts::GivenLimit& limit : ordered) {
      out_.told.limits.push_back({word(limit.limit) + std::string(locks(limit)),
                                  limit.pull ? std::optional(spread_of(*limit.pull)) : std::nullopt, false});
    }
    out_.first = first.first;
    out_.could_be_first = first.could_be_first;
    out_.could_be_first.insert(out_.could_be_first.end(), first.not_known.begin(), first.not_known.end());
    out_.told.outcome_known = first.first.has_value();
    out_.told.outcome = outcome(first);
    set_time(first);
  }

  [[nodiscard]] static const char* locks(const parts::GivenLimit& limit) {
    if (!limit.pull || std::isfinite(limit.pull->high)) return "";
    return std::isinf(limit.pull->low) ? ", which never releases at that angle" : ", which may never release";
  }

  [[nodiscard]] std::string outcome(const parts::FirstLimit& first) const {
    if (first.first) return std::string("The pull reaches first: ") + word(*first.first);
    std::string unknown;
    for (const parts::PullLimit limit : first.not_known)
      unknown += (unknown.empty() ? "" : ", ") + std::string(word(limit));
    std::string out = "What gives way first is not determined";
    if (!unknown.empty()) out += ": the pull is not entered of " + unknown;
    if (first.likely_first) out += std::string("; of those known, likely ") + word(*first.likely_first);
    const auto& unknown_limits = first.not_known;
    if (std::find(unknown_limits.begin(), unknown_limits.end(), parts::PullLimit::breakaway) != unknown_limits.end())
      out += published;
    return out;
  }

  /// The hose stretches until something gives way; without its stiffness it is taken as stiff.
  void set_time(const parts::FirstLimit& first) {
    out_.parts_at = tight_.time;
    if (!std::isfinite(first.reached_at_most) || !hose_->curb || !hose_->curb->stiffness) return;
    const double curb = *in_.take("stiffness of the curb hose", hose_->curb->stiffness, "N/m");
    std::optional<double> whip;
    if (hose_->whip && hose_->whip->stiffness)
      whip = *in_.take("stiffness of the whip hose", hose_->whip->stiffness, "N/m");
    const parts::PullEnd end =
        parts::pull_until(tight_, acceleration_, parts::stiffness_in_series(curb, whip), first.reached_at_most, 0.0);
    out_.parts_at = end.time;
    out_.told.parts_at = end.time;
  }

  /// Load at the foot at the least of the known limits: more the hose does not carry.
  void load_base() {
    const auto foot = base();
    double least = INFINITY;
    for (const parts::GivenLimit& limit : limits_) {
      if (limit.pull) least = std::min(least, limit.pull->likely);
    }
    if (!foot || !std::isfinite(least)) return;
    const parts::BaseLoad load = parts::base_load(least, elevation(), *foot);
    out_.told.base_force = load.horizontal;
    out_.told.base_moment = load.moment;
  }

  const Scene& s_;
  Inputs& in_;
  site::Vehicle vehicle_;
  const site::Hose* hose_ = nullptr;
  const site::Dispenser* dispenser_ = nullptr;
  double acceleration_ = 0.0;
  parts::VehicleMotion tight_;
  parts::AngleRange angle_;
  std::vector<parts::GivenLimit> limits_;
  Pull out_;
};

}  // namespace

Pull pull_of(const Scene& scene, Inputs& inputs) { return Puller(scene, inputs).pull(); }

}  // namespace forecourse::studies
