#include "forecourse/report/flow/flow_json.h"

#include "forecourse/report/findings.h"
#include "forecourse/report/flow/flow_view.h"
#include "forecourse/report/flow/ladder/ladder_json.h"
#include "forecourse/report/flow/pump_json.h"
#include "forecourse/report/flow/spans/span_json.h"

namespace forecourse::report {
namespace {

const char* word(studies::FlowStatus status) {
  switch (status) {
    case studies::FlowStatus::determined:
      return "determined";
    case studies::FlowStatus::at_rest:
      return "at rest";
    case studies::FlowStatus::no_supply:
      return "no supply";
    case studies::FlowStatus::not_determined:
      return "not determined";
  }
  return "not determined";
}

Json open_set(const studies::OpenSet& set) { return {{"name", set.name}, {"hoses", set.hoses}}; }

Json system_summary(const studies::SystemSummary& s) {
  return {{"id", s.id},
          {"product", s.product},
          {"density_kg_per_m3", number_or_null(s.density)},
          {"dynamic_viscosity_pa_s", number_or_null(s.dynamic_viscosity)},
          {"temperature_k", number_or_null(s.temperature)},
          {"elevations_known", s.elevations_known},
          {"hoses", s.hoses},
          {"pumps", s.pumps}};
}

/// A flow with its range over the uncertain values.
void put(const char* name, const std::optional<studies::SummaryFlow>& flow, Json& out) {
  const std::string key = std::string(name) + "_flow";
  out[key + "_m3_per_s"] = number_or_null(flow_of(flow));
  out[key + "_low_m3_per_s"] = number_or_null(flow ? flow->low : std::nullopt);
  out[key + "_high_m3_per_s"] = number_or_null(flow ? flow->high : std::nullopt);
}

Json hose_summary(const studies::HoseSummary& h) {
  Json out{{"id", h.id}, {"dispenser", h.dispenser}, {"product", h.product}};
  put("alone", h.alone, out);
  put("one_each", h.one_each, out);
  put("all_open", h.all_open, out);
  return out;
}

Json budget_row(const studies::BudgetRow& row) {
  return {{"part", row.part},
          {"owner", row.owner},
          {"flow_m3_per_s", number_or_null(row.flow)},
          {"velocity_m_per_s", row.velocity > 0.0 ? number_or_null(row.velocity) : Json(nullptr)},
          {"pressure_loss_pa", number_or_null(row.loss)}};
}

Json grade_point(const studies::GradePoint& p) {
  return {{"place", p.place},
          {"part", text_or_null(p.part)},
          {"distance_m", number_or_null(p.distance)},
          {"elevation_m", number_or_null(p.elevation)},
          {"height_entered", p.height_entered},
          {"grade_m", number_or_null(p.grade)},
          {"pressure_gauge_pa", number_or_null(p.pressure_gauge)}};
}

Json hose(const studies::HoseFlow& h) {
  return {{"id", h.id},
          {"dispenser", h.dispenser},
          {"open", h.open},
          {"share", number_or_null(h.share)},
          {"flow_m3_per_s", number_or_null(h.flow)},
          {"hose_flow_m3_per_s", number_or_null(h.hose_flow)},
          {"share_reached", number_or_null(h.share_reached)},
          {"ratio_met", h.ratio_met},
          {"hose_flow_low_m3_per_s", number_or_null(h.low)},
          {"hose_flow_high_m3_per_s", number_or_null(h.high)},
          {"pressure_gauge_pa", number_or_null(h.pressure_gauge)},
          {"limit_m3_per_s", number_or_null(h.limit)},
          {"at_limit", h.at_limit},
          {"rule_cap_m3_per_s", number_or_null(h.rule_cap)},
          {"rule_clause", text_or_null(h.rule_clause)},
          {"above_rule_cap", h.above_rule_cap},
          {"below_keep_flow", h.below_keep_flow},
          {"budget", array_of(h.budget, budget_row)},
          {"grade_line", array_of(h.grade_line, grade_point)}};
}

Json place(const studies::PlacePressure& p) {
  return {{"id", p.id},
          {"elevation_m", number_or_null(p.elevation)},
          {"pressure_gauge_pa", number_or_null(p.pressure_gauge)}};
}

Json line(const studies::LineFlow& l) {
  return {{"id", l.id},
          {"flow_m3_per_s", number_or_null(l.flow)},
          {"velocity_m_per_s", number_or_null(l.velocity)},
          {"pressure_loss_pa", number_or_null(l.pressure_loss)}};
}

Json system_flow(const studies::SystemFlow& s) {
  const bool known = s.status != studies::FlowStatus::not_determined;
  return {{"id", s.system},
          {"product", s.product},
          {"status", word(s.status)},
          {"reason", text_or_null(s.reason)},
          {"total_flow_m3_per_s", known ? number_or_null(s.total_flow) : Json(nullptr)},
          {"hoses", array_of(s.hoses, hose)},
          {"pumps", array_of(s.pumps, pump_json)},
          {"control", control_json(s.control)},
          {"places", array_of(s.places, place)},
          {"lines", array_of(s.lines, line)},
          {"solver",
           {{"iterations", s.iterations},
            {"pressure_residual_pa", number_or_null(s.pressure_residual)},
            {"flow_residual_m3_per_s", number_or_null(s.flow_residual)}}}};
}

Json state(const studies::FlowState& s) {
  return {{"open_set", open_set(s.open_set)}, {"systems", array_of(s.systems, system_flow)}};
}

}  // namespace

Json result_json(const studies::FlowResult& result) {
  return {{"systems", array_of(result.systems, system_summary)},
          {"hoses", array_of(result.hoses, hose_summary)},
          {"states", array_of(result.states, state)},
          {"spans", spans_json(result.spans)},
          {"lines_at_rest", lines_at_rest_json(result.lines_at_rest)},
          {"ladders", ladders_json(result.ladders)},
          {"worst_states", worst_states_json(result.worst_states)}};
}

Json options_json(const studies::FlowOptions& options) {
  return {{"open_sets", array_of(options.open_sets, open_set)},
          {"keep_flow_m3_per_s", number_or_null(options.keep_flow)},
          {"order", options.order}};
}

Json flow_document(const studies::FlowResult& result, const std::vector<SourceText>& texts,
                   const std::vector<checks::Finding>& findings) {
  JsonDocument out;
  out.study = "flow";
  out.version = result.version;
  out.cautions = flow_cautions();
  out.options = options_json(result.options);
  out.defaults = result.defaults;
  out.result = result_json(result);
  out.findings = findings_json(findings, texts);
  out.warnings = result.warnings;
  return document(out, texts);
}

}  // namespace forecourse::report
