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

/// A line that is shut at the pressure it is held at, while its fuel warms.
struct Warming {
  std::string problem;
  std::string product;
  std::string held;  ///< that pressure, as typed
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

/// The line of a product as the test of a line tells it.
///
/// \param pressure at which the test begins, as typed; empty: at its usual one
std::optional<studies::LineTest> line_of(const site::Site& site, const std::string& product,
                                         const std::string& pressure, std::vector<std::string>& rests_on) {
  studies::LineTestTexts texts;
  texts.product = product;
  texts.warmer = {colder};
  texts.pressure = pressure;
  const auto options = studies::read_line_test_options(texts, studies::Asker::command);
  studies::LineTestResult result = study_line_test(site, options.value);
  if (!result.errors.empty() || result.lines.empty()) return std::nullopt;
  rests_on = lesson::rests_on(result.defaults);
  return std::move(result.lines.front());
}

/// Tells why the line of a product cannot be shown, where it cannot.
void warm(const site::Site& site, Warming& out) {
  const auto at_rest = line_of(site, out.product, {}, out.rests_on);
  if (!at_rest) return;
  out.problem = at_rest->problem.empty() ? at_rest->pressure_test.problem : at_rest->problem;
  if (!out.problem.empty()) return;
  const auto relief = relief_of(site, out.product);
  if (!relief || !at_rest->held) {
    out.problem = relief
                      ? "at which pressure the line of " + out.product + " is held is not known: enter its check valve"
                      : "no pump of " + out.product + " has a relief at a known pressure: enter its pressure_relief";
    return;
  }
  out.relief = *relief;
  out.held = exact(*at_rest->held, "Pa");
  auto shut = line_of(site, out.product, out.held, out.rests_on);
  if (!shut) return;
  out.line = std::move(*shut);
  out.problem = out.line.pressure_test.problem;
  if (out.problem.empty() && !(out.line.pressure_test.points.back().tight > out.relief)) {
    out.problem = "fuel 5 K colder than the ground does not bring the shut line of " + out.product +
                  " up to the pressure of its relief";
  }
}

Warming warming(const site::Site& site, const std::string& at) {
  Warming out;
  const std::string wanted = product_at(site, at);
  out.problem = "no line is listed: add a [[line]]";
  for (const site::Product& product : site.products) {
    if (!wanted.empty() && product.id.text != wanted) continue;
    out.product = product.id.text;
    warm(site, out);
    if (out.problem.empty()) return out;
  }
  return out;
}

/// The pressure of the line that no relief is open to, over the time of a test; it rises.
struct Rise {
  std::vector<double> time, pressure;
};

Rise rise_of(const studies::PressureTestTold& test) {
  Rise out;
  for (const studies::PressurePoint& point : test.points) {
    out.time.push_back(point.time);
    out.pressure.push_back(point.tight);
  }
  return out;
}

/// Held at the pressure of a relief from when it comes there; that moment is one of its times.
double relieve(Rise& rise, double relief) {
  const double opens = between(rise.pressure, rise.time, relief);
  const auto after = std::upper_bound(rise.time.begin(), rise.time.end(), opens);
  rise.pressure.insert(rise.pressure.begin() + (after - rise.time.begin()), relief);
  rise.time.insert(after, opens);
  for (double& one : rise.pressure) one = std::min(one, relief);
  return opens;
}

Scene scene_of(const Warming& told, bool works) {
  const studies::PressureTestTold& test = told.line.pressure_test;
  Scene scene;
  scene.name = works ? "relief works" : "without relief";
  scene.works = works;
  scene.rests_on = told.rests_on;
  scene.rests_on.insert(scene.rests_on.begin(), "fuel 5 K colder than the ground, chosen for this lesson");
  scene.command = {"line-test", "--product", told.product, std::string("--warmer=") + colder, "--pressure", told.held};
  scene.events = {{0.0, "the line is shut, its fuel 5 K colder than the ground"}};
  Rise rise = rise_of(test);
  const double most = rise.pressure.back();
  if (works) {
    scene.events.push_back({relieve(rise, told.relief),
                            "the relief opens at the pressure entered for it, and lets fuel back to the tank: the line "
                            "stays at that pressure"});
  }
  scene.time = std::move(rise.time);
  scene.values["pressure"] = shares_of(rise.pressure, most);
  hold(scene, "runs", 0.0);
  hold(scene, "flow", 0.0);
  hold(scene, "check", 0.0);
  hold(scene, "warm", -1.0);
  scene.courses = {{"pressure", "pressure in the shut line", Quantity::pressure, std::move(rise.pressure)}};
  const SceneValue begins{"pressure when it was shut", test.pressure, Quantity::pressure,
                          "/result/lines/0/pressure_test/start_pressure_gauge_pa"};
  scene.told = {begins};
  if (works) return scene;
  const std::size_t end = test.points.size() - 1;
  scene.told.insert(scene.told.begin(),
                    {"pressure in the end", test.points[end].tight, Quantity::pressure,
                     "/result/lines/0/pressure_test/points/" + std::to_string(end) + "/tight_pressure_gauge_pa"});
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
