#include "forecourse/report/findings.h"
#include "forecourse/report/flotation/flotation_report.h"
#include "forecourse/report/flotation/flotation_view.h"

namespace forecourse::report {
namespace {

using studies::FlotationState;
using studies::TankFlotation;

Json body_json(const studies::BodyTold& body) {
  return {{"part", body.name},    {"volume_m3", body.volume}, {"submerged_m3", body.submerged},
          {"room_m3", body.room}, {"weight_n", body.weight},  {"submerged_weight_n", body.submerged_weight},
          {"lifted", body.lifted}};
}

Json factor_json(const std::optional<double>& factor, std::size_t which) {
  return {{"factor", number_or_null(factor)}, {"definition", factor_words()[which].definition}};
}

Json state_json(const std::optional<FlotationState>& state) {
  if (!state) return {};
  return {{"water_level_m", state->water_level},
          {"filled_m3", state->filled},
          {"buoyant_force_n", state->buoyant_force},
          {"hold_down_force_n", state->hold_down_force},
          {"hold_down", factor_json(state->factors.hold_down, 0)},
          {"total", factor_json(state->factors.total, 1)},
          {"submerged", factor_json(state->factors.submerged, 2)},
          {"hold_down_without_deadmen", number_or_null(state->without_deadmen)},
          {"missing_weight_n", number_or_null(state->missing_weight)},
          {"missing_contents_m3", number_or_null(state->missing_contents)},
          {"contents_fit", state->contents_fit ? Json(*state->contents_fit) : Json()},
          {"deadman_pull_n", number_or_null(state->deadman_pull)},
          {"strap_pull_n", number_or_null(state->strap_pull)},
          {"bodies", array_of(state->bodies, body_json)}};
}

Json section_json(const studies::FlotationSection& section) {
  return {{"crown_m", section.crown},
          {"diameter_m", section.diameter},
          {"soil_counts", section.soil_counts},
          {"prism_base_m", section.prism_base},
          {"prism_half_width_m", section.prism_half_width},
          {"prism_half_top_m", section.prism_half_top},
          {"pieces", array_of(section.pieces, [](const studies::SectionPiece& piece) {
             return Json{{"part", piece.name},
                         {"left_m", piece.left},
                         {"right_m", piece.right},
                         {"top_m", piece.top},
                         {"bottom_m", piece.bottom}};
           })}};
}

Json tank_json(const TankFlotation& tank, const std::vector<SourceText>& texts) {
  const bool known = tank.problems.empty();
  Json out = {{"tank", tank.tank},
              {"problems", tank.problems},
              {"left_out", tank.left_out},
              {"assumed", tank.assumed},
              {"water_level_m", number_or_null(tank.water_level)},
              {"factor_wanted", number_or_null(tank.factor_wanted)},
              {"place", place_json(tank.where, texts)}};
  if (!known) return out;
  out["water_unit_weight_n_per_m3"] = tank.water;
  out["outside_volume_m3"] = tank.outside_volume;
  out["capacity_m3"] = tank.capacity;
  out["contents_density_kg_per_m3"] = number_or_null(tank.contents_density);
  out["section"] = section_json(tank.section);
  out["empty"] = state_json(tank.empty);
  out["filled"] = state_json(tank.filled);
  out["water_at_grade"] = state_json(tank.worst);
  out["lifts_at_m"] = number_or_null(tank.lifts_at);
  out["keeps_factor_to_m"] = number_or_null(tank.keeps_to);
  out["open_hole"] = {{"lifts_at_m", number_or_null(tank.open_hole.lifts_at)},
                      {"ballast_weight_n", tank.open_hole.ballast_weight},
                      {"ballast_m3", number_or_null(tank.open_hole.ballast)},
                      {"ballast_fits", tank.open_hole.ballast_fit ? Json(*tank.open_hole.ballast_fit) : Json()}};
  out["strap_working_load_n"] = number_or_null(tank.strap_load);
  out["straps"] = count_or_null(tank.straps);
  out["by_level"] = array_of(tank.by_level, [](const studies::FactorAtLevel& point) {
    return Json{{"water_level_m", point.water_level},
                {"empty", number_or_null(point.empty)},
                {"filled", number_or_null(point.filled)}};
  });
  out["by_fill_level_m"] = tank.by_fill_level;
  out["by_fill"] = array_of(tank.by_fill, [](const studies::FactorAtFill& point) {
    return Json{{"filled_m3", point.filled}, {"factor", point.factor}};
  });
  return out;
}

}  // namespace

Json flotation_document(const studies::FlotationResult& result, const FlotationFacts& facts) {
  JsonDocument out;
  out.study = "flotation";
  out.version = result.version;
  out.cautions = flotation_cautions();
  out.options = {{"tank", text_or_null(result.options.tank)},
                 {"water_level_m", number_or_null(result.options.water_level)},
                 {"filled_m3", number_or_null(result.options.filled)},
                 {"factor", number_or_null(result.options.factor)}};
  out.defaults = result.defaults;
  out.findings = findings_json(facts.findings, facts.texts);
  out.warnings = result.warnings;
  Json tanks = Json::array();
  for (const TankFlotation& tank : result.tanks) tanks.push_back(tank_json(tank, facts.texts));
  out.result = {{"tanks", tanks}};
  return document(out, facts.texts);
}

}  // namespace forecourse::report
