#include "forecourse/checks/pump_checks.h"

#include <algorithm>
#include <cmath>

#include "forecourse/base/unit_text.h"

namespace forecourse::checks {
namespace {

using studies::ControlStepTold;
using studies::ControlTold;
using studies::PumpDuty;

/// How a stronger pump can hold one shut in the states told.
struct HeldShut {
  bool can = false;                      ///< if it runs
  bool found = false;                    ///< and it may be found running so
  const ControlTold* control = nullptr;  ///< that starts it
};

bool is_of_lead_and_lag(const studies::SystemFlow& system, const std::string& pump) {
  if (!system.control || system.control->kind != site::ControlKind::lead_lag) return false;
  const std::vector<std::string>& order = system.control->order;
  return std::find(order.begin(), order.end(), pump) != order.end();
}

/// Whether the pump is held shut at a step at which the pumps may be found. Its opening was found beside the pumps of
/// the step taken: with more of them it is not lower, so fewer than these are not looked at.
bool is_found_shut(const ControlTold& control, const PumpDuty& pump) {
  for (std::size_t i = control.taken; i < control.steps.size(); ++i) {
    const ControlStepTold& step = control.steps[i];
    const bool may_be_found = i == control.taken || i == control.hunts_with || step.rests;
    const bool runs = std::find(step.pumps.begin(), step.pumps.end(), pump.id) != step.pumps.end();
    if (may_be_found && runs && step.determined && step.total_flow < pump.opening->total_flow) return true;
  }
  return false;
}

HeldShut held_shut(const studies::FlowResult& result, const std::string& id) {
  HeldShut out;
  for (const studies::FlowState& state : result.states) {
    for (const studies::SystemFlow& system : state.systems) {
      for (const PumpDuty& pump : system.pumps) {
        if (pump.id != id || !pump.opening) continue;
        out.can = true;
        const bool lead_lag = is_of_lead_and_lag(system, id);
        if (lead_lag) out.control = &*system.control;
        if (!lead_lag || is_found_shut(*system.control, pump)) out.found = true;
      }
    }
  }
  return out;
}

/// When the control starts its next pump.
std::string when(const ControlTold& control, site::Display display) {
  if (control.hoses_calling) {
    return "when more than " + std::to_string(std::lround(*control.hoses_calling)) +
           " hoses call for each pump that runs";
  }
  std::string text = "below the line pressure of starts_below";
  if (!control.starts_below) return text;
  return text + ", " + show_quantity(*control.starts_below, display == site::Display::si ? "kPa" : "psi");
}

Finding bypass_finding(const site::Pump& pump, const HeldShut& held, site::Display display) {
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
  } else if (held.found) {
    finding.state = FindingState::falls_short;
    finding.change = "fit a bypass, start the pump later, or match the pumps";
  } else {
    finding.reason = "its control starts the next pump only " + when(*held.control, display) +
                     ", and in no state computed is it found running while held shut";
    finding.change = "compute the sets of hoses at which the next pump has just started, or fit a bypass";
  }
  return finding;
}

}  // namespace

std::vector<Finding> check_pumps(const site::Site& site, const studies::FlowResult& result) {
  std::vector<Finding> findings;
  for (const site::Pump& pump : site.pumps) {
    const HeldShut held = held_shut(result, pump.id.text);
    if (held.can) findings.push_back(bypass_finding(pump, held, site.display));
  }
  return findings;
}

}  // namespace forecourse::checks
