#include "forecourse/decide/mend/judge.h"

#include <algorithm>
#include <array>

#include "forecourse/checks/delivery_checks.h"
#include "forecourse/checks/flotation_checks.h"
#include "forecourse/checks/flow_checks.h"
#include "forecourse/checks/line_test_checks.h"
#include "forecourse/checks/rules/check_rules.h"
#include "forecourse/checks/tank_checks.h"
#include "forecourse/checks/vapor_checks.h"
#include "forecourse/site/has_parts.h"
#include "forecourse/site/read.h"

namespace forecourse::decide {
namespace {

using checks::BoundRequirement;
using checks::Finding;
using checks::Studied;

// Studies that a requirement can need.
constexpr unsigned flow = 1U << 0U;
constexpr unsigned at_rest = 1U << 1U;  ///< pressures without flow
constexpr unsigned containment = 1U << 2U;
constexpr unsigned tank = 1U << 3U;
constexpr unsigned vapor = 1U << 4U;
constexpr unsigned line_test = 1U << 5U;
constexpr unsigned delivery = 1U << 6U;
constexpr unsigned flotation = 1U << 7U;
constexpr unsigned all = (1U << 8U) - 1U;

struct Need {
  std::string_view id;
  unsigned studies;
};

/// By the figure of a requirement. Those that are not listed are told by the site alone.
constexpr std::array<Need, 24> needs_of_figures{{{"hose-flow-alone", flow},
                                                 {"hose-flow-one-each", flow},
                                                 {"hose-flow-all-open", flow},
                                                 {"hose-flow-most", flow},
                                                 {"hose-flow-least", flow},
                                                 {"pump-rise", flow},
                                                 {"pump-pressure", flow | at_rest},
                                                 {"line-pressure", flow | at_rest},
                                                 {"riser-pressure", flow | at_rest},
                                                 {"shear-valve-pressure", flow | at_rest},
                                                 {"hose-pressure", flow | at_rest},
                                                 {"sump-room", containment},
                                                 {"sump-sensor-time", containment},
                                                 {"sump-brim-time", containment},
                                                 {"tank-room", tank},
                                                 {"tank-capacity", tank},
                                                 {"flood-submerged", tank},
                                                 {"protected-notice-share", tank},
                                                 {"protected-shutoff-share", tank},
                                                 {"protected-slow-time", tank},
                                                 {"protected-slow-dry", tank},
                                                 {"vapor-top-tier", vapor},
                                                 {"line-acceptance-pressure", line_test},
                                                 {"line-acceptance-operating", line_test}}};

/// By the set of a finding of a study.
constexpr std::array<Need, 7> needs_of_studies{{{"flow", flow},
                                                {"tank", tank},
                                                {"delivery", delivery},
                                                {"vents", 0U},
                                                {"flotation", flotation},
                                                {"vapor", vapor},
                                                {"line-test", line_test}}};

template <std::size_t Count>
unsigned need_of(const std::array<Need, Count>& known, std::string_view id, unsigned otherwise) {
  const auto found = std::find_if(known.begin(), known.end(), [&](const Need& one) { return one.id == id; });
  return found == known.end() ? otherwise : found->studies;
}

unsigned needs_of(const BoundRequirement& rule) {
  unsigned out = need_of(needs_of_figures, rule.figure->id, 0U);
  for (const checks::BoundCondition& condition : rule.when) out |= need_of(needs_of_figures, condition.figure->id, 0U);
  return out;
}

bool is_on(const BoundRequirement& rule, const MendSubject& of) {
  return rule.set->id.text == of.set && (rule.entered->id.text == of.rule || rule.entered->route.text == of.rule);
}

void add_rules(const std::vector<BoundRequirement>& some, const MendSubject& of, std::vector<BoundRequirement>& out) {
  std::copy_if(some.begin(), some.end(), std::back_inserter(out),
               [&](const BoundRequirement& rule) { return is_on(rule, of); });
}

std::vector<BoundRequirement> rules_of(const MendStation& station, const MendSubject& of) {
  std::vector<BoundRequirement> out;
  if (of.of_study) return out;
  for (const auto& some : checks::built_in_rules()) add_rules(some, of, out);
  for (const site::RuleSet& set : station.own) {
    if (set.id.text == of.set) add_rules(checks::bind(set).value, of, out);
  }
  return out;
}

studies::DeliveryResult study_drop(const site::Site& site, const std::string& id, const Context& context) {
  studies::DeliveryOptions options;
  options.delivery = id;
  options.table = options.spans = options.charts = false;  // no requirement rests on them
  return studies::study_delivery(site, options, context);
}

/// \param one_tank that is asked of the study of the tanks; empty: all
Studied study(const site::Site& site, const MendStation& station, unsigned needs, const Context& context,
              const std::string& one_tank = {}) {
  Studied out;
  const auto needed = [&](unsigned study) { return (needs & study) != 0U; };
  if (needed(flow) && site::has_hose(site)) {
    studies::FlowOptions options = station.flow;
    options.ladders = false;  // no requirement rests on them
    options.lines_at_rest = needed(at_rest);
    out.flow = studies::study_flow(site, options, context);
  }
  if (needed(containment) && site::has_sump(site)) out.containment = studies::study_containment(site, {}, context);
  if (needed(tank) && site::has_tank_shape(site)) {
    studies::TankOptions options;
    options.tank = one_tank;
    out.tank = studies::study_tank(site, options, context);
  }
  if (needed(flotation) && site::has_flotation(site)) out.flotation = studies::study_flotation(site, {}, context);
  if (needed(vapor) && !site.tanks.empty()) out.vapor = studies::study_vapor(site, {}, context);
  if (needed(line_test) && !site.lines.empty()) out.line_test = studies::study_line_test(site, {}, context);
  if (!needed(delivery)) return out;
  out.deliveries.reserve(site.deliveries.size());
  for (const site::Delivery& one : site.deliveries) out.deliveries.push_back(study_drop(site, one.id.text, context));
  return out;
}

std::vector<Finding> of_study(const std::string& set, const site::Site& site, const Studied& studied,
                              const site::Date& today) {
  if (set == "flow" && studied.flow) return checks::check_flow(site, *studied.flow);
  if (set == "tank" && studied.tank) return checks::check_tanks(site, *studied.tank);
  if (set == "flotation" && studied.flotation) return checks::check_flotation(*studied.flotation);
  if (set == "vapor" && studied.vapor) return checks::check_vapor(site, *studied.vapor, today);
  if (set == "line-test" && studied.line_test) return checks::check_line_test(site, *studied.line_test, today);
  if (set == "vents") return checks::check_vents(site);
  std::vector<Finding> out;
  if (set != "delivery") return out;
  for (const studies::DeliveryResult& one : studied.deliveries) {
    for (Finding& finding : checks::check_drops(site, one)) out.push_back(std::move(finding));
  }
  return out;
}

}  // namespace

std::optional<site::Site> read_changed(const MendStation& station, std::string_view text) {
  Parsed<site::Site> read = site::read_site(text);
  if (read.ok() || text == station.text) return std::move(read.value);
  const std::vector<Diagnostic> before = site::read_site(station.text).diagnostics;
  const bool all_were_there = std::all_of(read.diagnostics.begin(), read.diagnostics.end(), [&](const Diagnostic& d) {
    return d.severity != Severity::error || std::any_of(before.begin(), before.end(), [&](const Diagnostic& old) {
             return old.severity == Severity::error && old.message == d.message;
           });
  });
  return all_were_there ? std::optional(std::move(read.value)) : std::nullopt;
}

std::vector<std::string> new_warnings(const MendStation& station, std::string_view text) {
  const std::vector<Diagnostic> before = site::read_site(station.text).diagnostics;
  std::vector<std::string> out;
  for (const Diagnostic& d : site::read_site(text).diagnostics) {
    const bool was_there =
        std::any_of(before.begin(), before.end(), [&](const Diagnostic& old) { return old.message == d.message; });
    if (d.severity == Severity::warning && !was_there) out.push_back(d.message);
  }
  return out;
}

Studied study_all(const site::Site& site, const MendStation& station, const Context& context) {
  Studied out = study(site, station, all, context);
  if (station.records != nullptr) checks::add_records(site, *station.records, context, out);
  return out;
}

Studied study_changed(const site::Site& site, const MendStation& station, const Studied& before, std::string_view path,
                      const Context& context) {
  constexpr std::array<std::string_view, 6> elsewhere{"dispenser.",    "line.",       "emergency_stop.",
                                                      "extinguisher.", "operations.", "surroundings."};
  const bool is_elsewhere =
      std::any_of(elsewhere.begin(), elsewhere.end(), [&](std::string_view one) { return path.starts_with(one); });
  Studied out = study(site, station, is_elsewhere ? all & ~tank : all, context);
  if (is_elsewhere) out.tank = before.tank;
  if (station.records != nullptr) checks::add_records(site, *station.records, context, out);
  return out;
}

Judge::Judge(const MendStation& station, MendSubject of, const Context& context)
    : station_(station), of_(std::move(of)), context_(context), rules_(rules_of(station, of_)) {
  if (of_.of_study) needs_ = need_of(needs_of_studies, of_.set, 0U);
  for (const BoundRequirement& rule : rules_) needs_ |= needs_of(rule);
}

std::vector<Finding> Judge::findings(const site::Site& site) const {
  const bool of_one_tank = of_.of_study && of_.set == "tank";
  const Studied studied = study(site, station_, needs_, context_, of_one_tank ? of_.subject : std::string());
  if (of_.of_study) return of_study(of_.set, site, studied, station_.today);
  return checks::check_rules(checks::facts_of(site, studied, station_.today, station_.records), rules_);
}

std::optional<Finding> Judge::judge(std::string_view text) const {
  const std::optional<site::Site> site = read_changed(station_, text);
  if (!site) return std::nullopt;
  int number = 0;
  for (Finding& finding : findings(*site)) {
    if (finding.rule == of_.rule && finding.subject == of_.subject && number++ == of_.number) return std::move(finding);
  }
  return std::nullopt;
}

}  // namespace forecourse::decide
