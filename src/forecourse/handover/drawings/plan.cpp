#include "forecourse/handover/drawings/plan.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/plan.h"
#include "forecourse/handover/drawings/sumps.h"
#include "forecourse/handover/drawings/symbols.h"
#include "forecourse/handover/drawings/words.h"
#include "forecourse/handover/drawings/zones.h"
#include "forecourse/handover/parts/part_list.h"

namespace forecourse::handover {
namespace {

Point point(const site::Position& position) { return {position.x.si(), position.y.si()}; }

std::vector<Point> corners(const checks::Outline& outline) {
  std::vector<Point> out;
  out.reserve(outline.corners.size());
  for (const checks::PlanPoint& corner : outline.corners) out.push_back({corner.x, corner.y});
  return out;
}

void draw(const std::string& layer, const std::optional<checks::Outline>& outline, Drawing& out) {
  if (outline && outline->radius > 0.0) {
    out.circles.push_back({layer, {outline->corners.front().x, outline->corners.front().y}, outline->radius});
  } else if (outline) {
    out.paths.push_back({layer, corners(*outline), true});
  }
}

void draw_surroundings(const site::Site& site, Drawing& out) {
  if (!site.surroundings) return;
  for (const site::LotLine& lot : site.surroundings->lot_lines) {
    if (lot.from && lot.to) out.paths.push_back({"lot", {point(*lot.from), point(*lot.to)}});
  }
  for (const site::Building& building : site.surroundings->buildings) {
    draw("buildings", checks::outline(building), out);
  }
}

void draw_dispenser(const site::Dispenser& dispenser, Drawing& out) {
  if (!dispenser.position) return;
  const Point at = point(*dispenser.position);
  if (dispenser.sump) draw("sumps", sump_on_plan(*dispenser.sump, at), out);
  double reach = 0.0;
  for (const site::Hose& hose : dispenser.hoses) reach = std::max(reach, checks::hose_reach(hose).value_or(0.0));
  if (reach > 0.0) out.circles.push_back({"reach", at, reach});
}

/// The products of the lines, in the order of the site file.
std::vector<std::string> line_products(const std::vector<StationPart>& parts) {
  std::vector<std::string> out;
  for (const StationPart* line : of_kind(parts, "line"))
    add_product(out, line->products.empty() ? "" : line->products.front());
  return out;
}

double distance(Point a, Point b) { return std::hypot(b.x - a.x, b.y - a.y); }

/// The nearest point of a straight piece.
Point foot(Point of, Point from, Point to) {
  const double x = to.x - from.x, y = to.y - from.y;
  const double length = x * x + y * y;
  const double share = length > 0.0 ? std::clamp(((of.x - from.x) * x + (of.y - from.y) * y) / length, 0.0, 1.0) : 0.0;
  return {from.x + share * x, from.y + share * y};
}

/// Two points that are nearest each other, of a set and a straight piece.
struct Nearest {
  std::string name;
  Point from, to;
  double far = std::numeric_limits<double>::infinity();

  void take(const std::string& who, const std::vector<Point>& points, Point begin, Point end) {
    for (const Point one : points) {
      const Point other = foot(one, begin, end);
      if (distance(one, other) < far - 1e-9) *this = {who, one, other, distance(one, other)};
    }
  }
};

class PlanLetters {
 public:
  PlanLetters(const site::Site& site, const std::vector<StationPart>& parts, Drawing& out)
      : site_(site), parts_(parts), out_(out), pen_(out, site.display) {}

  void write() {
    lines();
    pen_.keep_off_shapes();
    tank_sizes();
    dispenser_gaps();
    to_lot_lines();
    scale_bar();
    names();
    notes();
  }

 private:
  /// Each line a little beside the straight way between its places, so that those of several products are told apart.
  void lines() {
    const PartPlaces places = plan_places(site_);
    const std::vector<std::string> products = line_products(parts_);
    for (const StationPart* part : of_kind(parts_, "line")) {
      const site::Line& line = **std::get_if<const site::Line*>(&part->data);
      const std::string product = part->products.empty() ? "" : part->products.front();
      LineRow row{line.id.text, product, checks::bore_of(line.pipe), {}, {}, {}, {}};
      if (line.pipe.length) row.length = line.pipe.length->likely.si();
      if (line.fall) row.fall = line.fall->likely.si();
      if (line.burial) row.burial = line.burial->likely.si();
      const std::optional<Point> from = end(places, line.from.text), to = end(places, line.to.text);
      if (from && to) {
        row.drawn = distance(*from, *to);
        const auto found = std::find(products.begin(), products.end(), product);
        const double lane =
            static_cast<double>(found - products.begin()) - 0.5 * static_cast<double>(products.size() - 1);
        draw_run(line_layer(product), *from, *to, pen_.paper(0.9) * lane);
      }
      out_.lines.push_back(std::move(row));
    }
  }

  [[nodiscard]] std::optional<Point> end(const PartPlaces& places, const std::string& place) const {
    for (const site::Pump& pump : site_.pumps) {
      const Point* at = pump.id.text == place ? places.find(item("pump", site_.pumps, pump)) : nullptr;
      if (at != nullptr) return *at;
    }
    const auto entered = site::position_at(site_, place);
    return entered ? std::optional(point(*entered)) : std::nullopt;
  }

  void draw_run(const std::string& layer, Point from, Point to, double aside) {
    const double far = distance(from, to);
    if (!(far > 0.0)) return;
    // The same side of the way, whichever end comes first.
    if (to.x < from.x || (to.x == from.x && to.y < from.y)) std::swap(from, to);
    const Point along{(to.x - from.x) / far, (to.y - from.y) / far};
    const double join = std::min(0.2 * far, pen_.paper(2.5));
    const auto at = [&](Point origin, double forward) {
      return Point{origin.x + along.x * forward - along.y * aside, origin.y + along.y * forward + along.x * aside};
    };
    if (aside == 0.0) {
      out_.paths.push_back({layer, {from, to}});
    } else {
      out_.paths.push_back({layer, {from, at(from, join), at(to, -join), to}});
    }
  }

  void tank_sizes() {
    for (const site::Tank& tank : site_.tanks) {
      const auto outline = checks::outline(tank);
      if (!outline || outline->radius > 0.0) continue;
      const std::vector<Point> c = corners(*outline);
      pen_.dimension("length of " + tank.id.text, c[0], c[1], -4.0);
      pen_.dimension("width of " + tank.id.text, c[1], c[2], -4.0);
    }
  }

  /// Between dispensers that stand one after the other in the file, below them.
  void dispenser_gaps() {
    const site::Dispenser* before = nullptr;
    for (const site::Dispenser& one : site_.dispensers) {
      if (!one.position) continue;
      if (before != nullptr) {
        Point from = point(*before->position), to = point(*one.position);
        if (to.x < from.x) std::swap(from, to);
        constexpr double aligned = 0.01;  // [m]
        if (std::min(std::abs(to.x - from.x), std::abs(to.y - from.y)) < aligned)
          pen_.dimension(before->id.text + " to " + one.id.text, from, to, -11.0);
      }
      before = &one;
    }
  }

  void to_lot_lines() {
    if (!site_.surroundings) return;
    for (const site::LotLine& lot : site_.surroundings->lot_lines) {
      if (!lot.from || !lot.to) continue;
      to_piece("lot line " + lot.id.text, {{point(*lot.from), point(*lot.to)}}, 0.0);
    }
    for (const site::Building& building : site_.surroundings->buildings) {
      const auto outline = checks::outline(building);
      if (!outline) continue;
      const std::vector<Point> c = corners(*outline);
      std::vector<std::pair<Point, Point>> sides;
      sides.reserve(c.size());
      for (std::size_t i = 0; i < c.size(); ++i) sides.emplace_back(c[i], c[(i + 1) % c.size()]);
      to_piece("building " + building.id.text, sides, 4.0);
    }
  }

  /// From the nearest dispenser and the nearest tank.
  void to_piece(const std::string& what, const std::vector<std::pair<Point, Point>>& sides, double aside) {
    Nearest dispenser, tank;
    for (const auto& [from, to] : sides) {
      for (const site::Dispenser& one : site_.dispensers) {
        if (one.position) dispenser.take(one.id.text, {point(*one.position)}, from, to);
      }
      for (const site::Tank& one : site_.tanks) {
        if (const auto outline = checks::outline(one); outline && !(outline->radius > 0.0))
          tank.take(one.id.text, corners(*outline), from, to);
      }
    }
    for (const Nearest* one : {&dispenser, &tank}) {
      if (std::isfinite(one->far)) pen_.dimension(one->name + " to " + what, one->from, one->to, aside);
    }
  }

  /// A bar of four even steps at the lower left corner, and where the plan's axes point.
  void scale_bar() {
    const bool us = site_.display == site::Display::us;
    double step = 0.0;
    for (const double one : {1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0}) {
      step = us ? to_si(one, "ft") : one;
      if (step > pen_.paper(10.0)) break;
    }
    const Point at{out_.sheet.corner.x + pen_.paper(14.0), out_.sheet.corner.y + pen_.paper(13.0)};
    const double high = pen_.paper(1.2);
    for (int i = 0; i < 4; ++i) {
      const double x = at.x + i * step;
      out_.paths.push_back(
          {"sheet", {{x, at.y}, {x + step, at.y}, {x + step, at.y + high}, {x, at.y + high}}, true, i % 2 == 0});
    }
    for (const int i : {0, 2, 4})
      pen_.text("notes", {at.x + i * step, at.y + pen_.paper(2.4)},
                i == 0 ? "0" : length_words(i * step, site_.display), Anchor::middle, 1.6);
    pen_.text("notes", {at.x, at.y - pen_.paper(3.2)}, "First axis to the right, second upward; north was not entered.",
              Anchor::left, 1.6);
    Box box;
    box.take({at.x, at.y});
    box.take({at.x + 4.0 * step, at.y + high});
    pen_.keep_off(box);
  }

  void names() {
    for (const Mark& mark : out_.marks) {
      if (mark.kind == "tank") pen_.label(mark.at, tank_name(mark));
    }
    for (const Mark& mark : out_.marks) {
      const bool named = mark.kind == "dispenser" || mark.kind == "pump" || mark.kind == "fill" ||
                         mark.kind == "vent" || mark.kind == "branch" || mark.kind == "emergency-stop" ||
                         mark.kind == "extinguisher" || mark.kind == "vapor-processor";
      if (named) pen_.label(mark.at, mark.subject, mark.kind == "dispenser" ? 2.4 : 1.6);
    }
    if (!site_.surroundings) return;
    names_of_buildings(*site_.surroundings);
    names_around(*site_.surroundings);
  }

  void names_of_buildings(const site::Surroundings& around) {
    for (const site::Building& one : around.buildings) {
      if (const auto outline = checks::outline(one)) {
        const Point middle{0.5 * (outline->corners[0].x + outline->corners[2].x),
                           0.5 * (outline->corners[0].y + outline->corners[2].y)};
        pen_.text("text", middle, "building " + one.id.text, Anchor::middle, 2.2);
      }
      for (const site::Opening& opening : one.openings) {
        if (opening.position) pen_.label(point(*opening.position), "opening " + opening.id.text, 1.0);
      }
    }
  }

  void names_around(const site::Surroundings& around) {
    for (const site::LotLine& one : around.lot_lines) {
      if (!one.from || !one.to) continue;
      const Point a = point(*one.from), b = point(*one.to);
      pen_.label({a.x + 0.12 * (b.x - a.x), a.y + 0.12 * (b.y - a.y)}, "lot line " + one.id.text, 1.0);
    }
    for (const site::IgnitionSource& one : around.ignitions) {
      if (!one.position) continue;
      const Point at = point(*one.position);
      const double arm = pen_.paper(1.0);
      out_.paths.push_back({"ignitions", {{at.x - arm, at.y - arm}, {at.x + arm, at.y + arm}}});
      out_.paths.push_back({"ignitions", {{at.x - arm, at.y + arm}, {at.x + arm, at.y - arm}}});
      pen_.label(at, "ignition " + one.id.text, 1.2);
    }
  }

  [[nodiscard]] std::string tank_name(const Mark& mark) const {
    for (const site::Tank& tank : site_.tanks) {
      if (tank.id.text == mark.subject) return mark.subject + " " + tank.product.text;
    }
    return mark.subject;
  }

  void notes() {
    std::string bare;
    for (const site::Tank& tank : site_.tanks) {
      if (tank.position && !checks::outline(tank)) bare += (bare.empty() ? "" : ", ") + tank.id.text;
    }
    if (!bare.empty())
      out_.notes.push_back("Outline not drawn of " + bare +
                           ": it takes position, axis, a shape with length and outside_diameter, and head_depth where "
                           "the heads are not flat.");
    out_.notes.emplace_back(
        "Lines are drawn straight between the places entered, since their way is not, and side by side; the list "
        "tells their length as entered.");
    std::string at_tank;
    for (const Mark& mark : out_.marks) {
      if (mark.kind == "pump" && mark.place == "at its tank") at_tank += (at_tank.empty() ? "" : ", ") + mark.subject;
    }
    if (!at_tank.empty())
      out_.notes.push_back("Drawn at the position of their tanks, having none of their own: " + at_tank + ".");
    const bool sumps =
        std::any_of(out_.paths.begin(), out_.paths.end(), [](const Path& path) { return path.layer == "sumps"; });
    if (sumps) out_.notes.emplace_back("The two sizes of a sump are drawn along the axes of the plan.");
    if (!site_.surroundings || site_.surroundings->lot_lines.empty())
      out_.notes.emplace_back("Lot lines and buildings were not entered: distances to them are not drawn.");
    else if (!site_.surroundings->complete.value_or(false))
      out_.notes.emplace_back("It is not stated that all that stands around is listed.");
    out_.notes.emplace_back("Islands have no outline in the site file and are not drawn.");
  }

  const site::Site& site_;
  const std::vector<StationPart>& parts_;
  Drawing& out_;
  Pen pen_;
};

}  // namespace

void draw_plan(const site::Site& site, const std::vector<StationPart>& parts, Drawing& out) {
  out.layers = drawing_layers(line_products(parts));
  out.symbols = plan_symbols();
  const PartPlaces places = plan_places(site);
  places.place(parts, out);
  draw_surroundings(site, out);
  for (const site::Tank& tank : site.tanks) {
    draw("tanks", checks::outline(tank), out);
    if (tank.sump) {
      const Point* at = places.find(item("tank", site.tanks, tank) + ".sump");
      if (at != nullptr) draw("sumps", sump_on_plan(*tank.sump, *at), out);
    }
  }
  for (const site::Dispenser& dispenser : site.dispensers) draw_dispenser(dispenser, out);
  draw_zones(site, parts, places, View::plan, out);
}

void letter_plan(const site::Site& site, const std::vector<StationPart>& parts, Drawing& out) {
  PlanLetters(site, parts, out).write();
}

}  // namespace forecourse::handover
