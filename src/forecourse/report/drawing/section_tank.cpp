#include <algorithm>

#include "forecourse/report/drawing/section_parts.h"
#include "forecourse/report/svg/shapes.h"

namespace forecourse::report::drawing {
namespace {

using svg::at;
using svg::Point;

/// A tanker from behind: outlines only, its sizes are not entered.
std::string tanker(const Frame& f, bool listed) {
  const double x = across::tanker;
  const double half = std::min(f.pixels(1.2), 40.0);
  const double wheel = f.pixels(0.5);
  const Point low{x - half, f.y(1.1)};
  const double height = f.pixels(2.0);
  std::string commands = "M" + at({low.x, low.y - 0.5 * height}) + "a" + at({half, 0.5 * height}) + " 0 1 1 " +
                         at({2.0 * half, 0.0}) + "a" + at({half, 0.5 * height}) + " 0 1 1 " + at({-2.0 * half, 0.0}) +
                         "M" + at({low.x + 0.15 * half, low.y + 2.0}) + "h" + svg::coordinate(1.7 * half) + "v" +
                         svg::coordinate(f.pixels(0.3)) + "h" + svg::coordinate(-1.7 * half) + "z";
  for (const double side : {-1.0, 1.0}) {
    commands += "M" + at({x + side * 0.8 * half - 0.16 * half, f.ground() - 2.0 * wheel}) + "h" +
                svg::coordinate(0.32 * half) + "v" + svg::coordinate(2.0 * wheel) + "h" +
                svg::coordinate(-0.32 * half) + "z";
  }
  return svg::path(commands, listed ? "outline" : "outline absent");
}

std::string fill(const Section& s, const Frame& f) {
  const double x = across::fill;
  const double top = s.fill_top.value_or(0.0);
  const bool listed = s.stops[1].listed;
  const double reach = std::max(s.tank.bottom, s.tank.liquid - 0.6);
  const double end = s.drop_tube_end ? std::max(*s.drop_tube_end, s.tank.bottom) : reach;
  const char* look = listed && s.drop_tube_end ? "tube" : listed ? "tube open-end" : "tube absent";
  std::string out = listed ? svg::rectangle({x - 3.5, f.y(top)}, 7.0, f.y(end) - f.y(top), "column") : "";
  out += svg::path("M" + at({x - 3.5, f.y(top)}) + "V" + svg::coordinate(f.y(end)) + "M" + at({x + 3.5, f.y(top)}) +
                       "V" + svg::coordinate(f.y(end)),
                   look);
  out += svg::path("M" + at({x - 8.0, f.y(top)}) + "h16", listed ? "edge" : "edge absent");
  // The tanker's hose, only to show what joins what.
  return out + svg::path("M" + at({across::tanker + 20.0, f.y(0.9)}) + "C" + at({across::tanker + 56.0, f.y(0.9)}) +
                             " " + at({x - 30.0, f.y(top) - 20.0}) + " " + at({x, f.y(top) - 2.0}),
                         s.stops[0].listed ? "drop" : "drop absent");
}

/// Corners of the shell, its bottom at both ends and its top.
std::vector<Point> shell(const Frame& f, double low_left, double low_right, double high) {
  return {{across::tank_left, f.y(low_left)},
          {across::tank_left, f.y(high)},
          {across::tank_right, f.y(high)},
          {across::tank_right, f.y(low_right)}};
}

std::string liquid(const Section& s, const Frame& f) {
  const double top = std::min(s.tank.liquid, s.tank.bottom + s.tank.height);
  const double low = std::max(s.tank.bottom, s.tank.pump_bottom);
  if (!(top > low)) return {};
  std::string out = svg::polygon(shell(f, s.tank.bottom, s.tank.pump_bottom, top), "liquid " + s.tone);
  const double width = across::tank_right - across::tank_left;
  if (s.tone == "premium") {
    out += svg::hatch({across::tank_left, f.y(top)}, width, f.y(low) - f.y(top), 9.0, svg::Strokes::slanting, "hatch");
  }
  if (s.tone == "diesel") {
    out += svg::hatch({across::tank_left, f.y(top)}, width, f.y(low) - f.y(top), 6.0, svg::Strokes::level,
                      "hatch on-diesel");
  }
  // The sign of a liquid's surface: a triangle over short strokes.
  const Point mark{across::tank_left + 62.0, f.y(top)};
  out += svg::path("M" + at({mark.x - 6.0, mark.y - 9.0}) + "h12l-6 8z", "edge");
  return out + svg::path("M" + at({mark.x - 8.0, mark.y + 3.0}) + "h16M" + at({mark.x - 5.0, mark.y + 6.0}) + "h10",
                         s.tone == "diesel" ? "surface on-diesel" : "surface");
}

std::string vessel(const Section& s, const Frame& f) {
  const double top = std::max(s.tank.bottom, s.tank.pump_bottom) + s.tank.height;
  std::vector<Point> around = shell(f, s.tank.bottom, s.tank.pump_bottom, top);
  around[1].y = f.y(s.tank.bottom + s.tank.height);
  around[2].y = f.y(s.tank.pump_bottom + s.tank.height);
  std::string out = svg::polygon(around, "vessel") + liquid(s, f);
  out += svg::polygon(around, s.tank.shape_known ? "shell" : "shell absent");
  const double name_y = f.y(std::min(s.tank.bottom, s.tank.pump_bottom)) + 16.0;
  return out + svg::label({across::tank_left, name_y}, s.tank.name, "name on-soil");
}

std::string tank_sump(const Section& s, const Frame& f) {
  if (!s.tank_sump) return {};
  const double floor = f.y(std::min(s.pump_head - 0.35, -0.2));
  return svg::group({6, s.tank_sump_part},
                    svg::rectangle({across::pump - 20.0, f.ground()}, 40.0, floor - f.ground(), "sump"));
}

std::string pump(const Section& s, const Frame& f) {
  const double x = across::pump;
  const double low = std::max(s.tank.bottom, s.tank.pump_bottom);
  const double end = s.pump_inlet.value_or(low + std::min(0.15, 0.1 * s.tank.height));
  std::string out;
  // The pump's column stands out from dark liquids by the sheet's color in it and around its motor.
  out += svg::rectangle({x - 3.0, f.y(s.pump_head)}, 6.0, f.y(end) - f.y(s.pump_head), "column");
  out += svg::path("M" + at({x - 3.0, f.y(s.pump_head)}) + "V" + svg::coordinate(f.y(end)) + "M" +
                       at({x + 3.0, f.y(s.pump_head)}) + "V" + svg::coordinate(f.y(end)),
                   s.pump_inlet ? "tube" : "tube open-end");
  const double motor = std::min(f.pixels(0.5), 0.5 * (f.y(low) - f.y(s.tank.liquid)));
  if (motor > 4.0) {
    out += svg::rectangle({x - 6.0, f.y(end) - motor - 1.0}, 12.0, motor + 2.0, "motor-edge") +
           svg::rectangle({x - 5.0, f.y(end) - motor}, 10.0, motor, "motor");
  }
  out += svg::circle({x, f.y(s.pump_head)}, 9.0, "symbol");
  return out + svg::path("M" + at({x - 5.0, f.y(s.pump_head) - 6.5}) + "v13l13 -6.5z", "symbol");
}

std::string vent(const Section& s, const Frame& f) {
  if (!s.vent_outlet) return {};
  const double under = f.y(-0.25);
  const double tank_top = f.y(s.tank.bottom + s.tank.height);
  return svg::path("M" + at({across::tank_left + 100.0, tank_top}) + "V" + svg::coordinate(under) + "H" +
                       svg::coordinate(across::vent) + "V" + svg::coordinate(f.y(*s.vent_outlet)),
                   "vapor") +
         svg::path("M" + at({across::vent - 6.0, f.y(*s.vent_outlet)}) + "h12", "edge");
}

}  // namespace

std::string tank_side(const Section& s, const Frame& f) {
  return svg::group(shows(s.stops, 0), tanker(f, s.stops[0].listed)) + svg::group(shows(s.stops, 2), vessel(s, f)) +
         svg::group(shows(s.stops, 1), fill(s, f)) + svg::group(shows(s.stops, 10), vent(s, f)) + tank_sump(s, f) +
         svg::group(shows(s.stops, 3), pump(s, f));
}

}  // namespace forecourse::report::drawing
