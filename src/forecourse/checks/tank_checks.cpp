#include "forecourse/checks/tank_checks.h"

#include <algorithm>
#include <utility>

#include "forecourse/checks/clause.h"
#include "forecourse/checks/figures/each_part.h"
#include "forecourse/site/rules/is_under.h"

namespace forecourse::checks {
namespace {

using studies::DeviceSet;
using studies::OverfillDevice;
using studies::TankTold;

constexpr double shut_share = 0.95;           ///< \source [cfr_280, 280.20(c)(1)(ii)(A)]
constexpr double alert_share = 0.90;          ///< \source [cfr_280, 280.20(c)(1)(ii)(B)]
constexpr double alarm_before = 60.0;         ///< [s] \source [cfr_280, 280.20(c)(1)(ii)(C)]
constexpr double restricted_before = 1800.0;  ///< [s] \source [cfr_280, 280.20(c)(1)(ii)(C)]
constexpr double rounding = 1e-4;             // of a share, where a depth was entered to a hundredth of an inch

/// One device against one route.
struct Try {
  FindingState state = FindingState::not_determined;
  const char* route = "";
  double value = 0.0;
  double limit = 0.0;
  const char* unit = "";
  std::string reason;
};

Try by_share(const DeviceSet& set, const char* route, double limit) {
  Try out{FindingState::falls_short, route, set.share, limit, "share", {}};
  if (set.share <= limit + rounding) out.state = FindingState::meets;
  return out;
}

Try by_time(const DeviceSet& set, double limit) {
  Try out{FindingState::not_determined, "C", 0.0, limit, "s", {}};
  if (!set.before_full) {
    out.reason = set.device == OverfillDevice::restriction ? "the flow past the restricting valve is not entered"
                                                           : "the delivery rate is not entered";
    return out;
  }
  out.value = *set.before_full;
  out.state = *set.before_full >= limit ? FindingState::meets : FindingState::falls_short;
  return out;
}

/// An alert serves only where it reaches who works the transfer.
void ask_heard(const DeviceSet& set, Try& attempt) {
  if (set.heard.value_or(false)) return;
  if (set.heard) {
    attempt.state = FindingState::falls_short;
    attempt.reason = "the alarm is not heard at the fill";
  } else if (attempt.state == FindingState::meets) {
    attempt.state = FindingState::not_determined;
    attempt.reason = "whether the alarm is heard at the fill is not entered";
  }
}

std::vector<Try> tries(const DeviceSet& set) {
  if (set.device == OverfillDevice::shutoff) {
    Try dry{FindingState::not_determined,
            "C",
            set.share,
            1.0,
            "share",
            "where the fittings at the top stand is not entered"};
    if (set.wets_fitting) {
      dry.state = *set.wets_fitting ? FindingState::falls_short : FindingState::meets;
      dry.reason.clear();
    }
    return {by_share(set, "A", shut_share), std::move(dry)};
  }
  if (set.device == OverfillDevice::restriction)
    return {by_share(set, "B", alert_share), by_time(set, restricted_before)};
  Try share = by_share(set, "B", alert_share), time = by_time(set, alarm_before);
  ask_heard(set, share);
  ask_heard(set, time);
  return {std::move(share), std::move(time)};
}

/// What is met before what is not determined, and the routes in their order.
std::pair<int, std::string> rank(const Try& attempt) {
  const int state = attempt.state == FindingState::meets ? 0 : attempt.state == FindingState::not_determined ? 1 : 2;
  return {state, attempt.route};
}

Finding finding_of(const TankTold& tank, const std::string& exempt) {
  Finding out;
  out.rule = "overfill-prevention";
  out.requirement = "a tank has a shutoff at 95 %, an alert or restriction at 90 %, or one of their alternatives";
  out.subject = tank.id;
  cite({"40 CFR 280.20(c)(1)(ii)", tank_rule, site::ClauseSeen::text}, out);
  out.where = tank.where;
  if (!exempt.empty()) {
    out.state = FindingState::does_not_apply;
    out.reason = exempt;
    return out;
  }
  const Try* best = nullptr;
  const DeviceSet* device = nullptr;
  std::vector<std::vector<Try>> all;
  for (const DeviceSet& set : tank.overfill.set) all.push_back(tries(set));
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (const Try& attempt : all[i]) {
      if (best != nullptr && rank(*best) <= rank(attempt)) continue;
      best = &attempt;
      device = &tank.overfill.set[i];
    }
  }
  if (best == nullptr) {
    const bool unclear = !tank.overfill.remarks.empty();
    out.state = unclear ? FindingState::not_determined : FindingState::falls_short;
    out.reason = unclear ? tank.overfill.remarks.front() : "";
    out.change =
        "fit an overfill valve or an alarm, and enter the depth at which it acts; not needed where no transfer "
        "is above 25 gal";
    return out;
  }
  out.state = best->state;
  out.unit = best->unit;
  out.clause += std::string("(") + best->route + ")";
  out.where = device->where;
  out.reason = best->reason;
  if (best->state == FindingState::not_determined) {
    out.change = "enter it, or look at the tank";
    return out;
  }
  out.value = best->value;
  out.limit = best->limit;
  const bool at_least = out.unit == "s";
  out.margin = at_least ? best->value - best->limit : best->limit - best->value;
  if (best->state == FindingState::falls_short)
    out.change = "set " + device->what + " lower, at the depth told for its own place";
  return out;
}

}  // namespace

std::vector<Finding> check_tanks(const site::Site& site, const studies::TankResult& result) {
  std::vector<Finding> out;
  if (!site::is_under(site, "us-federal")) return out;
  for (const TankTold& tank : result.tanks) {
    if (!tank.problem.empty() || !tank.overfill.has_fill) continue;
    const auto entered = std::find_if(site.tanks.begin(), site.tanks.end(),
                                      [&](const site::Tank& one) { return one.id.text == tank.tank; });
    out.push_back(finding_of(tank, entered == site.tanks.end() ? "" : spill_exemption(*entered)));
  }
  return out;
}

}  // namespace forecourse::checks
