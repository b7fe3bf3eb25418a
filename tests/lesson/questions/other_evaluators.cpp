// What is asked in words: interlocks, where lines drain, why a month is short.

#include <algorithm>
#include <cmath>

#include "forecourse/base/unit_text.h"
#include "lesson/questions/evaluators.h"

namespace forecourse::test {
namespace {

std::string interlock(const Case& c) {
  for (const site::Interlock& one : c.site.interlocks) {
    if (one.when.text != c.question.at) continue;
    if (one.then->value == site::InterlockAction::alarm) return "nothing stops";
    std::vector<std::string> ids;
    for (const site::Name& name : one.what) ids.push_back(name.text);
    std::sort(ids.begin(), ids.end());
    std::string out = ids.front();
    for (std::size_t i = 1; i < ids.size(); ++i) out += (i + 1 == ids.size() ? " and " : ", ") + ids[i];
    return out + (ids.size() == 1 ? " stops" : " stop");
  }
  return {};
}

/// The cause whose own shortage is nearest to that told.
std::string short_month(const Case& c) {
  const double sold = c.given(0);
  const double gallon = to_si(1.0, "gal");
  std::vector<std::pair<std::string, double>> causes{{"its meters", 0.003 * sold},
                                                     {"its tank or line leaks 0.2 gph", 0.2 * 24.0 * 30.0 * gallon},
                                                     {"its line leaks 3 gph", 3.0 * 24.0 * gallon}};
  for (const site::Delivery& delivery : c.site.deliveries) {
    const site::TruckCompartment& load = delivery.compartments.front();
    if (load.product.text != c.question.at || !load.temperature) continue;
    double stored = c.site.ground_temperature ? c.site.ground_temperature->likely.si() : 0.0;
    for (const site::Tank& tank : c.site.tanks) {
      if (tank.id == load.tank && tank.reading && tank.reading->temperature)
        stored = tank.reading->temperature->likely.si();
    }
    // SOURCE: common practice, no source: 0.00124 and 0.00083 for each K
    const double expansion = c.question.at == "diesel" ? 8.3e-4 : 1.24e-3;
    causes.emplace_back("every load", expansion * (load.temperature->likely.si() - stored) * sold);
  }
  std::string best;
  double least = 1e9;
  for (const auto& [words, amount] : causes) {
    const bool offered =
        std::any_of(c.question.options.begin(), c.question.options.end(),
                    [&w = words](const lesson::Option& one) { return one.words.words.rfind(w, 0) == 0; });
    if (!offered || std::abs(std::log(amount / c.given(1))) >= least) continue;
    least = std::abs(std::log(amount / c.given(1)));
    best = words;
  }
  return best;
}

std::optional<double> seconds_saved(const Case& c) {
  for (const site::Line& line : c.site.lines) {
    if (line.id.text != c.question.at) continue;
    const double flow = c.network(line.id.text.substr(0, line.id.text.find('-'))).broken(line);
    if (!std::isnan(flow)) return c.given(0) * flow;
  }
  return std::nullopt;
}

/// Height of a place of a line; NaN: not entered.
double height_of(const Case& c, const std::string& place) {
  for (const site::Pump& pump : c.site.pumps) {
    if (pump.id.text == place && pump.discharge_elevation) return pump.discharge_elevation->likely.si();
  }
  for (const site::Branch& branch : c.site.branches) {
    if (branch.id.text == place && branch.elevation) return branch.elevation->likely.si();
  }
  for (const site::Dispenser& dispenser : c.site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) {
      if (dispenser.id.text + "." + inlet.product.text == place && inlet.line_elevation) {
        return inlet.line_elevation->likely.si();
      }
    }
  }
  return std::nan("");
}

/// The sump at the lower end of the line.
std::string where_drains(const Case& c) {
  for (const site::Line& line : c.site.lines) {
    if (line.id.text != c.question.at) continue;
    const bool back = height_of(c, line.from.text) < height_of(c, line.to.text);
    const std::string lower = back ? line.from.text : line.to.text;
    if (lower[0] == 'D') return "in the sump of " + lower.substr(0, lower.find('.'));
    return "in the sump of T" + lower.substr(1);
  }
  return {};
}

}  // namespace

void add_other_evaluators(Evaluators& out) {
  out["where-drains"] = {"the heights entered for both ends of the line", 0.0, nullptr, where_drains};
  out["sensor-stops"] = {"the interlock as entered, read another way", 0.0, nullptr, interlock};
  out["short-month"] = {"each cause's shortage by hand, with common expansions", 0.0, nullptr, short_month};
  out["seconds-saved"] = {"the pump's curve met with the way to the break by halving, friction by another equation",
                          0.02, seconds_saved};
}

}  // namespace forecourse::test
