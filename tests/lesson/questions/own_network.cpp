#include "lesson/questions/own_network.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "forecourse/site/places.h"
#include "lesson/questions/own_tank.h"

namespace forecourse::test {
namespace {

constexpr double gravity = 9.80665;  // SOURCE: [nist_sp811, appendix B.8]

/// SOURCE: [churchill_1977, equation for all flow regimes, from memory, not verified]
double friction(double reynolds, double roughness) {
  const double a = std::pow(-2.457 * std::log(std::pow(7.0 / reynolds, 0.9) + 0.27 * roughness), 16.0);
  const double b = std::pow(37530.0 / reynolds, 16.0);
  return 8.0 * std::pow(std::pow(8.0 / reynolds, 12.0) + std::pow(a + b, -1.5), 1.0 / 12.0);
}

double area(double bore) { return 0.25 * std::numbers::pi * bore * bore; }

/// Flow at which a rising loss takes what is there.
template <class Loss>
double flow_for(double there, Loss loss) {
  if (there <= 0.0) return 0.0;
  double low = 0.0;
  double high = 0.05;
  for (int i = 0; i < 50; ++i) {
    const double middle = 0.5 * (low + high);
    (loss(middle) < there ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace

OwnNetwork::OwnNetwork(const site::Site& site, std::string product, double density, double viscosity)
    : site_(site), product_(std::move(product)), density_(density), viscosity_(viscosity) {
  for (const site::Pump& pump : site.pumps) {
    for (const site::Tank& tank : site.tanks) {
      if (tank.id == pump.tank && tank.product.text == product_) pumps_.push_back(&pump);
    }
  }
  for (const site::Line& line : site.lines) {
    if (!pumps_.empty() && line.from == pumps_.front()->id) root_ = line.to.text;
  }
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) {
      if (inlet.product.text != product_) continue;
      for (const site::Hose& hose : dispenser.hoses) {
        if (hose.product.text == product_)
          hoses_.push_back({&dispenser, &inlet, &hose, site::place_name(dispenser, inlet)});
      }
    }
  }
}

double OwnNetwork::weight() const { return density_ * gravity; }

double OwnNetwork::entered(const site::EnteredLoss& loss, double bore, double flow) const {
  if (loss.k) {
    const double velocity = flow / area(loss.bore ? loss.bore->likely.si() : bore);
    return 0.5 * loss.k->likely * density_ * velocity * velocity;
  }
  const double linear = loss.per_flow ? loss.per_flow->likely.si() : 0.0;
  const double square = loss.per_flow_squared ? loss.per_flow_squared->likely.si() : 0.0;
  return linear * flow + square * flow * flow;
}

double OwnNetwork::pipe(const site::Pipe& pipe, double flow) const {
  if (flow <= 0.0) return 0.0;
  const double bore = pipe.bore->likely.si();
  const double velocity = flow / area(bore);
  const double reynolds = density_ * velocity * bore / viscosity_;
  const double f = friction(reynolds, pipe.roughness->likely.si() / bore);
  const double along = f * pipe.length->likely.si() / bore * 0.5 * density_ * velocity * velocity;
  return along + (pipe.loss ? entered(*pipe.loss, bore, flow) : 0.0);
}

double OwnNetwork::part(const std::optional<site::Part>& part, double flow) const {
  return part && part->loss ? entered(*part->loss, 0.0, flow) : 0.0;
}

double OwnNetwork::inlet_loss(const site::Inlet& inlet, double flow, bool to_groove) const {
  const double bore = inlet.riser->bore->likely.si();
  double out = pipe(*inlet.riser, flow);
  if (inlet.connection_loss) out += entered(*inlet.connection_loss, bore, flow);
  if (inlet.shear_valve && inlet.shear_valve->loss) out += entered(*inlet.shear_valve->loss, bore, flow);
  if (to_groove) return out + (inlet.discharge_loss ? entered(*inlet.discharge_loss, bore, flow) : 0.0);
  return out + part(inlet.filter, flow);
}

double OwnNetwork::hose_loss(const site::Hose& hose, double flow) const {
  if (hose.loss) return entered(*hose.loss, 0.0, flow);
  double out = part(hose.meter, flow) + part(hose.control_valve, flow) + part(hose.breakaway, flow) +
               part(hose.swivel, flow) + part(hose.nozzle, flow);
  if (hose.whip) out += pipe(*hose.whip, flow);
  if (hose.curb) out += pipe(*hose.curb, flow);
  return out;
}

double OwnNetwork::rise(double flow) const {
  const site::Pump& pump = *pumps_.front();
  return pump.curve->shutoff->likely.si() - pump.curve->per_flow_squared->likely.si() * flow * flow;
}

double OwnNetwork::surface() const {
  for (const site::Tank& tank : site_.tanks) {
    if (tank.id == pumps_.front()->tank) {
      if (tank.shape) return OwnTank(tank).surface();
      return tank.bottom_elevation->likely.si() + tank.reading->depth->likely.si();
    }
  }
  return 0.0;
}

double OwnNetwork::pump_flow(const site::Pump& pump, double root) const {
  double level = 0.0;
  for (const site::Tank& tank : site_.tanks) {
    if (tank.id != pump.tank) continue;
    level =
        tank.shape ? OwnTank(tank).surface() : tank.bottom_elevation->likely.si() + tank.reading->depth->likely.si();
  }
  const site::Line* line = nullptr;
  for (const site::Line& one : site_.lines) {
    if (one.from == pump.id) line = &one;
  }
  const double there = pump.curve->shutoff->likely.si() + weight() * level - root;
  return flow_for(there, [&](double q) {
    double out = pump.curve->per_flow_squared->likely.si() * q * q + pipe(line->pipe, q);
    if (pump.leak_detector && pump.leak_detector->loss) out += entered(*pump.leak_detector->loss, 0.0, q);
    return out;
  });
}

double OwnNetwork::supply_at_root(double total) const {
  if (one_pump()) {
    double out = rise(total) + weight() * surface();
    for (const site::Line& line : site_.lines) {
      if (line.from == pump().id) out -= pipe(line.pipe, total);
    }
    const auto& detector = pump().leak_detector;
    return detector && detector->loss ? out - entered(*detector->loss, 0.0, total) : out;
  }
  double low = -2e6;
  double high = 1e6;
  for (int i = 0; i < 45; ++i) {
    const double middle = 0.5 * (low + high);
    double sum = 0.0;
    for (const site::Pump* pump : pumps_) sum += pump_flow(*pump, middle);
    (sum > total ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

double OwnNetwork::add_up(const std::string& place, const std::map<std::string, double>& drawn, State& state) const {
  const auto own = drawn.find(place);
  double sum = own == drawn.end() ? 0.0 : own->second;
  for (const site::Line& line : site_.lines) {
    if (line.from.text != place) continue;
    const double through = add_up(line.to.text, drawn, state);
    state.line[line.id.text] = through;
    sum += through;
  }
  return sum;
}

void OwnNetwork::go_down(const std::string& from, State& state) const {
  for (const site::Line& line : site_.lines) {
    if (line.from.text != from) continue;
    state.place[line.to.text] = state.place[from] - pipe(line.pipe, state.line[line.id.text]);
    go_down(line.to.text, state);
  }
}

OwnNetwork::State OwnNetwork::solve(const std::vector<std::string>& open) const {
  State state;
  for (const std::string& id : open) state.hose[id] = 4e-4;
  for (int round = 0; round < 400 && !state.settled; ++round) {
    std::map<std::string, double> drawn;
    for (const auto& [id, flow] : state.hose) drawn[find(id).place] += flow;
    state.total = add_up(root_, drawn, state);
    for (const site::Pump* pump : pumps_) {
      for (const site::Line& line : site_.lines) {
        if (!(line.from == pump->id)) continue;
        state.line[line.id.text] = one_pump() ? state.total : pump_flow(*pump, state.place[root_]);
      }
    }
    state.place[root_] = supply_at_root(state.total);
    go_down(root_, state);
    double moved = 0.0;
    for (auto& [id, flow] : state.hose) {
      const HoseAt& at = find(id);
      const double there = state.place[at.place] - inlet_loss(*at.inlet, drawn[at.place], false) -
                           weight() * at.hose->outlet_elevation->likely.si();
      double wanted = there > 0.0 ? flow * std::sqrt(there / hose_loss(*at.hose, flow)) : 0.5 * flow;
      if (at.hose->limiter) wanted = std::min(wanted, at.hose->limiter->likely.si());
      moved = std::max(moved, std::abs(wanted - flow));
      flow += 0.18 * (wanted - flow);
    }
    state.settled = moved < 2e-8;
  }
  return state;
}

std::vector<const site::Line*> OwnNetwork::way_to(const std::string& place) const {
  std::vector<const site::Line*> way;
  for (std::string at = place; at != root_;) {
    const auto line =
        std::find_if(site_.lines.begin(), site_.lines.end(), [&](const site::Line& one) { return one.to.text == at; });
    if (line == site_.lines.end()) break;
    way.push_back(&*line);
    at = line->from.text;
  }
  return way;
}

double OwnNetwork::broken(const site::Dispenser& dispenser, const site::Inlet& inlet) const {
  const std::vector<const site::Line*> way = way_to(site::place_name(dispenser, inlet));
  const double up = weight() * inlet.shear_valve->groove_elevation->likely.si();
  return flow_for(1e7, [&](double q) {
    double left = supply_at_root(q) - up - inlet_loss(inlet, q, true);
    for (const site::Line* line : way) left -= pipe(line->pipe, q);
    return left > 0.0 ? 0.0 : 1e8;  // halved down to where nothing is left
  });
}

double OwnNetwork::height(const std::string& place) const {
  const auto entered_or_none = [](const site::Maybe<Length>& one) { return one ? one->likely.si() : std::nan(""); };
  for (const site::Pump& one : site_.pumps) {
    if (one.id.text == place) return entered_or_none(one.discharge_elevation);
  }
  for (const site::Branch& one : site_.branches) {
    if (one.id.text == place) return entered_or_none(one.elevation);
  }
  for (const HoseAt& at : hoses_) {
    if (at.place == place) return entered_or_none(at.inlet->line_elevation);
  }
  return std::nan("");
}

double OwnNetwork::broken(const site::Line& line) const {
  const double up = weight() * 0.5 * (height(line.from.text) + height(line.to.text));
  if (std::isnan(up) || !one_pump()) return std::nan("");
  const bool first = line.from == pump().id;
  const std::vector<const site::Line*> way = first ? std::vector<const site::Line*>{} : way_to(line.from.text);
  const double bore = line.pipe.bore->likely.si();
  return flow_for(1e7, [&](double q) {
    const double velocity = q / area(bore);
    double left = supply_at_root(q) - up - 0.5 * density_ * velocity * velocity;
    left += (first ? 0.5 : -0.5) * pipe(line.pipe, q);
    for (const site::Line* one : way) left -= pipe(one->pipe, q);
    return left > 0.0 ? 0.0 : 1e8;
  });
}

const OwnNetwork::HoseAt& OwnNetwork::find(const std::string& hose) const {
  return *std::find_if(hoses_.begin(), hoses_.end(), [&](const HoseAt& one) { return one.hose->id.text == hose; });
}

double OwnNetwork::where_hose_begins(const std::string& hose, const State& state) const {
  const HoseAt& at = find(hose);
  double through = 0.0;
  for (const auto& [id, flow] : state.hose) through += find(id).place == at.place ? flow : 0.0;
  return state.place.at(at.place) - inlet_loss(*at.inlet, through, false) -
         weight() * at.dispenser->elevation->likely.si();
}

double OwnNetwork::loss_of(const std::string& name, const std::string& owner, const State& state) const {
  for (const site::Line& line : site_.lines) {
    if (name == "line" && line.id.text == owner) return pipe(line.pipe, state.line.at(owner));
  }
  for (const site::Pump* pump : pumps_) {
    if (name == "leak detector" && pump->id.text == owner) {
      return entered(*pump->leak_detector->loss, 0.0,
                     one_pump() ? state.total : pump_flow(*pump, state.place.at(root_)));
    }
  }
  for (const HoseAt& at : hoses_) {
    if (at.hose->id.text == owner) {
      const double q = state.hose.at(owner);
      if (name == "meter") return part(at.hose->meter, q);
      if (name == "control valve") return part(at.hose->control_valve, q);
      if (name == "breakaway") return part(at.hose->breakaway, q);
      if (name == "swivel") return part(at.hose->swivel, q);
      if (name == "nozzle") return part(at.hose->nozzle, q);
      if (name == "whip hose") return pipe(*at.hose->whip, q);
      if (name == "curb hose") return pipe(*at.hose->curb, q);
      if (name == "dispenser and hose") return entered(*at.hose->loss, 0.0, q);
    }
    if (at.place != owner) continue;
    double q = 0.0;
    for (const auto& [id, flow] : state.hose) q += find(id).place == owner ? flow : 0.0;
    const double bore = at.inlet->riser->bore->likely.si();
    if (name == "filter") return part(at.inlet->filter, q);
    if (name == "riser") return pipe(*at.inlet->riser, q);
    if (name == "connection") return entered(*at.inlet->connection_loss, bore, q);
    if (name == "shear valve") return entered(*at.inlet->shear_valve->loss, bore, q);
  }
  return std::nan("");
}

}  // namespace forecourse::test
