#include "forecourse/handover/drawings/pen.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "forecourse/base/unit_text.h"
#include "forecourse/handover/drawings/words.h"

namespace forecourse::handover {
namespace {

constexpr double letter_wide = 0.74;  ///< of a letter's height, about, in a common sans-serif face
constexpr double tick_mm = 1.0;       ///< half of a tick, in each direction

bool overlap(const Box& a, const Box& b) {
  return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

/// Whether a straight piece passes through a box.
bool crosses(const Box& box, const std::pair<Point, Point>& piece) {
  double from = 0.0, to = 1.0;
  const auto cut = [&](double start, double way, double low, double high) {
    if (way == 0.0) return start > low && start < high;
    const double a = (low - start) / way, b = (high - start) / way;
    from = std::max(from, std::min(a, b));
    to = std::min(to, std::max(a, b));
    return from < to;
  };
  const auto& [a, b] = piece;
  return cut(a.x, b.x - a.x, box.low.x, box.high.x) && cut(a.y, b.y - a.y, box.low.y, box.high.y);
}

Box text_box(Point at, double length, double height, Anchor anchor) {
  const double left = at.x - (anchor == Anchor::left ? 0.0 : anchor == Anchor::middle ? 0.5 * length : length);
  const double beside = 0.3 * height;
  return {{left - beside, at.y - 0.35 * height}, {left + length + beside, at.y + 1.25 * height}};
}

double distance(Point a, Point b) { return std::hypot(b.x - a.x, b.y - a.y); }

/// What the letters of a dimension cover.
Box letters_of(const Dimension& d) {
  const Point along{std::cos(d.angle), std::sin(d.angle)};
  const double half = 0.5 * text_length(d.text, d.height);
  Box box;
  for (const double side : {-half, half}) {
    for (const double high : {0.0, d.height})
      box.take({d.text_at.x + along.x * side - along.y * high, d.text_at.y + along.y * side + along.x * high});
  }
  return box;
}

}  // namespace

void Box::take(Point point) { take(point, 0.0); }

void Box::take(Point center, double radius) {
  if (empty()) {
    low = {center.x - radius, center.y - radius};
    high = {center.x + radius, center.y + radius};
    return;
  }
  low = {std::min(low.x, center.x - radius), std::min(low.y, center.y - radius)};
  high = {std::max(high.x, center.x + radius), std::max(high.y, center.y + radius)};
}

Box Box::wider(double by) const { return {{low.x - by, low.y - by}, {high.x + by, high.y + by}}; }

Box extent(const Drawing& drawing) {
  Box out;
  for (const Path& path : drawing.paths) {
    for (const Point& point : path.points) out.take(point);
  }
  for (const Circle& circle : drawing.circles) out.take(circle.center, circle.radius);
  for (const Arc& arc : drawing.arcs) {
    const auto at = [&](double angle) {
      return Point{arc.center.x + arc.radius * std::cos(angle), arc.center.y + arc.radius * std::sin(angle)};
    };
    out.take(at(arc.from));
    out.take(at(arc.to));
    constexpr double quarter = std::numbers::pi / 2.0;
    for (int i = static_cast<int>(std::ceil(arc.from / quarter)); i * quarter < arc.to; ++i) out.take(at(i * quarter));
  }
  for (const Mark& mark : drawing.marks) out.take(mark.at);
  return out;
}

double text_length(const std::string& text, double height) {
  const auto letters = std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xC0) != 0x80; });
  return letter_wide * height * static_cast<double>(letters);
}

std::vector<std::pair<Point, Point>> strokes(const Dimension& d, double scale) {
  std::vector<std::pair<Point, Point>> out{{d.line_from, d.line_to}};
  const double tick = to_si(tick_mm, "mm") * scale;
  for (const auto& [measured, end] : {std::pair{d.from, d.line_from}, std::pair{d.to, d.line_to}}) {
    out.push_back({{end.x - tick, end.y - tick}, {end.x + tick, end.y + tick}});
    const double far = distance(measured, end);
    if (far < tick) continue;
    const Point way{(end.x - measured.x) / far, (end.y - measured.y) / far};
    out.push_back(
        {{measured.x + way.x * tick, measured.y + way.y * tick}, {end.x + way.x * tick, end.y + way.y * tick}});
  }
  return out;
}

double Pen::paper(double millimeters) const { return to_si(millimeters, "mm") * out_.sheet.scale; }

void Pen::keep_off_shapes() {
  for (const Path& path : out_.paths) {
    for (std::size_t i = 0; i + 1 < path.points.size(); ++i) pieces_.emplace_back(path.points[i], path.points[i + 1]);
    if (path.closed && path.points.size() > 1) pieces_.emplace_back(path.points.back(), path.points.front());
  }
  for (const Mark& mark : out_.marks) {
    const bool drawn = std::any_of(out_.symbols.begin(), out_.symbols.end(),
                                   [&](const Symbol& symbol) { return symbol.kind == mark.kind; });
    if (!drawn) continue;
    Box box;
    box.take(mark.at, paper(1.4));
    keep_off(box);
  }
  for (const Text& one : out_.texts) {
    if (one.layer == "text") keep_off(text_box(one.at, text_length(one.text, one.height), one.height, one.anchor));
  }
  for (const Dimension& one : out_.dimensions) {
    keep_off(letters_of(one));
    for (const auto& stroke : strokes(one, out_.sheet.scale)) pieces_.push_back(stroke);
  }
}

void Pen::text(const std::string& layer, Point at, const std::string& text, Anchor anchor, double millimeters) {
  const double height = paper(millimeters);
  keep_off(text_box(at, text_length(text, height), height, anchor));
  out_.texts.push_back({layer, at, text, height, anchor, 0.0});
}

double Pen::cost(const Box& box) const {
  double out = 0.0;
  for (const Box& one : taken_) out += overlap(box, one) ? 10.0 : 0.0;
  for (const auto& piece : pieces_) out += crosses(box, piece) ? 2.0 : 0.0;
  return out;
}

Pen::Place Pen::free_place(Point of, double length, double height, double clearance_mm) const {
  Place best{of, Anchor::left, std::numeric_limits<double>::infinity(), false};
  constexpr std::array<double, 5> rings{1.0, 2.6, 4.5, 7.0, 10.0};
  for (const double ring : rings) {
    const double off = paper(clearance_mm * ring + (ring > 1.0 ? 1.0 : 0.0));
    for (int direction = 0; direction < 8; ++direction) {
      constexpr std::array<int, 8> order{1, 7, 3, 5, 2, 6, 0, 4};  // beside a corner first
      const double angle = std::numbers::pi / 4.0 * order[static_cast<std::size_t>(direction)];
      const double x = std::cos(angle), y = std::sin(angle);
      const Anchor anchor = x > 0.1 ? Anchor::left : x < -0.1 ? Anchor::right : Anchor::middle;
      const Point at{of.x + off * x, of.y + off * y - (y < -0.1 ? height : y > 0.1 ? 0.0 : 0.5 * height)};
      const double worth = cost(text_box(at, length, height, anchor)) + 0.3 * ring + 0.01 * direction;
      if (worth < best.cost) best = {at, anchor, worth, ring > 1.0};
    }
  }
  return best;
}

void Pen::lead(Point of, const Place& to, double height) {
  const double aside = to.anchor == Anchor::left ? -paper(0.4) : to.anchor == Anchor::right ? paper(0.4) : 0.0;
  const bool above = to.anchor == Anchor::middle && to.at.y > of.y;
  const Point end{to.at.x + aside, to.at.y + (above ? -0.4 : 0.5) * height};
  const double far = distance(of, end);
  const double gap = std::min(paper(0.9), 0.4 * far);
  out_.paths.push_back({"leaders", {{of.x + (end.x - of.x) / far * gap, of.y + (end.y - of.y) / far * gap}, end}});
}

void Pen::label(Point of, const std::string& words, double clearance_mm) {
  const double height = paper(letter_);
  const double length = text_length(words, height);
  const Place best = free_place(of, length, height, clearance_mm);
  keep_off(text_box(best.at, length, height, best.anchor));
  out_.texts.push_back({"text", best.at, words, height, best.anchor, 0.0});
  if (best.far) lead(of, best, height);
}

void Pen::measure(const std::string& what, Point from, Point to, Point line_from, Point line_to,
                  const std::string& word) {
  const double value = distance(line_from, line_to);
  Dimension out{"dimensions", what,           from,  to,
                line_from,    line_to,        value, (word.empty() ? "" : word + " ") + length_words(value, display_),
                {},           paper(letter_), 0.0};
  double angle = std::atan2(line_to.y - line_from.y, line_to.x - line_from.x);
  constexpr double quarter = std::numbers::pi / 2.0;
  constexpr double slack = 1e-9;  // a line straight up is read from the right
  if (angle > quarter + slack) angle -= 2.0 * quarter;
  if (angle <= -quarter + slack) angle += 2.0 * quarter;
  out.angle = angle;
  const Point along{std::cos(angle), std::sin(angle)};
  const double length = text_length(out.text, out.height);
  Point middle{0.5 * (line_from.x + line_to.x), 0.5 * (line_from.y + line_to.y)};
  if (length > value) {  // no room between the ticks: behind the end that is read last
    const double off = 0.5 * value + 0.5 * length + paper(1.6);
    middle = {middle.x + along.x * off, middle.y + along.y * off};
  }
  const double up = paper(0.6);
  out.text_at = {middle.x - along.y * up, middle.y + along.x * up};
  keep_off(letters_of(out));
  for (const auto& stroke : strokes(out, out_.sheet.scale)) pieces_.push_back(stroke);
  out_.dimensions.push_back(std::move(out));
}

void Pen::dimension(const std::string& what, Point from, Point to, double offset_mm) {
  const double far = distance(from, to);
  if (!(far > 0.0)) return;
  const double off = paper(offset_mm) / far;
  const Point aside{-(to.y - from.y) * off, (to.x - from.x) * off};
  measure(what, from, to, {from.x + aside.x, from.y + aside.y}, {to.x + aside.x, to.y + aside.y});
}

void Pen::upright(const std::string& what, Point from, Point to, double x, const std::string& word) {
  measure(what, from, to, {x, from.y}, {x, to.y}, word);
}

void Pen::level(const std::string& what, Point from, Point to, double y) {
  measure(what, from, to, {from.x, y}, {to.x, y});
}

}  // namespace forecourse::handover
