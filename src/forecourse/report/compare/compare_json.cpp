#include "forecourse/report/compare/compare_json.h"

#include "forecourse/report/findings.h"
#include "forecourse/report/flow/ladder/ladder_json.h"

namespace forecourse::report {
namespace {

using decide::Topic;

const char* word(Topic topic) {
  switch (topic) {
    case Topic::hose_flow:
      return "hose flow";
    case Topic::slowest_flow:
      return "slowest flow";
    case Topic::total_flow:
      return "total flow";
    case Topic::spread:
      return "spread";
    case Topic::inlet_pressure:
      return "inlet pressure";
    case Topic::slowest_pressure:
      return "pressure of the slowest hose";
    case Topic::pump_rise:
      return "pump rise";
    case Topic::pump_discharge:
      return "pump discharge";
    case Topic::line_velocity:
      return "line velocity";
    case Topic::line_loss:
      return "line loss";
    case Topic::line_length:
      return "line length";
    case Topic::pipe_of_bore:
      return "pipe of one bore";
    case Topic::pipe_total:
      return "pipe in total";
    case Topic::joints_at:
      return "joints at a place";
    case Topic::joints_total:
      return "joints in total";
  }
  return "";
}

const char* unit_key(decide::Amount amount) {
  switch (amount) {
    case decide::Amount::flow:
      return "_m3_per_s";
    case decide::Amount::pressure_difference:
      return "_pa";
    case decide::Amount::gauge_pressure:
      return "_gauge_pa";
    case decide::Amount::velocity:
      return "_m_per_s";
    case decide::Amount::length:
      return "_m";
    case decide::Amount::count:
      return "_count";
  }
  return "";
}

const char* word(decide::Verdict verdict) {
  switch (verdict) {
    case decide::Verdict::gains:
      return "gains";
    case decide::Verdict::same:
      return "same";
    case decide::Verdict::loses:
      return "loses";
    case decide::Verdict::not_determined:
      return "not determined";
  }
  return "not determined";
}

Json row(const decide::DifferenceRow& r) {
  const std::string unit = unit_key(amount_of(r.topic));
  Json out{{"topic", word(r.topic)},
           {"open", text_or_null(r.state)},
           {"system", text_or_null(r.system)},
           {"of", text_or_null(r.subject)}};
  if (r.bore) out["bore_m"] = *r.bore;
  if (!r.detail_a.empty() || !r.detail_b.empty()) {
    out["hoses_a"] = text_or_null(r.detail_a);
    out["hoses_b"] = text_or_null(r.detail_b);
  }
  out["a" + unit] = number_or_null(r.a);
  out["b" + unit] = number_or_null(r.b);
  out["difference" + unit] = number_or_null(r.difference());
  out["share"] = number_or_null(r.share());
  out["differs"] = r.differs;
  return out;
}

Json step(const decide::WorthStep& s) {
  return {{"open", s.open},
          {"slowest_a_m3_per_s", number_or_null(s.slowest_a)},
          {"slowest_b_m3_per_s", number_or_null(s.slowest_b)},
          {"hose_a", text_or_null(s.hose_a)},
          {"hose_b", text_or_null(s.hose_b)},
          {"gain", number_or_null(s.gain)},
          {"verdict", word(s.verdict)},
          {"same_flow", s.nothing},
          {"limiters_hold_every_open_hose", s.held},
          {"proof_a", proof_key(s.proof_a)},
          {"proof_b", proof_key(s.proof_b)}};
}

Json worth(const decide::Worth& w, site::Display display) {
  return {{"system", w.system},
          {"least_gain", w.least_gain},
          {"worth_it_from", count_or_null(w.from)},
          {"worse_from", count_or_null(w.loses_from)},
          {"keeps_a", count_or_null(w.keeps_a)},
          {"keeps_b", count_or_null(w.keeps_b)},
          {"nothing_below", w.nothing_below},
          {"limiters_hold_below", w.held_below},
          {"words", worth_in_words(w, display, Glyphs::ascii)},
          {"steps", array_of(w.steps, step)}};
}

Json alternative(const decide::Alternative& one, const std::string& label, const std::vector<SourceText>& texts) {
  return {{"station", one.name},
          {"file", label},
          {"hoses_told", one.hoses},
          {"hoses_that_keep", one.flow.options.keep_flow ? Json(one.keeping) : Json(nullptr)},
          {"findings", findings_json(one.findings, texts)}};
}

Json unchanged(const decide::Unchanged& u) {
  return {
      {"topic", word(u.topic)}, {"open", text_or_null(u.state)}, {"system", text_or_null(u.system)}, {"rows", u.rows}};
}

Json part(const decide::OnePart& p) { return {{"kind", p.kind}, {"id", p.id}}; }

Json dead_head(const decide::DeadHead& d) { return {{"open", d.state}, {"pump", d.pump}, {"a", d.a}, {"b", d.b}}; }

Json finding_change(const decide::FindingChange& c) {
  const checks::Finding& one = c.a ? *c.a : *c.b;
  return {{"rule", one.rule},
          {"subject", one.subject},
          {"a", c.a ? Json(checks::word(c.a->state)) : Json(nullptr)},
          {"b", c.b ? Json(checks::word(c.b->state)) : Json(nullptr)}};
}

Json changed(const site::ValueDifference& v) {
  return {{"key", v.path}, {"a", text_or_null(v.a)}, {"b", text_or_null(v.b)}};
}

Json fed_once(const decide::FedOnce& f) {
  return {{"system", f.system}, {"fed_in", f.in_a ? "a" : "b"}, {"reason", f.reason}};
}

Json result(const decide::Comparison& c, site::Display display, const CompareFacts& facts) {
  return {{"a", alternative(c.a, facts.label_a, facts.texts)},
          {"b", alternative(c.b, facts.label_b, facts.texts)},
          {"changed_values", array_of(c.changed, changed)},
          {"only_in_a", array_of(c.only_a, part)},
          {"only_in_b", array_of(c.only_b, part)},
          {"worth", array_of(c.worth, [&](const decide::Worth& w) { return worth(w, display); })},
          {"no_answer", array_of(c.fed_once, fed_once)},
          {"rows", array_of(c.rows, row)},
          {"does_not_change", array_of(c.unchanged, unchanged)},
          {"dead_headed", array_of(c.dead_heads, dead_head)},
          {"changed_findings", array_of(c.findings, finding_change)},
          {"findings_alike", c.findings_alike}};
}

Json open_set(const studies::OpenSet& set) { return {{"name", set.name}, {"hoses", set.hoses}}; }

}  // namespace

Json compare_document(const decide::Comparison& comparison, site::Display display, const CompareFacts& facts) {
  JsonDocument out;
  out.study = "compare";
  out.version = comparison.b.flow.version;
  out.cautions = compare_cautions();
  out.options = {{"open_sets_a", array_of(comparison.a.flow.options.open_sets, open_set)},
                 {"open_sets_b", array_of(comparison.b.flow.options.open_sets, open_set)},
                 {"keep_flow_m3_per_s", number_or_null(comparison.options.flow.keep_flow)},
                 {"least_gain", comparison.options.least_gain}};
  out.defaults = comparison.b.flow.defaults;
  out.result = result(comparison, display, facts);
  out.findings = findings_json(comparison.b.findings, facts.texts);
  out.warnings = comparison.a.flow.warnings;
  out.warnings.insert(out.warnings.end(), comparison.b.flow.warnings.begin(), comparison.b.flow.warnings.end());
  return document(out, facts.texts);
}

}  // namespace forecourse::report
