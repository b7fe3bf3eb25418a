// Pictures of shear valve, dispenser, hose, nozzle, and of what stops the pumps.
#include "forecourse/lesson/numbers/flow_pick.h"
#include "forecourse/lesson/pages/picture.h"
#include "forecourse/site/places.h"

namespace forecourse::lesson {
namespace {

const site::ShearValve* valve_of(const From& from) {
  for (const site::Dispenser& dispenser : from.ground.site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) {
      if (site::place_name(dispenser, inlet) == from.at) return inlet.shear_valve ? &*inlet.shear_valve : nullptr;
    }
  }
  return nullptr;
}

/// Flow with every hose open as a share of that of the hose alone.
std::optional<double> share_at_rush(const From& from) {
  const auto hose = hose_summary(from.ground, from.at);
  if (!hose || !hose->told->alone || !hose->told->all_open) return std::nullopt;
  return share_of(hose->told->all_open->flow, hose->told->alone->flow);
}

/// At rest, with the hose alone, and with every hose open.
States flowing_states(const From& from, const PictureValues& rest) {
  States out{state("at rest", "every hose shut", rest)};
  out.push_back(state("running", "this hose alone", with(rest, {{"flow", 1.0}})));
  if (const auto rush = share_at_rush(from)) {
    PictureValues all = rest;
    put(all, "flow", rush);
    out.push_back(state("rush", "every hose open", std::move(all)));
  }
  return out;
}

}  // namespace

States shear_valve_states(const From& from) {
  PictureValues rest{{"hit", 0.0},    {"broken", 0.0}, {"lower", 0.0},   {"upper", 0.0}, {"flow", 0.0},
                     {"escape", 0.0}, {"crack", 0.0},  {"tripped", 0.0}, {"parted", 0.0}};
  const site::ShearValve* valve = valve_of(from);
  if (valve != nullptr && valve->anchored) rest["anchored"] = *valve->anchored ? 1.0 : 0.0;
  PictureValues running = with(rest, {{"flow", 1.0}});
  return {state("at rest", "every hose shut", std::move(rest)),
          state("running", "with the hoses open", std::move(running))};
}

States filter_states(const From& from) {
  PictureValues rest{{"flow", 0.0}};
  const auto hose = hose_in_flow(from.ground, from.at);
  double lost = 0.0;
  std::optional<double> in_filter;
  if (hose) {
    for (const studies::BudgetRow& row : hose->told->budget) {
      if (row.loss > 0.0) lost += row.loss;
      if (row.part == "filter") in_filter = row.loss;
    }
  }
  put(rest, "clogged", share_of(in_filter, lost));
  return flowing_states(from, rest);
}

States meter_states(const From& from) { return flowing_states(from, {{"flow", 0.0}, {"count", 0.0}}); }

States parting_states(const From&) {
  return {state("at rest", "whole", {{"pull", 0.0}, {"angle", 0.0}, {"parted", 0.0}, {"shut", 0.0}, {"escape", 0.0}})};
}

States turning_states(const From& from) { return flowing_states(from, {{"pull", 0.0}, {"turn", 0.0}, {"flow", 0.0}}); }

States nozzle_states(const From& from) {
  States out = flowing_states(from, {{"flow", 0.0}});
  for (PictureState& one : out) {
    const double open = one.values["flow"] > 0.0 ? 1.0 : 0.0;
    one.values["lever"] = open;
    one.values["shut"] = 1.0 - open;
  }
  return out;
}

States vehicle_states(const From& from) { return flowing_states(from, {{"flow", 0.0}, {"away", 0.0}}); }

States emergency_stop_states(const From&) {
  return {state("running", "with the hoses open", {{"pressed", 0.0}, {"runs", 1.0}, {"flow", 1.0}, {"escape", 0.0}}),
          state("pressed", "pressed", {{"pressed", 1.0}, {"runs", 0.0}, {"flow", 0.0}, {"escape", 0.0}})};
}

States interlock_states(const From&) {
  return {state("running", "with the hoses open", {{"sensor", 0.0}, {"signal", 0.0}, {"runs", 1.0}, {"flow", 1.0}}),
          state("tripped", "the sensor is wet", {{"sensor", 1.0}, {"signal", 1.0}, {"runs", 0.0}, {"flow", 0.0}})};
}

}  // namespace forecourse::lesson
