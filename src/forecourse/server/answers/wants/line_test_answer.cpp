#include "forecourse/checks/line_test_checks.h"
#include "forecourse/report/line_test/line_test_report.h"
#include "forecourse/report/line_test/line_test_view.h"
#include "forecourse/server/answers/wants/drawing_want.h"
#include "forecourse/server/answers/wants/incident_request.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/study_answers.h"
#include "forecourse/studies/line_test/read_line_test_options.h"

namespace forecourse::server {
namespace {

using report::Json;

studies::LineTestOptions read_line_test_want(WantReader& want) {
  studies::LineTestTexts texts;
  texts.warmer = want.texts("warmer");
  texts.quiet = want.texts("quiet");
  texts.product = want.text("product");
  texts.fuel_temperature = want.text("fuel_temperature");
  texts.ground_temperature = want.text("ground_temperature");
  texts.time_constant = want.text("time_constant");
  texts.ground = want.text("ground");
  texts.ground_conductivity = want.text("ground_conductivity");
  texts.ground_heat = want.text("ground_heat");
  texts.expansion = want.text("expansion");
  texts.line_expansion = want.text("line_expansion");
  texts.volume = want.text("volume");
  texts.compliance = want.text("compliance");
  texts.per_degree = want.text("per_degree");
  texts.vapor = want.text("vapor");
  texts.leak = want.text("leak");
  texts.leak_pressure = want.text("leak_pressure");
  texts.exponent = want.text("exponent");
  texts.pressure = want.text("pressure");
  texts.wait = want.text("wait");
  texts.duration = want.text("duration");
  texts.drop = want.text("drop");
  texts.measured = want.text("measured");
  texts.find = want.text("find");
  texts.limit = want.text("limit");
  texts.stopped = want.text("stopped");
  auto read = studies::read_line_test_options(texts, studies::Asker::page);
  if (!read.ok()) want.refuse(read.diagnostics.front().message, read.diagnostics.front().hint);
  return std::move(read.value);
}

}  // namespace

Json line_test_answer(const Asked& asked) {
  WantReader want(asked.want, line_test_members);
  const studies::LineTestOptions options = read_line_test_want(want);
  const site::Date on = read_day(want);
  const OpenedSite& opened = asked.shared.opened(read_units(want));
  if (!want.good()) return want.problem();
  if (!opened.problem.is_null()) return opened.problem;
  studies::LineTestResult result = studies::study_line_test(opened.site, options, asked.context);
  if (!result.errors.empty()) return refused(result.errors);
  result.warnings.insert(result.warnings.begin(), opened.warnings.begin(), opened.warnings.end());
  const std::vector<checks::Finding> findings = checks::check_line_test(opened.site, result, on);
  return {{"document", report::line_test_document(result, {{}, {}, opened.texts, findings, {}, opened.site.display})}};
}

bool is_line_test_drawing(const Json& drawing) { return drawing == "volume-test" || drawing == "shut-pressure"; }

Json line_test_drawing(const Asked& asked) {
  WantReader reader(asked.want, line_test_drawing_members);
  const DrawingWant want = read_drawing(reader);
  const studies::LineTestOptions options = read_line_test_want(reader);
  const OpenedSite& opened = asked.shared.opened(read_units(reader));
  if (!reader.good()) return reader.problem();
  if (!opened.problem.is_null()) return opened.problem;
  const studies::LineTestResult result = studies::study_line_test(opened.site, options, asked.context);
  if (!result.errors.empty()) return refused(result.errors);
  if (result.lines.empty()) return refused("the station has no line", "enter one");
  const studies::LineTest& line = result.lines.front();
  const site::Display display = opened.site.display;
  report::svg::CurveChart chart = want.drawing == "volume-test"
                                      ? report::rate_chart(line, display, want.prefix)
                                      : report::shut_pressure_chart(line, display, want.prefix);
  const bool empty = chart.curves.empty() || chart.curves.front().x.empty();
  chart.width = want.width;
  return drawn_json(want, {empty ? "" : draw(chart), {}, "enter what the line's problem names"});
}

}  // namespace forecourse::server
