#include <algorithm>
#include <cmath>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/figures/each_part.h"
#include "forecourse/handover/drawings/section.h"
#include "forecourse/handover/drawings/words.h"
#include "forecourse/handover/parts/part_list.h"

namespace forecourse::handover {

void SectionDrawing::letter() {
  letter_ground();
  if (shows_tank()) letter_tank();
  if (whole()) letter_lines();
  if (shows_dispenser()) draw_island();
  letter_names();
  if (reach_ == Reach::tank) letter_tank_parts();
  if (reach_ == Reach::dispenser) letter_dispenser();
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
  const int strokes_there = static_cast<int>(std::ceil((right - left) / step - 0.5));
  for (int i = 0; i < strokes_there; ++i) {
    const double x = left + (0.5 + i) * step;
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
  if (reach_ == Reach::tank) {
    const double x = t.left - pen.paper(5.0);
    pen.upright("diameter of " + id, {t.left, low_left}, {t.left, high_left}, x, "outside");
    if (high_left < 0.0) pen.upright("cover of " + id, {t.left, high_left}, {t.left, 0.0}, x, "cover");
  }
  pen.level("length of " + id, {t.left, low_left}, {t.right, t.right_bottom - t.shell},
            std::min(low_left, t.right_bottom - t.shell) - pen.paper(5.0));
  const double middle = 0.5 * (t.left + t.right);
  const std::string name = id + " " + course_.tank->product.text;
  constexpr double name_mm = 2.2;
  const auto fits = [&](const std::string& words, double millimeters) {
    return text_length(words, pen.paper(millimeters)) + pen.paper(2.0) < t.right - t.left;
  };
  if (fits(name, name_mm)) {
    pen.text("text", {middle, inside_bottom(middle) + 0.62 * t.height}, name, Anchor::middle, name_mm);
  } else {
    pen.keep_off_shapes();
    pen.label({middle, inside_bottom(middle)}, name, 3.0);
  }
  if (course_.tank->shape->pitch) {
    const std::string pitch = "pitch " + slope_words(course_.tank->shape->pitch->likely.si()) +
                              (t.low_left ? ", low end left" : ", low end right");
    if (fits(pitch, pen.letter()))
      pen.text("text", {middle, inside_bottom(middle) + pen.paper(1.5)}, pitch, Anchor::middle);
  }
}

void SectionDrawing::letter_lines() {
  Pen pen(out_, site_.display);
  const Box box = extent(out_);
  double lowest = 0.0;
  for (const LinePlace& place : line_) lowest = std::min(lowest, place.z.value_or(0.0));
  const double y = std::min(box.low.y - pen.paper(5.0), lowest - pen.paper(12.0));
  for (std::size_t i = 0; i < course_.steps.size(); ++i) {
    const site::Line& line = *course_.steps[i].line;
    if (places_.find(item("line", site_.lines, line)) == nullptr) continue;
    const LinePlace &from = line_[i], &to = line_[i + 1];
    pen.level("length of " + line.id.text, {from.x, *from.z}, {to.x, *to.z}, y);
    const double fall = (*to.z - *from.z) / (to.x - from.x);
    const Point middle{0.5 * (from.x + to.x), 0.5 * (*from.z + *to.z)};
    const std::string slope =
        fall == 0.0 ? "level"
                    : slope_words(std::abs(fall)) + (fall > 0.0 ? ", falls to the pump" : ", falls away from the pump");
    const auto fits = [&](const std::string& words) {
      return text_length(words, pen.paper(pen.letter())) + pen.paper(2.0) < to.x - from.x;
    };
    if (!fits(line.id.text)) continue;
    pen.text("text", {middle.x, middle.y - pen.paper(3.2)}, line.id.text, Anchor::middle);
    if (fits(slope)) pen.text("text", {middle.x, middle.y - pen.paper(6.2)}, slope, Anchor::middle);
  }
}

/// Half of the island's width, which is not entered: a little more than the sump's.
double SectionDrawing::half_island() const {
  const double letter = to_si(1.8, "mm") * out_.sheet.scale;
  double half = letter * (whole() ? 1.5 : 5.0);
  constexpr double near = 3.0;  // [m] of the dispenser
  for (const Path& path : out_.paths) {
    if (!path.layer.starts_with("sumps")) continue;
    for (const Point& point : path.points) {
      const double far = std::abs(point.x - inlet_x_);
      if (far < near) half = std::max(half, far);
    }
  }
  return 1.3 * half;
}

void SectionDrawing::draw_island() {
  if (!course_.dispenser->elevation) return;
  const double top = course_.dispenser->elevation->likely.si(), half = half_island();
  out_.paths.push_back(
      {"dispensers", {{inlet_x_ - half, 0.0}, {inlet_x_ - half, top}, {inlet_x_ + half, top}, {inlet_x_ + half, 0.0}}});
}

void SectionDrawing::letter_names() {
  Pen pen(out_, site_.display);
  pen.keep_off_shapes();
  if (reach_ == Reach::tank && course_.pump != nullptr && course_.pump->discharge_elevation)
    pen.upright("pump head of " + course_.pump->id.text + " below grade",
                {0.0, course_.pump->discharge_elevation->likely.si()}, {0.0, 0.0}, pen.paper(4.0), "pump head");
  for (const Mark& mark : out_.marks) {
    if (reach_ == Reach::tank && mark.kind == "vent" && mark.at.y > 0.0)
      pen.upright("outlet of vent " + mark.subject, {mark.at.x, 0.0}, mark.at, mark.at.x - pen.paper(4.0), "outlet");
  }
  for (const Mark& mark : out_.marks) {
    if (mark.kind == "pump" || mark.kind == "fill" || mark.kind == "vent" || mark.kind == "branch")
      pen.label(mark.at, (mark.kind == "fill" ? "fill " : mark.kind == "vent" ? "vent " : "") + mark.subject);
  }
  if (whole() && shows_dispenser() && course_.dispenser->elevation)
    pen.label({inlet_x_, course_.dispenser->elevation->likely.si()}, course_.hose->id.text, 3.0);
}

void SectionDrawing::letter_tank_parts() {
  if (!tank_) return;
  Pen pen(out_, site_.display);
  pen.keep_off_shapes();
  double y = pen.paper(12.0);
  for (const Mark& mark : out_.marks) {
    if (mark.kind == "fill") {
      const double low = tank_->low_left ? tank_->left : tank_->right;
      pen.level("fill " + mark.subject + " from the low end", {low, 0.0}, {mark.at.x, 0.0}, y);
      y += pen.paper(7.0);
    }
    if (mark.kind == "drop-tube") {
      const Point bottom{mark.at.x, inside_bottom(mark.at.x)};
      pen.upright("drop tube " + mark.subject + " above the bottom", bottom, mark.at, mark.at.x + pen.paper(4.0));
    }
    if (mark.kind == "overfill-valve" && mark.place == "entered")
      pen.label(mark.at, "overfill valve shut at " + length_words(mark.at.y - inside_bottom(mark.at.x), site_.display),
                2.0);
  }
}

void SectionDrawing::letter_dispenser() {
  const double half = half_island();
  letter_heights(inlet_x_ + half);
  letter_depths(inlet_x_ - half);
  Pen pen(out_, site_.display);
  pen.keep_off_shapes();
  const auto reach = checks::hose_reach(*course_.hose);
  for (const Mark& mark : out_.marks) {
    if (mark.kind == "shear-valve") pen.label(mark.at, "shear valve " + mark.subject, 2.6);
    if (mark.kind == "sump-sensor") pen.label(mark.at, "sump sensor", 1.6);
    if (mark.kind == "nozzle")
      pen.label(mark.at,
                "nozzle " + mark.subject + (reach ? ", hose reaches " + length_words(*reach, site_.display) : ""), 1.6);
  }
  if (course_.dispenser->elevation)
    pen.label({inlet_x_ - half, course_.dispenser->elevation->likely.si()}, "island of " + course_.dispenser->id.text,
              1.2);
}

/// Heights at the right of the island, each on a line of its own.
void SectionDrawing::letter_heights(double beside) {
  Pen pen(out_, site_.display);
  double column = beside + pen.paper(6.0);
  const auto height = [&](const std::string& what, double from, double to, const char* word) {
    constexpr double least = 1e-9;  // [m]
    if (std::abs(to - from) < least) return;
    pen.upright(what, {beside, from}, {beside, to}, column, word);
    column += pen.paper(9.0);
  };
  const std::string& id = course_.dispenser->id.text;
  const auto& island = course_.dispenser->elevation;
  const site::ShearValve* valve =
      course_.inlet != nullptr && course_.inlet->shear_valve ? &*course_.inlet->shear_valve : nullptr;
  if (valve != nullptr && valve->groove_elevation && island)
    height("shear groove of " + id + " to the island's top", valve->groove_elevation->likely.si(), island->likely.si(),
           "groove to island");
  if (island) height("island of " + id + " above grade", 0.0, island->likely.si(), "island");
  if (course_.hose->outlet_elevation)
    height("outlet of " + course_.hose->id.text + " above grade", 0.0, course_.hose->outlet_elevation->likely.si(),
           "nozzle");
}

/// What lies under grade, at the left of it.
void SectionDrawing::letter_depths(double beside) {
  Pen pen(out_, site_.display);
  double column = beside - pen.paper(6.0);
  const site::Dispenser& dispenser = *course_.dispenser;
  if (course_.inlet != nullptr && course_.inlet->line_elevation) {
    pen.upright("line of " + dispenser.id.text + " below grade", {inlet_x_, course_.inlet->line_elevation->likely.si()},
                {inlet_x_, 0.0}, column, "line");
    column -= pen.paper(9.0);
  }
  if (!dispenser.sump || !dispenser.sump->depth) return;
  const Point* floor = places_.find(item("dispenser", site_.dispensers, dispenser) + ".sump");
  if (floor != nullptr)
    pen.upright("depth of the sump of " + dispenser.id.text, *floor,
                {floor->x, floor->y + dispenser.sump->depth->likely.si()}, column, "sump");
}

void SectionDrawing::notes() {
  out_.notes.emplace_back(
      "Level distances are lengths along the course; heights count from the site's datum, taken as grade.");
  if (shows_tank() && tank_ && !tank_->pump_known)
    out_.notes.emplace_back(
        "The pump's place along its tank was not entered (at): the tank is drawn apart from the line.");
  if (shows_tank() && tank_) {
    const site::TankShape& shape = *course_.tank->shape;
    if (shape.kind.text == "horizontal-cylinder" && !shape.outside_diameter)
      out_.notes.emplace_back("The tank's outside diameter was not entered: its inside is drawn.");
    if (!shape.heads.empty() && shape.heads.text != "flat")
      out_.notes.emplace_back(head_depth() ? "The tank's heads are drawn as one arc each, without knuckles."
                                           : "The tank's heads are drawn flat, at the ends of its straight part.");
    if (!shape.low_end && shape.pitch)
      out_.notes.emplace_back("The tank's low end was not entered: drawn at the left.");
  }
  const bool assumed =
      std::any_of(out_.paths.begin(), out_.paths.end(), [](const Path& path) { return path.layer == "sumps-assumed"; });
  if (assumed) out_.notes.emplace_back("Height of a sump not entered (floor_elevation): drawn with its top at grade.");
  if (course_.pump == nullptr) out_.notes.emplace_back("No pump is joined to this hose by lines.");
  if (shows_dispenser() && !(course_.dispenser->base_width && course_.dispenser->outlet_height))
    out_.notes.emplace_back(
        "The dispenser's outline takes base_width and outlet_height; without them it is not drawn.");
  if (shows_dispenser())
    out_.notes.emplace_back("The island's width was not entered: its edges are drawn for its height alone.");
}

}  // namespace forecourse::handover
