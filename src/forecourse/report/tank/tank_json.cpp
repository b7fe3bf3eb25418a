#include "forecourse/report/findings.h"
#include "forecourse/report/tank/tank_report.h"

namespace forecourse::report {
namespace {

using namespace studies;

Json point_json(const TankPoint& p) { return {{"along_m", p.along}, {"level_m", p.level}}; }

Json now_json(const TankNow& now) {
  return {{"depth_m", now.depth},
          {"along_m", number_or_null(now.along)},
          {"by_option", now.by_option},
          {"level_m", now.level},
          {"volume_m3", now.volume},
          {"share", now.share},
          {"least_m3", number_or_null(now.least)},
          {"most_m3", number_or_null(now.most)},
          {"standard_error_m3", number_or_null(now.standard_error)},
          {"ullage_m3", now.ullage},
          {"water_m3", number_or_null(now.water)},
          {"water_level_m", number_or_null(now.water_level)}};
}

Json place_of(const TankPlace& place) {
  return {{"what", place.what},
          {"along_m", place.along},
          {"stick_m", place.stick},
          {"depth_m", number_or_null(place.depth)},
          {"dry_below_m3", place.dry_below},
          {"covered_above_m3", place.covered_above},
          {"foot", point_json(place.foot)},
          {"head", point_json(place.head)}};
}

Json room_json(const TankRoom& room) {
  return {{"share", room.share},
          {"volume_m3", room.volume},
          {"level_m", room.level},
          {"room_m3", number_or_null(room.room)},
          {"depth_at_places_m", array_of(room.depths, [](const auto& d) { return number_or_null(d); })}};
}

Json chart_json(const TankChart& chart) {
  return {{"place", chart.what},
          {"along_m", chart.along},
          {"dry_below_m3", chart.dry_below},
          {"unseen_above_m3", chart.unseen_above},
          {"rows", array_of(chart.rows, [](const TankChartRow& r) {
             return Json{{"depth_m", r.depth},
                         {"level_m", r.level},
                         {"volume_m3", r.volume},
                         {"share", r.share},
                         {"level_chart_m3", number_or_null(r.level_volume)}};
           })}};
}

Json setting_json(const OverfillSetting& s) {
  return {{"route", s.route},
          {"device", word(s.device)},
          {"asks", s.words},
          {"volume_m3", number_or_null(s.volume)},
          {"share", number_or_null(s.share)},
          {"level_m", number_or_null(s.level)},
          {"along_m", number_or_null(s.along)},
          {"depth_m", number_or_null(s.depth)},
          {"impossible", text_or_null(s.impossible)},
          {"enter", text_or_null(s.missing)}};
}

Json set_json(const DeviceSet& s, const std::vector<SourceText>& texts) {
  return {{"device", word(s.device)},
          {"what", s.what},
          {"along_m", number_or_null(s.along)},
          {"depth_m", number_or_null(s.depth)},
          {"volume_m3", s.volume},
          {"share", s.share},
          {"before_full_s", number_or_null(s.before_full)},
          {"wets_a_fitting", s.wets_fitting ? Json(*s.wets_fitting) : Json()},
          {"heard_at_fill", s.heard ? Json(*s.heard) : Json()},
          {"place", place_json(s.where, texts)}};
}

Json wrong_json(const WrongSetting& w) {
  return {{"set_by", w.by},         {"device", word(w.device)},   {"share", w.share}, {"depth_m", w.depth},
          {"acts_at_m3", w.volume}, {"true_share", w.true_share}, {"late", w.late}};
}

Json overfill_json(const OverfillRoutes& told, const std::vector<SourceText>& texts) {
  return {{"settings", array_of(told.settings, setting_json)},
          {"set_now", array_of(told.set, [&](const DeviceSet& s) { return set_json(s, texts); })},
          {"wrong", array_of(told.wrong, wrong_json)},
          {"fitting_level_m", number_or_null(told.fitting_level)},
          {"fitting", text_or_null(told.fitting)},
          {"remarks", told.remarks}};
}

Json fit_json(const CalibrationTold& fit) {
  return {{"problem", text_or_null(fit.problem)},
          {"along_m", fit.along},
          {"sizes", array_of(fit.sizes,
                             [](const FittedSize& s) {
                               return Json{{"what", s.what},
                                           {"unit", s.unit},
                                           {"entered", s.entered},
                                           {"fitted", s.value},
                                           {"standard_error", number_or_null(s.standard_error)},
                                           {"held", text_or_null(s.held)}};
                             })},
          {"not_apart", fit.not_apart},
          {"readings", array_of(fit.readings,
                                [](const FittedReading& r) {
                                  return Json{{"added_m3", r.added}, {"depth_m", r.depth}, {"residual_m", r.residual}};
                                })},
          {"chart", array_of(fit.chart,
                             [](const FittedChartRow& r) {
                               return Json{{"depth_m", r.depth},
                                           {"entered_m3", r.entered},
                                           {"fitted_m3", r.fitted},
                                           {"standard_error_m3", r.standard_error}};
                             })},
          {"residual_m", fit.residual},
          {"residual_as_entered_m", number_or_null(fit.residual_entered)},
          {"uncertainty_m", number_or_null(fit.uncertainty)},
          {"capacity_m3", fit.capacity},
          {"capacity_standard_error_m3", number_or_null(fit.capacity_error)}};
}

Json siphon_json(const SiphonTold& s) {
  return {{"tanks", s.ids},
          {"kind", s.manifold ? "manifold" : "siphon"},
          {"problem", text_or_null(s.problem)},
          {"equal_surface_elevation_m", s.problem.empty() ? Json(s.equal_surface) : Json()},
          {"equal_after_s", number_or_null(s.equal_after)},
          {"members", array_of(s.tanks,
                               [](const SiphonedTank& t) {
                                 return Json{{"id", t.id},
                                             {"surface_elevation_m", t.surface},
                                             {"volume_m3", t.volume},
                                             {"equal_volume_m3", t.equal_volume},
                                             {"has_pump", t.has_pump},
                                             {"has_gauge", t.has_gauge},
                                             {"stranded_m3", t.stranded}};
                               })},
          {"course",
           array_of(s.course,
                    [](const SiphonMoment& m) {
                      return Json{{"time_s", m.time}, {"surface_elevations_m", m.surfaces}, {"volumes_m3", m.volumes}};
                    })},
          {"draw_time_s", s.draw_time},
          {"draws", array_of(s.draws,
                             [](const SiphonDraw& d) {
                               return Json{{"draw_m3_per_s", d.draw},
                                           {"bar_flow_m3_per_s", d.bar_flow},
                                           {"difference_m", d.difference},
                                           {"gauge_error_m3", number_or_null(d.gauge_error)},
                                           {"recovers_s", number_or_null(d.recovers)}};
                             })},
          {"gauge", text_or_null(s.gauge)},
          {"lost_at_elevation_m", number_or_null(s.lost_at)},
          {"lost_volume_m3", number_or_null(s.lost_volume)},
          {"crest_lift_m", number_or_null(s.crest_lift)},
          {"crest_pressure_absolute_pa", number_or_null(s.crest_pressure)},
          {"vapor_pressure_absolute_pa", number_or_null(s.vapor_pressure)},
          {"remarks", s.remarks}};
}

Json tank_json(const TankTold& tank, const std::vector<SourceText>& texts) {
  const bool known = tank.problem.empty();
  Json out = {{"id", tank.id},
              {"tank", tank.tank},
              {"product", text_or_null(tank.product)},
              {"problem", text_or_null(tank.problem)},
              {"shape", text_or_null(tank.shape)},
              {"charted", tank.charted},
              {"pitch", tank.pitch},
              {"inside_diameter_m", number_or_null(tank.diameter)},
              {"section_width_m", number_or_null(tank.section_width)},
              {"capacity_m3", known ? Json(tank.capacity) : Json()},
              {"capacity_entered_m3", number_or_null(tank.nominal)},
              {"full_level_m", known ? Json(tank.full_level) : Json()},
              {"now", tank.now ? now_json(*tank.now) : Json()},
              {"not_read", text_or_null(tank.not_read)}};
  out["places"] = array_of(tank.places, place_of);
  out["rooms"] = array_of(tank.rooms, room_json);
  out["chart"] = known ? chart_json(tank.chart) : Json();
  out["delivery_rate_m3_per_s"] = number_or_null(tank.rate);
  out["from_90_to_95_s"] = number_or_null(tank.from_90_to_95);
  out["overfill"] = overfill_json(tank.overfill, texts);
  out["calibration"] = tank.calibration ? fit_json(*tank.calibration) : Json();
  out["outline"] = array_of(tank.outline, point_json);
  out["place"] = place_json(tank.where, texts);
  return out;
}

Json options_json(const TankOptions& options) {
  constexpr const char* kinds[] = {"fill", "gauge", "pump", "place"};
  Json at;
  if (options.at) {
    at = {{"kind", kinds[static_cast<std::size_t>(options.at->kind)]},
          {"along_m", options.at->kind == DipAt::Kind::place ? Json(options.at->along) : Json()}};
  }
  return {{"tank", text_or_null(options.tank)},
          {"depth_m", number_or_null(options.depth)},
          {"at", at},
          {"step_m", number_or_null(options.step)},
          {"rate_m3_per_s", number_or_null(options.rate)},
          {"share", number_or_null(options.share)},
          {"draws_m3_per_s", options.draws}};
}

}  // namespace

Json tank_document(const TankResult& result, const std::vector<checks::Finding>& findings, const TankFacts& facts) {
  JsonDocument out;
  out.study = "tank";
  out.version = result.version;
  out.cautions = tank_cautions();
  out.options = options_json(result.options);
  out.defaults = result.defaults;
  out.warnings = result.warnings;
  out.findings = findings_json(findings, facts.texts);
  out.result = {{"tanks", array_of(result.tanks, [&](const TankTold& t) { return tank_json(t, facts.texts); })},
                {"siphons", array_of(result.siphons, siphon_json)}};
  return document(out, facts.texts);
}

}  // namespace forecourse::report
