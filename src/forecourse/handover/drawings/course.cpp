#include "forecourse/handover/drawings/course.h"

#include <algorithm>
#include <deque>
#include <map>

#include "forecourse/site/places.h"

namespace forecourse::handover {
namespace {

template <class Part>
const Part* called(const std::vector<Part>& all, const std::string& id) {
  const auto found = std::find_if(all.begin(), all.end(), [&](const Part& one) { return one.id.text == id; });
  return found == all.end() ? nullptr : &*found;
}

const site::Inlet* inlet_for(const site::Dispenser& dispenser, const site::Hose& hose) {
  const site::Name& product = hose.product.empty() && !hose.blend.empty() ? hose.blend.front().product : hose.product;
  for (const site::Inlet& inlet : dispenser.inlets) {
    if (inlet.product == product || (product.empty() && dispenser.inlets.size() == 1)) return &inlet;
  }
  return nullptr;
}

}  // namespace

const site::Tank* tank_with(const site::Site& site, const std::string& id) {
  if (const site::Tank* tank = called(site.tanks, id)) return tank;
  const auto has_it = [&](const site::Tank& tank) { return called(tank.compartments, id) != nullptr; };
  const auto found = std::find_if(site.tanks.begin(), site.tanks.end(), has_it);
  return found == site.tanks.end() || id.empty() ? nullptr : &*found;
}

namespace {

/// Whether a pump brings a product, as far as that is entered.
bool brings(const site::Site& site, const site::Pump& pump, const std::string& product) {
  const site::Tank* tank = tank_with(site, pump.tank.text);
  if (tank == nullptr || product.empty()) return true;
  if (tank->product.text == product) return true;
  const bool of_one = tank->id.text != pump.tank.text;
  return std::any_of(tank->compartments.begin(), tank->compartments.end(), [&](const site::Compartment& one) {
    return one.product.text == product && (!of_one || one.id.text == pump.tank.text);
  });
}

/// From an inlet over lines to the nearest pump that brings its product.
void trace(const site::Site& site, const std::string& start, Course& out) {
  std::map<std::string, CourseStep> reached{{start, {}}};
  std::deque<std::string> open{start};
  while (!open.empty()) {
    const std::string here = open.front();
    open.pop_front();
    const site::Pump* pump = called(site.pumps, here);
    if (pump != nullptr && brings(site, *pump, out.inlet->product.text)) {
      out.pump = pump;
      break;
    }
    for (const site::Line& line : site.lines) {
      const bool ends_here = line.to.text == here;
      if (!ends_here && line.from.text != here) continue;
      const std::string& other = ends_here ? line.from.text : line.to.text;
      if (reached.try_emplace(other, CourseStep{&line, other, here}).second) open.push_back(other);
    }
  }
  if (out.pump == nullptr) return;
  for (std::string at = out.pump->id.text; at != start; at = out.steps.back().to) out.steps.push_back(reached[at]);
  out.tank = tank_with(site, out.pump->tank.text);
}

}  // namespace

double Course::length() const {
  double out = 0.0;
  for (const CourseStep& step : steps) {
    if (step.line->pipe.length) out += step.line->pipe.length->likely.si();
  }
  return out;
}

std::optional<Course> course_to(const site::Site& site, const std::string& hose) {
  for (const site::Dispenser& dispenser : site.dispensers) {
    const site::Hose* found = called(dispenser.hoses, hose);
    if (found == nullptr) continue;
    Course out;
    out.dispenser = &dispenser;
    out.hose = found;
    out.inlet = inlet_for(dispenser, *found);
    if (out.inlet != nullptr) trace(site, site::place_name(dispenser, *out.inlet), out);
    return out;
  }
  return std::nullopt;
}

std::optional<Course> longest_course(const site::Site& site) {
  std::optional<Course> out;
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Hose& hose : dispenser.hoses) {
      std::optional<Course> one = course_to(site, hose.id.text);
      if (one && (!out || one->length() > out->length())) out = std::move(one);
    }
  }
  return out;
}

}  // namespace forecourse::handover
