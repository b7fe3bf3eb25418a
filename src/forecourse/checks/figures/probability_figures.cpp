#include "forecourse/checks/figures/each_part.h"

namespace forecourse::checks {
namespace {

using Probability = site::Maybe<Ratio>;

void add_method(std::vector<FigureAt>& out, const std::string& part, const char* method, SourceSpan where,
                const Probability& entered, const char* key) {
  out.push_back(entered_amount(part + " " + method, where, entered,
                               "enter " + std::string(key) + " of the " + std::string(method)));
}

struct Keys {
  const char* name;
  Probability site::TankGauge::*gauge;
  Probability site::TightnessTest::*tightness_test;
  Probability site::Statistics::*statistics;
  Probability site::LeakDetector::*leak_detector;
};

std::vector<FigureAt> probabilities(const Facts& facts, const Keys& keys) {
  std::vector<FigureAt> out;
  for (const site::Tank& tank : facts.site.tanks) {
    if (is_above_ground(tank)) continue;
    const std::string& id = tank.id.text;
    if (tank.gauge && tank.gauge->kind.text != "stick")
      add_method(out, id, "gauge", tank.gauge->where, (*tank.gauge).*keys.gauge, keys.name);
    if (tank.tightness_test)
      add_method(out, id, "tightness test", tank.tightness_test->where, (*tank.tightness_test).*keys.tightness_test,
                 keys.name);
    if (tank.statistics)
      add_method(out, id, "statistics", tank.statistics->where, (*tank.statistics).*keys.statistics, keys.name);
  }
  for (const site::Pump& pump : facts.site.pumps) {
    if (pump.leak_detector)
      add_method(out, pump.id.text, "leak detector", pump.leak_detector->where,
                 (*pump.leak_detector).*keys.leak_detector, keys.name);
  }
  return out;
}

std::vector<FigureAt> detection(const Facts& facts) {
  return probabilities(facts, {"detection", &site::TankGauge::detection, &site::TightnessTest::detection,
                               &site::Statistics::detection, &site::LeakDetector::detection});
}

std::vector<FigureAt> false_alarm(const Facts& facts) {
  return probabilities(facts, {"false_alarm", &site::TankGauge::false_alarm, &site::TightnessTest::false_alarm,
                               &site::Statistics::false_alarm, &site::LeakDetector::false_alarm});
}

}  // namespace

std::vector<Figure> probability_figures() {
  const auto share = [](std::string_view id, std::string_view words, ReadFigure read) {
    return Figure{id, words, FigureKind::amount, &Ratio::kind(), "share", Measured::fuel, read};
  };
  return {share("detection", "probability that a method finds the leak it must find", detection),
          share("false-alarm", "probability that a method finds a leak where there is none", false_alarm)};
}

}  // namespace forecourse::checks
