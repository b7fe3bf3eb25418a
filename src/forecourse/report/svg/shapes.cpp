#include "forecourse/report/svg/shapes.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "forecourse/report/utf8.h"

namespace forecourse::report::svg {
namespace {

/// spacing, 2 spacing, ... below `end`.
std::vector<double> every(double spacing, double end) {
  std::vector<double> out;
  const int count = spacing > 0.0 ? static_cast<int>(std::ceil(end / spacing)) : 0;
  for (int i = 1; i < count; ++i) out.push_back(i * spacing);
  return out;
}

/// How far a point lies from the stretch between two others.
double away(Point p, Point from, Point to) {
  const double dx = to.x - from.x, dy = to.y - from.y, square = dx * dx + dy * dy;
  const double along = square > 0.0 ? std::clamp(((p.x - from.x) * dx + (p.y - from.y) * dy) / square, 0.0, 1.0) : 0.0;
  return std::hypot(p.x - from.x - along * dx, p.y - from.y - along * dy);
}

/// The corner between two others that lies farthest from the stretch between them, and how far.
std::pair<std::size_t, double> farthest(const std::vector<Point>& corners, std::size_t from, std::size_t to) {
  std::pair<std::size_t, double> out{from, 0.0};
  for (std::size_t i = from + 1; i < to; ++i) {
    const double distance = away(corners[i], corners[from], corners[to]);
    if (distance > out.second) out = {i, distance};
  }
  return out;
}

}  // namespace

std::vector<Point> thinned(const std::vector<Point>& corners) {
  constexpr double seen = 0.1;  // a coordinate is written to a tenth
  if (corners.size() < 3) return corners;
  std::vector<bool> stays(corners.size(), false);
  stays.front() = stays.back() = true;
  std::vector<std::pair<std::size_t, std::size_t>> stretches{{0, corners.size() - 1}};
  while (!stretches.empty()) {
    const auto [from, to] = stretches.back();
    stretches.pop_back();
    const auto [at, distance] = farthest(corners, from, to);
    if (!(distance > seen)) continue;
    stays[at] = true;
    stretches.insert(stretches.end(), {{from, at}, {at, to}});
  }
  std::vector<Point> out;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    if (stays[i]) out.push_back(corners[i]);
  }
  return out;
}

std::string circle(Point center, double radius, std::string_view css_class) {
  return fmt::format("<circle class=\"{}\" cx=\"{}\" cy=\"{}\" r=\"{}\"/>\n", css_class, coordinate(center.x),
                     coordinate(center.y), coordinate(radius));
}

std::string path(std::string_view commands, std::string_view css_class) {
  return fmt::format("<path class=\"{}\" d=\"{}\"/>\n", css_class, commands);
}

std::string polygon(const std::vector<Point>& corners, std::string_view css_class) {
  return fmt::format("<polygon class=\"{}\" points=\"{}\"/>\n", css_class, points(corners));
}

std::string polyline(const std::vector<Point>& corners, std::string_view css_class) {
  return fmt::format("<polyline class=\"{}\" points=\"{}\"/>\n", css_class, points(corners));
}

std::string data(std::string_view name, double value) {
  const std::string text = std::isfinite(value) ? fmt::format("{:.3f}", value) : "0.000";
  const std::string cut = text.substr(0, text.find_last_not_of('0') + 1);
  return data(name, std::string_view(cut.ends_with('.') ? cut.substr(0, cut.size() - 1) : cut));
}

std::string data(std::string_view name, std::string_view value) {
  return fmt::format(" data-{}=\"{}\"", name, escape(value));
}

std::string group(const Shows& shows, std::string_view piece, std::string_view css_class, std::string_view more) {
  if (piece.empty()) return {};
  std::string attributes;
  if (!css_class.empty()) attributes += fmt::format(" class=\"{}\"", css_class);
  if (shows.stop > 0) attributes += data("stop", std::to_string(shows.stop));
  if (!shows.part.empty()) attributes += data("part", shows.part);
  attributes += more;
  return attributes.empty() ? std::string(piece) : fmt::format("<g{}>\n{}</g>\n", attributes, piece);
}

std::string at(Point point) { return coordinate(point.x) + " " + coordinate(point.y); }

std::string hatch(Point corner, double width, double height, double spacing, Strokes strokes,
                  std::string_view css_class) {
  if (!(width > 0.0) || !(height > 0.0)) return {};
  std::string commands;
  if (strokes == Strokes::level) {
    for (const double down : every(spacing, height)) {
      commands += "M" + at({corner.x, corner.y + down}) + "H" + coordinate(corner.x + width);
    }
    return path(commands, css_class);
  }
  // Strokes x + y = c through the rectangle, c counted from its corner.
  for (const double c : every(spacing, width + height)) {
    const double left = std::max(0.0, c - height);
    const double right = std::min(width, c);
    commands += "M" + at({corner.x + left, corner.y + c - left}) + "L" + at({corner.x + right, corner.y + c - right});
  }
  return path(commands, css_class);
}

std::string earth_ticks(Point from, double to, std::string_view css_class) {
  constexpr double spacing = 9.0;
  std::string commands;
  for (const double along : every(spacing, to - from.x)) commands += "M" + at({from.x + along, from.y}) + "l-4 6";
  return path(commands, css_class);
}

std::string dimension(const Dimension& d) {
  std::string commands = "M" + at({d.from, d.y}) + "H" + coordinate(d.to);
  for (const double end : {d.from, d.to}) commands += "M" + at({end, d.y - 4.0}) + "v8";
  return path(commands, "dimension") + label({0.5 * (d.from + d.to), d.y - 5.0}, d.text, "dimension-text");
}

std::size_t length(std::string_view text) {
  std::size_t count = 0;
  for (std::size_t i = 0; i < text.size(); i += character_at(text, i).length) ++count;
  return count;
}

std::vector<std::string> wrapped(std::string_view text, std::size_t longest, std::size_t most) {
  std::vector<std::string> lines;
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = std::min(text.find(' ', begin), text.size());
    const std::string word(text.substr(begin, end - begin));
    begin = end + 1;
    if (word.empty()) continue;
    if (!lines.empty() && length(lines.back()) + 1 + length(word) <= longest) {
      lines.back() += " " + word;
    } else if (lines.size() < most) {
      lines.push_back(shortened(word, longest));
    } else {
      lines.back() = shortened(lines.back() + " " + word, longest);
      break;
    }
  }
  return lines;
}

}  // namespace forecourse::report::svg
