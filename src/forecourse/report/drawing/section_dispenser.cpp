#include <algorithm>

#include "forecourse/report/drawing/section_parts.h"
#include "forecourse/report/svg/shapes.h"

namespace forecourse::report::drawing {
namespace {

using svg::at;
using svg::Point;

constexpr double housing_height = 1.6;  // [m] drawn, not entered

std::string sump(const Section& s, const Frame& f) {
  const bool listed = s.sump_floor.has_value();
  const double floor = s.sump_floor.value_or(std::min(s.line.back().elevation - 0.3, -0.3));
  const double width = across::sump_right - across::sump_left;
  std::string out =
      svg::rectangle({across::sump_left, f.ground()}, width, f.y(floor) - f.ground(), listed ? "sump" : "sump absent");
  if (s.sensor) {
    const double y = f.y(floor + *s.sensor);
    out += svg::path("M" + at({across::sump_right - 1.0, y}) + "h-14", "edge") +
           svg::rectangle({across::sump_right - 19.0, y - 3.0}, 5.0, 6.0, "motor");
  }
  return out;
}

/// Two triangles point to point, across the dashed line of the island's top.
std::string shear_valve(const Section& s, const Frame& f) {
  const bool listed = s.stops[6].listed;
  const double y = f.y(s.groove.value_or(s.island));
  const double x = across::riser;
  return svg::path("M" + at({x - 20.0, y}) + "h40", "break-line") +
         svg::path("M" + at({x - 6.0, y - 9.0}) + "h12l-12 18h12z", listed ? "symbol" : "symbol absent");
}

std::string housing(const Section& s, const Frame& f) {
  const double base = f.y(s.island);
  const double height = f.pixels(housing_height);
  std::string out;
  if (s.island > 0.0) {
    out += svg::rectangle({across::housing_left - 14.0, base}, across::housing_right - across::housing_left + 28.0,
                          f.ground() - base, "slab");
  }
  out += svg::rectangle({across::housing_left, base - height}, across::housing_right - across::housing_left, height,
                        "housing");
  const Point meter{across::riser, f.y(s.island + 0.75)};
  const char* look = s.stops[7].listed ? "symbol" : "symbol absent";
  out += svg::path("M" + at({across::riser, f.y(s.groove.value_or(s.island))}) + "V" + svg::coordinate(meter.y) + "V" +
                       svg::coordinate(base - height + 9.0) + "H" + svg::coordinate(across::housing_right),
                   "inner");
  out += svg::circle(meter, 11.0, look) + svg::label({meter.x, meter.y + 4.0}, "FQ", "symbol-text");
  return out + svg::label({0.5 * (across::housing_left + across::housing_right), base - height - 7.0}, s.dispenser,
                          "name middle on-sheet");
}

/// A vehicle from its side: an outline only, to show where the course ends.
std::string vehicle(const Frame& f) {
  const double left = across::nozzle + 6.0;
  const double w = across::vehicle_right - left;
  const double roof = f.pixels(1.45);
  const double deck = f.pixels(0.9);
  const double g = f.ground();
  const double wheel = std::max(4.0, f.pixels(0.3));
  std::string commands = "M" + at({left, g - wheel}) + "V" + svg::coordinate(g - deck) + "Q" +
                         at({left, g - deck - 4.0}) + " " + at({left + 0.12 * w, g - deck}) + "L" +
                         at({left + 0.26 * w, g - roof}) + "H" + svg::coordinate(left + 0.62 * w) + "L" +
                         at({left + 0.78 * w, g - deck}) + "L" + at({left + 0.97 * w, g - deck + 5.0}) + "Q" +
                         at({left + w, g - deck + 6.0}) + " " + at({left + w, g - wheel}) + "z";
  std::string out = svg::path(commands, "outline");
  for (const double share : {0.22, 0.78}) {
    out += svg::circle({left + share * w, g - wheel}, wheel, "outline wheel");
  }
  return out;
}

std::string hose(const Section& s, const Frame& f) {
  const Point from{across::housing_right, f.y(s.island + housing_height) + 9.0};
  const Point to{across::nozzle, f.y(s.outlet)};
  const double sag = std::max(from.y, to.y) + 0.6 * std::max(f.ground() - std::max(from.y, to.y), 8.0);
  const std::string line = svg::path("M" + at(from) + "C" + at({from.x + 70.0, from.y}) + " " +
                                         at({to.x - 110.0, sag + 8.0}) + " " + at({to.x - 26.0, to.y + 6.0}),
                                     "hose");
  const std::string nozzle = svg::path(
      "M" + at({to.x - 28.0, to.y + 7.0}) + "L" + at({to.x - 14.0, to.y + 1.0}) + "L" + at({to.x + 8.0, to.y}),
      "nozzle");
  return svg::group(shows(s.stops, 8), line) + svg::group(shows(s.stops, 9), nozzle) +
         svg::group(shows(s.stops, 8), svg::label({to.x - 24.0, from.y - 2.0}, s.hose, "name end on-sheet"));
}

std::string riser(const Section& s, const Frame& f) {
  const Point joint{across::riser, f.y(s.line.back().elevation)};
  const std::string commands = "M" + at({across::line_right, joint.y}) + "H" + svg::coordinate(joint.x) + "V" +
                               svg::coordinate(f.y(s.groove.value_or(s.island)));
  return svg::path(commands, "pipe-edge") + svg::path(commands, "pipe " + s.tone);
}

/// "D1" of "D1.regular".
std::string dispenser_of(const std::string& place) { return place.substr(0, place.find('.')); }

std::string passed_places(const Section& s, const Frame& f) {
  std::string out;
  double free_from = across::line_left + 12.0;
  for (std::size_t i = 1; i + 1 < s.line.size(); ++i) {
    const LinePlace& place = s.line[i];
    const double x = f.x(place.along);
    if (place.name.find('.') == std::string::npos) {  // a branch, which no dispenser stands on
      out += svg::circle({x, f.y(place.elevation)}, 5.0, "node");
      continue;
    }
    out += svg::line({x, f.y(place.elevation) - 4.0}, {x, f.ground()}, "branch");
    const std::string name = svg::shortened(dispenser_of(place.name), 8);
    const double half = 0.5 * 7.4 * static_cast<double>(svg::length(name));
    if (x - half < free_from || x + half > across::housing_left - 8.0) continue;
    out += svg::label({x, f.ground() - 8.0}, name, "place middle on-sheet");
    free_from = x + half + 4.0;
  }
  return out;
}

}  // namespace

std::string line_run(const Section& s, const Frame& f) {
  std::vector<Point> corners{{across::pump + 9.0, f.y(s.pump_head)},
                             {across::line_left, f.y(s.line.front().elevation)}};
  bool entered = true;
  for (std::size_t i = 1; i < s.line.size(); ++i) {
    corners.push_back({f.x(s.line[i].along), f.y(s.line[i].elevation)});
    entered = entered && s.line[i].entered;
  }
  const bool solid = entered || !s.heights_known;
  return passed_places(s, f) +
         svg::group(shows(s.stops, 4), svg::polyline(corners, "pipe-edge") +
                                           svg::polyline(corners, (solid ? "pipe " : "pipe taken ") + s.tone));
}

std::string dispenser_side(const Section& s, const Frame& f) {
  const auto stop = [&](std::size_t number, const std::string& piece) {
    return svg::group(shows(s.stops, number), piece);
  };
  return stop(5, sump(s, f)) + vehicle(f) + stop(7, housing(s, f)) + stop(6, riser(s, f)) + hose(s, f) +
         stop(6, shear_valve(s, f));
}

}  // namespace forecourse::report::drawing
