#include "forecourse/report/drawing/section_view.h"

#include <algorithm>

#include "forecourse/report/drawing/course_paths.h"
#include "forecourse/report/drawing/section_stops.h"
#include "forecourse/report/drawing/tone.h"
#include "forecourse/site/liquid_level.h"

namespace forecourse::report::drawing {
namespace {

using site::Display;
using studies::CourseStops;

/// A station whose heights were not entered, as it is commonly built; drawn, never told as a number.
namespace schematic {
constexpr double tank_bottom = -3.6;
constexpr double tank_height = 2.4;
constexpr double liquid = -2.3;
constexpr double pump_head = -0.6;
constexpr double line = -0.75;
constexpr double outlet = 0.9;
}  // namespace schematic

std::optional<double> likely(const site::Maybe<Length>& entered) {
  return entered ? std::optional<double>(entered->likely.si()) : std::nullopt;
}

std::optional<double> shell_height(const site::TankShape& shape) {
  if (shape.kind.text == "horizontal-cylinder") return likely(shape.inside_diameter);
  return likely(shape.height);
}

/// Where the shape is not known, a dashed box around the liquid's surface.
TankOutline outline(const site::Site& site, const site::Tank* tank, const std::string& name) {
  const std::optional<double> level = site::liquid_level(site, name);
  TankOutline out{
      name, schematic::tank_bottom, schematic::tank_bottom, schematic::tank_height, level.value_or(schematic::liquid),
      false};
  if (tank == nullptr) return out;
  const std::optional<double> height = tank->shape ? shell_height(*tank->shape) : std::nullopt;
  const std::optional<double> bottom = likely(tank->bottom_elevation);
  if (!height || !bottom) {
    out.bottom = out.pump_bottom = out.liquid - 1.2;
    return out;
  }
  const double rise = tank->shape->pitch && tank->shape->length
                          ? tank->shape->pitch->likely.si() * tank->shape->length->likely.si()
                          : 0.0;
  const bool low_at_pump = tank->shape->low_end && tank->shape->low_end->value == site::TankEnd::pump;
  out.bottom = *bottom + (low_at_pump ? rise : 0.0);
  out.pump_bottom = *bottom + (low_at_pump ? 0.0 : rise);
  out.height = *height;
  out.shape_known = true;
  return out;
}

/// From the pump's discharge to the place where the course leaves the line; `level` replaces heights that are unknown.
std::vector<LinePlace> line_places(const CourseStops& course, const studies::HoseFlow& hose,
                                   const std::optional<double>& level) {
  std::vector<LinePlace> places;
  double start = 0.0;
  for (const studies::GradePoint& p : hose.grade_line) {
    if (p.place == course.tank || !p.part.empty()) continue;
    if (places.empty()) start = p.distance;
    places.push_back({p.place, p.distance - start, level.value_or(p.elevation), p.height_entered});
    if (p.place == course.inlet) break;
  }
  return places;
}

void add_marks(Section& s, Display display) {
  const auto shown = [&](double si) { return shown_value(Measure::length, display, si); };
  const double low = shown(std::min(s.tank.bottom, s.tank.pump_bottom) - 0.9);
  const double high = shown(std::max({s.outlet, s.vent_outlet.value_or(0.0), 2.5}));
  for (const double mark : svg::axis_marks(low, high, 7)) {
    const double meters = mark / shown(1.0);
    s.marks.push_back({meters, svg::mark_text(mark, {mark, mark + 1.0})});
  }
}

void place_heights(Section& s, const Listed& listed, const CourseStops& course) {
  s.pump_head = course.pump.empty() || listed.pump == nullptr ? s.line.front().elevation
                                                              : likely(listed.pump->discharge_elevation).value_or(0.0);
  s.outlet = course.outlet ? course.outlet->elevation : 0.0;
  if (listed.pump != nullptr && listed.pump->inlet_above_bottom && s.tank.shape_known) {
    s.pump_inlet = s.tank.pump_bottom + listed.pump->inlet_above_bottom->likely.si();
  }
  if (listed.tank != nullptr && !listed.tank->fills.empty()) {
    const site::Fill& fill = listed.tank->fills.front();
    s.fill_top = likely(fill.elevation);
    if (fill.drop_tube && fill.drop_tube->end_above_bottom && s.tank.shape_known) {
      s.drop_tube_end = s.tank.bottom + fill.drop_tube->end_above_bottom->likely.si();
    }
  }
  if (listed.tank != nullptr && !listed.tank->vents.empty()) {
    s.vent_outlet = likely(listed.tank->vents.front().outlet_elevation);
  }
  if (listed.dispenser == nullptr) return;
  s.island = likely(listed.dispenser->elevation).value_or(0.0);
  if (const auto& sump = listed.dispenser->sump) {
    if (sump->floor_elevation) s.sump_floor = likely(sump->floor_elevation);
    if (!s.sump_floor && sump->depth) s.sump_floor = -sump->depth->likely.si();
    s.sensor = sump->sensor && sump->sensor->height ? likely(sump->sensor->height) : likely(sump->sensor_height);
  }
  if (listed.inlet != nullptr && listed.inlet->shear_valve) {
    s.groove = likely(listed.inlet->shear_valve->groove_elevation);
  }
}

void schematic_heights(Section& s, Display display, const CourseStops& course) {
  s.tank.liquid = schematic::liquid;
  s.tank.bottom = s.tank.pump_bottom = schematic::tank_bottom;
  s.tank.height = schematic::tank_height;
  s.tank.shape_known = false;
  s.pump_head = schematic::pump_head;
  s.outlet = schematic::outlet;
  s.island = 0.15;
  s.groove = 0.0;
  if (course.outlet) s.lift = "lift " + with_unit(Measure::length, display, course.outlet->elevation);
}

std::string described(const Section& s, const studies::HoseFlow& hose) {
  std::string out = "Section from tank " + s.tank.name + " to the nozzle of " + hose.id + ". ";
  for (std::size_t i = 0; i < s.stops.size(); ++i) {
    const Stop& stop = s.stops[i];
    out += std::to_string(i + 1) + " " + stop.name + ": " + (stop.value.empty() ? "" : stop.value + " " + stop.unit);
    out += (stop.value.empty() || stop.note.empty() ? "" : ", ") + stop.note + ". ";
  }
  return out + "The table below holds the numbers.";
}

}  // namespace

Section section_of(const site::Site& site, const studies::SystemFlow& system, const studies::HoseFlow& hose,
                   Display display, bool heights_known, const std::string& id) {
  const CourseStops course = studies::course_stops(hose);
  const Listed listed = listed_on(site, course, hose);
  Section s;
  s.id = id;
  s.title = "Section of the course to " + hose.id;
  s.tone = tone_of(site, system.product);
  s.heights_known = heights_known;
  s.tank = outline(site, listed.tank, course.tank);
  s.line = line_places(course, hose, heights_known ? std::nullopt : std::optional<double>(schematic::line));
  if (s.line.empty()) return s;
  s.line_length = "line, " + with_unit(Measure::length, display, s.line.back().along) + ", to length";
  s.tank_sump = listed.tank != nullptr && listed.tank->sump.has_value();
  s.dispenser = hose.dispenser;
  s.hose = hose.id;
  if (heights_known) {
    place_heights(s, listed, course);
    add_marks(s, display);
    s.axis = unit_label(Measure::length, display) + " above the site's datum";
  } else {
    schematic_heights(s, display, course);
    s.axis = "heights not entered: depths to no scale";
  }
  s.stops = stop_cells(listed, course, hose, display, heights_known);
  const std::array<std::string, 11> paths = course_paths(site, listed, course);
  for (std::size_t i = 0; i < paths.size(); ++i) s.stops[i].part = paths[i];
  if (s.tank_sump) s.tank_sump_part = paths[2] + ".sump";
  if (!course.tank.empty()) s.tank.name += " " + system.product;
  s.description = described(s, hose);
  return s;
}

namespace {

/// A stop's name within a sentence.
std::string in_lower_case(std::string name) {
  if (!name.empty() && name[0] >= 'A' && name[0] <= 'Z') name[0] = static_cast<char>(name[0] - 'A' + 'a');
  return name;
}

}  // namespace

std::vector<std::string> remarks(const Section& s) {
  std::vector<std::string> out;
  if (!s.heights_known) {
    out.emplace_back(
        "Heights were not entered: depths to no scale; the lift, counted from the liquid, is the only one known.");
  } else {
    out.emplace_back("Depths to one scale, the ground at the site's datum.");
  }
  std::string absent;
  for (const Stop& stop : s.stops) {
    if (!stop.listed) absent += (absent.empty() ? "" : ", ") + in_lower_case(stop.name);
  }
  if (!absent.empty()) out.push_back("Dashed, not in the site file: " + absent + ".");
  std::string taken;
  for (const LinePlace& place : s.line) {
    if (s.heights_known && !place.entered) taken += (taken.empty() ? "" : ", ") + place.name;
  }
  if (!taken.empty()) out.push_back("Height not entered, drawn at the datum: " + taken + ".");
  if (s.heights_known && !s.tank.shape_known) out.emplace_back("The tank's shape or bottom was not entered.");
  return out;
}

html::Table stops_table(const Section& s) {
  html::Table table{"The eleven stops to " + s.hose,
                    "",
                    {{"Stop", ""}, {"Value", "", true}, {"Unit", ""}, {"What it is", "", false, true}},
                    {},
                    {}};
  table.screen_only = true;  // on paper the band says the same
  for (std::size_t i = 0; i < s.stops.size(); ++i) {
    const Stop& stop = s.stops[i];
    table.rows.push_back(
        {{std::to_string(i + 1) + " " + stop.name, stop.value.empty() ? "\u2013" : stop.value, stop.unit, stop.note}});
  }
  return table;
}

}  // namespace forecourse::report::drawing
