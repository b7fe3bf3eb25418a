#include "forecourse/report/findings.h"
#include "forecourse/report/line_test/line_test_report.h"
#include "forecourse/report/line_test/line_test_view.h"

namespace forecourse::report {
namespace {

Json between_json(const studies::Between& between) { return {{"low", between.low}, {"high", between.high}}; }

template <class Range>
Json range_json(const std::optional<Range>& range) {
  return range ? Json{{"low", range->low}, {"high", range->high}} : Json();
}

Json thermal_json(const studies::ThermalTold& thermal) {
  if (!thermal.problem.empty()) return {{"problem", thermal.problem}};
  return {{"problem", nullptr},
          {"warmer_k", between_json(thermal.warmer)},
          {"warmer_by", thermal.warmer_by},
          {"fuel_expansion_per_k", thermal.fuel_expansion},
          {"line_expansion_per_k", thermal.line_expansion},
          {"by_time_constant", thermal.by_time_constant},
          {"time_constant_s", number_or_null(thermal.time_constant)},
          {"at_start_m3_per_s", number_or_null(thermal.at_start)},
          {"limit_m3_per_s", thermal.limit},
          {"wait_s", number_or_null(thermal.wait)},
          {"firm", thermal.firm}};
}

Json volume_test_json(const studies::VolumeTestTold& test) {
  return {{"find_m3_per_s", test.find},
          {"threshold_m3_per_s", test.threshold},
          {"leak_m3_per_s", number_or_null(test.leak)},
          {"cancels_at_s", number_or_null(test.cancels_at)},
          {"hidden_until_s", number_or_null(test.hidden_until)},
          {"hidden_always", test.hidden_always},
          {"false_until_s", number_or_null(test.false_until)},
          {"points", array_of(test.points, [](const studies::RatePoint& point) {
             return Json{{"time_s", point.time},
                         {"thermal_m3_per_s", number_or_null(point.thermal)},
                         {"measured_m3_per_s", number_or_null(point.measured)}};
           })}};
}

Json proof_json(const std::optional<studies::DropProof>& proof) {
  if (!proof) return {};
  return {{"drop_pa", proof->drop},
          {"leak_m3_per_s", proof->none ? Json() : between_json(proof->leak)},
          {"tight_line_drops", proof->tight_line_drops},
          {"fits_no_leak", proof->none}};
}

Json pressure_test_json(const studies::PressureTestTold& test) {
  return {{"problem", text_or_null(test.problem)},
          {"start_pressure_gauge_pa", test.points.empty() ? Json() : Json(test.pressure)},
          {"wait_s", test.wait},
          {"duration_s", test.duration},
          {"per_degree_pa_per_k", number_or_null(test.per_degree)},
          {"leak_m3_per_s", number_or_null(test.leak)},
          {"drop_pa", test.points.empty() ? Json() : Json(test.drop)},
          {"tight_drop_pa", test.points.empty() ? Json() : Json(test.tight_drop)},
          {"leak_drop_pa", test.points.empty() ? Json() : Json(test.leak_drop)},
          {"to_air_at_s", number_or_null(test.to_air_at)},
          {"passed", proof_json(test.passed)},
          {"failed", proof_json(test.failed)},
          {"measured", proof_json(test.measured)},
          {"points", array_of(test.points, [](const studies::PressurePoint& point) {
             return Json{{"time_s", point.time},
                         {"pressure_gauge_pa", point.pressure},
                         {"tight_pressure_gauge_pa", point.tight},
                         {"leak_alone_pressure_gauge_pa", point.leak_alone}};
           })}};
}

Json detection_json(const studies::DetectionTold& told) {
  return {{"name", told.name},
          {"detects_m3_per_s", number_or_null(told.detects)},
          {"at_pressure_gauge_pa", number_or_null(told.at)},
          {"takes_s", number_or_null(told.takes)},
          {"at_held_m3_per_s", range_json(told.at_held)},
          {"false_until_s", number_or_null(told.false_until)},
          {"quiet_needed_s", number_or_null(told.quiet_needed)},
          {"quiet_enough", count_or_null(told.quiet_enough)},
          {"words", told.words}};
}

Json restart_json(const std::optional<studies::RestartTold>& restart) {
  if (!restart) return {};
  return {{"stopped_s", restart->stopped},
          {"lost_pa", restart->lost},
          {"refill_m3", restart->refill},
          {"refill_time_s", number_or_null(restart->refill_time)},
          {"stays_restricted", restart->stays_restricted},
          {"words", restart->words}};
}

Json detector_json(const studies::DetectorTold& detector, const LineTestFacts& facts) {
  return {{"pump", detector.pump},
          {"kind", text_or_null(detector.kind)},
          {"detects_m3_per_s", number_or_null(detector.detects)},
          {"at_pressure_gauge_pa", number_or_null(detector.at)},
          {"acts_within_s", number_or_null(detector.acts_within)},
          {"published_there_m3_per_s", range_json(detector.limit)},
          {"orifice_m", detector.orifice},
          {"detections", array_of(detector.detections, detection_json)},
          {"catches", array_of(detector.catches,
                               [](const studies::CatchTold& c) {
                                 return Json{{"where", c.where},
                                             {"pressure_gauge_pa", c.pressure},
                                             {"sharp_m3_per_s", c.rate},
                                             {"laminar_m3_per_s", c.laminar},
                                             {"caught_in_a_minute_m3", c.minute}};
                               })},
          {"restart", restart_json(detector.restart)},
          {"notes", detector.notes},
          {"answer", detector_answer(detector, facts.display, Glyphs::unicode)},
          {"place", place_json(detector.where, facts.texts)}};
}

Json line_json(const studies::LineTest& line, const LineTestFacts& facts) {
  if (!line.problem.empty()) return {{"system", line.system}, {"product", line.product}, {"problem", line.problem}};
  return {
      {"system", line.system},
      {"product", line.product},
      {"problem", nullptr},
      {"lines", line.lines},
      {"volume_m3", line.volume},
      {"compliance_m3_per_pa", number_or_null(line.compliance)},
      {"compliance_reason", text_or_null(line.compliance_reason)},
      {"held_pressure_gauge_pa", number_or_null(line.held)},
      {"held_at", text_or_null(line.held_at)},
      {"held_by", line.held_by},
      {"thermal", thermal_json(line.thermal)},
      {"volume_test", volume_test_json(line.volume_test)},
      {"pressure_test", pressure_test_json(line.pressure_test)},
      {"detectors", array_of(line.detectors, [&](const studies::DetectorTold& d) { return detector_json(d, facts); })},
      {"answer", line_test_answer(line, facts.display, Glyphs::unicode)},
      {"proves", proof_sentences(line, facts.display, Glyphs::unicode)}};
}

Json options_json(const studies::LineTestOptions& o) {
  return {{"product", text_or_null(o.product)},
          {"warmer_k", range_json(o.warmer)},
          {"fuel_temperature_k", number_or_null(o.fuel_temperature)},
          {"ground_temperature_k", number_or_null(o.ground_temperature)},
          {"time_constant_s", number_or_null(o.time_constant)},
          {"ground", text_or_null(o.ground)},
          {"ground_conductivity_w_per_m_k", number_or_null(o.ground_conductivity)},
          {"ground_heat_j_per_m3_k", number_or_null(o.ground_heat)},
          {"expansion_per_k", number_or_null(o.expansion)},
          {"line_expansion_per_k", number_or_null(o.line_expansion)},
          {"volume_m3", number_or_null(o.volume)},
          {"compliance_m3_per_pa", number_or_null(o.compliance)},
          {"per_degree_pa_per_k", number_or_null(o.per_degree)},
          {"vapor_m3", number_or_null(o.vapor)},
          {"leak_m3_per_s", number_or_null(o.leak)},
          {"leak_pressure_gauge_pa", number_or_null(o.leak_pressure)},
          {"exponent", number_or_null(o.exponent)},
          {"pressure_gauge_pa", number_or_null(o.pressure)},
          {"wait_s", number_or_null(o.wait)},
          {"duration_s", number_or_null(o.duration)},
          {"drop_pa", number_or_null(o.drop)},
          {"measured_pa", number_or_null(o.measured)},
          {"find_m3_per_s", number_or_null(o.find)},
          {"limit_m3_per_s", number_or_null(o.limit)},
          {"quiet_s", o.quiet},
          {"stopped_s", number_or_null(o.stopped)}};
}

}  // namespace

Json line_test_document(const studies::LineTestResult& result, const LineTestFacts& facts) {
  JsonDocument out;
  out.study = "line-test";
  out.version = result.version;
  out.cautions = line_test_cautions();
  out.options = options_json(result.options);
  out.defaults = result.defaults;
  out.findings = findings_json(facts.findings, facts.texts);
  out.warnings = result.warnings;
  out.result = {{"quiet_s", result.quiet},
                {"quiet_by", result.quiet_by},
                {"lines", array_of(result.lines, [&](const studies::LineTest& l) { return line_json(l, facts); })}};
  return document(out, facts.texts);
}

}  // namespace forecourse::report
