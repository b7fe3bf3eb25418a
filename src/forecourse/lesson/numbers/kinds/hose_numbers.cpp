// What flow, incidents and checks tell of the hose at hand and of the parts on its way.
#include "forecourse/lesson/numbers/check_pick.h"
#include "forecourse/lesson/numbers/flow_pick.h"
#include "forecourse/lesson/numbers/incident_pick.h"
#include "forecourse/lesson/numbers/kinds/kinds.h"

namespace forecourse::lesson {
namespace {

using studies::DriveOffTold;
using studies::HoseFlow;
using studies::HoseSummary;
using studies::IncidentKind;
using studies::IncidentResult;
using studies::SummaryFlow;

/// A flow of the hose in one of the three states that every hose is told for.
///
/// \param key "/alone_flow"
Picked of_summary(const From& from, std::optional<SummaryFlow> HoseSummary::*state, const std::string& key,
                  const char* reason) {
  const auto at = hose_summary(from.ground, from.at);
  if (!at) return nothing(why_no_flow(from.ground, {}));
  const std::optional<SummaryFlow>& flow = at->told->*state;
  const std::string why = reason != nullptr ? reason : why_no_flow(from.ground, at->system);
  Picked out = picked_flow(from.ground, flow ? std::optional<double>(flow->flow) : std::nullopt,
                           at->pointer + key + "_m3_per_s", at->system, why);
  if (!flow || !flow->low || !flow->high) return out;
  return between(std::move(out),
                 {*flow->low, *flow->high, at->pointer + key + "_low_m3_per_s", at->pointer + key + "_high_m3_per_s"});
}

Picked alone(const From& from) { return of_summary(from, &HoseSummary::alone, "/alone_flow", nullptr); }

Picked one_each(const From& from) {
  return of_summary(from, &HoseSummary::one_each, "/one_each_flow", "it is not among the one hose at each dispenser");
}

Picked all_open(const From& from) { return of_summary(from, &HoseSummary::all_open, "/all_open_flow", nullptr); }

Picked limit(const From& from) {
  const auto at = hose_in_flow(from.ground, from.at);
  if (!at) return nothing(why_no_flow(from.ground, {}));
  return picked_flow(from.ground, at->told->limit, at->pointer + "/limit_m3_per_s", at->system,
                     "the hose has no flow limiter");
}

Picked pressure(const From& from) {
  const auto at = hose_in_flow(from.ground, from.at);
  if (!at) return nothing(why_no_flow(from.ground, {}));
  return picked_flow(from.ground, at->told->pressure_gauge, at->pointer + "/pressure_gauge_pa", at->system, "");
}

/// What the display counts in a minute with this hose alone.
Picked minute(const From& from) {
  constexpr double seconds = 60.0;
  Picked out = alone(from);
  if (!out.value) return out;
  *out.value *= seconds;
  out.proof.times = seconds;
  if (out.range) {
    out.range->low *= seconds;
    out.range->high *= seconds;
  }
  return out;
}

/// No price is part of a site file.
Picked price(const From&) {
  return nothing("price not entered; the display shows the volume by the price of one gallon or liter");
}

Picked sale_limit(const From& from) {
  return of_finding({from.ground, "station", from.incidents}, "unattended-sale", "us-fire-code");
}

/// A value of one part on the way to the hose.
template <class Value>
Picked of_part(const From& from, const std::string& part, Value value, const char* key) {
  const auto at = hose_in_flow(from.ground, from.at);
  if (!at) return nothing(why_no_flow(from.ground, {}));
  if (!at->told->open) return nothing("the hose is shut in every set of open hoses: add it to open in [flow]");
  const auto row = place_of(at->told->budget, [&](const auto& one) { return one.part == part; });
  if (!row) {
    return nothing("no " + part + " is listed on the way to " + from.at + "; where the hose's losses are entered as " +
                   "one, enter its parts instead");
  }
  return picked_flow(from.ground, value(at->told->budget[*row]), at_place(at->pointer + "/budget", *row) + key,
                     at->system, "the part has no bore of its own");
}

Picked loss_of(const From& from, const char* part) {
  return of_part(
      from, part, [](const auto& row) { return std::optional<double>(row.loss); }, "/pressure_loss_pa");
}

Picked velocity_of(const From& from, const char* part) {
  const auto moving = [](const auto& row) {
    return row.velocity > 0.0 ? std::optional<double>(row.velocity) : std::nullopt;
  };
  return of_part(from, part, moving, "/velocity_m_per_s");
}

Picked filter_loss(const From& from) { return loss_of(from, "filter"); }
Picked meter_loss(const From& from) { return loss_of(from, "meter"); }
Picked control_valve_loss(const From& from) { return loss_of(from, "control valve"); }
Picked whip_loss(const From& from) { return loss_of(from, "whip hose"); }
Picked breakaway_loss(const From& from) { return loss_of(from, "breakaway"); }
Picked curb_loss(const From& from) { return loss_of(from, "curb hose"); }
Picked swivel_loss(const From& from) { return loss_of(from, "swivel"); }
Picked nozzle_loss(const From& from) { return loss_of(from, "nozzle"); }
Picked whip_velocity(const From& from) { return velocity_of(from, "whip hose"); }
Picked curb_velocity(const From& from) { return velocity_of(from, "curb hose"); }

Picked length(const From& from) { return of_finding(from, "hose-length", "us-fire-code"); }

/// Where the values of a drive-off stand.
const std::string drive_off = "/result/drive_off/";

/// A value of a vehicle that drives off with the hose. It rests on what was entered of vehicle, hose and breakaway, not
/// on what the flow rests on.
template <class Value>
Picked of_drive_off(const From& from, Value value) {
  Picked out = of_incident(from, IncidentKind::drive_off, [&](const IncidentResult& told) {
    if (!told.drive_off) return nothing("the drive-off is not determined");
    return value(*told.drive_off);
  });
  if (!out.proof.command.empty()) {
    out.rests_on = first_of(rests_on(from.incidents.of(IncidentKind::drive_off, from.at).result.inputs));
  }
  return out;
}

Picked pull(const From& from) {
  return of_drive_off(from, [](const DriveOffTold& told) {
    return picked_spread(told.separation_force, drive_off + "separation_force_n",
                         "enter at which pull the breakaway parts: parting = { pull = \"180 lbf\" }");
  });
}

Picked angle(const From& from) {
  return of_drive_off(from,
                      [](const DriveOffTold& told) { return picked(told.angle, {}, drive_off + "angle_rad", ""); });
}

Picked speed(const From& from) {
  return of_drive_off(
      from, [](const DriveOffTold& told) { return picked(told.speed_then, {}, drive_off + "speed_then_m_per_s", ""); });
}

Picked tight_at(const From& from) {
  return of_drive_off(from,
                      [](const DriveOffTold& told) { return picked(told.tight_at, {}, drive_off + "tight_at_s", ""); });
}

Picked base_force(const From& from) {
  return of_drive_off(from, [](const DriveOffTold& told) {
    return picked(told.base_force, {}, drive_off + "base_force_n",
                  "enter the pull at which the breakaway parts, and outlet_height of the dispenser");
  });
}

}  // namespace

std::vector<NumberKind> hose_numbers() {
  return {{"filter-loss", "Lost in the filter", Quantity::pressure, filter_loss},
          {"meter-loss", "Lost in the meter", Quantity::pressure, meter_loss},
          {"control-valve-loss", "Lost in the control valve", Quantity::pressure, control_valve_loss},
          {"hose-flow-alone", "This hose alone", Quantity::flow, alone},
          {"hose-flow-one-each", "One hose open at each dispenser", Quantity::flow, one_each},
          {"hose-flow-all", "Every hose open", Quantity::flow, all_open},
          {"hose-limit", "The flow limiter lets pass", Quantity::flow, limit},
          {"display-volume", "Counted in a minute, this hose alone", Quantity::volume, minute},
          {"display-price", "Price of that volume", Quantity::money, price},
          {"sale-limit", "A sale stops at", Quantity::volume, sale_limit},
          {"hose-pressure", "Pressure where the hose begins", Quantity::pressure, pressure},
          {"hose-length", "The hose is this long", Quantity::length, length},
          {"whip-loss", "Lost in the whip hose", Quantity::pressure, whip_loss},
          {"whip-velocity", "Speed in the whip hose", Quantity::velocity, whip_velocity},
          {"breakaway-loss", "Lost in the breakaway", Quantity::pressure, breakaway_loss},
          {"parting-pull", "Pull in the hose that parts it", Quantity::force, pull},
          {"pull-angle", "The pull is off its axis by", Quantity::angle, angle},
          {"curb-loss", "Lost in the curb hose", Quantity::pressure, curb_loss},
          {"curb-velocity", "Speed in the curb hose", Quantity::velocity, curb_velocity},
          {"swivel-loss", "Lost in the swivel", Quantity::pressure, swivel_loss},
          {"nozzle-loss", "Lost in the nozzle", Quantity::pressure, nozzle_loss},
          {"tight-after", "A vehicle that drives off pulls the hose tight after", Quantity::time, tight_at},
          {"tight-speed", "It then drives at", Quantity::velocity, speed},
          {"base-force", "Pull on the dispenser's foot", Quantity::force, base_force}};
}

}  // namespace forecourse::lesson
