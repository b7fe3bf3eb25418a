// What is asked of tanks and deliveries, by volumes summed slice by slice and by formulas on the figures of the site.

#include <cmath>
#include <numbers>

#include "forecourse/base/unit_text.h"
#include "lesson/questions/evaluators.h"

namespace forecourse::test {
namespace {

constexpr const char* sliced = "the tank summed slice by slice, where the study has closed forms";
constexpr const char* by_hand = "a formula on the figures entered, with no study";

double gallon() { return to_si(1.0, "gal"); }

const site::Tank& tank_named(const Case& c, const std::string& id) {
  for (const site::Tank& one : c.site.tanks) {
    if (one.id.text == id) return one;
  }
  return c.site.tanks.front();
}

double pipe_volume(const site::Pipe& pipe) {
  const double bore = pipe.bore->likely.si();
  return 0.25 * std::numbers::pi * bore * bore * pipe.length->likely.si();
}

/// First moment of the chart at which truck and hose are empty; it must agree with a rate that is entered.
std::optional<double> drop_time(const Case& c) {
  const site::Delivery& delivery = c.site.deliveries.front();
  const studies::DeliveryChart& chart = c.ground.studied.deliveries.front().runs.front().chart;
  const double volume = delivery.compartments.front().volume->likely.si();
  std::size_t i = 0;
  while (i + 1 < chart.time.size() && chart.truck.front().value[i] + chart.hose.front().value[i] > 1e-6 * volume) ++i;
  const double gained = chart.volume.front().value[i] - chart.volume.front().value.front();
  // With what drains out of the hose, where it was full before.
  if (gained < 0.999 * volume || gained > 1.02 * volume) return 0.0;
  if (!delivery.rate) return chart.time[i];
  // No sooner than at the full rate, and later only by the hose, or where a valve holds the flow back.
  const double by_rate = volume / delivery.rate->likely.si();
  const bool held = !tank_named(c, delivery.compartments.front().tank.text).fills.empty() &&
                    tank_named(c, delivery.compartments.front().tank.text).fills.front().overfill_valve;
  const bool fits = chart.time[i] > 0.97 * by_rate && (held || chart.time[i] < 1.25 * by_rate);
  return fits ? chart.time[i] : by_rate;
}

/// By volume, of what may come while a tank is filled.
double overfill_key(const Case& c, const lesson::Phrase& item) {
  const OwnTank tank(c.tank());
  const std::string& words = item.words;
  if (words.rfind("90 %", 0) == 0) return 0.90 * tank.capacity();
  if (words.rfind("95 %", 0) == 0) return 0.95 * tank.capacity();
  if (words.rfind("the top", 0) == 0) return tank.capacity();
  if (words.find("alarm") != std::string::npos) return c.tank().overfill_alarm->at_share->likely.si() * tank.capacity();
  for (const site::Fill& fill : c.tank().fills) {
    if (!fill.overfill_valve || !fill.at) continue;
    const double at = fill.at->likely.si();
    if (words.find("restricts") != std::string::npos)
      return tank.volume(fill.overfill_valve->restricts_at->likely.si(), at);
    if (words.find("shut") != std::string::npos) return tank.volume(fill.overfill_valve->closes_at->likely.si(), at);
  }
  return std::nan("");
}

std::optional<double> sold(const Case& c, const std::string& product) {
  for (const site::Throughput& one : c.site.operations->throughput) {
    if (one.product.text == product) return one.per_month->likely.si();
  }
  return std::nullopt;
}

/// Between two published points.
/// SOURCE: [e10_water_text, two points] 3.8 and 2.8 teaspoons of 4.929 mL in a gallon at 60 and 20 degF
double uptake(double kelvin) {
  const double fahrenheit = (kelvin - 273.15) * 1.8 + 32.0;
  const double teaspoons = 2.8 + (fahrenheit - 20.0) / 40.0 * (3.8 - 2.8);
  return teaspoons * 4.929e-6 / gallon();
}

/// Warming of shut air to a pressure, degree by degree with the gas law.
double warming(double opens, double kelvin, double air) {
  const double amount = air / kelvin;
  double low = 0.0;
  double high = 60.0;
  for (int i = 0; i < 60; ++i) {
    const double middle = 0.5 * (low + high);
    (amount * (kelvin + middle) - air < opens ? low : high) = middle;
  }
  return low;
}

}  // namespace

void add_tank_evaluators(Evaluators& out) {
  out["drop-time"] = {"what the charts of truck, hose and tank tell, and the volume over a rate that is entered", 0.03,
                      drop_time};
  out["room-for-load"] = {sliced, 1e-3, [](const Case& c) {
                            const OwnTank tank(c.tank());
                            return std::optional(0.95 * tank.capacity() - tank.now());
                          }};
  out["container-holds"] = {by_hand, 1e-3, [](const Case& c) {
                              const double container = c.tank().fills.front().spill_container->volume->likely.si();
                              return std::optional(pipe_volume(*c.site.deliveries.front().hose) - container);
                            }};
  out["depth-at-95-percent"] = {
      sliced, 2e-4, [](const Case& c) {
        const OwnTank tank(c.tank());
        return std::optional(tank.depth(0.95 * tank.capacity(), c.question.asks.values.back().value));
      }};
  out["empty-at-95-of-diameter"] = {sliced, 5e-3, [](const Case& c) {
                                      const OwnTank tank(c.tank());
                                      const double in =
                                          tank.volume(0.95 * tank.diameter(), c.question.asks.values.back().value);
                                      return std::optional(1.0 - in / tank.capacity());
                                    }};
  out["seconds-90-to-95"] = {"5 % of the cylinder's volume over the rate told", 1e-3, [](const Case& c) {
                               return std::optional(0.05 * OwnTank(c.tank()).capacity() / c.given(1));
                             }};
  out["order-overfill"] = {sliced, 0.0, nullptr, nullptr, overfill_key};
  out["volume-at-reading"] = {sliced, 1e-3, [](const Case& c) { return std::optional(OwnTank(c.tank()).now()); }};
  out["leak-hidden-in-month"] = {
      by_hand, 1e-9, [](const Case& c) {
        return std::optional((*sold(c, c.question.at) / 100.0 + 130.0 * gallon()) / (30.0 * 86400.0));
      }};
  out["water-volume"] = {sliced, 2e-3, [](const Case& c) {
                           return std::optional(OwnTank(c.tank()).volume(c.tank().reading->water->likely.si(),
                                                                         c.tank().reading->at->likely.si()));
                         }};
  out["water-held"] = {"the two published points, straight between, on the sliced tank", 0.02, [](const Case& c) {
                         const OwnTank tank(c.tank());
                         const auto& water = c.tank().reading->water;
                         const double under = water ? tank.volume(water->likely.si(), tank.reading_at()) : 0.0;
                         return std::optional((tank.now() - under) * uptake(c.given(1)));
                       }};
  out["warming-lifts-vent"] = {"the gas law solved by halving", 1e-3, [](const Case& c) {
                                 return std::optional(warming(c.tank().vents.front().valve->opens_at->likely.si(),
                                                              c.site.ground_temperature->likely.si(), 101325.0));
                               }};
  out["tank-sump-holds"] = {by_hand, 1e-6, [](const Case& c) {
                              const site::Sump& sump = *c.tank().sump;
                              const double r = 0.5 * sump.diameter->likely.si();
                              return std::optional(std::numbers::pi * r * r * sump.depth->likely.si() *
                                                   (1.0 - sump.parts_share->likely.si()));
                            }};
  out["vent-as-head"] = {"the column of fuel that weighs as much as the water of its setting", 2e-3, [](const Case& c) {
                           double density = 0.0;
                           for (const auto& one : c.ground.studied.flow->systems) {
                             if (one.product == c.tank().product.text) density = one.density;
                           }
                           const double inches = from_si(c.tank().vents.front().valve->opens_at->likely.si(), "inH2O");
                           return std::optional(inches * 0.0254 * 1000.0 / density);
                         }};
  out["monthly-limit"] = {
      by_hand, 1e-9, [](const Case& c) { return std::optional(*sold(c, c.question.at) / 100.0 + 130.0 * gallon()); }};
  out["meter-gives-away"] = {by_hand, 1e-9, [](const Case& c) {
                               double sum = 0.0;
                               for (const auto& one : c.site.operations->throughput) sum += one.per_month->likely.si();
                               return std::optional(12.0 * sum * c.given(1));
                             }};
  // Expansion of gasoline and diesel by a table of common values, good to a tenth.
  // SOURCE: common practice, no source: 0.00124 and 0.00083 for each K
  out["volume-when-cooled"] = {
      "a common expansion of each fuel in place of the published tables", 0.15, [](const Case& c) {
        const bool diesel = tank_named(c, c.question.at).product.text == "diesel";
        return std::optional(c.given(0) * (diesel ? 8.3e-4 : 1.24e-3) * std::abs(c.given(1) - c.given(2)));
      }};
  // SOURCE: [ap42_5_2, table 5.2-7] 0.88 kg for each m3 at a submerged fill, 0.04 balanced
  out["vapor-kept"] = {"the published factors times what is sold", 0.01,
                       [](const Case& c) { return std::optional(*sold(c, c.question.at) * (0.88 - 0.04)); }};
}

}  // namespace forecourse::test
