#include "forecourse/report/drawing/course_paths.h"

#include <algorithm>
#include <array>
#include <utility>

#include "forecourse/site/places.h"

namespace forecourse::report::drawing {
namespace {

using studies::CourseStops;
using studies::GradePoint;

constexpr std::size_t tank = 2, pump = 3, line = 4, sump = 5, shear_valve = 6, meter = 7, hose = 8, nozzle = 9;

/// Stops of the parts between two places; all others belong to the hose.
constexpr auto stops_of_parts =
    std::to_array<std::pair<network::ElementKind, std::size_t>>({{network::ElementKind::riser, shear_valve},
                                                                 {network::ElementKind::shear_valve, shear_valve},
                                                                 {network::ElementKind::filter, meter},
                                                                 {network::ElementKind::meter, meter},
                                                                 {network::ElementKind::control_valve, meter},
                                                                 {network::ElementKind::nozzle, nozzle}});

/// What a path calls an item of a list: its id, else its number from 1.
template <class T>
std::string item(const std::vector<T>& all, const T& one) {
  return one.id.empty() ? std::to_string(&one - all.data() + 1) : one.id.text;
}

/// The line that leaves the pump, else the one that leads to the place where the course leaves the lines.
std::string line_path(const site::Site& site, const CourseStops& course) {
  const auto with = [&](const site::Name site::Line::*end, const std::string& place) {
    return std::find_if(site.lines.begin(), site.lines.end(),
                        [&](const site::Line& l) { return (l.*end).text == place; });
  };
  auto found = course.pump.empty() ? site.lines.end() : with(&site::Line::from, course.pump);
  if (found == site.lines.end()) found = with(&site::Line::to, course.inlet);
  return found == site.lines.end() ? "" : "line." + found->id.text;
}

std::string inlet_path(const Listed& listed) {
  const site::Inlet& inlet = *listed.inlet;
  const std::string& name = inlet.id.empty() ? inlet.product.text : inlet.id.text;
  return "dispenser." + listed.dispenser->id.text + ".inlet." + name;
}

/// Adds a key below a path where there is something at it.
template <class T>
std::string below(const std::string& path, const char* key, const T& entered) {
  return entered ? path + "." + key : path;
}

}  // namespace

std::array<std::string, 11> course_paths(const site::Site& site, const Listed& listed, const CourseStops& course) {
  std::array<std::string, 11> out;
  if (listed.delivery != nullptr) out[0] = "delivery." + listed.delivery->id.text;
  if (listed.tank != nullptr) {
    const site::Tank& t = *listed.tank;
    out[tank] = "tank." + t.id.text;
    out[1] = t.fills.empty() ? "" : out[tank] + ".fill." + item(t.fills, t.fills.front());
    out[10] = t.vents.empty() ? "" : out[tank] + ".vent." + item(t.vents, t.vents.front());
  }
  if (listed.pump != nullptr) out[pump] = "pump." + listed.pump->id.text;
  out[line] = line_path(site, course);
  if (listed.dispenser == nullptr) return out;
  const std::string dispenser = "dispenser." + listed.dispenser->id.text;
  out[sump] = below(dispenser, "sump", listed.dispenser->sump);
  out[shear_valve] = dispenser;
  out[meter] = dispenser;
  if (listed.inlet != nullptr) {
    out[shear_valve] = below(inlet_path(listed), "shear_valve", listed.inlet->shear_valve);
    if (listed.inlet->meter) out[meter] = inlet_path(listed) + ".meter";
  }
  if (listed.hose == nullptr) return out;
  out[hose] = dispenser + ".hose." + listed.hose->id.text;
  out[nozzle] = below(out[hose], "nozzle", listed.hose->nozzle);
  if (listed.hose->meter) out[meter] = out[hose] + ".meter";
  return out;
}

svg::Shows shown_at(const GradePoint& point, const CourseStops& course, const std::array<std::string, 11>& paths) {
  const auto at = [&](std::size_t stop) { return svg::Shows{static_cast<int>(stop) + 1, paths[stop]}; };
  if (point.part.empty()) {
    if (point.place == course.tank) return at(tank);
    if (point.place == course.pump) return at(pump);
    if (point.place == course.inlet) return at(sump);
    if (course.outlet && point.place == course.outlet->place && point.distance >= course.outlet->distance) {
      return at(nozzle);
    }
    return point.place.ends_with(" at the dispenser") ? at(shear_valve) : at(line);
  }
  for (const auto& [kind, stop] : stops_of_parts) {
    if (point.part == network::word(kind)) return at(stop);
  }
  return at(hose);
}

}  // namespace forecourse::report::drawing
