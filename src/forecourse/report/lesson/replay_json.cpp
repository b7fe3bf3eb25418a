#include "forecourse/report/lesson/amounts.h"
#include "forecourse/report/lesson/replay_report.h"

namespace forecourse::report {
namespace {

using lesson::Scene;
using site::Display;

Json shown_or_null(const lesson::SceneValue& one, Display display) {
  return one.value ? Json(shown(one.value, one.quantity, display)) : Json();
}

Json told_json(const lesson::SceneValue& one) {
  return {{"label", one.label},
          {"value", number_or_null(one.value)},
          {"unit", lesson::unit(one.quantity)},
          {"quantity", lesson::word(one.quantity)},
          {"shown", shown_or_null(one, Display::us)},
          {"shown_si", shown_or_null(one, Display::si)},
          {"pointer", text_or_null(one.pointer)}};
}

Json course_json(const lesson::Course& one) {
  return {{"course", one.course},
          {"label", one.label},
          {"unit", lesson::unit(one.quantity)},
          {"quantity", lesson::word(one.quantity)},
          {"values", array_of(one.values, [](double value) { return number_or_null(value); })}};
}

Json scene_json(const Scene& scene) {
  Json values = Json::object();
  for (const auto& one : scene.values) values[one.first] = one.second;
  return {{"name", scene.name},
          {"works", scene.works},
          {"command", scene.command},
          {"time_s", scene.time},
          {"values", values},
          {"courses", array_of(scene.courses, course_json)},
          {"events", array_of(scene.events,
                              [](const lesson::SceneEvent& one) {
                                return Json{{"time_s", one.time}, {"words", one.words}};
                              })},
          {"told", array_of(scene.told, told_json)},
          {"rests_on", scene.rests_on}};
}

}  // namespace

std::vector<std::string> replay_cautions(const lesson::Replay& replay) {
  std::vector<std::string> out;
  if (!replay.caution.empty()) out.push_back(replay.caution);
  out.emplace_back(
      "A replay is computed from what was entered. It shows what a part is there for; it advises, and is not a test.");
  out.emplace_back("The local code, the listing and the instructions of each piece of equipment come first.");
  return out;
}

Json replay_document(const lesson::Replay& replay, const std::vector<Diagnostic>& warnings, const ReportFacts& facts) {
  JsonDocument out;
  out.study = "lesson";
  out.version = FORECOURSE_VERSION;
  out.cautions = replay_cautions(replay);
  out.options = {{"failure", replay.failure}, {"at", text_or_null(replay.at)}};
  out.result = {{"failure", replay.failure},
                {"title", replay.title},
                {"at", text_or_null(replay.at)},
                {"problem", text_or_null(replay.problem)},
                {"caution", text_or_null(replay.caution)},
                {"scenes", array_of(replay.scenes, scene_json)},
                {"command", replay.proof.command}};
  out.warnings = warnings;
  return document(out, facts.texts);
}

}  // namespace forecourse::report
