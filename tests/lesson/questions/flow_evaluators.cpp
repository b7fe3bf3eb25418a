// What is asked of flows and pressures, by a solver of its own.

#include <algorithm>
#include <cmath>
#include <numbers>

#include "forecourse/base/unit_text.h"
#include "forecourse/site/places.h"
#include "lesson/questions/evaluators.h"

namespace forecourse::test {
namespace {

constexpr const char* own_way = "a solver of its own that goes down and up the tree, with friction by another equation";
/// Of flows: friction by the two equations differs by some percent, and lines take a part of the pressure.
constexpr double of_flow = 0.012;
/// Of pressures and losses, which go with the square.
constexpr double of_loss = 0.04;

std::string product_of(const Case& c, const std::string& hose) { return c.hose(hose).product.text; }

OwnNetwork::State all_open(const Case& c, const std::string& product) {
  return c.network(product).solve(c.hoses_of(product));
}

/// Empty where it did not settle.
std::optional<double> hose_flow(const OwnNetwork::State& state, const std::string& hose) {
  if (!state.settled) return std::nullopt;
  return state.hose.at(hose);
}

std::optional<double> alone(const Case& c) {
  return hose_flow(c.network(product_of(c, c.question.at)).solve({c.question.at}), c.question.at);
}

std::optional<double> with_all(const Case& c) {
  return hose_flow(all_open(c, product_of(c, c.question.at)), c.question.at);
}

/// The hose named behind "Then " in the question is shut.
std::optional<double> one_shuts(const Case& c) {
  const std::string& words = c.question.asks.words;
  const std::size_t begin = words.find("Then ") + 5;
  const std::string shut = words.substr(begin, words.find(" is shut") - begin);
  std::vector<std::string> open = c.hoses_of(product_of(c, c.question.at));
  open.erase(std::find(open.begin(), open.end(), shut));
  return hose_flow(c.network(product_of(c, c.question.at)).solve(open), c.question.at);
}

std::optional<double> bigger_trunk(const Case& c) {
  site::Site wider = c.site;
  for (site::Line& line : wider.lines) {
    const Length bore = Length::from_si(1.5 * line.pipe.bore->likely.si());
    line.pipe.bore = site::Entered<Length>{bore, bore, bore, {}};
  }
  const std::string product = product_of(c, c.question.at);
  for (const auto& one : c.ground.studied.flow->systems) {
    if (one.product != product) continue;
    const OwnNetwork network(wider, product, one.density, one.dynamic_viscosity);
    return hose_flow(network.solve(c.hoses_of(product)), c.question.at);
  }
  return std::nullopt;
}

std::optional<double> pressure_at_pump(const Case& c) {
  for (const site::Pump& pump : c.site.pumps) {
    if (pump.id.text != c.question.at) continue;
    for (const site::Tank& tank : c.site.tanks) {
      if (!(tank.id == pump.tank)) continue;
      OwnNetwork& network = c.network(tank.product.text);
      const OwnNetwork::State state = all_open(c, tank.product.text);
      if (!state.settled) return std::nullopt;
      const double height = pump.discharge_elevation->likely.si() - network.surface();
      return network.rise(state.total) - network.weight() * height;
    }
  }
  return std::nullopt;
}

std::optional<double> pressure_at_hose(const Case& c) {
  OwnNetwork& network = c.network(product_of(c, c.question.at));
  const OwnNetwork::State state = network.solve({c.question.at});
  if (!state.settled) return std::nullopt;
  return network.where_hose_begins(c.question.at, state);
}

std::optional<double> velocity(const Case& c) {
  for (const site::Line& line : c.site.lines) {
    if (line.id.text != c.question.at) continue;
    const std::string product = line.id.text.substr(0, line.id.text.find('-'));
    const OwnNetwork::State state = all_open(c, product);
    if (!state.settled) return std::nullopt;
    const double bore = line.pipe.bore->likely.si();
    return state.line.at(line.id.text) / (0.25 * std::numbers::pi * bore * bore);
  }
  return std::nullopt;
}

std::optional<double> filter_with_two(const Case& c) {
  const std::string dispenser = c.question.at.substr(0, c.question.at.find('.'));
  const std::string product = c.question.at.substr(c.question.at.find('.') + 1);
  OwnNetwork& network = c.network(product);
  const OwnNetwork::State state = network.solve({c.question.at + "-a", c.question.at + "-b"});
  static_cast<void>(dispenser);
  if (!state.settled) return std::nullopt;
  return network.loss_of("filter", c.question.at, state);
}

std::optional<double> curb_share(const Case& c) {
  OwnNetwork& network = c.network(product_of(c, c.question.at));
  const OwnNetwork::State state = network.solve({c.question.at});
  const site::Hose& hose = c.hose(c.question.at);
  if (!state.settled || !network.one_pump() ||
      (hose.limiter && state.hose.at(c.question.at) >= 0.999 * hose.limiter->likely.si())) {
    return std::nullopt;  // a limiter takes the rest, which is not known here
  }
  const double lift = network.weight() * (hose.outlet_elevation->likely.si() - network.surface());
  return network.loss_of("curb hose", c.question.at, state) / (network.rise(state.total) - lift);
}

std::optional<double> sale_time(const Case& c) {
  const auto flow = with_all(c);
  if (!flow) return std::nullopt;
  const bool entered = c.site.operations && c.site.operations->sale;
  return (entered ? c.site.operations->sale->likely.si() : to_si(12.0, "gal")) / *flow;
}

double hose_key(const Case& c, const lesson::Phrase& item) {
  const std::string id = item.words.substr(item.words.find(' ') + 1);
  const auto flow = hose_flow(all_open(c, c.question.at), id);
  return flow ? -*flow : std::nan("");
}

double loss_key(const Case& c, const lesson::Phrase& item) {
  const std::size_t of = item.words.find(" of ");
  OwnNetwork& network = c.network(product_of(c, c.question.at));
  const OwnNetwork::State state = all_open(c, product_of(c, c.question.at));
  return state.settled ? -network.loss_of(item.words.substr(0, of), item.words.substr(of + 4), state) : std::nan("");
}

/// The order in which the trade lists the parts of a course.
double course_key(const Case&, const lesson::Phrase& item) {
  static const std::vector<std::string> course{"pump",        "leak detector", "leg",
                                               "line",        "connection",    "riser",
                                               "shear valve", "filter",        "dispenser and hose",
                                               "meter",       "control valve", "whip hose",
                                               "breakaway",   "curb hose",     "swivel",
                                               "nozzle"};
  const auto at = std::find(course.begin(), course.end(), item.words);
  return at == course.end() ? std::nan("") : static_cast<double>(at - course.begin());
}

/// By which hoses are slow, of the six flows told.
std::string slow_part(const Case& c) {
  const auto slow = [&](std::size_t i) { return c.given(i + 3) < 0.97 * c.given(i); };
  if (slow(2)) return "the pump of ";
  return slow(1) ? "the filter of " : "what hangs at ";
}

/// Whether a filter is entered at the place that is asked about.
bool has_filter(const Case& c) {
  for (const site::Dispenser& dispenser : c.site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) {
      if (site::place_name(dispenser, inlet) == c.question.at) return inlet.filter.has_value();
    }
  }
  return false;
}

/// By which gauge shows more, of flow, pump and dispenser as they should be and as they are.
std::string faulty_part(const Case& c) {
  const bool pump_more = c.given(4) > c.given(1);
  const bool place_more = c.given(5) > c.given(2);
  if (!pump_more) return "the pump";
  if (!place_more) return "the line between ";
  return has_filter(c) ? "the filter of " : "what hangs at ";
}

}  // namespace

void add_flow_evaluators(Evaluators& out) {
  out["hose-flow-alone"] = {own_way, of_flow, alone};
  out["flow-all-open"] = {own_way, of_flow, with_all};
  out["one-hose-shuts"] = {own_way, of_flow, one_shuts};
  out["bigger-trunk"] = {own_way, of_flow, bigger_trunk};
  out["pressure-at-pump"] = {own_way, 0.012, pressure_at_pump};
  out["pressure-at-hose"] = {own_way, of_loss, pressure_at_hose};
  out["velocity-in-trunk"] = {own_way, of_flow, velocity};
  out["filter-with-two-hoses"] = {own_way, of_loss, filter_with_two};
  out["curb-hose-share"] = {own_way, of_loss, curb_share};
  out["fueling-time"] = {own_way, of_flow, sale_time};
  out["order-hoses"] = {own_way, 0.0, nullptr, nullptr, hose_key};
  out["order-losses"] = {own_way, 0.0, nullptr, nullptr, loss_key};
  out["order-course"] = {"the order in which the trade lists parts, not that of the study", 0.0, nullptr, nullptr,
                         course_key};
  out["slow-hose"] = {"reasoned from the flows told alone: what all slow hoses share", 0.0, nullptr, slow_part};
  out["pump-or-line"] = {"reasoned from the gauges told alone: pressure rises before a choke", 0.0, nullptr,
                         faulty_part};
}

}  // namespace forecourse::test
