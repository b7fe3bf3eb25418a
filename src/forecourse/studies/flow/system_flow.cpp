#include "forecourse/studies/flow/system_flow.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "forecourse/base/index.h"
#include "forecourse/studies/flow/course.h"
#include "forecourse/studies/flow/hose_limits.h"
#include "forecourse/studies/flow/pumps/control_told.h"
#include "forecourse/studies/flow/without_flow.h"

namespace forecourse::studies {
namespace {

using network::PipingSystem;
using network::SystemState;

FlowStatus status_of(const solvers::SteadyReport& report) {
  switch (report.status) {
    case solvers::SteadyStatus::converged:
      return FlowStatus::determined;
    case solvers::SteadyStatus::at_rest:
      return FlowStatus::at_rest;
    case solvers::SteadyStatus::no_supply:
      return FlowStatus::no_supply;
    case solvers::SteadyStatus::not_converged:
      return FlowStatus::not_determined;
  }
  return FlowStatus::not_determined;
}

/// Where a solve failed, in words of the site.
std::string failure(const PipingSystem& system, const solvers::SteadyReport& report) {
  std::string text = "no solution was found";
  if (report.worst_edge >= 0) text += ": the law of '" + system.runs[at(report.worst_edge)].id + "' is not met";
  if (report.worst_node >= 0) text += "; the flows at '" + system.places[at(report.worst_node)].id + "' do not balance";
  return text;
}

const site::Hose* find_hose(const site::Site& site, const std::string& id) {
  for (const site::Dispenser& d : site.dispensers) {
    for (const site::Hose& hose : d.hoses) {
      if (hose.id.text == id) return &hose;
    }
  }
  return nullptr;
}

/// Fills one system's part of a state.
class SystemTeller {
 public:
  SystemTeller(const site::Site& site, const PipingSystem& system, const SystemState& state,
               std::optional<double> keep_flow)
      : site_(site), system_(system), state_(state), keep_flow_(keep_flow) {}

  SystemFlow tell() {
    out_.system = system_.id;
    out_.product = system_.product;
    if (!system_.graph) {
      out_.reason = system_.problems.empty() ? "its piping is not complete" : system_.problems.front().message;
      return std::move(out_);
    }
    out_.status = status_of(state_.report);
    out_.iterations = state_.report.iterations;
    out_.pressure_residual = state_.report.pressure_residual;
    out_.flow_residual = state_.report.flow_residual;
    if (out_.status == FlowStatus::not_determined) {
      out_.reason = failure(system_, state_.report);
      return std::move(out_);
    }
    out_.reason = what_gravity_feeds(system_, state_);
    if (!out_.reason.empty()) {
      out_.status = FlowStatus::not_determined;
      return std::move(out_);
    }
    for (const network::PumpPoint& pump : system_.pumps) tell_pump(pump);
    out_.control = control_told(system_, state_);
    for (std::size_t i = 0; i < system_.places.size(); ++i) {
      const network::Place& place = system_.places[i];
      out_.places.push_back({place.id, place.elevation, gauge(static_cast<int>(i), place.elevation)});
    }
    for (std::size_t r = 0; r < system_.runs.size(); ++r) tell_line(r);
    for (const network::HosePoint& hose : system_.hoses) tell_hose(hose);
    out_.reason = why_without_flow(system_, state_, site_.display);
    return std::move(out_);
  }

 private:
  [[nodiscard]] double gauge(int node, double elevation) const {
    return state_.pressure[at(node)] - system_.weight_of(elevation);
  }

  void tell_pump(const network::PumpPoint& pump) {
    const network::Run& run = system_.runs[at(pump.run)];
    PumpDuty duty;
    duty.id = pump.id;
    duty.tank = pump.tank;
    duty.running = state_.runs(pump);
    duty.speed = network::speed_of_run(system_, state_, at(pump.run));
    duty.flow = state_.flow[at(pump.run)];
    double pressure = state_.pressure[at(run.from)];
    const double level = system_.weight_of(pump.discharge_elevation);
    for (const network::Element& element : run.elements) {
      const double loss = network::loss(element, duty.flow, duty.speed).pressure_loss;
      if (duty.running) pressure -= loss;
      if (element.kind == network::ElementKind::pump) {
        duty.pressure_rise = duty.running ? -loss : 0.0;
        duty.discharge_pressure_gauge = pressure - level;
      }
    }
    if (has_leak_detector(pump.id)) duty.leak_detector_pressure_gauge = gauge(run.to, pump.discharge_elevation);
    constexpr double least = 1e-9;  // [m3/s] above the solver's residual, below what anyone measures
    duty.dead_headed = duty.running && std::abs(duty.flow) < least;
    duty.runs_back = duty.flow <= -least;
    out_.total_flow += duty.flow;
    out_.pumps.push_back(std::move(duty));
  }

  [[nodiscard]] bool has_leak_detector(const std::string& pump) const {
    return std::any_of(site_.pumps.begin(), site_.pumps.end(),
                       [&](const site::Pump& p) { return p.id.text == pump && p.leak_detector.has_value(); });
  }

  void tell_line(std::size_t r) {
    const network::Run& run = system_.runs[r];
    if (run.kind != network::RunKind::line) return;
    const double flow = state_.flow[r];
    const double bore = run.elements.empty() ? 0.0 : run.elements.front().bore;
    const double area = 0.25 * std::numbers::pi * bore * bore;
    double loss = 0.0;
    for (const network::Element& element : run.elements) loss += network::loss(element, flow).pressure_loss;
    out_.lines.push_back({run.id, flow, area > 0.0 ? flow / area : 0.0, loss});
  }

  void tell_hose(const network::HosePoint& point) {
    HoseFlow hose;
    hose.id = point.id;
    hose.dispenser = point.dispenser;
    hose.open = state_.open[at(point.run)] != 0;
    hose.share = point.share;
    hose.flow = state_.flow[at(point.run)];
    hose.hose_flow = hose.flow / hose.share;
    const int start = system_.runs[at(point.run)].from;
    hose.pressure_gauge = gauge(start, system_.places[at(start)].elevation);
    const HoseLimits limits = hose_limits(site_, *find_hose(site_, point.id), keep_flow_);
    const SummaryFlow held = held_against(limits, hose.hose_flow);
    hose.limit = limits.limiter;
    hose.at_limit = hose.open && held.at_limit;
    if (limits.cap) {
      hose.rule_cap = limits.cap->flow;
      hose.rule_clause = limits.cap->clause;
    }
    hose.above_rule_cap = held.above_rule_cap;
    hose.below_keep_flow = hose.open && held.below_keep_flow;
    if (hose.open) {
      Course course = course_to(system_, state_, point, &site_);
      hose.budget = std::move(course.budget);
      hose.grade_line = std::move(course.grade_line);
    }
    out_.hoses.push_back(std::move(hose));
  }

  const site::Site& site_;
  const PipingSystem& system_;
  const SystemState& state_;
  std::optional<double> keep_flow_;
  SystemFlow out_;
};

}  // namespace

SystemFlow system_flow(const site::Site& site, const PipingSystem& system, const SystemState& state,
                       std::optional<double> keep_flow) {
  return SystemTeller(site, system, state, keep_flow).tell();
}

}  // namespace forecourse::studies
