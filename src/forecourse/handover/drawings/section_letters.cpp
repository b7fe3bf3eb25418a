#include <algorithm>
#include <cmath>

#include "forecourse/handover/drawings/section.h"
#include "forecourse/handover/drawings/words.h"
#include "forecourse/handover/parts/part_list.h"

namespace forecourse::handover {

void SectionDrawing::letter() {
  letter_ground();
  if (whole()) {
    letter_tank();
    letter_lines();
  }
  letter_dispenser();
  notes();
}

/// The ground from end to end of what is drawn, with the strokes of earth under it.
void SectionDrawing::letter_ground() {
  const Box box = extent(out_);
  if (box.empty()) return;
  Pen pen(out_, site_.display);
  const double left = box.low.x - pen.paper(6.0), right = box.high.x + pen.paper(6.0);
  out_.paths.push_back({"ground", {{left, 0.0}, {right, 0.0}}});
  const double step = pen.paper(6.0), down = pen.paper(1.6);
  for (double x = left + 0.5 * step; x < right; x += step) {
    for (const double aside : {0.0, 0.25 * step})
      out_.paths.push_back({"ground", {{x + aside, 0.0}, {x + aside - down, -down}}});
  }
}

void SectionDrawing::letter_tank() {
  if (!tank_) return;
  const TankEnds& t = *tank_;
  Pen pen(out_, site_.display);
  const std::string& id = course_.tank->id.text;
  const double low_left = t.left_bottom - t.shell, high_left = t.left_bottom + t.height + t.shell;
  pen.upright("diameter of " + id, {t.left, low_left}, {t.left, high_left}, t.left - pen.paper(5.0));
  if (high_left < 0.0) pen.upright("cover of " + id, {t.left, high_left}, {t.left, 0.0}, t.left - pen.paper(5.0));
  pen.level("length of " + id, {t.left, low_left}, {t.right, t.right_bottom - t.shell},
            std::min(low_left, t.right_bottom - t.shell) - pen.paper(5.0));
  const double middle = 0.5 * (t.left + t.right);
  const double above = inside_bottom(middle) + 0.62 * t.height;
  pen.text("text", {middle, above}, id + " " + course_.tank->product.text, Anchor::middle, 2.2);
  if (course_.tank->shape->pitch) {
    pen.text("text", {middle, inside_bottom(middle) + pen.paper(1.5)},
             "pitch " + slope_words(course_.tank->shape->pitch->likely.si()) +
                 (t.low_left ? ", low end left" : ", low end right"),
             Anchor::middle);
  }
}

void SectionDrawing::letter_lines() {
  Pen pen(out_, site_.display);
  const Box box = extent(out_);
  const double y = box.low.y - pen.paper(5.0);
  for (std::size_t i = 0; i < course_.steps.size(); ++i) {
    const site::Line& line = *course_.steps[i].line;
    if (places_.find(item("line", site_.lines, line)) == nullptr) continue;
    const LinePlace &from = line_[i], &to = line_[i + 1];
    pen.level("length of " + line.id.text, {from.x, *from.z}, {to.x, *to.z}, y);
    const double fall = (*to.z - *from.z) / (to.x - from.x);
    const Point middle{0.5 * (from.x + to.x), 0.5 * (*from.z + *to.z)};
    const std::string way = fall > 0.0 ? ", falls to the pump" : fall < 0.0 ? ", falls away from the pump" : ", level";
    const bool room = text_length(line.id.text, pen.paper(pen.letter())) < to.x - from.x;
    if (!room) continue;
    pen.text("text", {middle.x, middle.y - pen.paper(3.2)}, line.id.text, Anchor::middle);
    const std::string slope = slope_words(std::abs(fall)) + way;
    if (text_length(slope, pen.paper(pen.letter())) < to.x - from.x)
      pen.text("text", {middle.x, middle.y - pen.paper(6.2)}, slope, Anchor::middle);
  }
}

void SectionDrawing::letter_dispenser() {
  Pen pen(out_, site_.display);
  pen.keep_off_shapes();
  if (whole()) {
    for (const Mark& mark : out_.marks) {
      if (mark.kind == "pump" || mark.kind == "fill" || mark.kind == "vent" || mark.kind == "branch")
        pen.label(mark.at, mark.subject);
    }
    if (course_.pump != nullptr && course_.pump->discharge_elevation)
      pen.upright("pump head of " + course_.pump->id.text + " below grade",
                  {0.0, course_.pump->discharge_elevation->likely.si()}, {0.0, 0.0}, pen.paper(4.0));
    for (const Mark& mark : out_.marks) {
      if (mark.kind == "vent" && mark.at.y > 0.0)
        pen.upright("outlet of vent " + mark.subject, {mark.at.x, 0.0}, mark.at, mark.at.x - pen.paper(4.0));
    }
  }
  if (course_.dispenser == nullptr) return;
  const std::string& id = course_.dispenser->id.text;
  const auto island = course_.dispenser->elevation;
  const double x = inlet_x_;
  double half = pen.paper(whole() ? 3.0 : 9.0);
  for (const Path& path : out_.paths) {
    if (!path.layer.starts_with("sumps")) continue;
    for (const Point& point : path.points) {
      if (whole() ? std::abs(point.x - x) < 3.0 : true) half = std::max(half, std::abs(point.x - x));
    }
  }
  if (island) {
    const double top = island->likely.si();
    out_.paths.push_back(
        {"dispensers", {{x - 1.3 * half, 0.0}, {x - 1.3 * half, top}, {x + 1.3 * half, top}, {x + 1.3 * half, 0.0}}});
  }
  const double right = x + 1.3 * half;
  if (whole()) {
    pen.label({x, island ? island->likely.si() : 0.0}, course_.hose->id.text, 3.0);
    return;
  }
  // Heights at the right, each on a line of its own; what lies under grade at the left.
  double column = right + pen.paper(6.0);
  const auto height = [&](const std::string& what, double from, double to) {
    if (std::abs(to - from) < 1e-9) return;
    pen.upright(what, {x + 1.3 * half, from}, {x + 1.3 * half, to}, column);
    column += pen.paper(8.0);
  };
  const site::Inlet* inlet = course_.inlet;
  const site::ShearValve* valve = inlet != nullptr && inlet->shear_valve ? &*inlet->shear_valve : nullptr;
  if (valve != nullptr && valve->groove_elevation && island)
    height("shear groove of " + id + " to the island's top", valve->groove_elevation->likely.si(), island->likely.si());
  if (island) height("island of " + id + " above grade", 0.0, island->likely.si());
  if (course_.hose->outlet_elevation)
    height("outlet of " + course_.hose->id.text + " above grade", 0.0, course_.hose->outlet_elevation->likely.si());
  double left = x - 1.3 * half - pen.paper(5.0);
  if (inlet != nullptr && inlet->line_elevation) {
    pen.upright("line of " + id + " below grade", {x, inlet->line_elevation->likely.si()}, {x, 0.0}, left);
    left -= pen.paper(8.0);
  }
  if (course_.dispenser->sump && course_.dispenser->sump->depth) {
    const Point* floor = places_.find(item("dispenser", site_.dispensers, *course_.dispenser) + ".sump");
    const double depth = course_.dispenser->sump->depth->likely.si();
    if (floor != nullptr) pen.upright("depth of the sump of " + id, *floor, {floor->x, floor->y + depth}, left);
  }
  for (const Path& path : std::vector<Path>(out_.paths)) {
    if (path.layer == "reach")
      pen.level("reach of " + course_.hose->id.text, path.points[0], path.points[1], path.points[0].y + pen.paper(5.0));
  }
  for (const Mark& mark : out_.marks) {
    if (mark.kind == "shear-valve") pen.label(mark.at, "shear valve " + mark.subject, 2.6);
    if (mark.kind == "sump-sensor") pen.label(mark.at, "sensor", 1.6);
    if (mark.kind == "nozzle") pen.label(mark.at, "nozzle " + mark.subject, 1.6);
  }
  if (island) pen.label({x - 1.3 * half, island->likely.si()}, "island of " + id, 1.2);
}

void SectionDrawing::notes() {
  out_.notes.emplace_back(
      "Level distances are lengths along the course; heights count from the site's datum, taken as grade.");
  if (whole() && tank_ && !tank_->pump_known)
    out_.notes.emplace_back(
        "The pump's place along its tank was not entered (at): the tank is drawn apart from the line.");
  if (whole() && tank_) {
    const site::TankShape& shape = *course_.tank->shape;
    if (shape.kind.text == "horizontal-cylinder" && !shape.outside_diameter)
      out_.notes.emplace_back("The tank's outside diameter was not entered: its inside is drawn.");
    if (!shape.heads.empty() && shape.heads.text != "flat")
      out_.notes.emplace_back("The tank's heads are drawn flat, at the ends of its straight part.");
    if (!shape.low_end && shape.pitch)
      out_.notes.emplace_back("The tank's low end was not entered: drawn at the left.");
  }
  const bool assumed =
      std::any_of(out_.paths.begin(), out_.paths.end(), [](const Path& path) { return path.layer == "sumps-assumed"; });
  if (assumed) out_.notes.emplace_back("Height of a sump not entered (floor_elevation): drawn with its top at grade.");
  if (course_.pump == nullptr) out_.notes.emplace_back("No pump is joined to this hose by lines.");
  if (course_.dispenser != nullptr && !(course_.dispenser->base_width && course_.dispenser->outlet_height))
    out_.notes.emplace_back(
        "The dispenser's outline takes base_width and outlet_height; without them it is not drawn.");
  out_.notes.emplace_back("The island's width was not entered: its edges are drawn for its height alone.");
}

}  // namespace forecourse::handover
