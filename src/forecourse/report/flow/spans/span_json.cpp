#include "forecourse/report/flow/spans/span_json.h"

namespace forecourse::report {
namespace {

const char* word(studies::SpanKind kind) {
  switch (kind) {
    case studies::SpanKind::entered_value:
      return "entered value";
    case studies::SpanKind::temperature:
      return "temperature";
    case studies::SpanKind::level:
      return "level";
    case studies::SpanKind::filter:
      return "filter";
  }
  return "entered value";
}

Json flows(const std::optional<studies::SpanFlows>& f) {
  if (!f) return nullptr;
  return {{"total_flow_m3_per_s", number_or_null(f->total)},
          {"slowest_flow_m3_per_s", number_or_null(f->slowest)},
          {"slowest_hose", f->slowest_hose},
          {"fastest_flow_m3_per_s", number_or_null(f->fastest)},
          {"fastest_hose", f->fastest_hose}};
}

Json span(const studies::FlowSpan& s) {
  return {{"kind", word(s.kind)},
          {"subject", s.subject},
          {"system", s.system},
          {"quantity", s.quantity != nullptr ? Json(s.quantity->noun) : Json(nullptr)},
          {"low_si", number_or_null(s.low)},
          {"likely_si", number_or_null(s.likely)},
          {"high_si", number_or_null(s.high)},
          {"at_low", flows(s.at_low)},
          {"at_likely", flows(s.at_likely)},
          {"at_high", flows(s.at_high)},
          {"note", text_or_null(s.note)},
          {"reason", text_or_null(s.reason)}};
}

Json margin(const studies::VaporMargin& m) {
  return {{"system", m.system},
          {"place", m.place},
          {"temperature_k", number_or_null(m.temperature)},
          {"atmospheric_pressure_absolute_pa", number_or_null(m.atmospheric)},
          {"atmospheric_pressure_from", text_or_null(m.atmospheric_from)},
          {"pressure_absolute_pa", number_or_null(m.pressure_absolute)},
          {"true_vapor_pressure_absolute_pa", number_or_null(m.vapor_pressure)},
          {"vapor_pressure_from", text_or_null(m.vapor_pressure_from)},
          {"margin_pa", number_or_null(m.margin)},
          {"reason", text_or_null(m.reason)}};
}

Json first_flow(const studies::FirstFlow& f) {
  return {{"time_s", number_or_null(f.time)},
          {"time_without_leak_detector_s", number_or_null(f.without_detector)},
          {"volume_m3", number_or_null(f.volume)},
          {"reason", text_or_null(f.reason)}};
}

Json place(const studies::RestPlace& p) {
  return {{"id", p.id},
          {"elevation_m", number_or_null(p.elevation)},
          {"held_pressure_gauge_pa", number_or_null(p.held_gauge)},
          {"decayed_pressure_gauge_pa", number_or_null(p.decayed_gauge)},
          {"below_atmosphere_when_decayed", p.below_atmosphere},
          {"shutoff_pressure_gauge_pa", number_or_null(p.shutoff_gauge)}};
}

Json stretch(const studies::RestStretch& s) {
  return {{"id", s.id},
          {"part", s.part},
          {"volume_m3", number_or_null(s.volume)},
          {"compliance_m3_per_pa", number_or_null(s.compliance)},
          {"reason", text_or_null(s.reason)},
          {"behind_dispenser", s.behind_dispenser}};
}

Json rest_hose(const studies::RestHose& h) {
  return {{"id", h.id},
          {"first_flow_held", first_flow(h.held)},
          {"first_flow_decayed", first_flow(h.decayed)},
          {"first_flow_empty", first_flow(h.empty)}};
}

}  // namespace

Json spans_json(const studies::FlowSpans& spans) {
  Json sets = Json::array();
  for (const studies::SetSpans& set : spans.sets) {
    sets.push_back({{"open_set", set.open_set}, {"flows", array_of(set.flows, span)}});
  }
  return {{"sets", sets},
          {"vapor_margins", array_of(spans.margins, margin)},
          {"without_effect", spans.without_effect},
          {"corners", spans.corners},
          {"monotone", spans.monotone}};
}

Json lines_at_rest_json(const std::vector<studies::LineAtRest>& lines) {
  return array_of(lines, [](const studies::LineAtRest& l) -> Json {
    return {{"id", l.system},
            {"product", l.product},
            {"reason", text_or_null(l.reason)},
            {"held_pressure_gauge_pa", number_or_null(l.held_pressure)},
            {"held_by", text_or_null(l.held_by)},
            {"line_volume_m3", number_or_null(l.line_volume)},
            {"line_compliance_m3_per_pa", number_or_null(l.line_compliance)},
            {"compliance_reason", text_or_null(l.compliance_reason)},
            {"leak_detector_opening_time_s", number_or_null(l.opening_time)},
            {"leak_detector_restricted_m3_per_s", number_or_null(l.restricted)},
            {"leak_detector_note", text_or_null(l.detector_note)},
            {"places", array_of(l.places, place)},
            {"stretches", array_of(l.stretches, stretch)},
            {"hoses", array_of(l.hoses, rest_hose)}};
  });
}

}  // namespace forecourse::report
