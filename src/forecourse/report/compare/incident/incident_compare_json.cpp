#include "forecourse/report/compare/incident/incident_compare_report.h"
#include "forecourse/report/compare/incident/incident_compare_view.h"
#include "forecourse/report/incident/incident_json.h"
#include "forecourse/report/incident/incident_report.h"

namespace forecourse::report {
namespace {

using decide::Beside;
using decide::IncidentAmount;
using decide::IncidentComparison;
using decide::IncidentFigure;

const char* unit_key(IncidentAmount amount) {
  switch (amount) {
    case IncidentAmount::volume:
      return "_m3";
    case IncidentAmount::flow:
      return "_m3_per_s";
    case IncidentAmount::time:
      return "_s";
  }
  return "";
}

const char* word(IncidentFigure figure) {
  switch (figure) {
    case IncidentFigure::escaped:
      return "escaped";
    case IncidentFigure::outside:
      return "to environment";
    case IncidentFigure::steady_flow:
      return "steady flow";
    case IncidentFigure::peak_flow:
      return "peak flow";
    case IncidentFigure::isolated_at:
      return "isolated at";
    case IncidentFigure::sensor_at:
      return "sensor at";
    case IncidentFigure::seal_at:
      return "lowest seal at";
    case IncidentFigure::brim_at:
      return "brim at";
  }
  return "";
}

/// Puts A, B and their difference under `name_a_m3`, `name_b_m3`, `name_difference_m3`; without a name under `a_m3`.
void put(Json& out, const std::string& name, IncidentAmount amount, const Beside& value) {
  const std::string before = name.empty() ? "" : name + "_";
  const std::string unit = unit_key(amount);
  out[before + "a" + unit] = number_or_null(value.a);
  out[before + "b" + unit] = number_or_null(value.b);
  out[before + "difference" + unit] = number_or_null(value.difference());
}

Json figure_json(const decide::FigureRow& row) {
  Json out{{"figure", word(row.figure)}};
  put(out, "", amount_of(row.figure), row.value);
  out["differs"] = row.differs;
  return out;
}

Json end_json(const decide::EndRow& row) {
  Json out{{"product", row.product}};
  put(out, "steady", IncidentAmount::flow, row.steady);
  put(out, "gravity", IncidentAmount::flow, row.gravity);
  out["differs"] = row.differs;
  return out;
}

Json holder_json(const decide::HolderRow& row) {
  Json out{{"holder", studies::word(row.holder)}};
  put(out, "", IncidentAmount::volume, row.amount);
  out["differs"] = row.differs;
  return out;
}

Json cause_json(const decide::CauseAmount& row) {
  Json out{
      {"from", studies::word(row.from)}, {"to", studies::word(row.to)}, {"product", row.product}, {"cause", row.cause}};
  put(out, "", IncidentAmount::volume, row.amount);
  out["differs"] = row.differs;
  return out;
}

Json event_json(const decide::EventRow& row) {
  Json out{{"of", row.owner}, {"what", row.words}};
  put(out, "time", IncidentAmount::time, row.time);
  put(out, "escaped", IncidentAmount::volume, row.escaped);
  out["differs"] = row.differs;
  return out;
}

Json case_json(const decide::CaseRow& row) {
  Json out{{"name", row.name}};
  put(out, "escaped", IncidentAmount::volume, row.escaped);
  put(out, "to_environment", IncidentAmount::volume, row.outside);
  out["differs"] = row.differs;
  return out;
}

Json state_json(const std::optional<studies::BarrierState>& state) {
  if (!state) return {};
  return {{"state", studies::word(state->assurance)}, {"reasons", state->reasons}, {"does", state->does}};
}

Json barrier_json(const decide::BarrierBeside& row) {
  return {{"barrier", studies::word(row.barrier)},
          {"of", row.owner},
          {"a", state_json(row.a)},
          {"b", state_json(row.b)},
          {"differs", row.differs}};
}

Json paired_json(const decide::PairedSpread& p) {
  return {{"runs", p.runs},
          {"counted", p.counted},
          {"seed", p.seed},
          {"shares", p.shares},
          {"escaped_difference_m3", p.escaped},
          {"to_environment_difference_m3", p.outside},
          {"mean_difference_m3", p.mean},
          {"deviation_m3", p.deviation},
          {"deviation_drawn_apart_m3", p.deviation_apart},
          {"share_less", p.less},
          {"share_same", p.same},
          {"share_more", p.more},
          {"drawn_alike", p.drawn_in_both},
          {"drawn_in_a_alone", p.only_a},
          {"drawn_in_b_alone", p.only_b}};
}

Json one_json(const studies::IncidentResult& result, const std::string& station, const std::string& label) {
  return {{"station", station},
          {"file", label},
          {"at", result.at},
          {"problem", text_or_null(result.problem)},
          {"first_line", result.first_line},
          {"escaped_m3", spread_json(result.escaped)},
          {"to_environment_m3", spread_json(result.to_environment)},
          {"hash", result.runs.empty() ? Json() : Json(hash_text(result.runs.front().hash))}};
}

Json part_json(const decide::OnePart& part) { return {{"kind", part.kind}, {"id", part.id}}; }

Json changed_json(const site::ValueDifference& v) {
  return {{"key", v.path}, {"a", text_or_null(v.a)}, {"b", text_or_null(v.b)}};
}

/// What was asked of both, as the document of one incident has it.
Json options_json(const IncidentComparison& c) {
  studies::IncidentResult asked;
  asked.options = c.options;
  asked.at = c.options.request.at.text;
  Json out = incident_document(asked)["options"];
  out.erase("set");
  return out;
}

}  // namespace

Json incident_compare_document(const IncidentComparison& c, site::Display display, const CompareFacts& facts) {
  JsonDocument out;
  out.study = "compare-incident";
  out.version = c.b.version;
  out.cautions = incident_cautions();
  out.cautions.insert(out.cautions.begin(), incident_first);
  out.options = options_json(c);
  out.defaults = c.b.defaults;
  out.result = {{"a", one_json(c.a, c.name_a, facts.label_a)},
                {"b", one_json(c.b, c.name_b, facts.label_b)},
                {"words", incident_compare_answer(c, display, Glyphs::ascii)},
                {"same_escape", c.is_determined() ? Json(c.same_escape()) : Json()},
                {"same_in_all", c.is_determined() ? Json(c.same_in_all()) : Json()},
                {"changed_values", array_of(c.changed, changed_json)},
                {"only_in_a", array_of(c.only_a, part_json)},
                {"only_in_b", array_of(c.only_b, part_json)},
                {"figures", array_of(c.figures, figure_json)},
                {"open_ends", array_of(c.ends, end_json)},
                {"cases", array_of(c.cases, case_json)},
                {"barriers", array_of(c.barriers, barrier_json)},
                {"events", array_of(c.events, event_json)},
                {"holders", array_of(c.holders, holder_json)},
                {"causes", array_of(c.causes, cause_json)},
                {"paired", c.paired ? paired_json(*c.paired) : Json()}};
  out.warnings = c.a.warnings;
  out.warnings.insert(out.warnings.end(), c.b.warnings.begin(), c.b.warnings.end());
  return document(out, facts.texts);
}

}  // namespace forecourse::report
