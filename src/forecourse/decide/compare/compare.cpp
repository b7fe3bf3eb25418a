#include "forecourse/decide/compare/compare.h"

#include <algorithm>
#include <iterator>

#include "forecourse/base/nearest_word.h"
#include "forecourse/checks/flow_checks.h"
#include "forecourse/studies/flow/open_sets.h"

namespace forecourse::decide {
namespace {

using studies::FlowResult;
using studies::OpenSet;

bool has(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

bool same_hoses(const OpenSet& x, const OpenSet& y) {
  return x.hoses.size() == y.hoses.size() &&
         std::all_of(x.hoses.begin(), x.hoses.end(), [&](const std::string& hose) { return has(y.hoses, hose); });
}

/// The hoses of a set that a station has.
OpenSet within(const site::Site& site, const OpenSet& set) {
  const OpenSet all = studies::all_hoses(site);
  OpenSet out{set.name, {}};
  std::copy_if(set.hoses.begin(), set.hoses.end(), std::back_inserter(out.hoses),
               [&](const std::string& hose) { return has(all.hoses, hose); });
  return out;
}

/// The same sets for both: all hoses, one each, and those asked for by the options or by A's file, none twice.
std::vector<std::pair<OpenSet, OpenSet>> sets_of(const site::Site& a, const site::Site& b,
                                                 const studies::FlowOptions& options) {
  std::vector<std::pair<OpenSet, OpenSet>> sets{{studies::all_hoses(a), studies::all_hoses(b)}};
  const auto add = [&](const OpenSet& of_a, const OpenSet& of_b) {
    const bool told = std::any_of(sets.begin(), sets.end(), [&](const auto& set) {
      return same_hoses(set.first, of_a) && same_hoses(set.second, of_b);
    });
    if (!told) sets.emplace_back(of_a, of_b);
  };
  add(studies::one_hose_each(a), studies::one_hose_each(b));
  for (const OpenSet& asked : studies::asked_sets(a, options)) {
    const bool every = options.open_sets.empty() && a.flow.open.empty();
    if (!every) add(within(a, asked), within(b, asked));
  }
  return sets;
}

Alternative study(const site::Site& site, const studies::FlowOptions& options, const Context& context) {
  Alternative out;
  out.name = site.name.text;
  out.flow = studies::study_flow(site, options, context);
  out.findings = checks::check_flow(site, out.flow);
  for (const studies::HoseSummary& hose : out.flow.hoses) {
    if (!hose.all_open) continue;
    ++out.hoses;
    if (!hose.all_open->below_keep_flow) ++out.keeping;
  }
  return out;
}

bool is_dead_headed(const FlowResult& flow, std::size_t state, const std::string& pump) {
  if (state >= flow.states.size()) return false;
  const auto& systems = flow.states[state].systems;
  return std::any_of(systems.begin(), systems.end(), [&](const studies::SystemFlow& system) {
    return std::any_of(system.pumps.begin(), system.pumps.end(),
                       [&](const studies::PumpDuty& duty) { return duty.id == pump && duty.dead_headed; });
  });
}

std::vector<DeadHead> dead_heads(const FlowResult& a, const site::Site& site_a, const FlowResult& b,
                                 const site::Site& site_b) {
  std::vector<std::string> pumps;
  for (const site::Site* site : {&site_a, &site_b}) {
    for (const site::Pump& pump : site->pumps) {
      if (!has(pumps, pump.id.text)) pumps.push_back(pump.id.text);
    }
  }
  std::vector<DeadHead> out;
  for (std::size_t i = 0; i < a.states.size(); ++i) {
    for (const std::string& pump : pumps) {
      const DeadHead one{a.states[i].open_set.name, pump, is_dead_headed(a, i, pump), is_dead_headed(b, i, pump)};
      if (one.a || one.b) out.push_back(one);
    }
  }
  return out;
}

/// Why a group of hoses that hang together is not fed, or not as a group.
std::string why_not(const FlowResult& flow, const std::string& group) {
  std::string out;
  bool known = false;
  for (const studies::FlowState& state : flow.states) {
    for (const studies::SystemFlow& system : state.systems) {
      if ((" + " + group + " + ").find(" + " + system.system + " + ") == std::string::npos) continue;
      known = true;
      if (system.reason.empty() || out.find(system.reason) != std::string::npos) continue;
      out += (out.empty() ? "" : "; ") + system.reason;
    }
  }
  if (!out.empty()) return out;
  return known ? "these hoses do not depend on each other there" : "there is no such piping";
}

std::vector<FedOnce> fed_once(const FlowResult& a, const FlowResult& b) {
  std::vector<FedOnce> out;
  for (const auto& [one, other] : {std::pair(&a, &b), std::pair(&b, &a)}) {
    for (const studies::Ladder& ladder : one->ladders) {
      if (ladder.order != studies::LadderOrder::worst) continue;
      const bool both = std::any_of(other->ladders.begin(), other->ladders.end(),
                                    [&](const studies::Ladder& l) { return l.system == ladder.system; });
      if (!both) out.push_back({ladder.system, one == &a, why_not(*other, ladder.system)});
    }
  }
  return out;
}

const checks::Finding* find(const std::vector<checks::Finding>& findings, const checks::Finding& like) {
  const auto found = std::find_if(findings.begin(), findings.end(), [&](const checks::Finding& f) {
    return f.rule == like.rule && f.subject == like.subject;
  });
  return found == findings.end() ? nullptr : &*found;
}

void compare_findings(Comparison& out) {
  for (const checks::Finding& of_a : out.a.findings) {
    const checks::Finding* of_b = find(out.b.findings, of_a);
    if (of_b != nullptr && of_b->state == of_a.state) {
      ++out.findings_alike;
    } else {
      out.findings.push_back({of_a, of_b == nullptr ? std::nullopt : std::optional(*of_b)});
    }
  }
  for (const checks::Finding& of_b : out.b.findings) {
    if (find(out.a.findings, of_b) == nullptr) out.findings.push_back({std::nullopt, of_b});
  }
}

}  // namespace

Comparison compare(const site::Site& a, const site::Site& b, const CompareOptions& options, const Context& context) {
  Comparison out;
  out.options = options;
  studies::FlowOptions of_a = options.flow;
  studies::FlowOptions of_b = options.flow;
  of_a.open_sets.clear();
  of_b.open_sets.clear();
  for (const auto& [set_a, set_b] : sets_of(a, b, options.flow)) {
    of_a.open_sets.push_back(set_a);
    of_b.open_sets.push_back(set_b);
  }
  out.a = study(a, of_a, context);
  out.b = study(b, of_b, context);
  out.only_a = parts_only_in(a, b);
  out.only_b = parts_only_in(b, a);
  out.worth = worth_of(a, out.a.flow.ladders, b, out.b.flow.ladders, options.least_gain);
  out.fed_once = fed_once(out.a.flow, out.b.flow);
  out.rows = difference_rows(a, out.a.flow, b, out.b.flow);
  out.unchanged = unchanged_in(out.rows);
  out.dead_heads = dead_heads(out.a.flow, a, out.b.flow, b);
  compare_findings(out);
  return out;
}

std::vector<Diagnostic> check_options(const site::Site& a, const site::Site& b, const CompareOptions& options) {
  std::vector<std::string> known = studies::all_hoses(a).hoses;
  const std::vector<std::string> of_b = studies::all_hoses(b).hoses;
  known.insert(known.end(), of_b.begin(), of_b.end());
  std::vector<Diagnostic> problems;
  for (const OpenSet& set : options.flow.open_sets) {
    for (const std::string& hose : set.hoses) {
      if (has(known, hose)) continue;
      const auto near = nearest_word(hose, known);
      std::string offered = studies::hoses_offered(a, hose);
      if (offered.empty()) offered = studies::hoses_offered(b, hose);
      problems.push_back({Severity::error,
                          "there is no hose '" + hose + "' in A or in B",
                          std::nullopt,
                          !offered.empty() ? offered
                          : near           ? "did you mean '" + std::string(*near) + "'?"
                                           : "name a hose of one of the sites",
                          {}});
    }
  }
  for (const site::Site* site : {&a, &b}) {  // what the files themselves ask for
    for (const Diagnostic& d : studies::check_options(*site, {})) {
      const bool told = std::any_of(problems.begin(), problems.end(),
                                    [&](const Diagnostic& other) { return other.message == d.message; });
      if (!told) problems.push_back(d);
    }
  }
  return problems;
}

}  // namespace forecourse::decide
