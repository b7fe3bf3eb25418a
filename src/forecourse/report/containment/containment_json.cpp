#include "forecourse/report/containment/containment_report.h"

namespace forecourse::report {
namespace {

Json fill_json(const studies::SumpFill& fill) {
  return {{"inflow_m3_per_s", fill.inflow},
          {"to_sensor_s", number_or_null(fill.to_sensor)},
          {"to_lowest_seal_s", number_or_null(fill.to_seal)},
          {"to_brim_s", number_or_null(fill.to_brim)},
          {"sensor_tells_at_s", number_or_null(fill.seen_at)},
          {"volume_when_told_m3", number_or_null(fill.volume_when_seen)},
          {"runs_over_before", fill.over_before_seen}};
}

Json sump_json(const studies::ContainedSump& sump, const std::vector<SourceText>& texts) {
  Json out = {{"owner", sump.owner},
              {"of", sump.of_tank ? "tank" : "dispenser"},
              {"holds", studies::word(sump.holds)},
              {"reasons", sump.reasons},
              {"problem", sump.problem.empty() ? Json() : Json(sump.problem)},
              {"depth_m", number_or_null(sump.depth)},
              {"brim_m3", sump.problem.empty() ? Json(sump.brim) : Json()},
              {"sensor_height_m", number_or_null(sump.sensor_height)},
              {"at_sensor_m3", number_or_null(sump.at_sensor)},
              {"lowest_seal_m", number_or_null(sump.seal_height)},
              {"at_lowest_seal_m3", number_or_null(sump.at_seal)}};
  out["points"] = Json::array();
  for (const studies::SumpPoint& p : sump.points)
    out["points"].push_back({{"height_m", p.height}, {"volume_m3", p.volume}});
  out["fills"] = Json::array();
  for (const studies::SumpFill& fill : sump.fills) out["fills"].push_back(fill_json(fill));
  out["place"] = place_json(sump.where, texts);
  return out;
}

Json text_or_none(const std::string& text) { return text.empty() ? Json() : Json(text); }

}  // namespace

Json containment_document(const studies::ContainmentResult& result, const ContainmentFacts& facts) {
  JsonDocument out;
  out.study = "containment";
  out.version = result.version;
  out.cautions = containment_cautions();
  out.options = {{"inflows_m3_per_s", result.options.inflows},
                 {"sensor_dead_for_s", number_or_null(result.options.sensor_dead_for)}};
  out.defaults = result.defaults;
  out.warnings = result.warnings;
  Json sumps = Json::array(), joints = Json::array(), lines = Json::array();
  for (const studies::ContainedSump& sump : result.sumps) sumps.push_back(sump_json(sump, facts.texts));
  for (const studies::Joint& joint : result.joints) {
    joints.push_back({{"place", joint.id},
                      {"joint", joint.what},
                      {"sump", text_or_none(joint.sump)},
                      {"holds", studies::word(joint.holds)},
                      {"goes", joint.words}});
  }
  for (const studies::DrainBack& line : result.lines) {
    lines.push_back({{"line", line.line},
                     {"double_wall", line.double_wall},
                     {"fall", number_or_null(line.fall)},
                     {"runs_to", text_or_none(line.to)},
                     {"sump", text_or_none(line.sump)},
                     {"holds", studies::word(line.holds)},
                     {"goes", line.words}});
  }
  out.result = {{"sumps", sumps}, {"joints", joints}, {"lines", lines}};
  return document(out, facts.texts);
}

}  // namespace forecourse::report
