#include "forecourse/checks/vapor_checks.h"

#include <algorithm>
#include <numbers>
#include <utility>

#include "forecourse/base/api_units.h"
#include "forecourse/checks/clause.h"
#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/tested.h"

namespace forecourse::checks {
namespace {

using parts::ThroughputTier;
using site::records::TestKind;
using studies::ProductVapor;
using studies::VaporResult;

constexpr Period between_tests{3, 0, 0};

/// A clause of the subpart; the text of some was seen in an older edition alone.
Clause current(const char* clause) {
  return {clause, "40 CFR 63 Subpart CCCCCC, current text", site::ClauseSeen::text};
}
Clause of_2020(const char* clause) { return {clause, vapor_rule, site::ClauseSeen::text}; }
Clause older(const char* clause) { return {clause, older_vapor_rule, site::ClauseSeen::older_text}; }

template <class Q>
std::optional<double> si(const site::Maybe<Q>& entered) {
  return entered ? std::optional(entered->likely.si()) : std::nullopt;
}

/// Whether a tank was installed after a day; empty where that is not entered.
std::optional<bool> after(const std::optional<site::Date>& installed, const site::Date& day) {
  if (!installed) return std::nullopt;
  return is_before(day, *installed);
}

/// What it holds as far as an exemption of small tanks goes [m3].
std::optional<double> capacity_of(const site::Tank& tank) {
  if (tank.capacity) return si(tank.capacity);
  if (!tank.shape || !tank.shape->inside_diameter || !tank.shape->length) return std::nullopt;
  const double radius = 0.5 * *si(tank.shape->inside_diameter);
  return std::numbers::pi * radius * radius * *si(tank.shape->length);  // without its heads: no less than that
}

/// A limit that is met by little is met: nothing here is computed.
FindingState is_kept(double margin, double limit) {
  constexpr double rounding = 1e-9;  // of a value written in other units
  return margin >= -rounding * limit ? FindingState::meets : FindingState::falls_short;
}

class Checker {
 public:
  Checker(const site::Site& site, const VaporResult& result, const std::optional<site::Date>& on,
          const site::records::Records* records)
      : site_(site), result_(result), on_(on), facts_{site, on.value_or(site::Date{}), records} {}

  std::vector<Finding> check() {
    for (const site::Tank& tank : site_.tanks) {
      if (!holds_gasoline(tank)) continue;
      for (const site::Fill& fill : tank.fills) check_fill(tank, fill);
      check_balance(tank);
      if (tank.vapor_return) check_return(tank, *tank.vapor_return);
      for (const site::Vent& vent : tank.vents) {
        if (vent.valve) check_valve(tank, vent, *vent.valve);
      }
    }
    check_leaks();
    return std::move(out_);
  }

 private:
  [[nodiscard]] bool is_gasoline(const std::string& id) const {
    return std::any_of(result_.products.begin(), result_.products.end(),
                       [&](const ProductVapor& p) { return p.gasoline && p.product == id; });
  }
  [[nodiscard]] bool holds_gasoline(const site::Tank& tank) const {
    return is_gasoline(tank.product.text) ||
           std::any_of(tank.compartments.begin(), tank.compartments.end(),
                       [&](const site::Compartment& c) { return is_gasoline(c.product.text); });
  }

  /// A finding that applies from a tier on. True where it is to be judged further.
  bool begin(const char* rule, const char* requirement, const std::string& subject, const Clause& clause,
             ThroughputTier from, Finding& finding) const {
    finding.rule = rule;
    finding.requirement = requirement;
    finding.subject = subject;
    cite(clause, finding);
    finding.of = Measured::vapor;
    if (!result_.tier) {
      finding.reason = "the throughput of gasoline is not entered";
      finding.change = "enter operations.throughput: the sum of the last 365 days over 12";
      return false;
    }
    if (*result_.tier < from) {
      finding.state = FindingState::does_not_apply;
      finding.reason = "its throughput lies below";
      return false;
    }
    return true;
  }

  void add(Finding finding) { out_.push_back(std::move(finding)); }

  void exempt(Finding finding, const char* why) {
    finding.state = FindingState::does_not_apply;
    finding.reason = why;
    add(std::move(finding));
  }

  void check_fill(const site::Tank& tank, const site::Fill& fill) {
    Finding f;
    f.where = fill.where;
    f.unit = "m";
    const std::string subject = fill.id.empty() ? tank.id.text : fill.id.text;
    if (!begin("submerged-fill", "fuel enters no higher above the bottom than the rule says", subject,
               current("40 CFR 63.11117(b)"), ThroughputTier::from_10000, f)) {
      return add(std::move(f));
    }
    const auto capacity = capacity_of(tank);
    if (capacity && *capacity < parts::submerged_fill_exempt) return exempt(std::move(f), "the tank is below 250 gal");
    if (!fill.drop_tube || !fill.drop_tube->end_above_bottom) {
      f.reason = fill.drop_tube ? "how high its end lies above the bottom is not entered" : "no drop tube is entered";
      f.change = "measure from the farthest point of the opening, and enter drop_tube.end_above_bottom";
      return add(std::move(f));
    }
    const std::optional<bool> late = after(tank.installed, {2006, 11, 9, {}});
    f.value = si(fill.drop_tube->end_above_bottom);
    const bool strict = late.value_or(true);
    f.limit = strict ? parts::fill_gap_since : parts::fill_gap_until_2006;
    f.margin = *f.limit - *f.value;
    f.state = is_kept(*f.margin, *f.limit);
    if (!late && *f.value > parts::fill_gap_since && *f.value <= parts::fill_gap_until_2006) {
      f.state = FindingState::not_determined;
      f.reason = "6 in or 12 in, by the day of installation, which is not entered";
      f.change = "enter installed";
    } else if (f.state == FindingState::falls_short) {
      f.change = "a longer drop tube, or proof that its opening is always covered";
    }
    add(std::move(f));
  }

  void check_balance(const site::Tank& tank) {
    Finding f;
    f.where = tank.where;
    if (!begin("vapor-balance", "vapor goes back to the tanker while the tank is filled", tank.id.text,
               older("40 CFR 63.11118"), ThroughputTier::from_100000, f)) {
      return add(std::move(f));
    }
    const auto capacity = capacity_of(tank);
    const std::optional<bool> late = after(tank.installed, {2008, 1, 9, {}});
    if (capacity && *capacity < parts::balance_exempt_since) return exempt(std::move(f), "the tank is below 250 gal");
    if (capacity && late && !*late && *capacity < parts::balance_exempt_until_2008) {
      return exempt(std::move(f), "the tank is below 2,000 gal and built before 10 January 2008");
    }
    f.state = tank.vapor_return ? FindingState::meets : FindingState::not_determined;
    if (!tank.vapor_return) {
      f.reason = "no vapor return is entered";
      f.change = "enter vapor_return if there is one; else one is to be fitted";
    }
    add(std::move(f));
  }

  void check_return(const site::Tank& tank, const site::VaporReturn& vapor) {
    check_connection(tank, vapor);
    check_pressure_test(tank, vapor);
  }

  void check_connection(const site::Tank& tank, const site::VaporReturn& vapor) {
    Finding f;
    f.where = vapor.where;
    if (!begin("two-point", "a tank built after 9 November 2006 gives vapor back through its own connection",
               tank.id.text, older("40 CFR 63 Subpart CCCCCC, table 1 (2)"), ThroughputTier::from_100000, f)) {
      return add(std::move(f));
    }
    const std::optional<bool> late = after(tank.installed, {2006, 11, 9, {}});
    if (late && !*late) return exempt(std::move(f), "the tank is older");
    if (vapor.kind.text == "two-point") {
      f.state = FindingState::meets;
    } else if (!late || vapor.kind.empty()) {
      f.reason = "the day of installation, or the kind of connection, is not entered";
      f.change = "enter installed and vapor_return.kind";
    } else {
      f.state = FindingState::falls_short;
      f.change = "a two-point connection";
    }
    add(std::move(f));
  }

  void check_pressure_test(const site::Tank& tank, const site::VaporReturn& vapor) {
    const auto test = std::find_if(result_.tests.begin(), result_.tests.end(),
                                   [&](const studies::VaporTests& t) { return t.tank == tank.id.text; });
    const bool told = test != result_.tests.end() && test->federal_target && test->end;
    const bool failed =
        told && is_kept(*test->end - *test->federal_target, *test->federal_target) == FindingState::falls_short;
    const FigureAt last =
        last_tested(facts_, tank.id.text, vapor.where, told && !failed ? vapor.pressure_test->tested : std::nullopt,
                    {TestKind::vapor_return, {tank.id.text}},
                    failed ? "its last test failed; find the leak, and test again"
                           : "enter vapor_return.pressure_test with ullage, end and tested");
    judge_pressure_test(tank, vapor, told ? &*test : nullptr, last.day);
    comes_back("the room above the fuel is put to the static pressure test every 3 years", last,
               failed ? vapor.pressure_test->tested : std::nullopt);
  }

  /// \param test null: none is entered
  void judge_pressure_test(const site::Tank& tank, const site::VaporReturn& vapor, const studies::VaporTests* test,
                           const std::optional<site::Date>& last) {
    Finding f;
    f.where = vapor.where;
    f.unit = "Pa";
    if (!begin("static-pressure-test", "the room above the fuel keeps the pressure of the static test", tank.id.text,
               older("40 CFR 63 Subpart CCCCCC, table 1 (1)(h)"), ThroughputTier::from_100000, f)) {
      return add(std::move(f));
    }
    if (test == nullptr) {
      f.reason = "no static pressure test is entered";
      f.change = "enter vapor_return.pressure_test with ullage, end and tested";
      return add(std::move(f));
    }
    f.limit = test->federal_target;
    f.value = test->end;
    f.margin = *f.value - *f.limit;
    f.state = is_kept(*f.margin, *f.limit);
    if (f.state == FindingState::falls_short) f.change = "find the leak, and test again";
    judge_age(last, f);
    add(std::move(f));
  }

  /// Of the last finding: its test comes back every three years.
  /// \param failed the day of one that was entered and failed
  void comes_back(const char* what, const FigureAt& test, const std::optional<site::Date>& failed = {}) {
    Finding& f = out_.back();
    if (f.state == FindingState::does_not_apply) return;
    const std::optional<site::Date>& last = test.day;
    f.recurrence = {what, between_tests, last, {}, "a qualified tester", "commissioning", test.enter, {}};
    f.recurrence->failed = test.failed;
    if (!last && !test.failed) f.recurrence->failed = failed;
    f.recurrence->figure = f.rule;
    cite(older("40 CFR 63.11120(a)"), *f.recurrence);
    if (last) f.recurrence->due = later(*last, between_tests);
    if (result_.tier) return;
    f.recurrence->open = f.reason;
    f.recurrence->enter = f.change;
  }

  /// A test that is older than three years, undated or yet to come meets nothing.
  void judge_age(const std::optional<site::Date>& tested, Finding& f) const {
    if (f.state != FindingState::meets) return;
    if (!tested) {
      f.state = FindingState::not_determined;
      f.reason = "the day of the test is not entered; it is asked for every 3 years";
      f.change = "enter tested";
    } else if (on_ && is_before(*on_, *tested)) {
      f.state = FindingState::not_determined;
      f.reason = "it is dated " + text(*tested) + ", which is yet to come";
      f.change = "correct the date";
    } else if (on_ && is_before(later(*tested, between_tests), *on_)) {
      f.state = FindingState::falls_short;
      f.reason = "the test is older than 3 years";
      f.change = "test again";
    }
  }

  void check_valve(const site::Tank& tank, const site::Vent& vent, const site::VentValve& valve) {
    const std::string subject = name_in_tank(tank, tank.vents, vent, "vent");
    const FigureAt last =
        last_tested(facts_, subject, valve.where, valve.tested, {TestKind::vent_valve, {subject, tank.id.text}},
                    "enter tested of the vent valve");
    setting("vent-pressure-setting", "the vent valve opens outward between 2.5 and 6 in of water", valve.opens_at,
            {parts::least_vent_pressure, parts::largest_vent_pressure}, last, valve.where);
    comes_back("a vent valve is tested every 3 years", last);  // one test tells both settings
    setting("vent-vacuum-setting", "the vent valve opens inward between 6 and 10 in of water", valve.vacuum_opens_at,
            {parts::least_vent_vacuum, parts::largest_vent_vacuum}, last, valve.where);
  }

  void setting(const char* rule, const char* requirement, const site::Maybe<PressureDifference>& entered,
               std::pair<double, double> limits, const FigureAt& last, SourceSpan where) {
    Finding f;
    f.where = where;
    f.unit = "Pa";
    if (!begin(rule, requirement, last.subject, of_2020("40 CFR 63 Subpart CCCCCC, table 1 (1)(g)"),
               ThroughputTier::from_100000, f)) {
      return add(std::move(f));
    }
    f.value = si(entered);
    if (!f.value) {
      f.reason = "its setting is not entered";
      f.change = "enter opens_at and vacuum_opens_at of the vent valve";
      return add(std::move(f));
    }
    const bool nearer_low = *f.value - limits.first < limits.second - *f.value;
    f.limit = nearer_low ? limits.first : limits.second;
    f.margin = nearer_low ? *f.value - limits.first : limits.second - *f.value;
    f.state = is_kept(*f.margin, *f.limit);
    if (f.state == FindingState::falls_short) f.change = "a valve with another setting";
    judge_age(last.day, f);
    add(std::move(f));
  }

  /// All valves of the site together, as the rule counts them.
  void check_leaks() {
    leak("vent-pressure-leak", "all vent valves together leak no more than 0.17 ft3/h at 2 in of water",
         &site::VentValve::pressure_leak, parts::site_pressure_leak);
    leak("vent-vacuum-leak", "all vent valves together leak no more than 0.63 ft3/h at 4 in of vacuum",
         &site::VentValve::vacuum_leak, parts::site_vacuum_leak);
  }

  void leak(const char* rule, const char* requirement, site::Maybe<VolumeFlow> site::VentValve::*which, double limit) {
    double sum = 0.0;
    bool any = false, all = true;
    Finding f;
    for (const site::Tank& tank : site_.tanks) {
      for (const site::Vent& vent : tank.vents) {
        if (!vent.valve || !holds_gasoline(tank)) continue;
        if (!any) f.where = vent.valve->where;
        any = true;
        all = all && (*vent.valve.*which).has_value();
        sum += si(*vent.valve.*which).value_or(0.0);
      }
    }
    if (!any) return;
    f.unit = "m3/s";
    if (begin(rule, requirement, "site", of_2020("40 CFR 63 Subpart CCCCCC, table 1 (1)(g)"),
              ThroughputTier::from_100000, f)) {
      f.limit = limit;
      if (all) {
        f.value = sum;
        f.margin = limit - sum;
        f.state = state_of(*f.margin, limit);
        if (f.state == FindingState::falls_short) f.change = "mend or replace the valves that leak most";
      } else {
        f.reason = "the leak of a valve is not entered";
        f.change = "enter pressure_leak and vacuum_leak of each vent valve";
      }
    }
    add(std::move(f));
  }

  const site::Site& site_;
  const VaporResult& result_;
  const std::optional<site::Date>& on_;
  Facts facts_;  ///< what tests are on record
  std::vector<Finding> out_;
};

}  // namespace

std::vector<Finding> check_vapor(const site::Site& site, const VaporResult& result, const std::optional<site::Date>& on,
                                 const site::records::Records* records) {
  return Checker(site, result, on, records).check();
}

}  // namespace forecourse::checks
