#include "forecourse/report/drawing/section.h"

#include <algorithm>
#include <cmath>

#include "forecourse/report/drawing/band.h"
#include "forecourse/report/drawing/frame.h"
#include "forecourse/report/drawing/section_parts.h"
#include "forecourse/report/svg/shapes.h"

namespace forecourse::report::drawing {
namespace {

using svg::Point;

bool is_drawable(const Section& s) {
  if (s.line.size() < 2) return false;
  std::vector<double> heights{s.tank.bottom,
                              s.tank.pump_bottom,
                              s.tank.height,
                              s.tank.liquid,
                              s.pump_head,
                              s.island,
                              s.outlet,
                              s.fill_top.value_or(0.0),
                              s.groove.value_or(0.0),
                              s.sump_floor.value_or(0.0),
                              s.vent_outlet.value_or(0.0)};
  for (const LinePlace& place : s.line) heights.insert(heights.end(), {place.along, place.elevation});
  return std::all_of(heights.begin(), heights.end(), [](double h) { return std::isfinite(h); });
}

/// What is to length and what is not, above the drawing.
std::string lengths(const Section& s) {
  constexpr double y = 24.0;
  return svg::dimension({across::left, across::line_left, y, "not to length"}) +
         svg::dimension({across::line_left, across::line_right, y, s.line_length}) +
         svg::dimension({across::line_right, across::right, y, "not to length"});
}

/// Where a stop's number stands in the drawing; the vapor's leader runs over the top.
std::array<Point, 11> tags(const Section& s, const Frame& f) {
  const double head = f.y(s.pump_head);
  const double tank_middle = f.y(s.tank.bottom + 0.3 * s.tank.height);
  const double sump_floor = s.sump_floor.value_or(std::min(s.line.back().elevation - 0.3, -0.3));
  const double line_y = 0.5 * (f.y(s.line.front().elevation) + f.y(s.line.back().elevation));
  return {{{across::tanker, f.y(2.1)},
           {across::tank_left - 14.0, f.y(s.fill_top.value_or(0.0)) - 18.0},
           {258.0, tank_middle},
           {across::pump + 34.0, head + 20.0},
           {400.0, line_y + 20.0},
           {across::sump_left - 16.0, f.y(sump_floor) - 4.0},
           {across::riser + 26.0, f.y(s.groove.value_or(s.island)) + 14.0},
           {across::housing_right + 18.0, f.y(s.island + 0.75)},
           {706.0, f.ground() - 16.0},
           {across::nozzle - 6.0, f.y(s.outlet) - 19.0},
           {across::vent + 18.0, f.y(s.vent_outlet.value_or(0.0)) + 2.0}}};
}

std::string number(std::size_t stop) { return std::to_string(stop + 1); }

std::string leader(std::size_t stop, Point tag, const Frame& f) {
  const double turn = f.foot() + 4.0;
  if (stop == 10) {
    const double side = across::right - 6.0;
    return svg::path("M" + svg::at({tag.x + 9.0, tag.y}) + "H" + svg::coordinate(side) + "V" + svg::coordinate(turn) +
                         "L" + svg::at({Frame::cell(stop), f.band()}),
                     "leader");
  }
  return svg::path(
      "M" + svg::at({tag.x, tag.y + 9.0}) + "V" + svg::coordinate(turn) + "L" + svg::at({Frame::cell(stop), f.band()}),
      "leader");
}

std::string numbered(const Section& s, const Frame& f) {
  const std::array<Point, 11> places = tags(s, f);
  std::string leaders;
  std::string out;
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (i == 10 && !s.vent_outlet) continue;
    leaders += svg::group(shows(s.stops, i), leader(i, places[i], f));
    out += svg::group(shows(s.stops, i), svg::circle(places[i], 9.0, s.stops[i].listed ? "tag" : "tag absent") +
                                             svg::label({places[i].x, places[i].y + 4.3}, number(i), "tag-text"));
  }
  return leaders + out;
}

/// Where only lifts were entered: the one height there is, from the liquid to the nozzle.
std::string lift(const Section& s, const Frame& f) {
  if (s.lift.empty()) return {};
  const double x = across::right - 22.0;
  const double low = f.y(s.tank.liquid);
  const double high = f.y(s.outlet);
  return svg::path("M" + svg::at({across::tank_right + 4.0, low}) + "H" + svg::coordinate(x + 6.0), "liquid-level") +
         svg::path("M" + svg::at({x, low}) + "V" + svg::coordinate(high) + "M" + svg::at({x - 4.0, low}) + "h8M" +
                       svg::at({x - 4.0, high}) + "h8",
                   "dimension") +
         svg::label({x - 8.0, low - 7.0}, s.lift, "name end on-soil");
}

}  // namespace

std::string ground(const Section& s, const Frame& f) {
  std::string out =
      svg::rectangle({across::left, f.ground()}, across::right - across::left, f.foot() - f.ground(), "soil") +
      svg::earth_ticks({across::left, f.ground() + 1.5}, across::right, "earth");
  out += svg::label({0.0, 44.0}, s.axis, "axis-title");
  for (const HeightMark& mark : s.marks) {
    const double y = f.y(mark.elevation);
    if (y > f.foot() - 4.0 || y < 52.0) continue;
    out += svg::line({across::left - 5.0, y}, {across::left, y}, "edge") +
           svg::label({across::left - 8.0, y + 4.0}, mark.text, "tick");
  }
  return out + svg::line({across::left, f.y(0.0)}, {across::left, f.foot()}, "edge");
}

std::string draw(const Section& s) {
  if (!is_drawable(s)) return {};
  const Frame f(s);
  std::string out = svg::open(s.id, svg::wide, f.height(), s.title, s.description) + lengths(s) + ground(s, f);
  out += tank_side(s, f) + line_run(s, f) + dispenser_side(s, f);
  out += svg::line({across::left, f.ground()}, {across::right, f.ground()}, "ground-line");
  return out + lift(s, f) + numbered(s, f) + band(s, f) + "</svg>\n";
}

}  // namespace forecourse::report::drawing
