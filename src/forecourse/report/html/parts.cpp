#include "forecourse/report/html/parts.h"

#include <fmt/format.h>

#include <algorithm>

#include "forecourse/report/svg/text.h"
#include "forecourse/report/utf8.h"

namespace forecourse::report::html {
namespace {

using svg::escape;

/// Escaped, with places where a long word may break, so that no name can stretch a table.
std::string breakable(std::string_view text) {
  constexpr std::size_t longest = 24;  // characters
  std::string out;
  std::size_t since = 0;
  std::size_t begin = 0;
  for (std::size_t at = 0; at < text.size(); at += character_at(text, at).length) {
    since = text[at] == ' ' ? 0 : since + 1;
    if (since <= longest) continue;
    out += escape(text.substr(begin, at - begin)) + "<wbr>";
    begin = at;
    since = 1;
  }
  return out + escape(text.substr(begin));
}

const char* css_class(const Column& column) {
  return column.number ? " class=\"n\"" : column.words ? " class=\"w\"" : "";
}

bool is_used(const Table& table, std::size_t c) {
  return !table.columns[c].words || std::any_of(table.rows.begin(), table.rows.end(), [c](const Row& row) {
    return c < row.cells.size() && !row.cells[c].empty();
  });
}

/// The table without the columns of words that have nothing to say.
Table without_empty(const Table& table) {
  Table out = table;
  for (std::size_t c = table.columns.size(); c-- > 0;) {
    if (is_used(table, c)) continue;
    const auto at = static_cast<std::ptrdiff_t>(c);
    out.columns.erase(out.columns.begin() + at);
    for (Row& r : out.rows) {
      if (c < r.cells.size()) r.cells.erase(r.cells.begin() + at);
    }
    if (c < out.total.size()) out.total.erase(out.total.begin() + at);
  }
  return out;
}

std::string caption(const Table& table) {
  const std::string note = table.note.empty() ? "" : " <span>" + escape(table.note) + "</span>";
  return "<caption><b>" + escape(table.caption) + "</b>" + note + "</caption>\n";
}

std::string head(const std::vector<Column>& columns) {
  std::string out = "<thead><tr>";
  for (const Column& column : columns) {
    const std::string unit = column.unit.empty() ? "" : " <span>" + escape(column.unit) + "</span>";
    out += fmt::format("<th scope=\"col\"{}>{}{}</th>", css_class(column), escape(column.head), unit);
  }
  return out + "</tr></thead>\n";
}

std::string row(const std::vector<Column>& columns, const std::vector<std::string>& cells, bool marked) {
  std::string out = marked ? "<tr class=\"marked\">" : "<tr>";
  for (std::size_t c = 0; c < columns.size(); ++c) {
    const std::string text = c < cells.size() ? breakable(cells[c]) : "";
    const std::string inner = std::string(css_class(columns[c])) + ">" + text;
    out += c == 0 ? "<th scope=\"row\"" + inner + "</th>" : "<td" + inner + "</td>";
  }
  return out + "</tr>\n";
}

/// The last row: its heading reaches over the empty cells behind it.
std::string total_row(const Table& table) {
  std::size_t next = 1;
  while (next < table.columns.size() && (next >= table.total.size() || table.total[next].empty())) ++next;
  const std::string span = next > 1 ? fmt::format(" colspan=\"{}\"", next) : "";
  std::string out = "<tfoot><tr><th scope=\"row\"" + span + ">" + breakable(table.total.front()) + "</th>";
  for (std::size_t c = next; c < table.columns.size(); ++c) {
    const std::string text = c < table.total.size() ? breakable(table.total[c]) : "";
    out += "<td" + std::string(css_class(table.columns[c])) + ">" + text + "</td>";
  }
  return out + "</tr>\n</tfoot>\n";
}

}  // namespace

std::string table(const Table& all) {
  const Table table = without_empty(all);
  constexpr std::size_t short_table = 14;  // rows that are not parted on paper
  const char* keep = table.rows.size() <= short_table ? " keep" : "";
  const char* screen = table.screen_only ? " screen" : "";
  std::string out = "<div class=\"scroll" + std::string(keep) + screen +
                    "\" role=\"group\" tabindex=\"0\" aria-label=\"" + escape(table.caption) + "\">\n";
  const bool words = std::any_of(table.columns.begin(), table.columns.end(), [](const Column& c) { return c.words; });
  out += (words ? "<table class=\"wide\">\n" : "<table>\n") + caption(table) + head(table.columns) + "<tbody>\n";
  for (const Row& r : table.rows) out += row(table.columns, r.cells, r.marked);
  out += "</tbody>\n";
  if (!table.total.empty()) out += total_row(table);
  return out + "</table>\n</div>\n";
}

std::string heading(int level, std::string_view text) { return fmt::format("<h{0}>{1}</h{0}>\n", level, escape(text)); }

std::string paragraph(std::string_view text, std::string_view css_class) {
  const std::string attribute = css_class.empty() ? "" : fmt::format(" class=\"{}\"", css_class);
  return "<p" + attribute + ">" + escape(text) + "</p>\n";
}

std::string list(const std::vector<std::string>& items) {
  if (items.empty()) return {};
  std::string out = "<ul>\n";
  for (const std::string& item : items) out += "<li>" + escape(item) + "</li>\n";
  return out + "</ul>\n";
}

std::string readings(const std::vector<Reading>& readings) {
  std::string out = "<dl class=\"readings\">\n";
  for (const Reading& r : readings) {
    out += fmt::format("<div><dt>{}</dt><dd><b>{}</b> {}", escape(r.name), escape(r.value), escape(r.unit));
    out += r.note.empty() ? "" : "<span>" + escape(r.note) + "</span>";
    out += "</dd></div>\n";
  }
  return out + "</dl>\n";
}

std::string pair(std::string_view left, std::string_view right) {
  if (left.empty() || right.empty()) return std::string(left) + std::string(right);
  return fmt::format("<div class=\"pair\">\n<div>{}</div>\n<div>{}</div>\n</div>\n", left, right);
}

std::string figure(std::string_view title, std::string_view note, std::string_view wide, std::string_view narrow) {
  if (wide.empty()) return {};
  return fmt::format(
      "<figure>\n<figcaption><b>{0}</b> <span>{1}</span></figcaption>\n"
      "<div class=\"scroll on-wide\" role=\"group\" tabindex=\"0\" aria-label=\"{0}\">\n{2}</div>\n"
      "<div class=\"scroll on-narrow\" role=\"group\" tabindex=\"0\" aria-label=\"{0}\">\n{3}</div>\n</figure>\n",
      escape(title), escape(note), wide, narrow);
}

std::string drawing(std::string_view title, std::string_view note, std::string_view svg) {
  if (svg.empty()) return {};
  return fmt::format(
      "<figure>\n<figcaption><b>{0}</b> <span>{1}</span></figcaption>\n"
      "<div class=\"scroll\" role=\"group\" tabindex=\"0\" aria-label=\"{0}\">\n{2}</div>\n</figure>\n",
      escape(title), escape(note), svg);
}

}  // namespace forecourse::report::html
