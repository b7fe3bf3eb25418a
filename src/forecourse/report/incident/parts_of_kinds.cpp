#include <cmath>

#include "forecourse/base/api_units.h"
#include "forecourse/report/incident/incident_parts.h"

namespace forecourse::report {

using studies::Spread;

std::string PartWriter::times(const std::optional<Spread>& s) const {
  if (!s) return none();
  if (s->is_certain()) return time(s->likely);
  return time(s->low) + " to " + time(s->high);
}

IncidentPart PartWriter::open_ends() const {
  IncidentPart part{"The open end", {}, {}, {}};
  for (const studies::OpenEnd& end : r_.open_ends) {
    if (!(end.steady_flow > 0.0)) continue;
    const char* steady = end.pump_runs ? " once steady, " : " once steady if the pump ran, ";
    const bool below = end.height_above_liquid < 0.0;
    std::string line = end.product + ": " + shown(end.steady_flow, "m3/s", display_, glyphs_) + steady +
                       full(Measure::length, std::abs(end.height_above_liquid)) + (below ? " below" : " above") +
                       " the liquid in the tank";
    if (end.in_45_seconds) line += "; " + full(Measure::volume, *end.in_45_seconds) + " in 45 s";
    part.items.push_back(line + ".");
    if (end.steady_figure) {
      part.items.push_back(end.product + ", the steady-flow figure (steady flow times the valve's equivalent time): " +
                           full(Measure::volume, *end.steady_figure) + ".");
    }
    if (end.gravity_flow) {
      part.items.push_back(end.product + ": " + shown(*end.gravity_flow, "m3/s", display_, glyphs_) +
                           " by gravity with the pump off, as long as the tank stands as high as now.");
    }
    if (end.stock) {
      part.items.push_back(end.product + ": " + full(Measure::volume, *end.stock) +
                           " in the tank above the pump's inlet; no more can escape.");
    }
    part.items.push_back(end.product + ": " + full(Measure::pressure, end.shutoff_at_opening) +
                         " gauge at the opening with nothing flowing; its pumps give " +
                         shown(end.pump_flow, "m3/s", display_, glyphs_) +
                         (end.pump_runs ? " once the flow is steady." : " once the flow is steady, if they ran."));
    if (!end.line_compliance) {
      part.items.push_back(end.product + ": the line is counted as rigid, since its spring is not determined (" +
                           end.compliance_reason + ").");
    }
    for (const studies::HoseElsewhere& hose : end.elsewhere) {
      part.items.push_back("Hose " + hose.id + ", open elsewhere: " + full(Measure::flow, hose.before) + " before, " +
                           full(Measure::flow, hose.during) + " while fuel escapes.");
    }
  }
  if (const auto& p = r_.pack_and_column) {
    part.items.push_back("Until the valve is shut, or in 10 s: " + full(Measure::volume, p->steady) +
                         " with a rigid line and no inertia, " + full(Measure::volume, p->with_pack) +
                         " with the line's spring, " + full(Measure::volume, p->with_column) +
                         " with the columns to accelerate, " + full(Measure::volume, p->with_both) +
                         " with both, as counted.");
  }
  return part;
}

IncidentPart PartWriter::crack() const {
  IncidentPart part{"The crack", {}, {}, {}};
  if (!r_.crack) return part;
  const studies::CrackTold& c = *r_.crack;
  WordTable table{{"At", head("Pressure", Measure::pressure), "Leak"}, {false, true, true}, {}};
  const auto row = [&](const char* what, double pressure, const Spread& leak) {
    table.rows.push_back({what, num(Measure::pressure, pressure), full(Measure::leak, leak)});
  };
  row("running pressure", c.running_pressure, c.at_running);
  row("holding pressure", c.holding_pressure, c.at_holding);
  row("10 psi", pascal_from_psi(10.0), c.at_10_psi);
  if (c.detects_at) row("the leak detector's own pressure", *c.detects_at, c.at_detector);
  row("test pressure, 1.5 times running", 1.5 * c.running_pressure, c.at_test);
  part.tables.emplace_back("Leak against pressure", std::move(table));
  part.sentences.push_back(
      "Exponent " + number(c.exponent.low, 2, glyphs_) +
      (c.exponent.is_certain() ? std::string()
                               : " (a hole) to " + number(c.exponent.high, 2, glyphs_) + " (a fine slit)") +
      "; as a round hole " + full(Measure::bore, c.hole_diameter) + " across at the running pressure.");
  if (!c.exponent_known) {
    part.sentences.emplace_back(
        "One reading tells no exponent: ranges run from that of a hole to that of a fine slit. A second reading at "
        "another pressure, or an exponent, narrows them.");
  }
  part.sentences.push_back("On average " + full(Measure::leak, c.mean) + ", the pump running " +
                           number(100.0 * c.running_share, 0, glyphs_) + " % of the time.");
  const char* seen = !c.bound_to_be_seen   ? "Not determined whether the leak detector is bound to see it"
                     : *c.bound_to_be_seen ? "The leak detector is bound to see it"
                                           : "The leak detector is not bound to see it";
  part.sentences.push_back(std::string(seen) + ": " + c.seen_reason + ".");
  if (c.detects && c.detects_at) {
    part.sentences.push_back("It is to detect " + full(Measure::leak, *c.detects) + " at " +
                             full(Measure::pressure, *c.detects_at) + ".");
  }
  if (c.to_brim) {
    part.sentences.push_back("At that mean the sump's sensor is wet after " + times(c.to_sensor) +
                             ", the lowest seal is reached after " + times(c.to_seal) + ", the brim after " +
                             times(c.to_brim) + ".");
  }
  return part;
}

IncidentPart PartWriter::drive_off() const {
  IncidentPart part{"The pull", {}, {}, {}};
  if (!r_.drive_off) return part;
  const studies::DriveOffTold& d = *r_.drive_off;
  part.sentences.push_back("The hose is tight after " + time(d.tight_at) + ", the vehicle then at " +
                           full(Measure::velocity, d.speed_then) + ".");
  part.sentences.push_back(
      "The pull comes " + shown(d.angle, "rad", display_, glyphs_) + " off the breakaway's axis" +
      (d.has_whip ? ", as far as the whip hose does not turn it." : ": no whip hose lets it turn."));
  if (d.may_never_release) part.sentences.emplace_back("It may never release.");
  part.sentences.push_back(d.outcome + ".");
  WordTable table{{"Limit", "Pull at which it is reached"}, {false, false}, {}};
  for (const studies::PullLimit& limit : d.limits) {
    table.rows.push_back({limit.what, limit.pull ? full(Measure::force, *limit.pull) : "not entered"});
  }
  part.tables.emplace_back("What gives way, in the order reached; what is not entered could come first",
                           std::move(table));
  if (d.base_force && d.base_moment) {
    part.sentences.push_back("At the first known limit the foot bears " + full(Measure::force, *d.base_force) +
                             " and " + full(Measure::moment, *d.base_moment) + ".");
  }
  return part;
}

IncidentPart PartWriter::fire() const {
  IncidentPart part{"The fire, in orders of magnitude", {}, {}, {}};
  if (!r_.fire) return part;
  const studies::FireTold& f = *r_.fire;
  if (!f.fuel.empty() && f.pool_diameter > 0.0) {
    part.sentences.push_back("A pool " + full(Measure::length, f.pool_diameter) + " across of " + f.fuel +
                             " releases " + full(Measure::heat, f.heat_release) + ", with flames " +
                             full(Measure::length, f.flame_height) + " high.");
    WordTable table{
        {head("From its edge", Measure::length), head("Low", Measure::heat_flux), head("High", Measure::heat_flux)},
        {true, true, true},
        {}};
    for (std::size_t i = 0; i < f.distances.size(); ++i) {
      table.rows.push_back({num(Measure::length, f.distances[i]), num(Measure::heat_flux, f.radiation[i].low),
                            num(Measure::heat_flux, f.radiation[i].high)});
    }
    part.tables.emplace_back("Heat radiated to the side; no distance is to be taken from it", std::move(table));
  }
  if (f.link_parts_at) {
    part.sentences.push_back("In gas of " + full(Measure::temperature, f.gas_temperature.value_or(NAN)) + " at " +
                             full(Measure::velocity, f.gas_speed.value_or(NAN)) + " the fusible link parts " +
                             time(*f.link_parts_at) + " after ignition.");
  } else if (f.link_never_parts) {
    part.sentences.push_back("The fusible link never parts in gas of " +
                             full(Measure::temperature, f.gas_temperature.value_or(NAN)) + " at " +
                             full(Measure::velocity, f.gas_speed.value_or(NAN)) + ": it is not hot enough.");
  } else if (!f.link_reason.empty()) {
    part.sentences.push_back("When the fusible link parts is not determined: " + f.link_reason + ".");
  }
  if (f.fed_with_link)
    part.sentences.push_back("Fuel fed to the fire where the link acts: " + full(Measure::volume, *f.fed_with_link) +
                             ".");
  if (f.fed_without_link) {
    part.sentences.push_back("Where it does not, until the pumps are stopped or counting ends: " +
                             full(Measure::volume, *f.fed_without_link) + ".");
  }
  part.sentences.emplace_back(
      "Left out: wind, the lack of air in a pit, what the cabinet shields, heat radiated to the link.");
  return part;
}

IncidentPart PartWriter::overfill() const {
  IncidentPart part{"The drop", {}, {}, {}};
  if (!r_.overfill) return part;
  const studies::OverfillTold& o = *r_.overfill;
  part.sentences.push_back("The drop begins at " + full(Measure::flow, o.truck_flow) + ".");
  const auto moment = [&](const char* what, const std::optional<double>& at) {
    if (at) part.items.push_back(std::string(what) + " after " + time(*at) + ".");
  };
  moment("The alarm sounds", o.alarm_at);
  moment("The overfill valve restricts", o.restricts_at);
  moment("The overfill valve is shut", o.closes_at);
  moment("The tank is full", o.full_at);
  if (o.spilled > 0.0) {
    part.sentences.push_back(full(Measure::volume, o.spilled) + " comes out, " + full(Measure::volume, o.in_container) +
                             " of it into the spill container.");
  }
  for (const std::string& note : o.notes) part.items.push_back(note + ".");
  return part;
}

IncidentPart PartWriter::spread() const {
  IncidentPart part{"How sure it is", {}, {}, {}};
  if (!r_.spread) return part;
  const studies::IncidentSpread& s = *r_.spread;
  part.sentences.push_back(std::to_string(s.runs) + " runs with drawn inputs, seed " + std::to_string(s.seed) +
                           ": mean " + full(Measure::volume, s.mean) + ".");
  if (s.failed > 0)
    part.sentences.push_back(std::to_string(s.failed) + " runs did not finish and are not among the figures.");
  WordTable table{{"Share of runs below", head("Escaped", Measure::volume), head("Outside", Measure::volume)},
                  {true, true, true},
                  {}};
  for (std::size_t i = 0; i < s.shares.size(); ++i) {
    table.rows.push_back({number(100.0 * s.shares[i], 0, glyphs_) + " %", num(Measure::volume, s.quantiles[i]),
                          num(Measure::volume, s.environment_quantiles[i])});
  }
  part.tables.emplace_back("What escapes, over all runs", std::move(table));
  WordTable weights{{"Rank correlation", "Input", "Standing"}, {true, false, false}, {}};
  for (const studies::InputWeight& w : s.weights) {
    weights.rows.push_back(
        {number(w.rank_correlation, 2, glyphs_), w.what, w.illustrative ? "illustrative" : "the user's figure"});
  }
  for (const std::string& drawn : s.drawn) part.items.push_back("Drawn: " + drawn + ".");
  if (!weights.rows.empty()) part.tables.emplace_back("Which input moves it most", std::move(weights));
  return part;
}

}  // namespace forecourse::report
