#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "forecourse/base/unit_text.h"
#include "forecourse/handover/drawings/pen.h"
#include "forecourse/report/draw/draw_report.h"
#include "forecourse/report/svg/text.h"

namespace forecourse::report {
namespace {

using handover::Anchor;
using handover::Drawing;
using handover::Layer;
using handover::LineType;
using handover::Point;

constexpr double capital = 0.72;  ///< of a letter's size, its capital's height, in common sans-serif faces

/// A length in mm to a thousandth, whatever the locale.
std::string figure(double millimeters) {
  std::string out = fmt::format("{:.3f}", std::isfinite(millimeters) ? millimeters : 0.0);
  out.erase(out.find_last_not_of('0') + 1);
  if (out.ends_with('.')) out.pop_back();
  return out == "-0" ? "0" : out;
}

double mm(double meters) { return from_si(meters, "mm"); }

/// What an index of the shared colors looks like on white paper.
const char* color_of(int index) {
  switch (index) {
    case 1:
      return "#c00000";
    case 2:
      return "#8a6d00";
    case 3:
      return "#00602b";
    case 4:
      return "#006a85";
    case 5:
      return "#1a3a9c";
    case 6:
      return "#8a1a8a";
    case 8:
      return "#555555";
    case 9:
      return "#777777";
    case 30:
      return "#b34700";
    case 40:
      return "#8a5a00";
    default:
      return "#000000";
  }
}

const char* dashes_of(LineType line) {
  switch (line) {
    case LineType::dashed:
      return " stroke-dasharray=\"2.2 1.1\"";
    case LineType::chain:
      return " stroke-dasharray=\"5 1 0.8 1\"";
    case LineType::dotted:
      return " stroke-dasharray=\"0.5 0.9\"";
    case LineType::solid:
      break;
  }
  return "";
}

/// Letters, digits and dashes of a name, for an id.
std::string id_of(const std::string& name) {
  std::string out;
  for (const char c : name) out += (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ? c : '-';
  return out;
}

class SvgWriter {
 public:
  explicit SvgWriter(const Drawing& drawing) : d_(drawing) {}

  [[nodiscard]] std::string write() const {
    const std::string width = figure(mm(d_.sheet.width)), height = figure(mm(d_.sheet.height));
    std::string out = fmt::format(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"drawing\" role=\"img\" aria-labelledby=\"{0}-title "
        "{0}-desc\" "
        "width=\"{1}mm\" height=\"{2}mm\" viewBox=\"0 0 {1} {2}\" data-scale=\"{3}\" "
        "font-family=\"B612, 'Liberation Sans', Arial, sans-serif\">\n<title id=\"{0}-title\">{4}</title>\n"
        "<desc id=\"{0}-desc\">{5}</desc>\n",
        id_of(d_.id), width, height, figure(d_.sheet.scale), svg::escape(d_.title), svg::escape(description()));
    out += "<defs>\n";
    for (const handover::Symbol& symbol : d_.symbols) out += definition(symbol);
    out += "</defs>\n<rect width=\"" + width + "\" height=\"" + height + "\" fill=\"#fff\"/>\n";
    for (const Layer& layer : d_.layers) out += group(layer);
    return out + "</svg>\n";
  }

 private:
  [[nodiscard]] double x(double meters) const { return mm((meters - d_.sheet.corner.x) / d_.sheet.scale); }
  [[nodiscard]] double y(double meters) const {
    return mm(d_.sheet.height - (meters - d_.sheet.corner.y) / d_.sheet.scale);
  }
  [[nodiscard]] double on_paper(double meters) const { return mm(meters / d_.sheet.scale); }

  [[nodiscard]] std::string description() const {
    return fmt::format("{}, {}. {} parts placed, {} not placed, which the sheet lists.", d_.sheet.words, d_.sheet.paper,
                       d_.marks.size(), d_.not_placed.size());
  }

  /// A path with its places as they are told by `at`.
  template <class At>
  static std::string outline(const handover::Path& path, At at) {
    std::string points;
    for (const Point& point : path.points) points += (points.empty() ? "M" : "L") + at(point);
    return fmt::format("<path d=\"{}{}\"{}/>\n", points, path.closed ? "Z" : "",
                       path.area ? " fill=\"currentColor\" fill-opacity=\"0.1\"" : "");
  }

  [[nodiscard]] std::string definition(const handover::Symbol& symbol) const {
    std::string out = fmt::format("<g id=\"{}-symbol-{}\">\n", id_of(d_.id), id_of(symbol.kind));
    for (const handover::Path& path : symbol.paths)
      out += outline(path, [](Point p) { return figure(mm(p.x)) + " " + figure(-mm(p.y)); });
    for (const handover::Circle& circle : symbol.circles) {
      out += fmt::format("<circle cx=\"{}\" cy=\"{}\" r=\"{}\"{}/>\n", figure(mm(circle.center.x)),
                         figure(-mm(circle.center.y)), figure(mm(circle.radius)),
                         circle.area ? " fill=\"currentColor\"" : "");
    }
    return out + "</g>\n";
  }

  [[nodiscard]] bool has_symbol(const std::string& kind) const {
    return std::any_of(d_.symbols.begin(), d_.symbols.end(),
                       [&](const handover::Symbol& symbol) { return symbol.kind == kind; });
  }

  [[nodiscard]] std::string marks(const std::string& layer) const {
    std::string out;
    for (const handover::Mark& mark : d_.marks) {
      const bool drawn = has_symbol(mark.kind);
      if ((drawn ? "symbols" : "parts") != layer) continue;
      const std::string about =
          fmt::format("data-kind=\"{}\" data-part=\"{}\"", svg::escape(mark.kind), svg::escape(mark.part));
      out += drawn ? fmt::format("<use href=\"#{}-symbol-{}\" x=\"{}\" y=\"{}\" {}/>\n", id_of(d_.id), id_of(mark.kind),
                                 figure(x(mark.at.x)), figure(y(mark.at.y)), about)
                   : fmt::format("<circle cx=\"{}\" cy=\"{}\" r=\"0.2\" {}/>\n", figure(x(mark.at.x)),
                                 figure(y(mark.at.y)), about);
    }
    return out;
  }

  [[nodiscard]] std::string letters(Point at, double height, Anchor anchor, double angle,
                                    const std::string& text) const {
    const char* side = anchor == Anchor::left ? "start" : anchor == Anchor::middle ? "middle" : "end";
    const std::string turn = angle == 0.0
                                 ? ""
                                 : fmt::format(" transform=\"rotate({} {} {})\"", figure(-from_si(angle, "deg")),
                                               figure(x(at.x)), figure(y(at.y)));
    return fmt::format("<text x=\"{}\" y=\"{}\" font-size=\"{}\" text-anchor=\"{}\"{}>{}</text>\n", figure(x(at.x)),
                       figure(y(at.y)), figure(on_paper(height) / capital), side, turn, svg::escape(text));
  }

  [[nodiscard]] std::string shapes(const std::string& layer) const {
    std::string out;
    for (const handover::Path& path : d_.paths) {
      if (path.layer == layer) out += outline(path, [&](Point p) { return figure(x(p.x)) + " " + figure(y(p.y)); });
    }
    for (const handover::Circle& circle : d_.circles) {
      if (circle.layer != layer) continue;
      out += fmt::format("<circle cx=\"{}\" cy=\"{}\" r=\"{}\"{}/>\n", figure(x(circle.center.x)),
                         figure(y(circle.center.y)), figure(on_paper(circle.radius)),
                         circle.area ? " fill=\"currentColor\" fill-opacity=\"0.1\"" : "");
    }
    for (const handover::Arc& arc : d_.arcs) {
      if (arc.layer != layer) continue;
      const auto at = [&](double angle) {
        return figure(x(arc.center.x + arc.radius * std::cos(angle))) + " " +
               figure(y(arc.center.y + arc.radius * std::sin(angle)));
      };
      const std::string radius = figure(on_paper(arc.radius));
      out += fmt::format("<path d=\"M{}A{} {} 0 {} 0 {}\"/>\n", at(arc.from), radius, radius,
                         arc.to - arc.from > std::numbers::pi ? 1 : 0, at(arc.to));
    }
    for (const handover::Dimension& dimension : d_.dimensions) {
      if (dimension.layer != layer) continue;
      std::string lines;
      for (const auto& [from, to] : handover::strokes(dimension, d_.sheet.scale))
        lines += "M" + figure(x(from.x)) + " " + figure(y(from.y)) + "L" + figure(x(to.x)) + " " + figure(y(to.y));
      out += fmt::format("<path d=\"{}\"><title>{}</title></path>\n", lines, svg::escape(dimension.what));
    }
    return out;
  }

  [[nodiscard]] std::string words(const std::string& layer) const {
    std::string out;
    for (const handover::Text& text : d_.texts) {
      if (text.layer == layer) out += letters(text.at, text.height, text.anchor, text.angle, text.text);
    }
    for (const handover::Dimension& one : d_.dimensions) {
      if (one.layer == layer) out += letters(one.text_at, one.height, Anchor::middle, one.angle, one.text);
    }
    return out;
  }

  [[nodiscard]] std::string group(const Layer& layer) const {
    const std::string inside = shapes(layer.id) + marks(layer.id);
    const std::string written = words(layer.id);
    if (inside.empty() && written.empty()) return {};
    std::string out =
        fmt::format("<g id=\"{}-{}\" data-layer=\"{}\" color=\"{}\"{}>\n", id_of(d_.id), id_of(layer.id),
                    svg::escape(layer.id), color_of(layer.color), layer.printed ? "" : " display=\"none\"");
    if (!inside.empty()) {
      out += fmt::format("<g fill=\"none\" stroke=\"currentColor\" stroke-width=\"{}\"{}>\n{}</g>\n",
                         figure(mm(layer.width)), dashes_of(layer.line), inside);
    }
    if (!written.empty()) {
      // White edges keep letters apart from the lines that they stand on; not every program paints an edge first.
      if (layer.id != "notes") {
        out +=
            "<g fill=\"#fff\" stroke=\"#fff\" stroke-width=\"0.6\" stroke-linejoin=\"round\" aria-hidden=\"true\">\n" +
            written + "</g>\n";
      }
      out += "<g fill=\"currentColor\">\n" + written + "</g>\n";
    }
    return out + "</g>\n";
  }

  const Drawing& d_;
};

}  // namespace

std::string draw_svg(const Drawing& drawing) { return SvgWriter(drawing).write(); }

std::string draw_sheets(const handover::DrawingSet& set) {
  std::string out =
      "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Drawings</title>"
      "<style>body{margin:0} .sheet{page-break-after:always;line-height:0}</style>";
  if (!set.drawings.empty()) {
    const handover::DrawingSheet& sheet = set.drawings.front().sheet;
    out += fmt::format("<style>@page{{size:{}mm {}mm;margin:0}}</style>", figure(mm(sheet.width)),
                       figure(mm(sheet.height)));
  }
  out += "</head><body>\n";
  for (const Drawing& drawing : set.drawings) {
    const bool last = &drawing == &set.drawings.back();
    out += std::string("<div class=\"sheet\"") + (last ? " style=\"page-break-after:auto\"" : "") + ">" +
           draw_svg(drawing) + "</div>\n";
  }
  return out + "</body></html>\n";
}

}  // namespace forecourse::report
