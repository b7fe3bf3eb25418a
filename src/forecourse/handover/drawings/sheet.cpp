#include "forecourse/handover/drawings/sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "forecourse/base/number_text.h"
#include "forecourse/base/unit_text.h"
#include "forecourse/handover/drawings/lists.h"
#include "forecourse/handover/drawings/words.h"

namespace forecourse::handover {
namespace {

double mm(double value) { return to_si(value, "mm"); }

/// Sizes of paper; common practice, no source.
const std::array<Paper, 4>& papers() {
  static const std::array<Paper, 4> all{{{"a4", mm(297.0), mm(210.0)},
                                         {"a3", mm(420.0), mm(297.0)},
                                         {"letter", to_si(11.0, "in"), to_si(8.5, "in")},
                                         {"tabloid", to_si(17.0, "in"), to_si(11.0, "in")}}};
  return all;
}

/// How a sheet is parted [m].
struct Parts {
  explicit Parts(const DrawingSheet& sheet)
      : large(sheet.width > mm(350.0)), margin(mm(8.0)), column(large ? mm(118.0) : mm(92.0)) {}
  bool large;
  double margin;
  double column;  ///< of lists, notes and title cells, at the right
};

constexpr double around_mm = 17.0;  ///< room for dimensions and names about the station

Scale in_feet(double feet) { return {feet * from_si(to_si(1.0, "ft"), "in"), fmt::format("1 in = {:g} ft", feet)}; }

Scale in_ratio(double denominator) { return {denominator, fmt::format("1:{:g}", denominator)}; }

/// A positive number that is all of a text; empty: it is none.
std::optional<double> whole_number(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  const auto read = read_number(text, 0);
  const NumberText* number = std::get_if<NumberText>(&read);
  if (number == nullptr || number->end != text.size() || !(number->value > 0.0)) return std::nullopt;
  return number->value;
}

constexpr double smallest_scale = 1e5;  ///< denominator beyond which nothing can be seen

/// Writes lines of letters downward in the column at the right of a sheet.
class Column {
 public:
  Column(Drawing& drawing, const Parts& parts, double foot)
      : out_(drawing),
        scale_(drawing.sheet.scale),
        left_(drawing.sheet.width - parts.margin - parts.column + mm(3.0)),
        wide_(parts.column - mm(6.0)),
        y_(drawing.sheet.height - parts.margin - mm(6.0)),
        foot_(foot) {}

  void heading(const std::string& words) {
    y_ -= mm(1.6);
    write(words, heading_mm, left_);
  }
  void paragraph(const std::string& words) {
    for (const std::string& line : wrapped(words, wide_)) write(line, letter_mm, left_);
    y_ -= mm(0.7);
  }
  /// A row of a table whose columns begin at these shares of the width.
  void row(const std::vector<std::pair<double, std::string>>& cells) {
    if (!room()) return;
    for (const auto& [share, words] : cells) put(words, letter_mm, left_ + share * wide_);
    y_ -= step(letter_mm);
  }
  /// Symbols at the left, layers at the right, each with what it stands for.
  void key(const std::vector<const Symbol*>& symbols, const std::vector<const Layer*>& layers) {
    const double top = y_;
    for (const Symbol* one : symbols) symbol(*one);
    const double left_foot = std::exchange(y_, top);
    for (const Layer* one : layers) layer(*one);
    y_ = std::min(y_, left_foot);
  }
  /// What could not be written for lack of room.
  void end() {
    if (cut_ == 0) return;
    y_ = foot_ + mm(1.5);
    put(fmt::format("{} more lines do not fit here: they stand in draw.json.", cut_), letter_mm, left_);
  }

 private:
  static constexpr double letter_mm = 1.6;
  static constexpr double heading_mm = 2.1;
  static double step(double millimeters) { return mm(1.75 * millimeters); }

  [[nodiscard]] bool room() {
    if (cut_ == 0 && y_ - step(letter_mm) > foot_ + mm(2.5)) return true;
    ++cut_;
    return false;
  }
  [[nodiscard]] Point on_ground(Point paper) const {
    return {out_.sheet.corner.x + paper.x * scale_, out_.sheet.corner.y + paper.y * scale_};
  }
  void put(const std::string& words, double millimeters, double x) {
    if (!words.empty())
      out_.texts.push_back({"notes", on_ground({x, y_}), words, mm(millimeters) * scale_, Anchor::left, 0.0});
  }
  void write(const std::string& words, double millimeters, double x) {
    if (!room()) return;
    put(words, millimeters, x);
    y_ -= step(millimeters);
  }
  void symbol(const Symbol& symbol) {
    if (!room()) return;
    const Point at = on_ground({left_ + mm(2.5), y_ + mm(0.7)});
    for (Path path : symbol.paths) {
      path.layer = "sheet";
      for (Point& point : path.points) point = {at.x + point.x * scale_, at.y + point.y * scale_};
      out_.paths.push_back(std::move(path));
    }
    for (const Circle& circle : symbol.circles) {
      out_.circles.push_back({"sheet",
                              {at.x + circle.center.x * scale_, at.y + circle.center.y * scale_},
                              circle.radius * scale_,
                              circle.area});
    }
    put(symbol.words, letter_mm, left_ + mm(6.0));
    y_ -= mm(symbol.kind == "dispenser" ? 5.2 : 4.2);
  }
  void layer(const Layer& layer) {
    if (!room()) return;
    const double x = left_ + 0.47 * wide_, y = y_ + mm(0.7);
    out_.paths.push_back({layer.id, {on_ground({x, y}), on_ground({x + mm(6.5), y})}});
    put(layer.words, letter_mm, x + mm(8.0));
    y_ -= step(letter_mm);
  }
  static std::vector<std::string> wrapped(const std::string& words, double wide) {
    std::vector<std::string> out{""};
    for (std::size_t begin = 0; begin < words.size();) {
      const std::size_t end = std::min(words.find(' ', begin), words.size());
      const std::string word = words.substr(begin, end - begin);
      begin = end + 1;
      const std::string longer = out.back().empty() ? word : out.back() + " " + word;
      if (out.back().empty() || text_length(longer, mm(letter_mm)) <= wide) {
        out.back() = longer;
      } else {
        out.push_back("  " + word);
      }
    }
    return out;
  }

  Drawing& out_;
  double scale_;
  double left_;
  double wide_;
  double y_;     ///< base line of what comes next [m on paper]
  double foot_;  ///< upper edge of the title cells
  int cut_ = 0;
};

/// The title cells, from the foot of the sheet upward.
class TitleBlock {
 public:
  TitleBlock(Drawing& drawing, const Parts& parts)
      : out_(drawing),
        left_(drawing.sheet.width - parts.margin - parts.column),
        right_(drawing.sheet.width - parts.margin),
        y_(parts.margin) {}

  /// Cells side by side, above those before.
  void row(const std::vector<TitleCell>& cells, double high_mm, double letter_mm = 2.0) {
    const double top = y_ + mm(high_mm);
    const double wide = (right_ - left_) / static_cast<double>(cells.size());
    line({left_, top}, {right_, top});
    double x = left_;
    for (const TitleCell& cell : cells) {
      if (x > left_) line({x, y_}, {x, top});
      text({x + mm(1.5), top - mm(2.6)}, cell.label, 1.4);
      text({x + mm(1.5), y_ + mm(1.6)}, fitting(cell.text, wide - mm(3.0), mm(letter_mm)), letter_mm);
      x += wide;
      out_.cells.push_back(cell);
    }
    y_ = top;
  }
  /// Sentences over the whole width, the first on top.
  void sentences(const std::string& label, const std::vector<std::string>& lines) {
    const double top = y_ + mm(3.8 + 2.8 * static_cast<double>(lines.size()));
    line({left_, top}, {right_, top});
    text({left_ + mm(1.5), top - mm(2.6)}, label, 1.4);
    double y = top - mm(5.8);
    std::string whole;
    for (const std::string& one : lines) {
      text({left_ + mm(1.5), y}, one, 1.5);
      whole += (whole.empty() ? "" : " ") + one;
      y -= mm(2.8);
    }
    out_.cells.push_back({label, whole});
    y_ = top;
  }
  [[nodiscard]] double top() const { return y_; }

 private:
  [[nodiscard]] Point on_ground(Point paper) const {
    return {out_.sheet.corner.x + paper.x * out_.sheet.scale, out_.sheet.corner.y + paper.y * out_.sheet.scale};
  }
  void line(Point from, Point to) { out_.paths.push_back({"sheet", {on_ground(from), on_ground(to)}}); }
  void text(Point at, const std::string& words, double millimeters) {
    if (words.empty()) return;
    out_.texts.push_back({"notes", on_ground(at), words, mm(millimeters) * out_.sheet.scale, Anchor::left, 0.0});
  }
  static std::string fitting(std::string words, double wide, double height) {
    if (text_length(words, height) <= wide) return words;
    while (!words.empty() && text_length(words + "...", height) > wide) {
      words.pop_back();
      while (!words.empty() && (words.back() & 0xC0) == 0x80) words.pop_back();
    }
    return words + "...";
  }

  Drawing& out_;
  double left_, right_, y_;
};

void frame(Drawing& drawing, const Parts& parts) {
  const DrawingSheet& sheet = drawing.sheet;
  const auto rectangle = [&](double left, double low, double right, double high) {
    const auto at = [&](double x, double y) {
      return Point{sheet.corner.x + x * sheet.scale, sheet.corner.y + y * sheet.scale};
    };
    drawing.paths.push_back({"sheet", {at(left, low), at(right, low), at(right, high), at(left, high)}, true});
  };
  const double right = sheet.width - parts.margin, top = sheet.height - parts.margin;
  rectangle(parts.margin, parts.margin, right, top);
  rectangle(right - parts.column, parts.margin, right, top);
}

void say_that_it_is_empty(Drawing& drawing, const Parts& parts) {
  const DrawingSheet& sheet = drawing.sheet;
  const double x = 0.5 * (sheet.width - parts.column), y = 0.5 * sheet.height;
  drawing.texts.push_back({"notes",
                           {sheet.corner.x + x * sheet.scale, sheet.corner.y + y * sheet.scale},
                           "Nothing is drawn: no place of any part was entered. The list tells what to enter.",
                           mm(2.2) * sheet.scale,
                           Anchor::middle,
                           0.0});
}

void list_lines(const Drawing& drawing, site::Display display, Column& column) {
  if (drawing.lines.empty()) return;
  column.heading("Lines");
  column.row({{0.0, "line"}, {0.3, "product"}, {0.48, "bore"}, {0.62, "length"}, {0.8, "straight, drawn"}});
  const auto told = [&](const std::optional<double>& value, auto words) {
    return value ? words(*value, display) : std::string("not entered");
  };
  for (const LineRow& line : drawing.lines) {
    column.row({{0.0, line.id},
                {0.3, line.product.empty() ? "not known" : line.product},
                {0.48, told(line.bore, bore_words)},
                {0.62, told(line.length, length_words)},
                {0.8, line.drawn ? length_words(*line.drawn, display) : "not drawn"}});
  }
}

void key(const Drawing& drawing, Column& column) {
  std::vector<const Symbol*> symbols;
  for (const Symbol& symbol : drawing.symbols) {
    const bool used = std::any_of(drawing.marks.begin(), drawing.marks.end(),
                                  [&](const Mark& mark) { return mark.kind == symbol.kind; });
    if (used) symbols.push_back(&symbol);
  }
  std::vector<const Layer*> layers;
  for (const Layer& layer : drawing.layers) {
    const auto here = [&](const auto& shape) { return shape.layer == layer.id; };
    const bool used = std::any_of(drawing.paths.begin(), drawing.paths.end(), here) ||
                      std::any_of(drawing.circles.begin(), drawing.circles.end(), here);
    if (used && layer.printed && layer.id != "sheet" && layer.id != "leaders" && layer.id != "symbols")
      layers.push_back(&layer);
  }
  if (symbols.empty() && layers.empty()) return;
  column.heading("Key (symbols are not to size)");
  column.key(symbols, layers);
}

void list_not_placed(const Drawing& drawing, Column& column) {
  if (drawing.not_placed.empty()) return;
  column.heading(fmt::format("Not placed ({} of {} parts)", drawing.not_placed.size(),
                             drawing.not_placed.size() + drawing.marks.size()));
  for (const std::string& line : not_placed_in_words(drawing)) column.paragraph(line);
}

void list_zones(const Drawing& drawing, Column& column) {
  if (drawing.zones.empty() && drawing.zone_gaps.empty()) return;
  column.heading("Classified areas");
  if (drawing.zones.empty()) {
    column.paragraph("None is drawn: that does not mean that there is none.");
  } else {
    column.paragraph(drawing.zones.front().clause + ", " + drawing.zones.front().edition +
                     ". Drawn only where that text was seen and what it asks for was entered:");
    for (const std::string& line : zones_in_words(drawing)) column.paragraph(line);
  }
  for (const std::string& gap : zone_gaps_in_words(drawing)) column.paragraph("Not drawn, " + gap);
}

}  // namespace

const Paper* paper_called(std::string_view word, site::Display display) {
  if (word.empty()) word = display == site::Display::us ? "tabloid" : "a3";
  const auto& all = papers();
  const auto found = std::find_if(all.begin(), all.end(), [&](const Paper& one) { return one.id == word; });
  return found == all.end() ? nullptr : &*found;
}

std::optional<Scale> read_scale(std::string_view text) {
  if (text.starts_with("1:")) {
    const auto denominator = whole_number(text.substr(2));
    if (!denominator || *denominator > smallest_scale) return std::nullopt;
    return in_ratio(*denominator);
  }
  const std::size_t equals = text.find('=');
  if (equals == std::string_view::npos) return std::nullopt;
  const auto one = read_as<Length>(text.substr(0, equals));
  const auto other = read_as<Length>(text.substr(equals + 1));
  const Length* paper = std::get_if<Length>(&one);
  const Length* ground = std::get_if<Length>(&other);
  if (paper == nullptr || ground == nullptr || !(paper->si() > 0.0) || !(ground->si() > 0.0)) return std::nullopt;
  const double denominator = *ground / *paper;
  if (denominator > smallest_scale) return std::nullopt;
  return in_feet(denominator / from_si(to_si(1.0, "ft"), "in"));
}

std::vector<Scale> standard_scales(site::Display display, bool detail) {
  std::vector<Scale> out;
  if (display == site::Display::us) {
    for (const double feet : {1.0, 2.0, 3.0}) {
      if (detail) out.push_back(in_feet(feet));
    }
    for (const double feet : {4.0, 5.0, 8.0, 10.0, 20.0, 30.0, 40.0, 50.0, 60.0, 100.0, 200.0, 400.0})
      out.push_back(in_feet(feet));
    return out;
  }
  for (const double one : {10.0, 20.0, 25.0}) {
    if (detail) out.push_back(in_ratio(one));
  }
  for (const double one : {50.0, 100.0, 200.0, 250.0, 500.0, 1000.0, 2000.0, 5000.0}) out.push_back(in_ratio(one));
  return out;
}

bool lay_on_sheet(Drawing& drawing, const Box& box, const Paper& paper, const std::optional<Scale>& asked,
                  site::Display display) {
  DrawingSheet& sheet = drawing.sheet;
  sheet = {std::string(paper.id), paper.width, paper.height, 0.0, "", {}};
  const Parts parts(sheet);
  const double wide = sheet.width - 2.0 * parts.margin - parts.column;
  const double high = sheet.height - 2.0 * parts.margin;
  const Point size = box.empty() ? Point{} : Point{box.high.x - box.low.x, box.high.y - box.low.y};
  const auto fits = [&](const Scale& scale) {
    return size.x / scale.denominator <= wide - mm(2.0 * around_mm) &&
           size.y / scale.denominator <= high - mm(2.0 * around_mm);
  };
  const std::vector<Scale> all =
      asked ? std::vector<Scale>{*asked} : standard_scales(display, drawing.id != "plan" && drawing.id != "section");
  const auto found = std::find_if(all.begin(), all.end(), fits);
  if (found == all.end()) return false;
  sheet.scale = found->denominator;
  sheet.words = found->words;
  const Point middle = box.empty() ? Point{} : Point{0.5 * (box.low.x + box.high.x), 0.5 * (box.low.y + box.high.y)};
  sheet.corner = {middle.x - (parts.margin + 0.5 * wide) * sheet.scale,
                  middle.y - (parts.margin + 0.5 * high) * sheet.scale};
  return true;
}

void finish_sheet(Drawing& drawing, const site::Site& site, const DrawingOptions& options) {
  const Parts parts(drawing.sheet);
  const auto told = [](const std::string& text, const char* otherwise) { return text.empty() ? otherwise : text; };
  TitleBlock block(drawing, parts);
  block.sentences("Caution", {"This drawing advises. The edition adopted by the local authority rules;",
                              "certified testers and licensed trades do the tests and the work.",
                              "Not for construction until it is checked and signed. Locate before digging."});
  block.sentences("Edition", {"Clauses by the editions named in the notes; later text was not seen."});
  block.row({{"Drawn by", told(options.drawn_by, "not given")}, {"Checked", told(options.checked_by, "not checked")}},
            8.0);
  block.row({{"Date", told(options.date, "not given")},
             {"Lengths in", site.display == site::Display::us ? "feet and inches" : "meters"}},
            8.0);
  block.row({{"Scale", drawing.sheet.words + " on " + drawing.sheet.paper}, {"Drawing", drawing.id}}, 8.0);
  block.row({{"Shows", drawing.title}}, 9.0, 2.4);
  block.row({{"Station", told(site.name.text, "without a name")}}, 10.0, 3.0);
  std::reverse(drawing.cells.begin(), drawing.cells.end());

  if (drawing.marks.empty()) say_that_it_is_empty(drawing, parts);
  frame(drawing, parts);
  Column column(drawing, parts, block.top());
  key(drawing, column);
  list_not_placed(drawing, column);
  list_zones(drawing, column);
  if (!drawing.notes.empty()) column.heading("Notes");
  for (const std::string& note : drawing.notes) column.paragraph(note);
  list_lines(drawing, site.display, column);
  column.end();
}

}  // namespace forecourse::handover
