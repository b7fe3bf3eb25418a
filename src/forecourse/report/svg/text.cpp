#include "forecourse/report/svg/text.h"

#include <fmt/format.h>

#include <cmath>

#include "forecourse/report/units.h"
#include "forecourse/report/utf8.h"

namespace forecourse::report::svg {
namespace {

const char* entity(char32_t c) {
  switch (c) {
    case U'&':
      return "&amp;";
    case U'<':
      return "&lt;";
    case U'>':
      return "&gt;";
    case U'"':
      return "&quot;";
    case U'\'':
      return "&#39;";
    default:
      return nullptr;
  }
}

double step_for(double span, int about) {
  const double rough = span / about;
  const double power = std::pow(10.0, std::floor(std::log10(rough)));
  for (const double step : {1.0, 2.0, 2.5, 5.0}) {
    if (step * power >= rough * (1.0 - 1e-9)) return step * power;
  }
  return 10.0 * power;
}

}  // namespace

std::string escape(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const Character c = character_at(text, at);
    if (!c.valid || is_hidden(c.value)) {
      out += "\uFFFD";
    } else if (const char* name = entity(c.value)) {
      out += name;
    } else {
      out += text.substr(at, c.length);
    }
    at += c.length;
  }
  return out;
}

std::string coordinate(double value) {
  if (!std::isfinite(value)) return "0";
  const std::string text = fmt::format("{:.1f}", value);
  return text == "-0.0" ? "0" : text.ends_with(".0") ? text.substr(0, text.size() - 2) : text;
}

std::string shortened(std::string_view text, std::size_t longest) {
  std::size_t count = 0;
  std::size_t cut = 0;
  for (std::size_t at = 0; at < text.size(); at += character_at(text, at).length) {
    if (++count == longest) cut = at;
  }
  return count <= longest ? std::string(text) : std::string(text.substr(0, cut)) + "\u2026";
}

std::vector<double> axis_marks(double low, double high, int about) {
  const double step = step_for(high - low, about);
  const auto first = static_cast<long>(std::floor(low / step + 1e-9));
  const auto last = static_cast<long>(std::ceil(high / step - 1e-9));
  std::vector<double> marks;
  for (long i = first; i <= last; ++i) marks.push_back(static_cast<double>(i) * step);
  return marks;
}

std::string mark_text(double mark, const std::vector<double>& marks) {
  const double step = marks.size() > 1 ? marks[1] - marks[0] : 1.0;
  int places = 0;
  for (double scaled = step; places < 6 && std::abs(scaled - std::round(scaled)) > 1e-6 * scaled; scaled *= 10.0) {
    ++places;
  }
  return number(mark, places);
}

std::string line(Point from, Point to, std::string_view css_class) {
  return fmt::format("<line class=\"{}\" x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\"/>\n", css_class, coordinate(from.x),
                     coordinate(from.y), coordinate(to.x), coordinate(to.y));
}

std::string label(Point at, std::string_view text, std::string_view css_class) {
  return fmt::format("<text class=\"{}\" x=\"{}\" y=\"{}\">{}</text>\n", css_class, coordinate(at.x), coordinate(at.y),
                     escape(text));
}

std::string rectangle(Point corner, double width, double height, std::string_view css_class) {
  return fmt::format("<rect class=\"{}\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"/>\n", css_class,
                     coordinate(corner.x), coordinate(corner.y), coordinate(width), coordinate(height));
}

std::string points(const std::vector<Point>& points) {
  std::string out;
  for (const Point& p : points) out += (out.empty() ? "" : " ") + coordinate(p.x) + "," + coordinate(p.y);
  return out;
}

std::string open(std::string_view id, double width, double height, std::string_view title, std::string_view description,
                 std::string_view more) {
  const std::string safe = escape(id);
  return fmt::format(
      "<svg class=\"chart\" role=\"img\" aria-labelledby=\"{0}-title {0}-desc\" viewBox=\"0 0 {1} {2}\" width=\"{1}\" "
      "height=\"{2}\"{5}>\n<title id=\"{0}-title\">{3}</title>\n<desc id=\"{0}-desc\">{4}</desc>\n",
      safe, coordinate(width), coordinate(height), escape(title), escape(description), more);
}

}  // namespace forecourse::report::svg
