#include <algorithm>
#include <cmath>
#include <set>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/figures/figure.h"
#include "forecourse/checks/figures/hose_flow.h"
#include "forecourse/site/uncertain_values.h"

namespace forecourse::checks {
namespace {

// What the studies of pumps, sumps and tanks tell, for wishes that an owner may have.

constexpr double overfill_share = 0.95;

/// The smallest pressure that a pump adds where it delivers.
void read_rise(const studies::FlowResult& flow, const std::string& pump, FigureAt& out) {
  std::set<std::string> systems;
  for (const studies::FlowState& state : flow.states) {
    for (const studies::SystemFlow& system : state.systems) {
      for (const studies::PumpDuty& duty : system.pumps) {
        if (duty.id != pump || !duty.running || !(duty.flow > 0.0)) continue;
        systems.insert(system.system);
        out.value = std::min(out.value.value_or(duty.pressure_rise), duty.pressure_rise);
      }
    }
  }
  if (out.value) tell_rest(out, flow, systems, false);
}

/// The smallest pressure that each pump adds in any state in which it delivers.
std::vector<FigureAt> pump_rise(const Facts& facts) {
  std::vector<FigureAt> out;
  for (const site::Pump& pump : facts.site.pumps) {
    FigureAt one;
    one.subject = pump.id.text;
    one.where = pump.where;
    if (facts.flow != nullptr) read_rise(*facts.flow, pump.id.text, one);
    if (!one.value) one.enter = "enter what the flow study asks for";
    out.push_back(std::move(one));
  }
  return out;
}

/// Whether a size of a sump was entered as low, likely and high: the study computes with what is likely.
bool is_uncertain(const std::vector<site::UncertainValue>& values, const studies::ContainedSump& sump) {
  const std::string path = (sump.of_tank ? "tank." : "dispenser.") + sump.owner + ".sump.";
  return std::any_of(values.begin(), values.end(), [&](const auto& value) { return value.path.starts_with(path); });
}

template <class Read>
std::vector<FigureAt> each_contained_sump(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  if (facts.containment == nullptr) return out;
  const std::vector<site::UncertainValue> uncertain = site::uncertain_values(facts.site);
  for (const studies::ContainedSump& sump : facts.containment->sumps) {
    FigureAt one;
    one.subject = sump.owner;
    one.where = sump.where;
    if (sump.problem.empty()) read(sump, one);
    if (one.value && is_uncertain(uncertain, sump)) {
      one.rests_on = likely_alone;
      one.enter = "set each to its low and its high with --set, and look at the margin";
    }
    if (!one.value && one.enter.empty())
      one.enter = sump.problem.empty() ? "enter sensor_height of the sump" : sump.problem;
    out.push_back(std::move(one));
  }
  return out;
}

/// What a sump does at one of the inflows of the study.
const studies::SumpFill* fill_at(const studies::ContainedSump& sump, double inflow) {
  for (const studies::SumpFill& fill : sump.fills) {
    if (std::abs(fill.inflow - inflow) <= 1e-6 * inflow) return &fill;
  }
  return nullptr;
}

std::vector<FigureAt> sump_room(const Facts& facts) {
  return each_contained_sump(facts, [](const studies::ContainedSump& sump, FigureAt& at) { at.value = sump.brim; });
}

std::vector<FigureAt> sump_sensor_time(const Facts& facts) {
  return each_contained_sump(facts, [](const studies::ContainedSump& sump, FigureAt& at) {
    if (const auto* fill = fill_at(sump, to_si(3.0, "gph"))) at.value = fill->to_sensor;
  });
}

std::vector<FigureAt> sump_brim_time(const Facts& facts) {
  return each_contained_sump(facts, [](const studies::ContainedSump& sump, FigureAt& at) {
    if (const auto* fill = fill_at(sump, to_si(10.0, "gpm"))) at.value = fill->to_brim;
  });
}

/// Room in a tank up to 95 % of its capacity.
std::vector<FigureAt> tank_room(const Facts& facts) {
  std::vector<FigureAt> out;
  if (facts.tank == nullptr) return out;
  for (const studies::TankTold& tank : facts.tank->tanks) {
    FigureAt one;
    one.subject = tank.id;
    one.where = tank.where;
    for (const studies::TankRoom& room : tank.rooms) {
      if (std::abs(room.share - overfill_share) < 1e-9) one.value = room.room;
    }
    if (tank.now) one.deviation = tank.now->standard_error;
    if (!one.value) one.enter = tank.problem.empty() ? tank.not_read : tank.problem;
    out.push_back(std::move(one));
  }
  return out;
}

}  // namespace

std::vector<Figure> study_figures() {
  constexpr auto amount = FigureKind::amount;
  constexpr auto fuel = Measured::fuel;
  return {
      {"pump-rise", "the smallest pressure that a pump adds while it delivers", amount, &PressureDifference::kind(),
       "Pa", fuel, pump_rise},
      {"sump-room", "room of a sump up to its brim", amount, &Volume::kind(), "m3", fuel, sump_room},
      {"sump-sensor-time", "time until 3 gal/h into a sump reach its sensor", amount, &Duration::kind(), "s", fuel,
       sump_sensor_time},
      {"sump-brim-time", "time until 10 gal/min into a sump reach its brim", amount, &Duration::kind(), "s", fuel,
       sump_brim_time},
      {"tank-room", "room in a tank up to 95 % of its capacity", amount, &Volume::kind(), "m3", fuel, tank_room},
  };
}

}  // namespace forecourse::checks
