#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "forecourse/report/svg/text.h"

namespace forecourse::report::html {

/// Everything handed in is text and is escaped here; everything given back is HTML.

struct Column {
  std::string head;
  std::string unit;     ///< stands once, in the head; may be empty
  bool number = false;  ///< right-aligned with even digits
  bool words = false;   ///< sentences: takes the room that is left
};

struct Row {
  std::vector<std::string> cells;
  bool marked = false;  ///< a bar at its left edge: look here; what for stands in its cells
};

struct Table {
  std::string caption;
  std::string note;  ///< one sentence beside the caption; may be empty
  std::vector<Column> columns;
  std::vector<Row> rows;           ///< the first cell of each is its heading
  std::vector<std::string> total;  ///< a last row that sums up; may be empty
  bool screen_only = false;        ///< not on paper, where the drawing above it holds the same
};

/// A table with caption and scopes, in a box of its own that scrolls sideways where it must. A column of words that
/// is empty in every row is left out. The heading of the total reaches over the empty cells behind it.
[[nodiscard]] std::string table(const Table& table);

[[nodiscard]] std::string heading(int level, std::string_view text);
[[nodiscard]] std::string paragraph(std::string_view text, std::string_view css_class = "");
/// A list; empty when there are no items.
[[nodiscard]] std::string list(const std::vector<std::string>& items);

struct Reading {
  std::string name;
  std::string value;
  std::string unit;
  std::string note;  ///< may be empty
};

/// A few numbers that are read first, in large type.
[[nodiscard]] std::string readings(const std::vector<Reading>& readings);

/// Two pieces side by side where there is room, one under the other where there is not.
[[nodiscard]] std::string pair(std::string_view left, std::string_view right);

/// A drawing under its title and one sentence of how to read it, once for a wide page and paper and once for a phone;
/// both are markup of this program's own making. Empty without drawings.
[[nodiscard]] std::string figure(std::string_view title, std::string_view note, std::string_view wide,
                                 std::string_view narrow);

/// A drawing that is one for every width: on a phone it scrolls sideways in its box.
[[nodiscard]] std::string drawing(std::string_view title, std::string_view note, std::string_view svg);

/// A figure of a chart that one of the `svg::draw` draws.
template <class Chart>
[[nodiscard]] std::string chart_figure(Chart chart, std::string_view note) {
  const std::string wide = draw(chart);
  chart.id += "-narrow";
  chart.width = svg::narrow;
  return figure(chart.title, note, wide, draw(chart));
}

}  // namespace forecourse::report::html
