#include "forecourse/checks/station/check_station.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <string_view>

#include "forecourse/checks/delivery_checks.h"
#include "forecourse/checks/flotation_checks.h"
#include "forecourse/checks/flow_checks.h"
#include "forecourse/checks/ledger_checks.h"
#include "forecourse/checks/line_test_checks.h"
#include "forecourse/checks/meter_checks.h"
#include "forecourse/checks/rules/check_rules.h"
#include "forecourse/checks/tank_checks.h"
#include "forecourse/checks/vapor_checks.h"
#include "forecourse/site/days_to_come.h"
#include "forecourse/site/has_parts.h"
#include "forecourse/site/rules/is_under.h"

namespace forecourse::checks {
namespace {

template <class T>
const T* pointer(const std::optional<T>& value) {
  return value ? &*value : nullptr;
}

class Collector {
 public:
  explicit Collector(CheckResult& out) : out_(out) {}

  template <class Result>
  void study(const char* id, const char* title, const Result& result, std::vector<Finding> found) {
    out_.version = result.version;
    for (const DefaultUsed& used : result.defaults) add_default(used);
    out_.warnings.insert(out_.warnings.end(), result.warnings.begin(), result.warnings.end());
    set({id, true, title, {}, std::move(found)});
  }

  void set(FindingSet one) {
    if (one.findings.empty()) return;
    const auto same = std::find_if(out_.sets.begin(), out_.sets.end(),
                                   [&](const auto& s) { return one.of_study && s.of_study && s.id == one.id; });
    if (same == out_.sets.end()) return out_.sets.push_back(std::move(one));
    std::move(one.findings.begin(), one.findings.end(), std::back_inserter(same->findings));
  }

 private:
  /// Studies share many of them.
  void add_default(const DefaultUsed& used) {
    const bool told = std::any_of(out_.defaults.begin(), out_.defaults.end(), [&](const DefaultUsed& one) {
      return one.what == used.what && one.system == used.system && one.value == used.value;
    });
    if (!told) out_.defaults.push_back(used);
  }

  CheckResult& out_;
};

void check_studies(const Facts& facts, const Studied& studied, Collector& collect) {
  const site::Site& site = facts.site;
  if (studied.flow) collect.study("flow", "Flow study", *studied.flow, check_flow(site, *studied.flow));
  if (studied.tank) collect.study("tank", "Tank study", *studied.tank, check_tanks(site, *studied.tank));
  for (const studies::DeliveryResult& one : studied.deliveries) {
    collect.study("delivery", "Delivery study", one, check_drops(site, one));
  }
  collect.set({"vents", true, "Vents", {}, check_vents(site)});
  if (studied.flotation) {
    collect.study("flotation", "Tanks against the ground water", *studied.flotation,
                  check_flotation(*studied.flotation));
  }
  if (studied.vapor) {
    collect.study("vapor", "Vapor study", *studied.vapor,
                  check_vapor(site, *studied.vapor, facts.today, facts.records));
  }
  if (studied.line_test) {
    collect.study("line-test", "Line tests and leak detectors", *studied.line_test,
                  check_line_test(site, *studied.line_test, facts.today, facts.records));
  }
  if (studied.ledger) collect.study("ledger", "Ledger", *studied.ledger, check_ledger(*studied.ledger));
  if (studied.meter) collect.study("meter", "Meters", *studied.meter, check_meter(*studied.meter));
}

void count(CheckResult& out) {
  std::map<std::pair<std::string_view, std::string_view>, bool> seen;
  for (const FindingSet& set : out.sets) {
    for (const Finding& one : set.findings) {
      bool& verified = seen.try_emplace({set.id, one.rule}, true).first->second;
      verified = verified && one.clause_verified;
    }
  }
  out.requirements = static_cast<int>(seen.size());
  out.verified = static_cast<int>(std::count_if(seen.begin(), seen.end(), [](const auto& one) { return one.second; }));
}

}  // namespace

Studied study_for_checks(const site::Site& site, const site::records::Records* records, const Context& context) {
  Studied out;
  if (site::has_hose(site)) out.flow = studies::study_flow(site, {}, context);
  if (site::has_sump(site)) out.containment = studies::study_containment(site, {}, context);
  if (site::has_tank_shape(site)) out.tank = studies::study_tank(site, {}, context);
  if (site::has_flotation(site)) out.flotation = studies::study_flotation(site, {}, context);
  if (!site.tanks.empty()) out.vapor = studies::study_vapor(site, {}, context);
  if (!site.lines.empty()) out.line_test = studies::study_line_test(site, {}, context);
  for (const site::Delivery& delivery : site.deliveries) {
    studies::DeliveryOptions options;
    options.delivery = delivery.id.text;
    out.deliveries.push_back(studies::study_delivery(site, options, context));
  }
  if (records != nullptr) add_records(site, *records, context, out);
  return out;
}

void add_records(const site::Site& site, const site::records::Records& records, const Context& context, Studied& out) {
  out.ledger = studies::study_ledger(site, records, {}, context);
  if (records.provings.empty()) return;
  out.meter = studies::study_meter(site, records, {}, studies::book_meters(*out.ledger), context);
}

Facts facts_of(const site::Site& site, const Studied& studied, const site::Date& today,
               const site::records::Records* records) {
  return {site,
          today,
          records,
          pointer(studied.flow),
          pointer(studied.containment),
          pointer(studied.tank),
          pointer(studied.flotation),
          pointer(studied.vapor),
          pointer(studied.ledger),
          pointer(studied.line_test),
          pointer(studied.meter)};
}

std::vector<FindingSet> check_rule_sets(const Facts& facts) {
  std::vector<FindingSet> out;
  for (const std::vector<BoundRequirement>& rules : built_in_rules()) {
    if (rules.empty()) continue;
    const site::RuleSet& set = *rules.front().set;
    if (!site::is_under(facts.site, set.id.text)) continue;
    out.push_back({set.id.text, false, set.title.text, set.edition.text, check_rules(facts, rules)});
  }
  return out;
}

CheckResult check_station(const Facts& facts, const Studied& studied, std::span<const site::RuleSet> own) {
  CheckResult out;
  out.today = facts.today;
  Collector collect(out);
  check_studies(facts, studied, collect);
  for (FindingSet& set : check_rule_sets(facts)) collect.set(std::move(set));
  for (const site::RuleSet& set : own) {
    const Parsed<std::vector<BoundRequirement>> bound = bind(set);
    out.warnings.insert(out.warnings.end(), bound.diagnostics.begin(), bound.diagnostics.end());
    collect.set({set.id.text, false, set.title.text, set.edition.text, check_rules(facts, bound.value)});
  }
  const std::vector<Diagnostic> to_come = site::days_to_come(facts.site, facts.today);
  out.warnings.insert(out.warnings.end(), to_come.begin(), to_come.end());
  count(out);
  return out;
}

std::vector<Finding> all_findings(const CheckResult& result) {
  std::vector<Finding> out;
  std::size_t count = 0;
  for (const FindingSet& set : result.sets) count += set.findings.size();
  out.reserve(count);
  for (const FindingSet& set : result.sets) out.insert(out.end(), set.findings.begin(), set.findings.end());
  return out;
}

}  // namespace forecourse::checks
