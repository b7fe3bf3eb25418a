#include "forecourse/report/flow/flow_html_tables.h"

#include <cmath>
#include <optional>

#include "forecourse/report/flow/pump_html.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/svg/hose_flows.h"

namespace forecourse::report {
namespace {

using html::Column;
using studies::SystemFlow;

/// A column of a measure, with its unit in the head.
Column column(const char* head, Measure measure, site::Display display) {
  return {head, unit_label(measure, display), true};
}

Column gauge_column(const char* head, site::Display display) {
  return {head, unit_label(Measure::pressure, display) + " gauge", true};
}

std::string counted(int count, const std::string& noun) {
  return std::to_string(count) + " " + noun + (count == 1 ? "" : "s");
}

std::string hoses(const SystemFlow& system, site::Display display) {
  html::Table table{"Hoses",
                    "",
                    {{"Hose", ""},
                     {"Dispenser", ""},
                     column("Delivers", Measure::flow, display),
                     gauge_column("Pressure where it begins", display),
                     {"Note", "", false, true}},
                    {},
                    {}};
  for (const studies::HoseFlow& h : system.hoses) {
    const std::string share =
        h.share < 1.0 - 1e-9 ? "gives " + number(100.0 * h.share, 0) + "\u00A0% of it; " : std::string();
    table.rows.push_back({{h.id, h.dispenser, number(Measure::flow, display, h.hose_flow),
                           number(Measure::pressure, display, h.pressure_gauge), share + hose_note(h)},
                          h.above_rule_cap || h.below_keep_flow});
  }
  return table.rows.empty() ? std::string() : html::table(table);
}

std::string pumps(const SystemFlow& system, site::Display display) {
  html::Table table{"Pumps",
                    "",
                    {{"Pump", ""},
                     {"Tank", ""},
                     column("Flow", Measure::flow, display),
                     column("Adds", Measure::pressure, display),
                     gauge_column("At the discharge", display),
                     gauge_column("At the leak detector", display),
                     {"Note", "", false, true}},
                    {},
                    {}};
  for (const studies::PumpDuty& p : system.pumps) {
    const std::string detector = p.leak_detector_pressure_gauge
                                     ? number(Measure::pressure, display, *p.leak_detector_pressure_gauge)
                                     : std::string("none");
    table.rows.push_back(
        {{p.id, p.tank, number(Measure::flow, display, p.flow), number(Measure::pressure, display, p.pressure_rise),
          number(Measure::pressure, display, p.discharge_pressure_gauge), detector, pump_note(p)},
         p.dead_headed || p.runs_back});
  }
  return table.rows.empty() ? std::string() : html::table(table);
}

std::string lines(const SystemFlow& system, site::Display display) {
  html::Table table{"Lines",
                    "",
                    {{"Line", ""},
                     column("Flow", Measure::flow, display),
                     column("Velocity", Measure::velocity, display),
                     column("Takes", Measure::pressure, display)},
                    {},
                    {}};
  for (const studies::LineFlow& l : system.lines) {
    table.rows.push_back({{l.id, number(Measure::flow, display, l.flow), number(Measure::velocity, display, l.velocity),
                           number(Measure::pressure, display, l.pressure_loss)}});
  }
  return table.rows.empty() ? std::string() : html::table(table);
}

std::string places(const SystemFlow& system, site::Display display) {
  html::Table table{"Places",
                    "",
                    {{"Place", ""}, column("Height", Measure::length, display), gauge_column("Pressure", display)},
                    {},
                    {}};
  for (const studies::PlacePressure& p : system.places) {
    table.rows.push_back(
        {{p.id, number(Measure::length, display, p.elevation), number(Measure::pressure, display, p.pressure_gauge)}});
  }
  return table.rows.empty() ? std::string() : html::table(table);
}

}  // namespace

std::string fluid_in_words(const studies::SystemSummary& system, site::Display display) {
  std::string out = system.id == system.product ? "" : "Piping of " + system.product + ". ";
  const auto add = [&](Measure measure, double si, const char* before) {
    if (std::isfinite(si)) out += before + with_unit(measure, display, si);
  };
  add(Measure::density, system.density, "Density ");
  add(Measure::viscosity, system.dynamic_viscosity, std::isfinite(system.density) ? ", viscosity " : "Viscosity ");
  if (std::isfinite(system.density)) add(Measure::temperature, system.temperature, " at ");
  if (std::isfinite(system.density) || std::isfinite(system.dynamic_viscosity)) out += ". ";
  return out + counted(system.hoses, "hose") + ", " + counted(system.pumps, "pump") + ".";
}

std::string hose_table(const HoseGroup& group, site::Display display) {
  html::Table table{"Flow at each hose",
                    "A dash: not in that set of open hoses, or not determined.",
                    {{"Hose", ""},
                     {"Dispenser", ""},
                     column("Alone", Measure::flow, display),
                     column("One each", Measure::flow, display),
                     column("All open", Measure::flow, display),
                     {"Note", "", false, true}},
                    {},
                    {}};
  for (const HoseRow& row : group.rows) {
    const studies::HoseSummary& h = *row.hose;
    const std::string mix = group.system == nullptr ? h.product + (row.note.empty() ? "" : "; ") : std::string();
    table.rows.push_back({{h.id, h.dispenser, flow_text(h.alone, display), flow_text(h.one_each, display),
                           flow_text(h.all_open, display), mix + row.note},
                          row.marked});
  }
  if (table.rows.empty()) return html::paragraph("No hose draws on this piping alone.");
  return html::table(table);
}

std::string hose_figure(const studies::FlowResult& result, const HoseGroup& group, site::Display display,
                        const std::string& id) {
  const auto in_unit = [&](const std::optional<double>& si) {
    return si ? std::optional<double>(shown_value(Measure::flow, display, *si)) : std::nullopt;
  };
  const std::string unit = unit_label(Measure::flow, display);
  svg::HoseFlowChart chart{
      id, svg::wide, "What a hose gives", "", "flow at the hose, " + unit, decimals(Measure::flow, display), {}, {}};
  chart.description =
      "Flow of each hose alone, with one hose at each dispenser, and with all hoses open; the table "
      "below holds the numbers.";
  for (const HoseRow& row : group.rows) {
    chart.hoses.push_back({row.hose->id, in_unit(flow_of(row.hose->alone)), in_unit(flow_of(row.hose->one_each)),
                           in_unit(flow_of(row.hose->all_open))});
  }
  const auto add_limit = [&](const char* name, const std::optional<double>& si) {
    if (si) chart.limits.push_back({*in_unit(si), name + number(Measure::flow, display, *si)});
  };
  add_limit("cap ", group_cap(result, group));
  add_limit("to keep ", result.options.keep_flow);
  return html::chart_figure(chart,
                            "alone, with one hose of its product open at each dispenser, and with every hose open");
}

std::string state_readings(const SystemFlow& system, site::Display display) {
  const studies::HoseFlow* least = slowest(system);
  if (least == nullptr) return html::paragraph("None of its hoses is open.");
  const studies::HoseFlow* most = fastest(system);
  const auto reading = [&](const std::string& name, double si) {
    return html::Reading{name, number(Measure::flow, display, si), unit_label(Measure::flow, display), ""};
  };
  std::vector<html::Reading> readings;
  if (least == most) {
    readings.push_back(reading("Every open hose", least->hose_flow));
  } else {
    readings.push_back(reading("Slowest open hose, " + with_alike(system, *least), least->hose_flow));
    readings.push_back(reading("Fastest, " + with_alike(system, *most), most->hose_flow));
  }
  readings.push_back(reading("In total", system.total_flow));
  for (const studies::PumpDuty& pump : system.pumps) {
    if (!pump.running) continue;
    readings.push_back({"Pump " + pump.id + " adds", number(Measure::pressure, display, pump.pressure_rise),
                        unit_label(Measure::pressure, display), pump.dead_headed ? "dead-headed" : ""});
  }
  return html::readings(readings);
}

std::string state_tables(const SystemFlow& system, site::Display display) {
  return hoses(system, display) + pumps(system, display) + pump_details(system, display) +
         html::pair(lines(system, display), places(system, display));
}

}  // namespace forecourse::report
