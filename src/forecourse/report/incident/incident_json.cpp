#include "forecourse/report/incident/incident_json.h"

#include "forecourse/report/incident/incident_report.h"
#include "forecourse/report/incident/incident_scene.h"
#include "forecourse/report/incident/incident_view.h"

namespace forecourse::report {
namespace {

using namespace studies;

template <class Items, class ToJson>
Json list(const Items& items, ToJson to_json) {
  Json out = Json::array();
  for (const auto& item : items) out.push_back(to_json(item));
  return out;
}

Json words_of(const std::vector<Barrier>& barriers) {
  return list(barriers, [](Barrier b) { return Json(word(b)); });
}

Json barrier_json(const BarrierState& b) {
  return {{"barrier", word(b.barrier)},
          {"of", b.owner},
          {"state", word(b.assurance)},
          {"reasons", b.reasons},
          {"does", b.does}};
}

Json row_json(const TimelineRow& row, const IncidentRun& run) {
  Json out = {{"time_s", row.time},        {"of", row.owner},
              {"what", row.words},         {"escaped_m3", row.escaped},
              {"flow_m3_per_s", row.flow}, {"pressure_gauge_pa", number_or_null(row.pressure)}};
  Json held = Json::object();
  for (std::size_t h = 0; h < row.held.size(); ++h) held[std::string(word(run.holders[h])) + "_m3"] = row.held[h];
  out["held"] = held;
  return out;
}

Json ledger_json(const LedgerLine& line) {
  return {{"from", word(line.from)},
          {"to", word(line.to)},
          {"product", line.product},
          {"cause", line.cause},
          {"amount_m3", line.amount}};
}

Json numbers(const std::vector<std::optional<double>>& values) {
  return list(values, [](const std::optional<double>& value) { return number_or_null(value); });
}

/// A course; null where it, or a point of it, is not determined.
Json course_or_null(const std::vector<double>& course) {
  return course.empty() ? Json() : list(course, [](double value) { return number_or_null(value); });
}

Json chart_json(const IncidentRun& run, const IncidentResult& result) {
  const IncidentChart& c = run.chart;
  Json out = {{"time_s", c.time},
              {"escaping_m3_per_s", c.escaping},
              {"pumped_m3_per_s", c.pumped},
              {"elsewhere_m3_per_s", c.elsewhere},
              {"pressure_gauge_pa", course_or_null(c.pressure)},
              {"link_temperature_k", course_or_null(c.link_temperature)}};
  for (std::size_t h = 0; h < c.held.size(); ++h) out[std::string(word(run.holders[h])) + "_m3"] = c.held[h];
  const SceneCourses scene = scene_courses(result, run);
  out["sump_share"] = numbers(scene.sump_share);
  out["pool_radius_m"] = numbers(scene.pool_radius);
  out["jet_low_m"] = numbers(scene.jet_low);
  out["jet_high_m"] = numbers(scene.jet_high);
  return out;
}

Json between_json(const CourseBetween& b) {
  if (b.mean.empty()) return {};
  return {{"mean", course_or_null(b.mean)}, {"low", course_or_null(b.low)}, {"high", course_or_null(b.high)}};
}

/// Means, least and greatest since the point before; null where the points tell the courses.
Json between_json(const std::optional<ChartBetween>& between) {
  if (!between) return {};
  return {{"escaping_m3_per_s", between_json(between->escaping)},
          {"pumped_m3_per_s", between_json(between->pumped)},
          {"elsewhere_m3_per_s", between_json(between->elsewhere)},
          {"pressure_gauge_pa", between_json(between->pressure)}};
}

const char* status_word(RunStatus status) {
  switch (status) {
    case RunStatus::finished:
      return "finished";
    case RunStatus::cut_short:
      return "cut short";
    case RunStatus::failed:
      break;
  }
  return "failed";
}

Json run_json(const IncidentRun& run, const IncidentResult& result) {
  Json amounts = Json::array();
  for (const HolderAmount& a : run.amounts)
    amounts.push_back({{"holder", word(a.holder)}, {"start_m3", a.start}, {"end_m3", a.end}});
  return {{"name", run.name},
          {"missing", words_of(run.missing)},
          {"status", status_word(run.status)},
          {"reason", run.reason},
          {"counted_s", run.counted},
          {"escaped_m3", run.escaped},
          {"to_environment_m3", run.to_environment},
          {"peak_flow_m3_per_s", run.peak_flow},
          {"steady_flow_m3_per_s", run.steady_flow},
          {"isolated_at_s", number_or_null(run.isolated_at)},
          {"sensor_at_s", number_or_null(run.sensor_at)},
          {"lowest_seal_at_s", number_or_null(run.seal_at)},
          {"brim_at_s", number_or_null(run.brim_at)},
          {"dispenser_over_at_s", number_or_null(over_at(result, run))},
          {"reportable", run.reportable},
          {"amounts", amounts},
          {"ledger", list(run.ledger, ledger_json)},
          {"events", list(run.timeline, [&](const TimelineRow& row) { return row_json(row, run); })},
          {"chart", chart_json(run, result)},
          {"chart_between", between_json(run.chart.between)},
          {"balance", run.balance},
          {"hash", hash_text(run.hash)}};
}

Json open_end_json(const OpenEnd& e) {
  return {{"product", e.product},
          {"system", e.system},
          {"height_above_liquid_m", e.height_above_liquid},
          {"shutoff_at_opening_gauge_pa", e.shutoff_at_opening},
          {"steady_flow_m3_per_s", e.steady_flow},
          {"pump_runs", e.pump_runs},
          {"gravity_flow_m3_per_s", number_or_null(e.gravity_flow)},
          {"stock_m3", number_or_null(e.stock)},
          {"above_opening_m3", number_or_null(e.above_opening)},
          {"pump_flow_m3_per_s", e.pump_flow},
          {"steady_flow_figure_m3", number_or_null(e.steady_figure)},
          {"in_45_s_m3", number_or_null(e.in_45_seconds)},
          {"line_compliance_m3_per_pa", number_or_null(e.line_compliance)},
          {"trunk_inertance_pa_s2_per_m3", e.trunk_inertance},
          {"riser_inertance_pa_s2_per_m3", e.riser_inertance},
          {"elsewhere", list(e.elsewhere, [](const HoseElsewhere& h) {
             return Json{{"hose", h.id}, {"before_m3_per_s", h.before}, {"during_m3_per_s", h.during}};
           })}};
}

Json cause_effect_json(const CauseEffect& c) {
  return {{"columns", c.columns}, {"rows", list(c.rows, [](const CauseRow& row) {
                                     return Json{{"signal", row.cause},
                                                 {"effects", row.effects},
                                                 {"tested", row.tested},
                                                 {"fail_safe", row.fail_safe ? Json(*row.fail_safe) : Json()},
                                                 {"acts_in_s", number_or_null(row.acts_in)}};
                                   })}};
}

Json input_json(const InputUsed& input) {
  return {{"what", input.what},
          {"value", spread_json(input.value)},
          {"unit", input.unit},
          {"standing", input.entered ? "the user's figure" : word(input.status)},
          {"source", input.source}};
}

std::string iso(const site::Date& day) {
  const auto two = [](int part) { return (part < 10 ? "0" : "") + std::to_string(part); };
  return std::to_string(day.year) + "-" + two(day.month) + "-" + two(day.day);
}

template <class Q>
Json entered_json(const site::Maybe<Q>& value) {
  return value ? spread_json({value->low.si(), value->likely.si(), value->high.si()}) : Json();
}

Json options_json(const IncidentResult& r, const std::vector<std::string>& sets) {
  const IncidentOptions& o = r.options;
  return {{"kind", word(o.kind)},
          {"id", o.request.id.text},
          {"at", r.at},
          {"open", list(o.request.open, [](const site::Name& n) { return Json(n.text); })},
          {"stop_at_s", entered_json(o.request.stop_at)},
          {"counts_until_s", entered_json(o.request.counts_until)},
          {"open_area_m2", entered_json(o.request.open_area)},
          {"without", words_of(o.without)},
          {"dead", list(o.dead,
                        [](const DeadBarrier& d) {
                          return Json{{"barrier", word(d.barrier)}, {"for_s", number_or_null(d.dead_for)}};
                        })},
          {"runs", o.runs},
          {"seed", o.seed},
          {"on", o.today ? Json(iso(*o.today)) : Json()},
          {"set", sets}};
}

}  // namespace

Json spread_json(const Spread& s) { return {{"low", s.low}, {"likely", s.likely}, {"high", s.high}}; }

std::string hash_text(std::uint64_t hash) {
  constexpr const char* digits = "0123456789abcdef";
  std::string out(16, '0');
  for (std::size_t i = 0; i < 16; ++i) out[15 - i] = digits[(hash >> (4 * i)) & 15U];
  return out;
}

Json incident_document(const IncidentResult& r, const IncidentFacts& facts) {
  JsonDocument out;
  out.study = "incident";
  out.version = r.version;
  out.cautions = incident_cautions();
  out.cautions.insert(out.cautions.begin(), incident_first);
  out.options = options_json(r, facts.sets);
  out.defaults = r.defaults;
  out.warnings = r.warnings;
  out.result = {
      {"at", r.at},
      {"dispenser", r.dispenser.empty() ? Json() : Json(r.dispenser)},
      {"sump_brim_m3", number_or_null(r.sump_brim)},
      {"problem", r.problem.empty() ? Json() : Json(r.problem)},
      {"first_line", r.first_line},
      {"escaped_m3", spread_json(r.escaped)},
      {"to_environment_m3", spread_json(r.to_environment)},
      {"beyond_range_m3", number_or_null(beyond_range(r))},
      {"barriers", list(r.barriers, barrier_json)},
      {"cause_effect", cause_effect_json(r.cause_effect)},
      {"open_ends", list(r.open_ends, open_end_json)},
      {"runs", list(r.runs, [&](const IncidentRun& run) { return run_json(run, r); })},
      {"jets", list(r.jets, jet_json)},
      {"pack_and_column", r.pack_and_column ? pack_json(*r.pack_and_column) : Json()},
      {"pool", r.pool ? pool_json(*r.pool) : Json()},
      {"crack", r.crack ? crack_json(*r.crack) : Json()},
      {"drive_off", r.drive_off ? drive_off_json(*r.drive_off) : Json()},
      {"fire", r.fire ? fire_json(*r.fire) : Json()},
      {"overfill", r.overfill ? overfill_json(*r.overfill) : Json()},
      {"spread", r.spread ? monte_carlo_json(*r.spread) : Json()},
      {"return_to_service", list(r.return_to_service,
                                 [](const ReturnStep& s) {
                                   return Json{{"step", s.kind}, {"what", s.what}, {"by", s.by}, {"source", s.source}};
                                 })},
      {"inputs", list(r.inputs, input_json)}};
  return document(out, facts.texts);
}

}  // namespace forecourse::report
