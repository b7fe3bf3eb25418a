#include "forecourse/checks/delivery_checks.h"

#include <algorithm>
#include <limits>
#include <tuple>

#include "forecourse/checks/clause.h"
#include "forecourse/checks/figures/each_part.h"
#include "forecourse/studies/delivery/limits.h"

namespace forecourse::checks {
namespace {

using site::ClauseSeen;
using studies::DeliveryResult;
using studies::DeliveryRun;

const std::string both_vent_rules = std::string("29 CFR 1910.106 as read in a current copy; ") + fire_code;

Finding make(const char* rule, const char* requirement, const std::string& subject, const Clause& clause,
             const SourceSpan& where) {
  Finding f;
  f.rule = rule;
  f.requirement = requirement;
  f.subject = subject;
  cite(clause, f);
  f.where = where;
  return f;
}

/// A value that must not be above its limit.
void at_most(Finding& f, double value, double limit, const char* unit) {
  f.value = value;
  f.limit = limit;
  f.margin = limit - value;
  f.unit = unit;
  f.state = state_of(*f.margin, limit);
}

void at_least(Finding& f, double value, double limit, const char* unit) {
  at_most(f, value, limit, unit);
  f.margin = value - limit;
  f.state = state_of(*f.margin, limit);
}

/// A computed value that rests on figures that are not firm says nothing.
void unless_firm(Finding& f, const DeliveryResult& result) {
  std::string names;
  for (const DefaultUsed& used : result.defaults) {
    if (is_firm(used)) continue;
    names += (names.empty() ? "" : ", ") + used.what;
  }
  if (names.empty()) return;
  f.state = FindingState::not_determined;
  f.reason = "it rests on figures that were not entered: " + names;
  f.change = "enter them";
}

class Checks {
 public:
  Checks(const site::Site& site, const DeliveryResult& result) : site_(site), result_(result) {}

  std::vector<Finding> of_drops() {
    if (result_.runs.empty()) return {};
    for (const studies::DeliveryTank& tank : run().tanks) room(tank);
    truck();
    for (const studies::DropTold& drop : run().drops) velocities(drop);
    each_vent_of(site_, [&](const std::string& name, const site::Vent& vent, const site::Tank& tank) {
      size(tank, vent, name);
    });
    return std::move(out_);
  }

  std::vector<Finding> of_vents() {
    each_vent_of(site_, [&](const std::string& name, const site::Vent& vent, const site::Tank& tank) {
      height(vent, name);
      restrictor(tank, vent, name);
      mixed(tank, vent, name);
    });
    return std::move(out_);
  }

 private:
  [[nodiscard]] const DeliveryRun& run() const { return result_.runs.front(); }

  void room(const studies::DeliveryTank& told) {
    Finding f =
        make("delivery-room", "what is brought is no more than the room in the tank, up to 95 % of its capacity",
             told.tank, {"40 CFR 280.30(a), 280.20(c)(1)(ii)", tank_rule, ClauseSeen::text}, result_.where);
    at_most(f, told.for_it, told.room_to_95, "m3");
    if (told.room_to_95 <= 0.0) f.state = FindingState::falls_short;
    if (f.state == FindingState::falls_short) f.change = "order less, or wait until more is sold";
    out_.push_back(std::move(f));
  }

  void truck() {
    const std::optional<bool> gasoline = any_is(run().drops, [&](const studies::DropTold& drop) {
      return is_gasoline(product_of(site_, {drop.product, {}}));
    });
    const auto one = [&](const char* rule, const char* words, double value, double limit) {
      Finding f = make(rule, words, result_.delivery,
                       {"40 CFR 63 Subpart CCCCCC, table 1 (1)(c)", vapor_rule, ClauseSeen::text}, result_.where);
      const std::optional<bool> bound = studies::is_in_top_tier(site_);
      const bool small = !bound.value_or(true);
      const bool none = !gasoline.value_or(true);
      if (!run().truck.closed || none || small) {
        f.state = FindingState::does_not_apply;
        f.reason = none ? "no gasoline is dropped" : small ? "its throughput lies below" : "no vapor hose is on";
        return out_.push_back(std::move(f));
      }
      f.of = Measured::vapor;
      at_most(f, value, limit, "Pa");
      if (f.state == FindingState::falls_short) f.change = "widen the way of the vapor, or drop more slowly";
      unless_firm(f, result_);
      if (f.state == FindingState::falls_short && !gasoline) {
        f.state = FindingState::not_determined;
        f.reason = "it is above the limit for gasoline; whether what is dropped is gasoline is not known";
        f.change = "enter kind of each product; " + f.change;
      } else if (f.state == FindingState::falls_short && !bound) {
        f.state = FindingState::not_determined;
        f.reason =
            "it is above the limit, which holds from 100,000 gal of gasoline a month; the throughput is not known";
        f.change = "enter operations.throughput, and kind of each product; " + f.change;
      }
      out_.push_back(std::move(f));
    };
    one("truck-pressure", "the pressure in the truck stays within 18 in of water while it unloads",
        run().truck.highest_pressure, limits_.truck_pressure);
    one("truck-vacuum", "the vacuum in the truck stays within 5.9 in of water while it unloads",
        -run().truck.lowest_pressure, limits_.truck_vacuum);
  }

  void velocities(const studies::DropTold& drop) {
    const auto one = [&](const char* rule, const char* words, const std::optional<double>& value,
                         const std::optional<double>& limit, const char* missing) {
      Finding f = make(rule, words, drop.compartment, {"NFPA 77, table 7.6", "NFPA 77, 2000", ClauseSeen::older_text},
                       result_.where);
      if (!value || !limit) {
        f.reason = missing;
        f.change = "enter it";
      } else {
        at_most(f, *value, *limit, "m/s");
        if (f.state == FindingState::falls_short) f.change = "drop more slowly";
      }
      out_.push_back(std::move(f));
    };
    one("fill-velocity-start", "until the end of the drop tube is covered by two diameters the fuel moves slowly",
        drop.start_velocity, limits_.start_velocity, "bore and end_above_bottom of the drop tube are not both entered");
    one("fill-velocity", "once it is covered the fuel stays below the limit by the bore", drop.tube_velocity,
        drop.tube_limit, "the bore of the drop tube is not entered");
  }

  // ---- what stands there -----------------------------------------------------------------------------

  static bool after(const site::Date& day, int year, int month, int date) {
    return std::tie(day.year, day.month, day.day) > std::tie(year, month, date);
  }

  void height(const site::Vent& vent, const std::string& name) {
    Finding f = make("vent-height", "a vent ends at least 12 ft above the ground beside it", name,
                     {"29 CFR 1910.106(b)(3)(iv)(a), IFC 5704.2.7.3.3", both_vent_rules, ClauseSeen::text}, vent.where);
    if (!vent.outlet_elevation) {
      f.reason = "the elevation of its outlet is not entered";
      f.change = "enter outlet_elevation";
    } else {
      at_least(f, vent.outlet_elevation->likely.si(), limits_.vent_height, "m");
      if (f.state == FindingState::falls_short) f.change = "raise the outlet";
    }
    out_.push_back(std::move(f));
  }

  [[nodiscard]] bool breathes(const std::string& tank, const site::Tank& own, const site::Vent& vent) const {
    return std::any_of(site_.tanks.begin(), site_.tanks.end(),
                       [&](const site::Tank& one) { return one.id.text == tank && breathes_through(vent, own, one); });
  }

  static bool at_once(const studies::DropTold& a, const studies::DropTold& b) {
    constexpr double never = std::numeric_limits<double>::infinity();
    return a.begins.value_or(never) < b.ends.value_or(never) && b.begins.value_or(never) < a.ends.value_or(never);
  }

  /// Highest rate into the tanks that breathe through a vent, in the run asked for [m3/s]; 0: nothing is dropped.
  [[nodiscard]] double rate_through(const site::Tank& own, const site::Vent& vent) const {
    double most = 0.0;
    if (result_.runs.empty()) return most;
    for (const studies::DropTold& drop : run().drops) {
      if (!breathes(drop.tank, own, vent)) continue;
      double rate = drop.highest_rate;
      for (const studies::DropTold& other : run().drops) {
        if (&other != &drop && breathes(other.tank, own, vent) && at_once(drop, other)) rate += other.highest_rate;
      }
      most = std::max(most, rate);
    }
    return most;
  }

  void size(const site::Tank& tank, const site::Vent& vent, const std::string& name) {
    const double rate = rate_through(tank, vent);
    if (!(rate > 0.0)) return;
    Finding f = make("vent-size", "the vent is as wide as the table of vent diameters asks at this rate", name,
                     {"29 CFR 1910.106(b)(3)(iv)(b), table of vent line diameters",
                      "29 CFR 1910.106 as read in a current copy", ClauseSeen::text},
                     vent.where);
    const std::optional<double> nominal = vent_nominal(vent);
    const std::optional<double> length = vent_length(vent);
    if (!nominal || !length) {
      const bool lacks_branch = nominal && vent.pipe->length;
      f.reason =
          lacks_branch ? "the length of its branch is not entered" : "bore and length of its pipe are not both entered";
      f.change = lacks_branch ? "enter length of the branch" : "enter pipe = { length, bore }";
    } else if (const auto asked = studies::vent_size(rate, *length)) {
      at_least(f, *nominal, *asked, "m");
      if (f.state == FindingState::close) f.state = FindingState::meets;  // a nominal size is met or not
      if (f.state == FindingState::falls_short) f.change = "widen the vent, or drop more slowly";
    } else {
      f.reason = "its length or the rate is beyond the table";
      f.change = "have an engineer size it";
    }
    out_.push_back(std::move(f));
  }

  void restrictor(const site::Tank& tank, const site::Vent& vent, const std::string& name) {
    Finding f = make("vent-restrictor", "a restrictor in a vent is no overfill prevention after 13 October 2015", name,
                     {"40 CFR 280.20(c)(3)", tank_rule, ClauseSeen::text}, vent.where);
    const auto& installed = vent.installed ? vent.installed : tank.installed;
    if (!vent.restrictor) {
      f.reason = "whether there is one is not entered";
      f.change = "enter restrictor = true or false";
    } else if (!*vent.restrictor) {
      f.state = FindingState::meets;
    } else if (!installed) {
      f.reason = "when it was installed is not entered";
      f.change = "enter installed of the vent";
    } else {
      f.state = after(*installed, 2015, 10, 13) ? FindingState::falls_short : FindingState::meets;
      if (f.state == FindingState::falls_short) f.change = "use another way of overfill prevention";
    }
    out_.push_back(std::move(f));
  }

  void mixed(const site::Tank& tank, const site::Vent& vent, const std::string& name) {
    const std::optional<bool> own = is_gasoline(product_of(site_, tank.product));
    if (vent.shared.empty() || !own.value_or(true)) return;
    Finding f = make("vent-mixed", "vents of gasoline and of diesel are not joined without a positive separation", name,
                     {"IFC 5704.2.7.3.5.3", fire_code, ClauseSeen::text}, vent.where);
    f.state = FindingState::meets;
    for (const site::Tank& other : site_.tanks) {
      if (&other == &tank || !breathes_through(vent, tank, other)) continue;
      const std::optional<bool> gasoline = is_gasoline(product_of(site_, other.product));
      if (own && gasoline && *gasoline) continue;
      if (own && gasoline) {
        f.state = FindingState::falls_short;
        f.reason.clear();
        f.change = "part the vent of tank " + other.id.text + " from it";
      } else if (f.state == FindingState::meets) {
        f.state = FindingState::not_determined;
        f.reason = "whether all tanks on it hold gasoline is not known";
        f.change = "enter kind of each product";
      }
    }
    out_.push_back(std::move(f));
  }

  const site::Site& site_;
  const DeliveryResult& result_;
  studies::DeliveryLimits limits_ = studies::delivery_limits();
  std::vector<Finding> out_;
};

}  // namespace

std::vector<Finding> check_drops(const site::Site& site, const DeliveryResult& result) {
  return Checks(site, result).of_drops();
}

std::vector<Finding> check_vents(const site::Site& site) {
  const DeliveryResult nothing;
  return Checks(site, nothing).of_vents();
}

std::vector<Finding> check_delivery(const site::Site& site, const DeliveryResult& result) {
  std::vector<Finding> out = check_drops(site, result);
  for (Finding& one : check_vents(site)) out.push_back(std::move(one));
  return out;
}

}  // namespace forecourse::checks
