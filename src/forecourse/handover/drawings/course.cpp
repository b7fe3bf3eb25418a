#include "forecourse/handover/drawings/course.h"

#include <algorithm>
#include <deque>
#include <map>

#include "forecourse/site/consistency/supply.h"

namespace forecourse::handover {
namespace {

template <class Part>
const Part* called(const std::vector<Part>& all, const std::string& id) {
  const auto found = std::find_if(all.begin(), all.end(), [&](const Part& one) { return one.id.text == id; });
  return found == all.end() ? nullptr : &*found;
}

const site::Inlet* inlet_for(const site::Dispenser& dispenser, const site::Hose& hose) {
  const std::vector<std::string> products = site::products_of(hose);
  for (const site::Inlet& inlet : dispenser.inlets) {
    if (products.empty() ? dispenser.inlets.size() == 1 : inlet.product.text == products.front()) return &inlet;
  }
  return nullptr;
}

/// Finds the courses of one station.
class Courses {
 public:
  explicit Courses(const site::Site& site) : site_(site), graph_(site), supply_(site, graph_) {}

  [[nodiscard]] Course to(const site::Dispenser& dispenser, const site::Hose& hose) const {
    Course out;
    out.dispenser = &dispenser;
    out.hose = &hose;
    out.inlet = inlet_for(dispenser, hose);
    for (const site::InletPlace* inlet : supply_.inlets_of(dispenser)) {
      if (inlet->inlet == out.inlet) trace(*inlet, out);
    }
    return out;
  }

 private:
  /// The pumps that bring an inlet its product; what is not entered of a product does not count against one.
  [[nodiscard]] std::vector<const site::Source*> feeding(const site::InletPlace& inlet) const {
    const std::string& product = inlet.inlet->product.text;
    std::vector<const site::Source*> out;
    for (const site::Source& source : supply_.sources()) {
      const bool runs = source.pump->running.value_or(true);
      const bool brings = source.product.empty() || product.empty() || source.product == product;
      if (runs && brings && site::Supply::reaches(source, inlet)) out.push_back(&source);
    }
    return out;
  }

  /// Against the flow, over the fewest lines, to the nearest pump that feeds the inlet.
  void trace(const site::InletPlace& inlet, Course& out) const {
    const std::vector<const site::Source*> sources = feeding(inlet);
    std::map<int, const site::LineGraph::Edge*> reached{{inlet.place, nullptr}};  // place, the edge onward from it
    std::deque<int> open{inlet.place};
    while (!open.empty() && !sources.empty()) {
      const int here = open.front();
      open.pop_front();
      const auto source =
          std::find_if(sources.begin(), sources.end(), [&](const site::Source* one) { return one->place == here; });
      if (source != sources.end()) return finish(**source, inlet.place, reached, out);
      for (const site::LineGraph::Edge& edge : graph_.edges()) {
        const bool ends_here = edge.to == here;
        if (!ends_here && (edge.one_way || edge.from != here)) continue;
        const int before = ends_here ? edge.from : edge.to;
        if (reached.try_emplace(before, &edge).second) open.push_back(before);
      }
    }
  }

  void finish(const site::Source& source, int inlet, const std::map<int, const site::LineGraph::Edge*>& reached,
              Course& out) const {
    out.pump = source.pump;
    out.tank = tank_with(site_, source.pump->tank.text);
    for (int at = source.place; at != inlet;) {
      const site::LineGraph::Edge& edge = *reached.at(at);
      const int next = edge.from == at ? edge.to : edge.from;
      out.steps.push_back({edge.line, graph_.name(at), graph_.name(next)});
      at = next;
    }
  }

  const site::Site& site_;
  site::LineGraph graph_;
  site::Supply supply_;
};

}  // namespace

const site::Tank* tank_with(const site::Site& site, const std::string& id) {
  if (const site::Tank* tank = called(site.tanks, id)) return tank;
  const auto has_it = [&](const site::Tank& tank) { return called(tank.compartments, id) != nullptr; };
  const auto found = std::find_if(site.tanks.begin(), site.tanks.end(), has_it);
  return found == site.tanks.end() || id.empty() ? nullptr : &*found;
}

double Course::length() const {
  double out = 0.0;
  for (const CourseStep& step : steps) {
    if (step.line->pipe.length) out += step.line->pipe.length->likely.si();
  }
  return out;
}

std::optional<Course> course_to(const site::Site& site, const std::string& hose) {
  for (const site::Dispenser& dispenser : site.dispensers) {
    if (const site::Hose* found = called(dispenser.hoses, hose)) return Courses(site).to(dispenser, *found);
  }
  return std::nullopt;
}

std::optional<Course> longest_course(const site::Site& site) {
  const Courses courses(site);
  std::optional<Course> out;
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Hose& hose : dispenser.hoses) {
      Course one = courses.to(dispenser, hose);
      if (!out || one.length() > out->length()) out = std::move(one);
    }
  }
  return out;
}

}  // namespace forecourse::handover
