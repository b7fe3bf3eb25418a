// What is asked of lines at rest, sumps, shear valves and drive-offs.

#include <algorithm>
#include <cmath>
#include <numbers>

#include "forecourse/base/unit_text.h"
#include "forecourse/site/places.h"
#include "lesson/questions/evaluators.h"

namespace forecourse::test {
namespace {

constexpr double atmosphere_free_psi = 6894.757293168361;  // SOURCE: [nist_sp811, appendix B.8]

const site::Inlet* inlet_at(const Case& c, const std::string& place, const site::Dispenser** bears = nullptr) {
  for (const site::Dispenser& dispenser : c.site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) {
      if (site::place_name(dispenser, inlet) != place) continue;
      if (bears != nullptr) *bears = &dispenser;
      return &inlet;
    }
  }
  return nullptr;
}

std::string product_of_pump(const Case& c, const std::string& id) {
  for (const site::Pump& pump : c.site.pumps) {
    for (const site::Tank& tank : c.site.tanks) {
      if (pump.id.text == id && tank.id == pump.tank) return tank.product.text;
    }
  }
  return {};
}

double bore_area(const site::Pipe& pipe) {
  const double bore = pipe.bore->likely.si();
  return 0.25 * std::numbers::pi * bore * bore;
}

/// Runs and risers of a product, one by one.
double line_volume(const Case& c, const std::string& product) {
  double out = 0.0;
  for (const site::Line& line : c.site.lines) {
    if (line.id.text.rfind(product + "-", 0) == 0) out += bore_area(line.pipe) * line.pipe.length->likely.si();
  }
  for (const site::Dispenser& dispenser : c.site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) {
      if (inlet.product.text == product) out += bore_area(*inlet.riser) * inlet.riser->length->likely.si();
    }
  }
  return out;
}

std::optional<double> shutoff(const Case& c) {
  const site::Inlet* inlet = inlet_at(c, c.question.at);
  std::string product = inlet != nullptr ? inlet->product.text : c.question.at.substr(2);
  double height = -2.5 * 0.3048;  // of every branch
  if (inlet != nullptr) height = inlet->line_elevation->likely.si();
  OwnNetwork& network = c.network(product);
  return network.pump().curve->shutoff->likely.si() - network.weight() * (height - network.surface());
}

/// Area of a tapered sump at a height, integrated to another height.
double sump_volume(const site::Sump& sump, double height) {
  constexpr int slices = 2000;
  const double depth = sump.depth->likely.si();
  double sum = 0.0;
  for (int i = 0; i < slices; ++i) {
    const double z = (i + 0.5) / slices * height / depth;
    const double x = sump.floor->x.si() + z * (sump.top->x.si() - sump.floor->x.si());
    const double y = sump.floor->y.si() + z * (sump.top->y.si() - sump.floor->y.si());
    sum += x * y;
  }
  const double parts = sump.parts_share ? sump.parts_share->likely.si() : 0.0;
  return sum * height / slices * (1.0 - parts);
}

/// Volume at which each of what may come in a sump comes.
double sump_key(const Case& c, const lesson::Phrase& item) {
  const bool of_tank = c.question.at[0] == 'T';
  const site::Sump& sump = of_tank ? *c.tank().sump : *c.dispenser(c.question.at).sump;
  const double depth = sump.depth->likely.si();
  // A round sump is as wide at every height.
  const auto volume = [&](double height) { return of_tank ? height : sump_volume(sump, height); };
  if (item.words == "it runs over the brim") return volume(depth);
  if (item.words == "the sensor is wet") return volume(sump.sensor_height->likely.si());
  if (item.words == "the lowest entry seal is wet") return volume(sump.lowest_seal->likely.si());
  return 0.5 * volume(depth);
}

std::optional<double> time_to_sensor(const Case& c) {
  const site::Sump& sump = *c.dispenser(c.question.at).sump;
  return sump_volume(sump, sump.sensor_height->likely.si()) / c.given(0);
}

/// Product of the first open end, as the question names it.
std::string product_in(const Case& c) {
  for (const site::Product& product : c.site.products) {
    if (c.question.asks.words.find("pump of " + product.id.text) != std::string::npos) return product.id.text;
  }
  return {};
}

std::optional<double> struck_flow(const Case& c) {
  const site::Dispenser& dispenser = c.dispenser(c.question.at);
  for (const site::Inlet& inlet : dispenser.inlets) {
    if (inlet.product.text == product_in(c)) return c.network(inlet.product.text).broken(dispenser, inlet);
  }
  return std::nullopt;
}

/// Flow of every riser until the stop, and what can drain of the dispenser and of pipes above their grooves.
std::optional<double> unanchored(const Case& c) {
  const site::Dispenser& dispenser = c.dispenser(c.question.at);
  double out = 0.0;
  for (const site::Inlet& inlet : dispenser.inlets) {
    if (!inlet.shear_valve) return std::nullopt;
    out += c.given(0) * c.network(inlet.product.text).broken(dispenser, inlet);
    if (inlet.liquid_above && inlet.drains) out += inlet.liquid_above->likely.si() * inlet.drains->likely.si();
  }
  return out;
}

/// Estimates of four courses, apart by more than they err: seconds of flow, or what drains.
double loss_key(const Case& c, const lesson::Phrase& item) {
  const site::Dispenser& dispenser = c.dispenser(c.question.at);
  double flow = 0.0;
  double above = 0.0;
  for (const site::Inlet& inlet : dispenser.inlets) {
    if (!inlet.shear_valve) continue;
    flow += c.network(inlet.product.text).broken(dispenser, inlet);
    above += inlet.liquid_above && inlet.drains ? inlet.liquid_above->likely.si() * inlet.drains->likely.si() : 0.0;
  }
  if (item.words.rfind("the valves do not", 0) == 0) return flow * item.values.front().value;
  const bool without_upper = item.words.find("none has an upper") != std::string::npos;
  if (without_upper && above == 0.0) return std::nan("");  // what stands above the grooves is not entered
  return flow * 0.10 + (without_upper ? above : 0.0);
}

/// By the exponent between the two readings told.
std::string hole_or_crack(const Case& c) {
  const double exponent = std::log(c.given(2) / c.given(0)) / std::log(c.given(3) / c.given(1));
  if (exponent < 0.25) return "something that line pressure";
  if (exponent < 0.75) return "a round hole";
  return exponent < 1.3 ? "a crack so narrow" : "a crack that the pressure opens";
}

/// Warming of the link, step by step.
std::optional<double> link_time(const Case& c) {
  const double constant = c.given(4);
  double temperature = c.given(2);
  double time = 0.0;
  const double step = 1e-4 * constant;
  while (temperature < c.given(3)) {
    const double slope = (c.given(0) - temperature) / constant;
    temperature += step * (slope - 0.5 * step * slope / constant);
    time += step;
  }
  return time;
}

std::string resting(const Case& c) {
  const std::string product = product_of_pump(c, c.question.at);
  OwnNetwork& network = c.network(product);
  const double gauge = network.pump().discharge_elevation->likely.si();
  const double height = c.given(0) / network.weight() + gauge;
  // The option whose height is nearest to what the gauge tells.
  std::string best;
  double least = 1e9;
  const auto consider = [&](const std::string& words, double at) {
    const bool offered = std::any_of(c.question.options.begin(), c.question.options.end(),
                                     [&](const lesson::Option& one) { return one.words.words == words; });
    if (!offered || std::abs(at - height) >= least) return;
    least = std::abs(at - height);
    best = words;
  };
  consider("the check valve of pump " + c.question.at, network.surface());
  for (const site::Dispenser& dispenser : c.site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) {
      if (inlet.product.text != product) continue;
      if (inlet.shear_valve)
        consider("the shear groove at " + dispenser.id.text, inlet.shear_valve->groove_elevation->likely.si());
      if (inlet.line_elevation)
        consider("the foot of the riser at " + dispenser.id.text, inlet.line_elevation->likely.si());
    }
    for (const site::Hose& hose : dispenser.hoses)
      consider("the nozzle of hose " + hose.id.text, hose.outlet_elevation->likely.si());
  }
  return best;
}

/// A car that gains speed, step by step.
std::optional<double> comes_tight(const Case& c) {
  const double acceleration = c.given(2) / c.given(3);
  const double slack = c.given(0) - c.given(1);
  double way = 0.0;
  double time = 0.0;
  constexpr double step = 1e-4;
  for (; way < slack; time += step) way += acceleration * (time + 0.5 * step) * step;
  return time;
}

/// The pull at which its part along the axis is the parting force and the friction of its part across.
std::optional<double> breakaway_pull(const Case& c) {
  double low = 0.0;
  double high = 1e6;
  for (int i = 0; i < 80; ++i) {
    const double pull = 0.5 * (low + high);
    (pull * std::cos(c.given(2)) - c.given(1) * pull * std::sin(c.given(2)) < c.given(0) ? low : high) = pull;
  }
  return low;
}

}  // namespace

void add_escape_evaluators(Evaluators& out) {
  out["line-volume"] = {"bore and length of each run and riser", 1e-6,
                        [](const Case& c) { return std::optional(line_volume(c, c.question.at)); }};
  out["shutoff-at-dispenser"] = {"the pump's shutoff less the weight of the fuel, from the levels entered", 2e-3,
                                 shutoff};
  out["thermal-leak"] = {"the shrinking told times the sum of runs over the time constant", 2e-3, [](const Case& c) {
                           return std::optional(line_volume(c, c.question.at) * c.given(2) / c.given(3));
                         }};
  out["leak-at-line-pressure"] = {
      "the root of the pressures told, with psi by its definition", 1e-6, [](const Case& c) {
        return std::optional(3.0 * to_si(1.0, "gal/h") * std::sqrt(c.given(2) / (10.0 * atmosphere_free_psi)));
      }};
  out["time-to-sensor"] = {"the sump's area summed over its height", 1e-3, time_to_sensor};
  out["order-sump"] = {"the sump's area summed to each height", 0.0, nullptr, nullptr, sump_key};
  out["struck-flow"] = {"the pump's curve met with the way to the groove by halving, friction by another equation",
                        0.02, struck_flow};
  out["struck-unanchored"] = {"seconds times that flow, and what the dispenser drains", 0.06, unanchored};
  out["order-by-loss"] = {"estimates that are apart by more than they err", 0.0, nullptr, nullptr, loss_key};
  out["upper-poppet-keeps"] = {"a product of two figures entered", 1e-9, [](const Case& c) {
                                 const site::Inlet* inlet = inlet_at(c, c.question.at);
                                 return std::optional(inlet->liquid_above->likely.si() * inlet->drains->likely.si());
                               }};
  out["hole-or-crack"] = {"the exponent between the two readings told", 0.0, nullptr, hole_or_crack};
  out["link-time"] = {"the link's warming integrated step by step", 2e-3, link_time};
  out["resting-pressure"] = {"the height that the gauge tells, against the heights entered", 0.0, nullptr, resting};
  out["hose-comes-tight"] = {"the car's way integrated step by step", 2e-3, comes_tight};
  out["breakaway-pull"] = {"the balance of forces, solved by halving", 1e-6, breakaway_pull};
}

}  // namespace forecourse::test
