#include "forecourse/report/drawing/band.h"

#include "forecourse/report/svg/shapes.h"

namespace forecourse::report::drawing {
namespace {

constexpr std::size_t characters = 12;  // of a note's line, at the label size
constexpr std::size_t note_lines = 3;

std::string value(const Stop& stop, svg::Point at) {
  if (stop.value.empty()) return {};
  return "<text class=\"cell-value\" x=\"" + svg::coordinate(at.x) + "\" y=\"" + svg::coordinate(at.y) + "\">" +
         svg::escape(stop.value) + "<tspan class=\"cell-unit\" dx=\"3\">" + svg::escape(stop.unit) +
         "</tspan></text>\n";
}

std::string cell(const Stop& stop, std::size_t index, const Frame& f) {
  const double middle = Frame::cell(index);
  const double left = middle - 0.5 * across::cell + 5.0;
  const double top = f.band();
  std::string out = svg::rectangle({left - 5.0, top}, across::cell, f.height() - top - 1.0, "touch");
  out += svg::label({left, top + 28.0}, stop.name, "cell-name");
  out += value(stop, {left, top + 50.0});
  double y = top + (stop.value.empty() ? 47.0 : 67.0);
  for (const std::string& line : svg::wrapped(stop.note, characters, note_lines)) {
    out += svg::label({left, y}, line, "cell-note");
    y += 14.0;
  }
  return out;
}

std::string number(std::size_t index, const Frame& f, bool listed) {
  const svg::Point at{Frame::cell(index), f.band()};
  return svg::circle(at, 9.0, listed ? "tag" : "tag absent") +
         svg::label({at.x, at.y + 4.3}, std::to_string(index + 1), "tag-text");
}

}  // namespace

std::string band(const Section& s, const Frame& f) {
  const double height = f.height() - f.band() - 1.0;
  std::string out = svg::rectangle({across::left, f.band()}, across::right - across::left - 0.5, height, "band");
  for (std::size_t i = 1; i < s.stops.size(); ++i) {
    const double x = across::left + across::cell * static_cast<double>(i);
    out += svg::line({x, f.band()}, {x, f.band() + height}, "band-rule");
  }
  for (std::size_t i = 0; i < s.stops.size(); ++i) {
    out += svg::group(shows(s.stops, i), cell(s.stops[i], i, f) + number(i, f, s.stops[i].listed), "cell");
  }
  return out;
}

}  // namespace forecourse::report::drawing
