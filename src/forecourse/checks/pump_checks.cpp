#include "forecourse/checks/pump_checks.h"

#include <algorithm>

namespace forecourse::checks {
namespace {

bool can_be_held_shut(const studies::FlowResult& result, const std::string& pump) {
  for (const studies::FlowState& state : result.states) {
    for (const studies::SystemFlow& system : state.systems) {
      const bool found = std::any_of(system.pumps.begin(), system.pumps.end(),
                                     [&](const studies::PumpDuty& p) { return p.id == pump && p.opening; });
      if (found) return true;
    }
  }
  return false;
}

Finding bypass_finding(const site::Pump& pump) {
  Finding finding;
  finding.rule = "pump-bypass";
  finding.requirement = "a pump that a stronger one can hold shut lets a little flow back to its tank";
  finding.subject = pump.id.text;
  finding.clause = "common practice";
  finding.where = pump.where;
  if (!pump.bypass) {
    finding.reason = "whether the pump has a bypass was not entered";
    finding.change = "look at the pump, and enter bypass = true or false";
  } else if (*pump.bypass) {
    finding.state = FindingState::meets;
  } else {
    finding.state = FindingState::falls_short;
    finding.change = "fit a bypass, start the pump later, or match the pumps";
  }
  return finding;
}

}  // namespace

std::vector<Finding> check_pumps(const site::Site& site, const studies::FlowResult& result) {
  std::vector<Finding> findings;
  for (const site::Pump& pump : site.pumps) {
    if (can_be_held_shut(result, pump.id.text)) findings.push_back(bypass_finding(pump));
  }
  return findings;
}

}  // namespace forecourse::checks
