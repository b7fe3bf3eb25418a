#include "forecourse/studies/flow/rest/course_fill.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "forecourse/base/index.h"
#include "forecourse/parts/inverse.h"

namespace forecourse::studies {
namespace {

using network::Element;
using network::PipingSystem;
using network::Run;
using network::RunKind;

constexpr double infinite = std::numeric_limits<double>::infinity();

double volume_of(const Element& element) {
  return 0.25 * std::numbers::pi * element.bore * element.bore * element.length;
}

double volume_of(const Run& run) {
  double sum = 0.0;
  for (const Element& element : run.elements) sum += volume_of(element);
  return sum;
}

double opening_elevation(const PipingSystem& system, int node) {
  return system.openings[at(node) - system.places.size()].elevation;
}

/// A run as passed on the way.
struct Step {
  const Run* run = nullptr;
  bool backwards = false;

  [[nodiscard]] int start() const { return backwards ? run->to : run->from; }
  [[nodiscard]] int end() const { return backwards ? run->from : run->to; }
};

/// Shortest ways by volume from the running pumps to every place (Bellman and Ford).
class Ways {
 public:
  explicit Ways(const PipingSystem& system)
      : system_(system), volume_(system.places.size() + system.openings.size(), infinite), last_(volume_.size()) {
    for (const network::PumpPoint& pump : system.pumps) {
      if (pump.running) shorten({&system.runs[at(pump.run)], false}, 0.0);
    }
    for (std::size_t round = 0; round < volume_.size(); ++round) {
      if (!shorten_all()) break;
    }
  }

  /// The steps to a place; empty if no pump reaches it.
  [[nodiscard]] std::vector<Step> to(int node) const {
    std::vector<Step> steps;
    while (at(node) < system_.places.size() && std::isfinite(volume_[at(node)]) && steps.size() < last_.size()) {
      steps.push_back(last_[at(node)]);
      node = steps.back().start();
    }
    if (steps.empty() || steps.back().run->kind != RunKind::pump) return {};
    std::reverse(steps.begin(), steps.end());
    return steps;
  }

 private:
  bool shorten(const Step& step, double before) {
    const double volume = before + volume_of(*step.run);
    if (!(volume < volume_[at(step.end())])) return false;
    volume_[at(step.end())] = volume;
    last_[at(step.end())] = step;
    return true;
  }

  bool shorten_all() {
    bool any = false;
    for (const Run& run : system_.runs) {
      if (run.kind == RunKind::pump || run.kind == RunKind::hose) continue;
      any = shorten({&run, false}, volume_[at(run.from)]) || any;
      if (run.bounds.lowest < 0.0) any = shorten({&run, true}, volume_[at(run.to)]) || any;
    }
    return any;
  }

  const PipingSystem& system_;
  std::vector<double> volume_;  ///< [m3] per node
  std::vector<Step> last_;      ///< per node
};

/// Elevation along the way by its length, from the points that have one.
class Profile {
 public:
  void add(double length, double elevation) { points_.push_back({length, elevation}); }
  [[nodiscard]] double at_length(double length) const {
    const auto next = std::find_if(points_.begin(), points_.end(), [&](const auto& p) { return p.length >= length; });
    if (next == points_.begin()) return next->elevation;
    if (next == points_.end()) return points_.back().elevation;
    const Point& before = *(next - 1);
    const double share = (length - before.length) / (next->length - before.length);
    return before.elevation + share * (next->elevation - before.elevation);
  }

 private:
  struct Point {
    double length, elevation;
  };
  std::vector<Point> points_;
};

Profile profile_of(const PipingSystem& system, const std::vector<Step>& steps, double surface) {
  const auto known = [&](int node) {
    const bool is_place = at(node) < system.places.size();
    if (!is_place) return std::optional(opening_elevation(system, node));
    const network::Place& place = system.places[at(node)];
    return system.elevations_known && place.elevation_entered ? std::optional(place.elevation) : std::nullopt;
  };
  Profile profile;
  profile.add(0.0, known(steps.front().end()).value_or(surface));  // the pump's own column stays full
  double length = 0.0;
  for (const Step& step : steps) {
    for (const Element& element : step.run->elements) length += element.length;
    if (const auto elevation = known(step.end())) profile.add(length, *elevation);
  }
  return profile;
}

std::size_t pump_of(const PipingSystem& system, const Run& run) {
  const auto found = std::find_if(system.pumps.begin(), system.pumps.end(),
                                  [&](const network::PumpPoint& pump) { return &system.runs[at(pump.run)] == &run; });
  return static_cast<std::size_t>(found - system.pumps.begin());
}

std::optional<FillCourse> fill_course(const PipingSystem& system, const Ways& ways, const network::HosePoint& hose) {
  const Run& last = system.runs[at(hose.run)];
  std::vector<Step> steps = ways.to(last.from);
  if (steps.empty()) return std::nullopt;
  steps.push_back({&last, false});
  FillCourse course;
  course.pump = pump_of(system, *steps.front().run);
  course.surface = opening_elevation(system, steps.front().start());
  course.outlet = opening_elevation(system, last.to);
  const Profile profile = profile_of(system, steps, course.surface);
  double length = 0.0;
  for (const Step& step : steps) {
    const double limit = step.run == &last ? hose.limit * hose.share : infinite;
    const std::size_t count = step.run->elements.size();
    for (std::size_t i = 0; i < count; ++i) {
      const Element& element = step.run->elements[step.backwards ? count - 1 - i : i];
      const double end = length + element.length;
      course.parts.push_back({&element, volume_of(element), profile.at_length(length), profile.at_length(end), limit});
      length = end;
    }
  }
  return course;
}

}  // namespace

double FillCourse::volume() const {
  double sum = 0.0;
  for (const CoursePart& part : parts) sum += part.volume;
  return sum;
}

std::vector<std::optional<FillCourse>> fill_courses(const PipingSystem& system) {
  const Ways ways(system);
  std::vector<std::optional<FillCourse>> courses;
  for (const network::HosePoint& hose : system.hoses) courses.push_back(fill_course(system, ways, hose));
  return courses;
}

std::vector<double> fill_marks(const FillCourse& course) {
  std::vector<double> marks{0.0};
  for (const CoursePart& part : course.parts) {
    if (part.volume > 0.0) marks.push_back(marks.back() + part.volume);
  }
  return marks;
}

double flow_into(const PipingSystem& system, std::size_t pump, double pressure) {
  const Run& run = system.runs[at(system.pumps[pump].run)];
  const auto loss_at = [&](double q) {
    parts::Loss sum;
    for (const Element& element : run.elements) sum = sum + network::loss(element, q);
    return sum;
  };
  const double flow = parts::flow_anywhere(loss_at, -pressure);
  return flow > 0.0 ? flow : 0.0;
}

}  // namespace forecourse::studies
