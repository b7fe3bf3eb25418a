#include <algorithm>
#include <cmath>
#include <map>

#include "forecourse/decide/compare/figures.h"

namespace forecourse::decide {
namespace {

using studies::FlowResult;
using studies::FlowState;
using studies::HoseFlow;
using studies::SystemFlow;

bool is_known(const SystemFlow& system) { return system.status != studies::FlowStatus::not_determined; }

/// The piping that feeds each hose; empty for one that is fed by several.
std::map<std::string, std::string> systems_of_hoses(const FlowResult& flow) {
  std::map<std::string, std::string> systems;
  if (flow.states.empty()) return systems;
  for (const SystemFlow& system : flow.states.front().systems) {
    for (const HoseFlow& hose : system.hoses) {
      const auto [at, is_new] = systems.emplace(hose.id, system.system);
      if (!is_new) at->second.clear();
    }
  }
  return systems;
}

const HoseFlow* slowest(const std::vector<const HoseFlow*>& hoses) {
  const auto found = std::min_element(hoses.begin(), hoses.end(),
                                      [](const auto* x, const auto* y) { return x->hose_flow < y->hose_flow; });
  return found == hoses.end() ? nullptr : *found;
}

double course_length(const HoseFlow& hose) { return hose.grade_line.empty() ? 0.0 : hose.grade_line.back().distance; }

bool is_nearer(const HoseFlow* x, const HoseFlow* y) { return course_length(*x) < course_length(*y); }

/// Collects the figures of one result.
class FlowFigures {
 public:
  explicit FlowFigures(const FlowResult& flow) : flow_(flow), systems_(systems_of_hoses(flow)) {}

  std::vector<Figure> tell() {
    for (const studies::HoseSummary& hose : flow_.hoses) {
      if (hose.alone) add(Topic::hose_flow, system_of(hose.id), DifferenceRow::alone, hose.id, hose.alone->flow);
    }
    for (const FlowState& state : flow_.states) {
      state_ = state.open_set.name;
      for (const SystemFlow& system : state.systems) {
        if (is_known(system)) tell_system(system);
      }
    }
    return std::move(out_);
  }

 private:
  [[nodiscard]] std::string system_of(const std::string& hose) const {
    const auto found = systems_.find(hose);
    return found == systems_.end() ? std::string() : found->second;
  }

  void add(Topic topic, const std::string& system, const std::string& state, const std::string& subject, double value,
           std::string detail = {}) {
    if (!std::isfinite(value) && detail.empty()) return;  // a pressure that nothing holds
    Figure figure{topic, system, state, subject, std::move(detail), {}, value};
    const bool told =  // a blended hose is met in each of its pipings
        topic == Topic::hose_flow &&
        std::any_of(out_.begin(), out_.end(), [&](const Figure& f) { return f.is_of_the_same(figure); });
    if (!told) out_.push_back(std::move(figure));
  }

  void tell_system(const SystemFlow& system) {
    const std::string& id = system.system;
    tell_hoses(system);
    tell_inlets(system);
    for (const studies::PumpDuty& pump : system.pumps) {
      add(Topic::pump_rise, id, state_, pump.id, pump.pressure_rise);
      add(Topic::pump_discharge, id, state_, pump.id, pump.discharge_pressure_gauge);
    }
    for (const studies::LineFlow& line : system.lines) {
      add(Topic::line_velocity, id, state_, line.id, line.velocity);
      add(Topic::line_loss, id, state_, line.id, line.pressure_loss);
    }
  }

  void tell_hoses(const SystemFlow& system) {
    std::vector<const HoseFlow*> open;
    for (const HoseFlow& hose : system.hoses) {
      if (!hose.open) continue;
      open.push_back(&hose);
      add(Topic::hose_flow, system_of(hose.id), state_, hose.id, hose.hose_flow);
    }
    if (open.empty()) return;
    const HoseFlow& least = *slowest(open);
    add(Topic::slowest_flow, system.system, state_, system.system, least.hose_flow, least.id);
    add(Topic::total_flow, system.system, state_, system.system, system.total_flow);
    if (std::isfinite(least.pressure_gauge)) {
      add(Topic::slowest_pressure, system.system, state_, system.system, least.pressure_gauge, least.id);
    }
    const HoseFlow& near = **std::min_element(open.begin(), open.end(), is_nearer);
    const HoseFlow& far = **std::max_element(open.begin(), open.end(), is_nearer);
    if (!is_nearer(&near, &far)) {
      const bool flows = system.total_flow != 0.0;
      const char* why = !flows ? "" : open.size() == 1 ? "one hose open" : "all equally far";
      add(Topic::spread, system.system, state_, system.system, flows ? std::nan("") : 0.0, why);
      return;
    }
    add(Topic::spread, system.system, state_, system.system, near.hose_flow - far.hose_flow, near.id + " to " + far.id);
  }

  /// Once for each dispenser: its hoses of one product begin at one place.
  void tell_inlets(const SystemFlow& system) {
    std::vector<std::string> told;
    for (const HoseFlow& hose : system.hoses) {
      if (std::find(told.begin(), told.end(), hose.dispenser) != told.end()) continue;
      told.push_back(hose.dispenser);
      add(Topic::inlet_pressure, system.system, state_, hose.dispenser + "." + system.product, hose.pressure_gauge);
    }
  }

  const FlowResult& flow_;
  std::map<std::string, std::string> systems_;
  std::string state_;
  std::vector<Figure> out_;
};

}  // namespace

std::vector<Figure> flow_figures(const FlowResult& flow) { return FlowFigures(flow).tell(); }

}  // namespace forecourse::decide
