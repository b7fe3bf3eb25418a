#include "forecourse/checks/flotation_checks.h"

#include <algorithm>

namespace forecourse::checks {
namespace {

using studies::FlotationState;
using studies::TankFlotation;

Finding factor_finding(const TankFlotation& tank, const std::optional<FlotationState>& state, const char* filling) {
  Finding finding;
  finding.rule = "flotation-factor-" + std::string(filling);
  finding.requirement =
      std::string("the ") + filling + " tank is held down by the factor wanted (hold-down over buoyant force)";
  finding.subject = tank.tank;
  finding.where = tank.factor_where.value_or(tank.where);
  finding.limit = tank.factor_wanted;
  if (state) finding.value = state->factors.hold_down;
  if (!tank.problems.empty()) {
    finding.reason = tank.problems.front();
  } else if (!tank.water_level) {
    finding.reason = "the level of the ground water is not entered";
    finding.change = "enter flotation.water_level, the highest that was found or is to be feared";
  } else if (!tank.factor_wanted) {
    finding.reason = "no factor is entered that it is to reach";
    finding.change = "enter flotation.factor as the engineer or the local code asks";
  } else if (!finding.value) {
    finding.state = FindingState::meets;
    finding.reason = "the water does not reach the tank";
  } else {
    finding.margin = *finding.value - *finding.limit;
    finding.state = state_of(*finding.margin, *finding.limit);
    if (finding.state != FindingState::meets) {
      finding.change = "more cover, a slab, deadmen, or ballast that stays in it; by a licensed engineer";
    }
  }
  return finding;
}

Finding strap_finding(const TankFlotation& tank) {
  Finding finding;
  finding.rule = "flotation-strap";
  finding.requirement = "each strap takes its share of the pull of the deadmen, the tank empty";
  finding.subject = tank.tank;
  finding.where = tank.where;
  finding.unit = "N";
  finding.limit = tank.strap_load;
  if (tank.empty) finding.value = tank.empty->strap_pull;
  if (!tank.has_strap) {
    finding.reason = "no strap is entered that ties the deadmen to the tank";
    finding.change = "enter flotation.strap with count and working_load";
  } else if (!finding.value) {
    finding.reason = tank.empty ? "the number of straps is not entered" : "the balance is not determined";
    finding.change = "enter flotation.strap.count, and what the balance needs";
  } else if (!finding.limit) {
    finding.reason = "the working load of a strap is not entered";
    finding.change = "enter flotation.strap.working_load, as its maker states it";
  } else {
    finding.margin = *finding.limit - *finding.value;
    finding.state = state_of(*finding.margin, *finding.limit);
    if (finding.state != FindingState::meets) finding.change = "more straps, or stronger ones; by a licensed engineer";
  }
  return finding;
}

}  // namespace

std::vector<Finding> check_flotation(const studies::FlotationResult& result) {
  std::vector<Finding> findings;
  for (const TankFlotation& tank : result.tanks) {
    findings.push_back(factor_finding(tank, tank.empty, "empty"));
    if (result.options.filled) findings.push_back(factor_finding(tank, tank.filled, "filled"));
    if (tank.has_deadmen) findings.push_back(strap_finding(tank));
  }
  return findings;
}

}  // namespace forecourse::checks
