#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "forecourse/base/unit_text.h"
#include "forecourse/handover/drawings/pen.h"
#include "forecourse/report/draw/draw_report.h"
#include "forecourse/report/utf8.h"

namespace forecourse::report {
namespace {

using handover::Anchor;
using handover::Drawing;
using handover::Layer;
using handover::LineType;
using handover::Point;

/// Letters outside the first 128 as \U+XXXX, controls as blanks; a pair of percent signs would be a command.
std::string plain(const std::string& text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const Character c = character_at(text, at);
    const auto value = static_cast<unsigned>(c.value);
    if (value < 0x20U || value == 0x7FU || is_hidden(c.value)) {
      out += ' ';
    } else if (value < 0x7FU) {
      out += static_cast<char>(value);
      if (value == '^') out += ' ';
      if (value == '%' && at + 1 < text.size() && text[at + 1] == '%') out += "%%";
    } else {
      out += fmt::format("\\U+{:04X}", value > 0xFFFFU ? 0xFFFDU : value);
    }
    at += c.length;
  }
  return out;
}

/// A name for a table of the file: capitals, digits and - _ $, at most 31.
std::string table_name(const std::string& name) {
  constexpr std::size_t longest = 31;
  std::string out;
  for (const char c : name.substr(0, longest)) {
    const bool small = c >= 'a' && c <= 'z';
    const bool fits = (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '_' || c == '$';
    out += small ? static_cast<char>(c - 'a' + 'A') : fits ? c : '_';
  }
  return out.empty() ? "_" : out;
}

const char* line_name(LineType line) {
  switch (line) {
    case LineType::dashed:
      return "DASHED";
    case LineType::chain:
      return "CHAIN";
    case LineType::dotted:
      return "DOTTED";
    case LineType::solid:
      break;
  }
  return "CONTINUOUS";
}

class DxfWriter {
 public:
  DxfWriter(const Drawing& drawing, site::Display display)
      : d_(drawing),
        unit_(display == site::Display::us ? "in" : "mm"),
        unit_code_(display == site::Display::us ? 1 : 4) {
    std::set<std::string> taken;
    for (const Layer& layer : d_.layers) {
      std::string name = table_name(layer.id);
      for (int i = 2; !taken.insert(name).second; ++i)
        name = table_name(layer.id.substr(0, 24)) + "_" + std::to_string(i);
      names_[layer.id] = name;
    }
  }

  [[nodiscard]] std::string write() {
    header();
    tables();
    blocks();
    section("ENTITIES");
    for (const handover::Path& path : d_.paths) polyline(path, layer(path.layer));
    for (const handover::Circle& one : d_.circles) circle(layer(one.layer), at(one.center), length(one.radius));
    for (const handover::Arc& one : d_.arcs) arc(one);
    for (const handover::Text& one : d_.texts)
      text(layer(one.layer), at(one.at), length(one.height), one.anchor, one.angle, one.text);
    for (const handover::Dimension& one : d_.dimensions) dimension(one);
    for (const handover::Mark& one : d_.marks) insert(one);
    pair(0, "ENDSEC");
    pair(0, "EOF");
    return std::move(out_);
  }

 private:
  void pair(int code, const std::string& value) { out_ += fmt::format("{:>3}\n{}\n", code, value); }
  void pair(int code, int value) { pair(code, std::to_string(value)); }
  void number(int code, double value) { pair(code, fmt::format("{:.6f}", std::isfinite(value) ? value : 0.0)); }
  void point(Point p, int first = 10) {
    number(first, p.x);
    number(first + 10, p.y);
    number(first + 20, 0.0);
  }
  void section(const char* name) {
    pair(0, "SECTION");
    pair(2, name);
  }
  [[nodiscard]] double length(double meters) const { return from_si(meters, unit_); }
  [[nodiscard]] Point at(Point p) const { return {length(p.x), length(p.y)}; }
  [[nodiscard]] std::string layer(const std::string& id) const {
    const auto found = names_.find(id);
    return found == names_.end() ? "0" : found->second;
  }
  void entity(const char* kind, const std::string& on) {
    pair(0, kind);
    pair(8, on);
  }

  void header() {
    section("HEADER");
    const auto variable = [&](const char* name, int code, const std::string& value) {
      pair(9, name);
      pair(code, value);
    };
    variable("$ACADVER", 1, "AC1009");
    variable("$DWGCODEPAGE", 3, "ANSI_1252");
    variable("$INSUNITS", 70, std::to_string(unit_code_));
    variable("$MEASUREMENT", 70, unit_code_ == 1 ? "0" : "1");
    variable("$LUNITS", 70, unit_code_ == 1 ? "4" : "2");
    variable("$LTSCALE", 40, "1.0");
    const handover::Box box = handover::extent(d_);
    for (const auto& [name, corner] : {std::pair{"$EXTMIN", box.low}, std::pair{"$EXTMAX", box.high}}) {
      pair(9, name);
      point(at(corner));
    }
    for (const auto& [name, share] : {std::pair{"$LIMMIN", 0.0}, std::pair{"$LIMMAX", 1.0}}) {
      pair(9, name);
      const Point corner = at({d_.sheet.corner.x + share * d_.sheet.width * d_.sheet.scale,
                               d_.sheet.corner.y + share * d_.sheet.height * d_.sheet.scale});
      number(10, corner.x);
      number(20, corner.y);
    }
    pair(0, "ENDSEC");
  }

  void table(const char* name, int count) {
    pair(0, "TABLE");
    pair(2, name);
    pair(70, count);
  }

  /// Strokes and gaps in mm on paper; a gap is negative.
  void line_type(const char* name, const char* words, const std::vector<double>& strokes) {
    pair(0, "LTYPE");
    pair(2, name);
    pair(70, 0);
    pair(3, words);
    pair(72, 65);
    pair(73, static_cast<int>(strokes.size()));
    const double scale = length(to_si(1.0, "mm")) * d_.sheet.scale;
    double whole = 0.0;
    for (const double stroke : strokes) whole += std::abs(stroke) * scale;
    number(40, whole);
    for (const double stroke : strokes) number(49, stroke * scale);
  }

  void tables() {
    section("TABLES");
    table("LTYPE", 4);
    line_type("CONTINUOUS", "Solid", {});
    line_type("DASHED", "Dashed __ __ __", {2.2, -1.1});
    line_type("CHAIN", "Chain ____ _ ____ _", {5.0, -1.0, 0.8, -1.0});
    line_type("DOTTED", "Dotted . . . .", {0.5, -0.9});
    pair(0, "ENDTAB");
    table("LAYER", static_cast<int>(d_.layers.size()) + 1);
    add_layer("0", 7, LineType::solid);
    for (const Layer& one : d_.layers) add_layer(layer(one.id), one.printed ? one.color : -one.color, one.line);
    pair(0, "ENDTAB");
    table("STYLE", 1);
    pair(0, "STYLE");
    pair(2, "STANDARD");
    pair(70, 0);
    number(40, 0.0);
    number(41, 1.0);
    number(50, 0.0);
    pair(71, 0);
    number(42, 1.0);
    pair(3, "arial.ttf");
    pair(4, "");
    pair(0, "ENDTAB");
    table("APPID", 1);
    pair(0, "APPID");
    pair(2, "ACAD");
    pair(70, 0);
    pair(0, "ENDTAB");
    pair(0, "ENDSEC");
  }

  /// A color below zero: the layer is off.
  void add_layer(const std::string& name, int color, LineType line) {
    pair(0, "LAYER");
    pair(2, name);
    pair(70, 0);
    pair(62, color);
    pair(6, line_name(line));
  }

  /// A block for each kind that is placed: its symbol as large as on paper, or a point.
  void blocks() {
    section("BLOCKS");
    std::set<std::string> kinds;
    for (const handover::Mark& mark : d_.marks) kinds.insert(mark.kind);
    for (const std::string& kind : kinds) {
      entity("BLOCK", "0");
      pair(2, table_name(kind));
      pair(70, 2);  // attributes follow its insertions
      point({});
      pair(3, table_name(kind));
      const auto found = symbol(kind);
      if (found == d_.symbols.end()) {
        entity("POINT", layer("parts"));
        point({});
      } else {
        for (const handover::Path& path : found->paths) pieces(path, layer(found->layer));
        for (const handover::Circle& one : found->circles)
          circle(layer(found->layer), at(one.center), length(one.radius));
      }
      entity("ATTDEF", layer("parts"));
      point({});
      number(40, length(letter));
      pair(1, "");
      pair(3, "path in the site file");
      pair(2, "PART");
      pair(70, 1);  // not shown
      entity("ENDBLK", "0");
    }
    pair(0, "ENDSEC");
  }

  [[nodiscard]] std::vector<handover::Symbol>::const_iterator symbol(const std::string& kind) const {
    return std::find_if(d_.symbols.begin(), d_.symbols.end(),
                        [&](const handover::Symbol& one) { return one.kind == kind; });
  }

  /// A path as its straight pieces.
  void pieces(const handover::Path& path, const std::string& on) {
    for (std::size_t i = 0; i + 1 < path.points.size(); ++i) line(on, at(path.points[i]), at(path.points[i + 1]));
    if (path.closed && path.points.size() > 2) line(on, at(path.points.back()), at(path.points.front()));
  }

  void polyline(const handover::Path& path, const std::string& on) {
    if (path.points.size() < 2) return;
    if (path.points.size() == 2 && !path.closed) return line(on, at(path.points[0]), at(path.points[1]));
    entity("POLYLINE", on);
    pair(66, 1);
    point({});
    pair(70, path.closed ? 1 : 0);
    for (const Point& one : path.points) {
      entity("VERTEX", on);
      point(at(one));
    }
    entity("SEQEND", on);
  }

  void line(const std::string& on, Point from, Point to) {
    entity("LINE", on);
    point(from);
    point(to, 11);
  }

  void circle(const std::string& on, Point center, double radius) {
    entity("CIRCLE", on);
    point(center);
    number(40, radius);
  }

  void arc(const handover::Arc& one) {
    entity("ARC", layer(one.layer));
    point(at(one.center));
    number(40, length(one.radius));
    number(50, from_si(one.from, "deg"));
    number(51, from_si(one.to, "deg"));
  }

  void text(const std::string& on, Point where, double height, Anchor anchor, double angle, const std::string& words) {
    entity("TEXT", on);
    point(where);
    number(40, height);
    pair(1, plain(words));
    if (angle != 0.0) number(50, from_si(angle, "deg"));
    if (anchor == Anchor::left) return;
    pair(72, anchor == Anchor::middle ? 1 : 2);
    point(where, 11);
  }

  void dimension(const handover::Dimension& one) {
    for (const auto& [from, to] : handover::strokes(one, d_.sheet.scale)) line(layer(one.layer), at(from), at(to));
    text(layer(one.layer), at(one.text_at), length(one.height), Anchor::middle, one.angle, one.text);
  }

  void insert(const handover::Mark& mark) {
    const std::string on = symbol(mark.kind) == d_.symbols.end() ? layer("parts") : layer("symbols");
    entity("INSERT", on);
    pair(66, 1);
    pair(2, table_name(mark.kind));
    point(at(mark.at));
    for (const int code : {41, 42, 43}) number(code, d_.sheet.scale);
    entity("ATTRIB", layer("parts"));
    point(at(mark.at));
    number(40, length(letter) * d_.sheet.scale);
    pair(1, plain(mark.part));
    pair(2, "PART");
    pair(70, 1);
    entity("SEQEND", on);
  }

  static constexpr double letter = 1.8e-3;  ///< of attributes on paper [m]

  const Drawing& d_;
  const char* unit_;
  int unit_code_;
  std::map<std::string, std::string> names_;
  std::string out_;
};

}  // namespace

std::string draw_dxf(const Drawing& drawing, site::Display display) { return DxfWriter(drawing, display).write(); }

}  // namespace forecourse::report
