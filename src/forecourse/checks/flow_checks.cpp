#include "forecourse/checks/flow_checks.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "forecourse/checks/clause.h"
#include "forecourse/checks/figures/hose_flow.h"
#include "forecourse/checks/pump_checks.h"
#include "forecourse/studies/flow/hose_limits.h"

namespace forecourse::checks {
namespace {

using studies::FlowResult;
using studies::FlowState;
using studies::HoseFlow;
using studies::SystemFlow;

/// The least and the most that an open hose gives in any state of the result.
struct Range {
  double least = 0.0;
  double most = 0.0;
  double lowest = 0.0;            ///< over the spread of the uncertain values too
  double highest = 0.0;           ///< the same
  bool has_spread = true;         ///< false: the spread is not known in some state
  std::set<std::string> systems;  ///< that feed it
  std::optional<double> cap;
  std::optional<double> limit;  ///< of its limiter
  std::string clause;
  std::string without_flow;  ///< why nothing comes out in some state; empty: something does in each
};

void widen(Range& range, bool fresh, double flow) {
  range.least = fresh ? flow : std::min(range.least, flow);
  range.most = fresh ? flow : std::max(range.most, flow);
}

/// Widens by the spread of one flow.
void spread(Range& range, bool fresh, const std::optional<double>& low, const std::optional<double>& high) {
  if (!low || !high) {
    range.has_spread = false;
    return;
  }
  range.lowest = fresh ? *low : std::min(range.lowest, *low);
  range.highest = fresh ? *high : std::max(range.highest, *high);
}

/// Widens the range of one hose by what it gives in one state.
void add(std::map<std::string, Range>& ranges, const SystemFlow& system, const HoseFlow& hose) {
  const bool fresh = ranges.count(hose.id) == 0;
  Range& range = ranges[hose.id];
  widen(range, fresh, hose.hose_flow);
  spread(range, fresh, hose.low, hose.high);
  range.systems.insert(system.system);
  range.limit = hose.limit;
  if (hose.hose_flow <= 0.0 && range.without_flow.empty()) range.without_flow = system.reason;
  if (!hose.rule_cap) return;
  range.cap = hose.rule_cap;
  range.clause = hose.rule_clause;
}

/// Ranges of the hoses that are determined in every state in which they are open.
std::map<std::string, Range> ranges(const FlowResult& result) {
  std::map<std::string, Range> out;
  for (const FlowState& state : result.states) {
    for (const SystemFlow& system : state.systems) {
      if (system.status == studies::FlowStatus::not_determined) continue;
      for (const HoseFlow& hose : system.hoses) {
        if (hose.open) add(out, system, hose);
      }
    }
  }
  for (const studies::HoseSummary& hose : result.hoses) {
    const auto found = out.find(hose.id);
    if (found == out.end() || !hose.alone) continue;
    widen(found->second, false, hose.alone->flow);
    spread(found->second, false, hose.alone->low, hose.alone->high);
  }
  return out;
}

/// \param worst the margin at the end of the spread that keeps the limit least
void judge(Finding& finding, const FlowResult& result, const Range& range, double worst) {
  if (const std::string loose = loose_default(result, range.systems); !loose.empty()) {
    finding.state = FindingState::not_determined;
    finding.reason = "it rests on " + loose;
    finding.change = "enter the figures of the equipment";
    return;
  }
  finding.state = state_of(*finding.margin, *finding.limit);
  if (result.uncertain_values == 0 || finding.state == FindingState::falls_short) return;
  if (range.has_spread) {
    finding.state = worst >= 0.0 ? FindingState::meets : FindingState::close;
    if (worst < 0.0) finding.reason = "it is not kept over the whole spread of the uncertain values";
  } else {
    finding.state = FindingState::not_determined;
    finding.reason = "values that can move the flow are uncertain, and only what is likely was computed";
    finding.change = "set each to its low and its high with --set, and look at the margin";
  }
}

Finding cap_of(const std::string& hose, double cap, const std::string& clause) {
  Finding finding;
  finding.rule = "nozzle-flow-cap";
  finding.requirement = "a gasoline nozzle for motor vehicles delivers no more than the cap";
  finding.subject = hose;
  cite({clause, "40 CFR 1090 as amended by 88 FR 4718, 24 January 2023", site::ClauseSeen::text}, finding);
  finding.limit = cap;
  finding.unit = "m3/s";
  return finding;
}

Finding cap_finding(const FlowResult& result, const std::string& hose, const Range& range) {
  Finding finding = cap_of(hose, *range.cap, range.clause);
  finding.value = range.most;
  finding.margin = *range.cap - range.most;
  if (!(range.most > 0.0) && !range.without_flow.empty()) {
    finding.state = FindingState::does_not_apply;
    finding.reason = "nothing flows: " + range.without_flow;
    return finding;
  }
  const bool held_by_limiter =
      range.limit && *range.limit <= *range.cap * (1.0 + 1e-9);  // whatever the rest of the station is
  if (held_by_limiter) {
    finding.state = state_of(*finding.margin, *finding.limit);
  } else {
    judge(finding, result, range, *range.cap - range.highest);
  }
  if (finding.state == FindingState::falls_short) finding.change = "fit a limiter: limiter = \"10 gpm\"";
  return finding;
}

Finding undetermined_cap(const std::string& hose, const studies::FlowCap& cap) {
  Finding finding = cap_of(hose, cap.flow, cap.clause);
  finding.reason = "its flow is not determined";
  finding.change = "enter what the flow study names as missing";
  return finding;
}

Finding keep_finding(const FlowResult& result, const std::string& hose, const Range& range, double keep) {
  Finding finding;
  finding.rule = "flow-to-keep";
  finding.requirement = "every open hose keeps the flow asked for";
  finding.subject = hose;
  finding.limit = keep;
  finding.value = range.least;
  finding.margin = range.least - keep;
  finding.unit = "m3/s";
  if (!(range.least > 0.0) && !range.without_flow.empty()) {
    finding.state = FindingState::falls_short;
    finding.reason = "nothing flows: " + range.without_flow;
    finding.change = "let a pump run that can lift the fuel to the hose";
    return finding;
  }
  judge(finding, result, range, range.lowest - keep);
  if (finding.state == FindingState::falls_short) {
    finding.change = "lower the largest loss of its pressure budget, or lift the pump curve";
  }
  return finding;
}

Finding undetermined_keep(const std::string& hose, double keep) {
  Finding finding;
  finding.rule = "flow-to-keep";
  finding.requirement = "every open hose keeps the flow asked for";
  finding.subject = hose;
  finding.limit = keep;
  finding.unit = "m3/s";
  finding.reason = "its flow is not determined";
  return finding;
}

std::map<std::string, const site::Hose*> entered_hoses(const site::Site& site) {
  std::map<std::string, const site::Hose*> out;
  for (const site::Dispenser& d : site.dispensers) {
    for (const site::Hose& hose : d.hoses) out[hose.id.text] = &hose;
  }
  return out;
}

}  // namespace

std::vector<Finding> check_flow(const site::Site& site, const FlowResult& result) {
  std::vector<Finding> findings;
  const std::map<std::string, Range> known = ranges(result);
  const std::map<std::string, const site::Hose*> entered = entered_hoses(site);
  for (const studies::HoseSummary& hose : result.hoses) {
    const auto found = known.find(hose.id);
    const bool is_known = found != known.end() && hose.alone.has_value();
    const std::optional<studies::FlowCap> cap = studies::hose_limits(site, *entered.at(hose.id), {}).cap;
    if (is_known && found->second.cap) findings.push_back(cap_finding(result, hose.id, found->second));
    if (!is_known && cap) findings.push_back(undetermined_cap(hose.id, *cap));
    if (!result.options.keep_flow) continue;
    findings.push_back(is_known ? keep_finding(result, hose.id, found->second, *result.options.keep_flow)
                                : undetermined_keep(hose.id, *result.options.keep_flow));
  }
  for (Finding& finding : findings) finding.where = entered.at(finding.subject)->where;
  for (Finding& finding : check_pumps(site, result)) findings.push_back(std::move(finding));
  return findings;
}

}  // namespace forecourse::checks
