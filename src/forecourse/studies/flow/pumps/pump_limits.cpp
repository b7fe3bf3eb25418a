#include "forecourse/studies/flow/pumps/pump_limits.h"

#include <algorithm>

#include "forecourse/base/index.h"
#include "forecourse/network/pump_control.h"
#include "forecourse/parts/dead_headed_pump.h"

namespace forecourse::studies {
namespace {

using network::PipingSystem;
using network::SystemState;

template <class Part>
const Part* find(const std::vector<Part>& parts, const std::string& id) {
  const auto found = std::find_if(parts.begin(), parts.end(), [&](const Part& part) { return part.id.text == id; });
  return found == parts.end() ? nullptr : &*found;
}

network::PumpSetting setting(const PipingSystem& system, const SystemState& state) {
  network::PumpSetting out;
  for (const network::PumpPoint& pump : system.pumps) out.running.push_back(state.runs(pump) ? 1 : 0);
  out.speed = state.speed;
  return out;
}

std::string key(const PipingSystem& system, const network::PumpSetting& pumps) {
  std::string out = system.id + '\n';
  for (const char runs : pumps.running) out += runs != 0 ? '1' : '0';
  for (const double speed : pumps.speed) out += ' ' + std::to_string(speed);
  return out;
}

void add(std::string& list, bool missing, const std::string& what) {
  if (missing) list += (list.empty() ? "" : ", ") + what;
}

/// Whether a pump with a check valve runs, or is one that its control may start beside those that run.
bool may_open(const PipingSystem& system, const network::PumpSetting& pumps, std::size_t pump) {
  if (system.runs[at(system.pumps[pump].run)].bounds.lowest < 0.0) return false;
  if (pumps.running[pump] != 0) return true;
  if (!system.control || system.control->kind != site::ControlKind::lead_lag) return false;
  const std::vector<std::size_t>& lagging = system.control->pumps;
  return std::find(lagging.begin(), lagging.end(), pump) != lagging.end();
}

}  // namespace

/// With the pumps as they run in the state, and fuel drawn where the first hose of the system begins.
const PumpLimits::Openings& PumpLimits::openings(const PipingSystem& system, const SystemState& state) {
  const network::PumpSetting pumps = setting(system, state);
  const auto [found, fresh] = known_.try_emplace(key(system, pumps));
  Openings& out = found->second;
  if (!fresh) return out;
  out.resize(system.pumps.size());
  if (system.pumps.size() < 2 || system.hoses.empty()) return out;
  const auto place = at(system.runs[at(system.hoses.front().run)].from);
  network::SystemSolver solver(system);
  for (std::size_t p = 0; p < system.pumps.size(); ++p) {
    if (!may_open(system, pumps, p)) continue;
    const auto flow = network::opening_flow(solver, pumps, p, place);
    if (flow) out[p] = PumpOpening{*flow, system.places[place].id};
  }
  return out;
}

PumpHeat PumpLimits::heat(const site::Pump& pump, const std::string& product) const {
  PumpHeat out;
  const site::Product* fuel = find(site_.products, product);
  const bool no_heat = fuel == nullptr || !fuel->specific_heat;
  add(out.missing, !pump.motor_power, "motor_power");
  add(out.missing, !pump.liquid_held, "liquid_held");
  add(out.missing, no_heat, "specific_heat of " + product);
  if (!out.missing.empty()) return out;
  const auto& power = *pump.motor_power;
  const auto& mass = *pump.liquid_held;
  const auto& specific_heat = *fuel->specific_heat;
  const parts::HeldLiquid likely{mass.likely.si(), specific_heat.likely.si()};
  out.rate = parts::warming_rate(power.likely.si(), likely);
  out.rate_low = parts::warming_rate(power.low.si(), {mass.high.si(), specific_heat.high.si()});
  out.rate_high = parts::warming_rate(power.high.si(), {mass.low.si(), specific_heat.low.si()});
  out.time_to_rise = parts::time_to_warm(power.likely.si(), likely, out.rise);
  return out;
}

void PumpLimits::tell(const PipingSystem& system, const SystemState& state, SystemFlow& out) {
  if (out.status == FlowStatus::not_determined || out.pumps.size() != system.pumps.size()) return;
  const Openings& opening = openings(system, state);
  for (std::size_t p = 0; p < out.pumps.size(); ++p) {
    PumpDuty& duty = out.pumps[p];
    const site::Pump* pump = find(site_.pumps, duty.id);
    if (pump == nullptr) continue;
    duty.opening = opening[p];
    duty.bypass = pump->bypass;
    if (duty.dead_headed || duty.opening) duty.heat = heat(*pump, system.product);
    if (duty.running && pump->best_efficiency_flow) {
      duty.share_of_best_efficiency_flow = duty.flow / (pump->best_efficiency_flow->likely.si() * duty.speed);
    }
  }
}

}  // namespace forecourse::studies
