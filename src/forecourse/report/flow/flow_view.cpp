#include "forecourse/report/flow/flow_view.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

namespace forecourse::report {
namespace {

using studies::FlowResult;
using studies::HoseFlow;
using studies::HoseSummary;
using studies::SystemFlow;

constexpr double alike = 1e-6;  // relative: flows that no one tells apart

/// The hose in any state and piping; the limits are the same in all of them.
const HoseFlow* find_hose(const FlowResult& result, const std::string& id, const std::string& system = {}) {
  for (const studies::FlowState& state : result.states) {
    for (const SystemFlow& s : state.systems) {
      if (!system.empty() && s.system != system) continue;
      for (const HoseFlow& hose : s.hoses) {
        if (hose.id == id) return &hose;
      }
    }
  }
  return nullptr;
}

bool is_of(const FlowResult& result, const HoseSummary& hose, const studies::SystemSummary& system) {
  const HoseFlow* found = find_hose(result, hose.id, system.id);
  return found != nullptr ? found->share > 1.0 - 1e-9 : hose.product == system.product;
}

/// Names of the states of a summary for which `holds` is true: "alone, all open".
std::string when(const HoseSummary& hose, bool studies::SummaryFlow::*holds) {
  std::string out;
  const auto add = [&](const std::optional<studies::SummaryFlow>& flow, const char* name) {
    if (flow && (*flow).*holds) out += (out.empty() ? "" : ", ") + std::string(name);
  };
  add(hose.alone, "alone");
  add(hose.one_each, "one each");
  add(hose.all_open, "all open");
  return out;
}

void append(std::string& note, const std::string& words) { note += (note.empty() ? "" : "; ") + words; }

HoseRow row_of(const HoseSummary& hose) {
  HoseRow row{&hose, "", !hose.alone};
  const auto say = [&](const char* words, const std::string& states, bool marks) {
    if (states.empty()) return;
    append(row.note, std::string(words) + ": " + states);
    row.marked = row.marked || marks;
  };
  say("limiter holds it", when(hose, &studies::SummaryFlow::at_limit), false);
  say("above the cap", when(hose, &studies::SummaryFlow::above_rule_cap), true);
  say("below the flow to keep", when(hose, &studies::SummaryFlow::below_keep_flow), true);
  if (!hose.alone) append(row.note, "not determined");
  return row;
}

void add_once(std::vector<std::string>& list, const std::string& text) {
  if (std::find(list.begin(), list.end(), text) == list.end()) list.push_back(text);
}

std::vector<studies::BudgetRow> merged(const std::vector<studies::BudgetRow>& rows) {
  std::vector<studies::BudgetRow> out;
  for (const studies::BudgetRow& row : rows) {
    const bool same = !out.empty() && out.back().part == row.part && out.back().owner == row.owner;
    if (!same) {
      out.push_back(row);
      continue;
    }
    out.back().loss += row.loss;
    if (!(out.back().velocity > 0.0)) out.back().velocity = row.velocity;
  }
  return out;
}

/// Whole numbers near `parts` whose sum is `sum`: those that lose most by rounding down are rounded up.
std::vector<long> apportion(const std::vector<double>& parts, long sum) {
  std::vector<long> out;
  std::vector<std::size_t> order;
  long missing = sum;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    out.push_back(static_cast<long>(std::floor(parts[i])));
    order.push_back(i);
    missing -= out.back();
  }
  const auto rest = [&](std::size_t i) { return parts[i] - std::floor(parts[i]); };
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return rest(a) > rest(b); });
  for (std::size_t k = 0; missing > 0 && !order.empty(); ++k, --missing) ++out[order[k % order.size()]];
  for (std::size_t k = 0; missing < 0 && !order.empty(); ++k, ++missing)
    --out[order[order.size() - 1 - k % order.size()]];
  return out;
}

/// "loss of breakaway of " + "D1.a" + " (a-model)"
struct WhatParts {
  std::string kind;
  std::string owner;
  std::string model;
};

WhatParts what_parts(const std::string& what) {
  const std::size_t model = what.ends_with(')') ? what.rfind(" (") : std::string::npos;
  const std::string named = what.substr(0, model);
  const std::size_t of = named.rfind(" of ");
  const std::size_t owner = of == std::string::npos ? 0 : of + 4;
  return {named.substr(0, owner), named.substr(owner), model == std::string::npos ? "" : what.substr(model)};
}

bool is_alike(const DefaultUsed& a, const DefaultUsed& b) {
  return a.value == b.value && a.unit == b.unit && a.status == b.status && a.source == b.source;
}

}  // namespace

std::vector<std::string> flow_cautions() {
  return {
      "Computed from what was entered. It advises; a computed flow is not a test.",
      "The local code in its local edition and the authority that applies it come first.",
      "So do the listing and the instructions of each piece of equipment.",
      "Decisions that need a license belong to the licensed engineer, electrician or tester.",
      "A flow near a limit is to be measured at the nozzle.",
  };
}

std::vector<HoseGroup> hose_groups(const FlowResult& result) {
  std::vector<HoseGroup> groups;
  std::set<std::string> placed;
  for (const studies::SystemSummary& system : result.systems) {
    HoseGroup group{&system, {}};
    for (const HoseSummary& hose : result.hoses) {
      if (placed.count(hose.id) != 0 || !is_of(result, hose, system)) continue;
      placed.insert(hose.id);
      group.rows.push_back(row_of(hose));
    }
    groups.push_back(std::move(group));
  }
  HoseGroup rest;
  for (const HoseSummary& hose : result.hoses) {
    if (placed.count(hose.id) == 0) rest.rows.push_back(row_of(hose));
  }
  if (!rest.rows.empty()) groups.push_back(std::move(rest));
  return groups;
}

std::vector<std::string> limits_in_words(const FlowResult& result, const HoseGroup& group, site::Display display,
                                         Glyphs glyphs) {
  std::vector<std::string> out;
  for (const HoseRow& row : group.rows) {
    const HoseFlow* found = find_hose(result, row.hose->id);
    if (found == nullptr || !found->rule_cap) continue;
    add_once(out, "Cap: " + with_unit(Measure::flow, display, *found->rule_cap, glyphs) + " at each hose, " +
                      found->rule_clause + ".");
  }
  const bool any_flow =
      std::any_of(group.rows.begin(), group.rows.end(), [](const HoseRow& row) { return row.hose->alone.has_value(); });
  if (const auto keep = result.options.keep_flow; keep && any_flow) {
    out.push_back("Flow to keep at every open hose: " + with_unit(Measure::flow, display, *keep, glyphs) + ".");
  }
  return out;
}

std::optional<double> group_cap(const FlowResult& result, const HoseGroup& group) {
  for (const HoseRow& row : group.rows) {
    const HoseFlow* found = find_hose(result, row.hose->id);
    if (found != nullptr && found->rule_cap) return found->rule_cap;
  }
  return std::nullopt;
}

std::string hose_note(const HoseFlow& hose) {
  if (!hose.open) return "closed";
  std::string note;
  if (hose.at_limit) append(note, "limiter holds it");
  if (!hose.ratio_met) append(note, "cannot keep its ratio");
  if (hose.above_rule_cap) append(note, "above the cap");
  if (hose.below_keep_flow) append(note, "below the flow to keep");
  return note;
}

std::optional<double> flow_of(const std::optional<studies::SummaryFlow>& flow) {
  return flow ? std::optional(flow->flow) : std::nullopt;
}

std::string flow_text(const std::optional<studies::SummaryFlow>& flow, site::Display display, Glyphs glyphs) {
  if (!flow) return number(std::nan(""), 0, glyphs);
  const auto show = [&](double si) { return number(Measure::flow, display, si, glyphs); };
  std::string likely = show(flow->flow);
  if (!flow->low || !flow->high) return likely;
  const std::string low = show(*flow->low);
  const std::string high = show(*flow->high);
  return low == likely && high == likely ? likely : likely + " (" + low + " to " + high + ")";
}

std::string pump_note(const studies::PumpDuty& pump) {
  if (pump.dead_headed) return "dead-headed: runs, delivers nothing";
  if (pump.runs_back) return "fuel runs back through it";
  if (!pump.running) return "off";
  return pump.speed == 1.0 ? "" : "at " + number(100.0 * pump.speed, 1) + " % of full speed";
}

std::string status_in_words(const SystemFlow& system) {
  const std::string reason = system.reason.empty() ? "" : ": " + system.reason;
  switch (system.status) {
    case studies::FlowStatus::determined:
      return system.reason.empty() ? "determined" : system.reason;
    case studies::FlowStatus::at_rest:
      return "at rest, nothing flows" + reason;
    case studies::FlowStatus::no_supply:
      return "no supply, nothing reaches the hoses" + reason;
    case studies::FlowStatus::not_determined:
      return "not determined" + reason;
  }
  return "not determined" + reason;
}

std::vector<std::string> not_determined(const FlowResult& result) {
  std::vector<std::string> out;
  for (const studies::FlowState& state : result.states) {
    for (const SystemFlow& system : state.systems) {
      if (system.status == studies::FlowStatus::not_determined) {
        add_once(out, system.system + " is " + status_in_words(system) + ".");
      }
      const bool told = system.status == studies::FlowStatus::not_determined;
      if (!told && (system.status == studies::FlowStatus::no_supply || !system.reason.empty())) {
        add_once(out, system.system + ", with " + state.open_set.name + ": " + status_in_words(system) + ".");
      }
    }
  }
  for (const studies::SystemSummary& system : result.systems) {
    if (system.elevations_known) continue;
    add_once(out, system.id +
                      ": heights were not entered, so gauge pressures are those at the height of the liquid "
                      "in the tank, not at the place itself.");
  }
  return out;
}

const SystemFlow* find_system(const studies::FlowState& state, const std::string& system) {
  for (const SystemFlow& s : state.systems) {
    if (s.system == system) return &s;
  }
  return nullptr;
}

const HoseFlow* slowest(const SystemFlow& system) {
  const HoseFlow* best = nullptr;
  for (const HoseFlow& hose : system.hoses) {
    if (hose.open && (best == nullptr || hose.hose_flow < best->hose_flow * (1.0 - alike))) best = &hose;
  }
  return best;
}

const HoseFlow* fastest(const SystemFlow& system) {
  const HoseFlow* best = nullptr;
  for (const HoseFlow& hose : system.hoses) {
    if (hose.open && (best == nullptr || hose.hose_flow > best->hose_flow * (1.0 + alike))) best = &hose;
  }
  return best;
}

std::string with_alike(const SystemFlow& system, const HoseFlow& hose) {
  const auto tied = std::count_if(system.hoses.begin(), system.hoses.end(), [&](const HoseFlow& other) {
    return other.open && std::abs(other.hose_flow - hose.hose_flow) <= alike * std::abs(hose.hose_flow);
  });
  return tied > 1 ? hose.id + " and " + std::to_string(tied - 1) + " alike" : hose.id;
}

std::string without_pump(const FlowResult& result) {
  const auto runs = [](const SystemFlow& system) { return system.status != studies::FlowStatus::no_supply; };
  const bool none = !result.states.empty() &&
                    std::all_of(result.states.begin(), result.states.end(), [&](const studies::FlowState& state) {
                      return !state.systems.empty() && std::none_of(state.systems.begin(), state.systems.end(), runs);
                    });
  return none ? "No pump runs: nothing flows at any hose." : std::string();
}

double ShownBudget::value(long steps) const { return static_cast<double>(steps) / std::pow(10.0, decimals); }

std::string ShownBudget::text(long steps, Glyphs glyphs) const { return number(value(steps), decimals, glyphs); }

std::string ShownBudget::signed_text(long steps, Glyphs glyphs) const {
  return (steps > 0 ? "+" : "") + text(steps, glyphs);
}

ShownBudget shown_budget(const HoseFlow& hose, site::Display display) {
  ShownBudget budget;
  budget.decimals = decimals(Measure::pressure, display);
  const std::vector<studies::BudgetRow> rows = merged(hose.budget);
  std::vector<double> taken;
  for (const studies::BudgetRow& row : rows) {
    if (!std::isfinite(row.loss)) return {};
    const double steps = shown_value(Measure::pressure, display, row.loss) * std::pow(10.0, budget.decimals);
    if (steps < 0.0) budget.added += std::lround(-steps);
    if (steps >= 0.0) taken.push_back(steps);
  }
  const std::vector<long> shown = apportion(taken, budget.added);
  long left = 0;
  std::size_t next = 0;
  for (const studies::BudgetRow& row : rows) {
    const double steps = shown_value(Measure::pressure, display, row.loss) * std::pow(10.0, budget.decimals);
    const long change = steps < 0.0 ? std::lround(-steps) : -shown[next++];
    left += change;
    budget.rows.push_back({row.part, row.owner, row.flow, row.velocity, change, left});
  }
  return budget;
}

std::vector<DefaultGroup> grouped(const std::vector<DefaultUsed>& defaults) {
  std::vector<WhatParts> parts;
  std::vector<DefaultGroup> groups;
  for (const DefaultUsed& used : defaults) {
    WhatParts own = what_parts(used.what);
    std::size_t i = 0;
    while (i < groups.size() &&
           !(parts[i].kind == own.kind && parts[i].model == own.model && is_alike(*groups[i].first, used)))
      ++i;
    if (i == groups.size()) {
      parts.push_back(std::move(own));
      groups.push_back({"", &used});
    } else {
      parts[i].owner += ", " + own.owner;
    }
  }
  for (std::size_t i = 0; i < groups.size(); ++i) groups[i].what = parts[i].kind + parts[i].owner + parts[i].model;
  return groups;
}

std::string count_by_status(const std::vector<DefaultUsed>& defaults) {
  std::string out;
  for (const DefaultStatus status : {DefaultStatus::published, DefaultStatus::computed, DefaultStatus::common_practice,
                                     DefaultStatus::illustrative}) {
    const auto count =
        std::count_if(defaults.begin(), defaults.end(), [&](const DefaultUsed& used) { return used.status == status; });
    if (count > 0) out += (out.empty() ? "" : ", ") + std::to_string(count) + " " + forecourse::word(status);
  }
  return out;
}

std::vector<std::string> sources_used(const FlowResult& result) {
  std::set<std::string> sources;
  for (const DefaultUsed& used : result.defaults) {
    if (used.status == DefaultStatus::published || used.status == DefaultStatus::computed) sources.insert(used.source);
  }
  for (const studies::FlowState& state : result.states) {
    for (const SystemFlow& system : state.systems) {
      for (const HoseFlow& hose : system.hoses) sources.insert(hose.rule_clause);
    }
  }
  sources.erase("");
  return {sources.begin(), sources.end()};
}

std::string in_words(const studies::OpenSet& set) {
  const std::size_t count = set.hoses.size();
  return set.name + " (" + std::to_string(count) + (count == 1 ? " hose)" : " hoses)");
}

}  // namespace forecourse::report
