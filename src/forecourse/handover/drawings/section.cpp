#include "forecourse/handover/drawings/section.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "forecourse/checks/figures/each_part.h"
#include "forecourse/handover/drawings/plan.h"
#include "forecourse/handover/drawings/sumps.h"
#include "forecourse/handover/drawings/symbols.h"
#include "forecourse/handover/drawings/zones.h"
#include "forecourse/handover/parts/part_list.h"
#include "forecourse/handover/parts/shared_outlet.h"
#include "forecourse/site/liquid_level.h"
#include "forecourse/site/places.h"

namespace forecourse::handover {
namespace {

std::optional<double> likely(const site::Maybe<Length>& entered) {
  return entered ? std::optional(entered->likely.si()) : std::nullopt;
}

std::optional<double> height_of(const site::Site& site, const std::string& place) {
  for (const site::Pump& pump : site.pumps) {
    if (pump.id.text == place) return likely(pump.discharge_elevation);
  }
  for (const site::Branch& branch : site.branches) {
    if (branch.id.text == place) return likely(branch.elevation);
  }
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) {
      if (site::place_name(dispenser, inlet) == place) return likely(inlet.line_elevation);
    }
  }
  return std::nullopt;
}

std::optional<double> inside_height(const site::TankShape& shape) {
  return shape.kind.text == "horizontal-cylinder" ? likely(shape.inside_diameter) : likely(shape.height);
}

/// From end to end, as the section shows it.
std::optional<double> inside_length(const site::TankShape& shape) {
  return shape.kind.text == "vertical-cylinder" ? likely(shape.inside_diameter) : likely(shape.length);
}

std::string inlet_path(const site::Dispenser& dispenser, const site::Inlet& inlet, const std::string& of_dispenser) {
  const std::string& name = inlet.id.empty() ? inlet.product.text : inlet.id.text;
  return of_dispenser + "." + item("inlet", name, static_cast<std::size_t>(&inlet - dispenser.inlets.data()));
}

}  // namespace

SectionDrawing::SectionDrawing(const site::Site& site, const Course& course, Reach reach, Drawing& out)
    : site_(site), course_(course), reach_(reach), out_(out) {
  find_line_places();
  find_tank();
}

void SectionDrawing::find_line_places() {
  if (course_.pump != nullptr) line_.push_back({course_.pump->id.text, 0.0, likely(course_.pump->discharge_elevation)});
  for (const CourseStep& step : course_.steps) {
    inlet_x_ += likely(step.line->pipe.length).value_or(0.0);
    line_.push_back({step.to, inlet_x_, height_of(site_, step.to)});
  }
  if (reach_ == Reach::dispenser) inlet_x_ = 0.0;
}

void SectionDrawing::find_tank() {
  if (course_.tank == nullptr || !course_.tank->shape || !course_.tank->bottom_elevation) return;
  const site::TankShape& shape = *course_.tank->shape;
  const auto height = inside_height(shape), length = inside_length(shape);
  if (!height || !length) return;
  constexpr double apart = 2.0;  // [m] from the line, where the pump's place along the tank is not known
  TankEnds ends;
  ends.low_left = !shape.low_end || shape.low_end->value != site::TankEnd::pump;
  const auto at = course_.pump == nullptr ? std::nullopt : likely(course_.pump->at);
  ends.pump_known = at.has_value();
  ends.left = !at ? -apart - *length : ends.low_left ? -*at : *at - *length;
  ends.right = ends.left + *length;
  const double rise = shape.pitch ? shape.pitch->likely.si() * *length : 0.0;
  const double bottom = course_.tank->bottom_elevation->likely.si();
  ends.left_bottom = bottom + (ends.low_left ? 0.0 : rise);
  ends.right_bottom = bottom + (ends.low_left ? rise : 0.0);
  ends.height = *height;
  if (shape.kind.text == "horizontal-cylinder" && shape.outside_diameter)
    ends.shell = 0.5 * (shape.outside_diameter->likely.si() - *height);
  tank_ = ends;
}

std::optional<double> SectionDrawing::along(const site::Maybe<Length>& at) const {
  if (!tank_ || !at) return std::nullopt;
  return tank_->low_left ? tank_->left + at->likely.si() : tank_->right - at->likely.si();
}

std::optional<double> SectionDrawing::level_of_vent(const site::Vent& vent) const {
  const site::Tank& tank = *course_.tank;
  const std::optional<site::Position> outlet = of_outlet(site_, vent, &site::Vent::position);
  if (!tank_ || !outlet || !along_tank(tank, 0.0)) return std::nullopt;
  const Point start = *along_tank(tank, 0.0);
  const double axis = tank.axis->likely.si();
  const double far = (outlet->x.si() - start.x) * std::cos(axis) + (outlet->y.si() - start.y) * std::sin(axis);
  return tank_->low_left ? tank_->left + far : tank_->right - far;
}

double SectionDrawing::inside_bottom(double x) const {
  const double share = (x - tank_->left) / (tank_->right - tank_->left);
  return tank_->left_bottom + share * (tank_->right_bottom - tank_->left_bottom);
}

void SectionDrawing::draw(const std::vector<StationPart>& parts) {
  others_elsewhere();
  if (shows_tank()) place_tank_side();
  if (whole()) place_lines();
  if (shows_dispenser()) place_dispenser_side();
  out_.layers = drawing_layers({course_.inlet == nullptr ? "" : course_.inlet->product.text});
  out_.symbols = section_symbols();
  places_.place(parts, out_);
  if (shows_tank()) draw_tank();
  if (whole()) draw_lines();
  if (shows_dispenser()) draw_dispenser();
  draw_zones(site_, parts, places_, View::section, out_);
}

void SectionDrawing::others_elsewhere() {
  for (const site::Delivery& one : site_.deliveries) {
    if (whole())
      places_.unknown(item("delivery", site_.deliveries, one), "comes with the tanker, whose place is not entered");
  }
  for (const char* list : {"delivery", "tank", "pump", "line", "branch", "dispenser", "control", "emergency_stop",
                           "interlock", "extinguisher", "surroundings", "operations"})
    places_.elsewhere(list);
}

void SectionDrawing::place_tank_side() {
  if (course_.pump != nullptr) {
    const std::string path = item("pump", site_.pumps, *course_.pump);
    if (const auto head = likely(course_.pump->discharge_elevation)) {
      places_.at(path, {0.0, *head}, "entered", "at its pump");
    } else {
      places_.unknown(path, "enter discharge_elevation of the pump");
    }
  }
  if (course_.tank == nullptr) return;
  const site::Tank& tank = *course_.tank;
  const std::string path = item("tank", site_.tanks, tank);
  if (!tank_) {
    places_.unknown(path, "enter bottom_elevation of the tank, and its shape with its length");
    return;
  }
  places_.at(path,
             {0.5 * (tank_->left + tank_->right), 0.5 * (tank_->left_bottom + tank_->right_bottom + tank_->height)},
             "entered", "at its tank");
  for (const site::Fill& fill : tank.fills) place_fill(fill, path + "." + item("fill", tank.fills, fill));
  for (const site::Vent& vent : tank.vents) place_vent(vent, path + "." + item("vent", tank.vents, vent));
  if (tank.vapor_return) places_.unknown(path + ".vapor_return", "the site file has no place for it");
  for (const site::Well& well : tank.wells)
    places_.unknown(path + "." + item("well", tank.wells, well), "the site file has no place for it");
  if (tank.gauge) {
    if (const auto x = along(tank.gauge->at)) places_.at(path + ".gauge", {*x, inside_bottom(*x)}, "along its tank");
  }
  if (!tank.sump) return;
  if (tank_->pump_known && course_.pump->discharge_elevation) {
    places_.at(path + ".sump", {0.0, course_.pump->discharge_elevation->likely.si()}, "at its pump");
  } else {
    places_.unknown(path + ".sump", "enter at and discharge_elevation of the pump");
  }
}

void SectionDrawing::place_fill(const site::Fill& fill, const std::string& path) {
  const auto x = along(fill.at), top = likely(fill.elevation);
  if (!x || !top) {
    places_.unknown(path, "enter at and elevation of the fill");
    return;
  }
  places_.at(path, {*x, *top}, "entered", "at its fill");
  if (fill.overfill_valve && fill.overfill_valve->closes_at)
    places_.at(path + ".overfill_valve", {*x, inside_bottom(*x) + fill.overfill_valve->closes_at->likely.si()},
               "entered");
  if (!fill.drop_tube) return;
  const auto above = likely(fill.drop_tube->end_above_bottom), length = likely(fill.drop_tube->length);
  if (!above && !length) return;
  places_.at(path + ".drop_tube", {*x, above ? inside_bottom(*x) + *above : *top - *length}, "its lower end");
}

void SectionDrawing::place_vent(const site::Vent& vent, const std::string& path) {
  const auto x = level_of_vent(vent), top = likely(of_outlet(site_, vent, &site::Vent::outlet_elevation));
  const auto put = [&](const std::string& one) {
    if (x && top) {
      places_.at(one, {*x, *top}, "entered", "at its vent");
    } else {
      places_.unknown(one, "enter outlet_elevation and position of the vent, with position and axis of its tank");
    }
  };
  put(path);
  // An outlet that is listed at another tank is on this course too; what leads to it from there is not.
  const TankVent listed = outlet_of(site_, vent);
  if (listed.tank == course_.tank) return;
  const std::string outlet =
      item("tank", site_.tanks, *listed.tank) + "." + item("vent", listed.tank->vents, *listed.vent);
  put(outlet);
  for (const char* own : {".branch", ".restrictor"}) places_.elsewhere(outlet + own);
}

void SectionDrawing::place_lines() {
  for (std::size_t i = 0; i < course_.steps.size(); ++i) {
    const site::Line& line = *course_.steps[i].line;
    const std::string path = item("line", site_.lines, line);
    const LinePlace &from = line_[i], &to = line_[i + 1];
    if (!line.pipe.length) {
      places_.unknown(path, "enter length of the line");
    } else if (from.z && to.z) {
      places_.at(path, {0.5 * (from.x + to.x), 0.5 * (*from.z + *to.z)}, "between its places", "at its line");
    } else {
      places_.unknown(path, "enter the height of " + (from.z ? to.name : from.name));
    }
    for (const site::Branch& branch : site_.branches) {
      if (branch.id.text != to.name) continue;
      const std::string own = item("branch", site_.branches, branch);
      if (to.z) {
        places_.at(own, {to.x, *to.z}, "entered");
      } else {
        places_.unknown(own, "enter elevation of the branch");
      }
    }
  }
}

void SectionDrawing::place_dispenser_side() {
  const site::Dispenser& dispenser = *course_.dispenser;
  const std::string path = item("dispenser", site_.dispensers, dispenser);
  if (const auto island = likely(dispenser.elevation)) {
    places_.at(path, {inlet_x_, *island}, "entered", "at its dispenser");
  } else {
    places_.unknown(path, "enter elevation of the dispenser");
  }
  if (dispenser.sump) place_sump(*dispenser.sump, path + ".sump");
  for (const site::Inlet& inlet : dispenser.inlets) {
    const std::string own = inlet_path(dispenser, inlet, path);
    if (&inlet == course_.inlet) {
      place_inlet(own);
    } else {
      places_.elsewhere(own);
    }
  }
  for (const site::Hose& hose : dispenser.hoses) {
    const std::string own = path + "." + item("hose", dispenser.hoses, hose);
    if (&hose == course_.hose) {
      place_hose(own);
    } else {
      places_.elsewhere(own);
    }
  }
}

void SectionDrawing::place_sump(const site::Sump& sump, const std::string& path) {
  const auto floor = sump.floor_elevation ? likely(sump.floor_elevation)
                     : sump.depth         ? std::optional(-sump.depth->likely.si())
                                          : std::nullopt;
  if (!floor) return places_.unknown(path, "enter floor_elevation or depth of the sump");
  places_.at(path, {inlet_x_, *floor}, "its floor", "at its sump");
  const auto height = sump.sensor && sump.sensor->height ? likely(sump.sensor->height) : likely(sump.sensor_height);
  if (!height) return;
  places_.at(path + ".sensor", {inlet_x_, *floor + *height}, "entered");
  places_.at(path + ".sensor_height", {inlet_x_, *floor + *height}, "entered");
}

void SectionDrawing::place_inlet(const std::string& path) {
  const site::Inlet& inlet = *course_.inlet;
  const auto level = likely(inlet.line_elevation);
  if (level) {
    places_.at(path, {inlet_x_, *level}, "entered", "at its inlet");
  } else {
    places_.unknown(path, "enter line_elevation of the inlet");
  }
  if (!inlet.shear_valve) return;
  if (const auto groove = likely(inlet.shear_valve->groove_elevation)) {
    places_.at(path + ".shear_valve", {inlet_x_, *groove}, "entered");
  } else {
    places_.unknown(path + ".shear_valve", "enter groove_elevation of the shear valve");
  }
}

void SectionDrawing::place_hose(const std::string& path) {
  const site::Hose& hose = *course_.hose;
  if (const auto outlet = likely(hose.outlet_elevation)) {
    places_.at(path, {inlet_x_, *outlet}, "outlet of its nozzle", "at its hose");
    places_.at(path + (hose.nozzle ? ".nozzle" : ".spout"), {inlet_x_, *outlet}, "entered");
  } else {
    places_.unknown(path, "enter outlet_elevation of the hose");
  }
}

std::optional<double> SectionDrawing::head_depth() const {
  const site::TankShape& shape = *course_.tank->shape;
  const double radius = 0.5 * tank_->height;
  if (shape.kind.text != "horizontal-cylinder") return std::nullopt;
  if (shape.heads.text == "hemispherical") return radius + tank_->shell;
  if (shape.heads.text != "dished" || !shape.head_depth || shape.head_depth->likely.si() > radius) return std::nullopt;
  return shape.head_depth->likely.si() + tank_->shell;
}

void SectionDrawing::draw_heads() {
  const auto depth = head_depth();
  if (!depth || !(*depth > 0.0)) return;
  const TankEnds& t = *tank_;
  const double half = 0.5 * t.height + t.shell;
  const double radius = (half * half + *depth * *depth) / (2.0 * *depth);
  const double turn = std::asin(std::min(1.0, half / radius));
  constexpr double pi = std::numbers::pi;
  const double left_y = t.left_bottom + 0.5 * t.height, right_y = t.right_bottom + 0.5 * t.height;
  out_.arcs.push_back({"tanks", {t.left - *depth + radius, left_y}, radius, pi - turn, pi + turn});
  out_.arcs.push_back({"tanks", {t.right + *depth - radius, right_y}, radius, -turn, turn});
}

void SectionDrawing::draw_tank() {
  if (!tank_) return;
  const TankEnds& t = *tank_;
  const double top_left = t.left_bottom + t.height + t.shell, top_right = t.right_bottom + t.height + t.shell;
  out_.paths.push_back({"tanks",
                        {{t.left, t.left_bottom - t.shell},
                         {t.right, t.right_bottom - t.shell},
                         {t.right, top_right},
                         {t.left, top_left}},
                        true});
  draw_heads();
  const auto liquid = site::liquid_level(site_, course_.tank->id.text);
  if (liquid && *liquid > std::max(t.left_bottom, t.right_bottom) &&
      *liquid < std::min(t.left_bottom, t.right_bottom) + t.height)
    out_.paths.push_back({"liquid", {{t.left, *liquid}, {t.right, *liquid}}});
  const std::string path = item("tank", site_.tanks, *course_.tank);
  for (const site::Fill& fill : course_.tank->fills) {
    const std::string own = path + "." + item("fill", course_.tank->fills, fill);
    const Point* top = places_.find(own);
    const Point* end = places_.find(own + ".drop_tube");
    if (top == nullptr) continue;
    const double crown = inside_bottom(top->x) + t.height + t.shell;
    out_.paths.push_back({"fills", {*top, end != nullptr ? *end : Point{top->x, crown}}});
  }
  for (const site::Vent& vent : course_.tank->vents) {
    const Point* top = places_.find(path + "." + item("vent", course_.tank->vents, vent));
    if (top != nullptr) out_.paths.push_back({"vents", {{top->x, 0.0}, *top}});
  }
  if (course_.pump != nullptr && t.pump_known && course_.pump->discharge_elevation) {
    const double low = inside_bottom(0.0) + likely(course_.pump->inlet_above_bottom).value_or(t.height);
    out_.paths.push_back({"fills", {{0.0, course_.pump->discharge_elevation->likely.si()}, {0.0, low}}});
    if (course_.tank->sump) draw_sump(*course_.tank->sump, 0.0);
  }
}

void SectionDrawing::draw_lines() {
  const std::string layer = line_layer(course_.inlet == nullptr ? "" : course_.inlet->product.text);
  for (std::size_t i = 0; i < course_.steps.size(); ++i) {
    const site::Line& line = *course_.steps[i].line;
    const LinePlace &from = line_[i], &to = line_[i + 1];
    LineRow row{line.id.text, course_.inlet->product.text, checks::bore_of(line.pipe), likely(line.pipe.length), {},
                {},           likely(line.burial)};
    if (line.fall) row.fall = line.fall->likely.si();
    if (places_.find(item("line", site_.lines, line)) != nullptr) {
      row.drawn = to.x - from.x;
      out_.paths.push_back({layer, {{from.x, *from.z}, {to.x, *to.z}}});
    }
    out_.lines.push_back(std::move(row));
  }
}

void SectionDrawing::draw_sump(const site::Sump& sump, double x) {
  if (auto path = sump_in_section(sump, x)) out_.paths.push_back(std::move(*path));
}

void SectionDrawing::draw_dispenser() {
  const site::Dispenser& dispenser = *course_.dispenser;
  if (dispenser.sump) draw_sump(*dispenser.sump, inlet_x_);
  const site::Inlet* inlet = course_.inlet;
  if (inlet != nullptr && inlet->line_elevation && inlet->riser && inlet->riser->length) {
    const double low = inlet->line_elevation->likely.si();
    out_.paths.push_back(
        {line_layer(inlet->product.text), {{inlet_x_, low}, {inlet_x_, low + inlet->riser->length->likely.si()}}});
  }
  const auto island = likely(dispenser.elevation), outlet = likely(dispenser.outlet_height),
             wide = likely(dispenser.base_width);
  if (island && outlet && wide) {
    const double left = inlet_x_ - 0.5 * *wide, right = inlet_x_ + 0.5 * *wide;
    out_.paths.push_back({"dispensers",
                          {{left, *island}, {right, *island}, {right, *island + *outlet}, {left, *island + *outlet}},
                          true});
  }
  const auto reach = course_.hose == nullptr ? std::nullopt : checks::hose_reach(*course_.hose);
  const auto nozzle = course_.hose == nullptr ? std::nullopt : likely(course_.hose->outlet_elevation);
  // On a detail the reach is told in words, so that it can be larger.
  if (whole() && reach && nozzle) out_.paths.push_back({"reach", {{inlet_x_, *nozzle}, {inlet_x_ + *reach, *nozzle}}});
}

}  // namespace forecourse::handover
