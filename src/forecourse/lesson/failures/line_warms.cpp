#include <algorithm>
#include <cstddef>
#include <utility>

#include "forecourse/lesson/failures/cautions.h"
#include "forecourse/lesson/failures/kinds.h"
#include "forecourse/lesson/failures/scene.h"
#include "forecourse/lesson/rests_on.h"
#include "forecourse/studies/line_test/line_test.h"
#include "forecourse/studies/line_test/read_line_test_options.h"

namespace forecourse::lesson {
namespace {

/// By how much the fuel is colder than the ground when it comes into the line; a chosen difference, told among the
/// events.
constexpr const char* colder = "-5 K";

/// A line that is shut while its fuel warms.
struct Warming {
  std::string problem;
  std::string product;
  studies::LineTest line;
  double relief = 0.0;  ///< [Pa] gauge
  std::vector<std::string> rests_on;
};

/// The pump of a product whose relief opens at a known pressure.
std::optional<double> relief_of(const site::Site& site, const std::string& product) {
  for (const site::Pump& pump : site.pumps) {
    const site::Tank* tank = tank_at(site, pump.tank.text);
    if (tank != nullptr && tank->product.text == product && pump.pressure_relief)
      return pump.pressure_relief->likely.si();
  }
  return std::nullopt;
}

Warming warming(const site::Site& site, const std::string& at) {
  Warming out;
  const std::string wanted = product_at(site, at);
  out.problem = "no line is listed: add a [[line]]";
  for (const site::Product& product : site.products) {
    if (!wanted.empty() && product.id.text != wanted) continue;
    out.product = product.id.text;
    studies::LineTestTexts texts;
    texts.product = out.product;
    texts.warmer = {colder};
    const auto options = studies::read_line_test_options(texts, studies::Asker::command);
    studies::LineTestResult result = study_line_test(site, options.value);
    if (!result.errors.empty() || result.lines.empty()) continue;
    out.line = std::move(result.lines.front());
    out.rests_on = lesson::rests_on(result.defaults);
    out.problem = out.line.problem.empty() ? out.line.pressure_test.problem : out.line.problem;
    if (!out.problem.empty()) continue;
    const auto relief = relief_of(site, out.product);
    if (!relief) {
      out.problem = "no pump of " + out.product + " has a relief at a known pressure: enter its pressure_relief";
      continue;
    }
    out.relief = *relief;
    return out;
  }
  return out;
}

Scene scene_of(const Warming& told, bool works) {
  const studies::PressureTestTold& test = told.line.pressure_test;
  Scene scene;
  scene.name = works ? "relief works" : "without relief";
  scene.works = works;
  scene.rests_on = told.rests_on;
  scene.rests_on.insert(scene.rests_on.begin(), "fuel 5 K colder than the ground, chosen for this lesson");
  scene.command = {"line-test", "--product", told.product, std::string("--warmer=") + colder};
  std::vector<double> pressure;
  std::optional<double> opens;
  for (const studies::PressurePoint& point : test.points) {
    scene.time.push_back(point.time);
    if (point.tight > told.relief && !opens) opens = point.time;
    pressure.push_back(works ? std::min(point.tight, told.relief) : point.tight);
  }
  const double most = std::max_element(test.points.begin(), test.points.end(), [](const auto& a, const auto& b) {
                        return a.tight < b.tight;
                      })->tight;
  scene.values["pressure"] = shares_of(pressure, most);
  hold(scene, "runs", 0.0);
  hold(scene, "flow", 0.0);
  hold(scene, "check", 0.0);
  hold(scene, "warm", -1.0);
  scene.courses = {{"pressure", "pressure in the shut line", Quantity::pressure, std::move(pressure)}};
  scene.events = {{0.0, "the line is shut, its fuel 5 K colder than the ground"}};
  if (works && opens) scene.events.push_back({*opens, "the relief opens, and lets fuel back to the tank"});
  const std::size_t end = test.points.size() - 1;
  if (!works) {
    scene.told = {{"pressure in the end", test.points[end].tight, Quantity::pressure,
                   "/result/lines/0/pressure_test/points/" + std::to_string(end) + "/tight_pressure_gauge_pa"}};
  } else {
    scene.told = {{"pressure when it was shut", test.pressure, Quantity::pressure,
                   "/result/lines/0/pressure_test/start_pressure_gauge_pa"}};
  }
  return scene;
}

}  // namespace

Replay run_line_warms(const site::Site& site, const std::string& at, const Context&) {
  const Warming told = warming(site, at);
  if (!told.problem.empty()) return no_replay(at, told.problem);
  return replay_of(told.product, caution_of_escapes, scene_of(told, false), scene_of(told, true));
}
std::string lacks_line_warms(const site::Site& site, const std::string& at) { return warming(site, at).problem; }

}  // namespace forecourse::lesson
