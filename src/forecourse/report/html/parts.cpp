#include "forecourse/report/html/parts.h"

#include <fmt/format.h>

#include "forecourse/report/svg/text.h"

namespace forecourse::report::html {
namespace {

using svg::escape;

std::string caption(const Table& table) {
  const std::string note = table.note.empty() ? "" : " <span>" + escape(table.note) + "</span>";
  return "<caption><b>" + escape(table.caption) + "</b>" + note + "</caption>\n";
}

std::string head(const std::vector<Column>& columns) {
  std::string out = "<thead><tr>";
  for (const Column& column : columns) {
    const std::string unit = column.unit.empty() ? "" : " <span>" + escape(column.unit) + "</span>";
    out += fmt::format("<th scope=\"col\"{}>{}{}</th>", column.number ? " class=\"n\"" : "", escape(column.head), unit);
  }
  return out + "</tr></thead>\n";
}

std::string row(const std::vector<Column>& columns, const std::vector<std::string>& cells, bool marked) {
  std::string out = marked ? "<tr class=\"marked\">" : "<tr>";
  for (std::size_t c = 0; c < columns.size(); ++c) {
    const std::string text = c < cells.size() ? escape(cells[c]) : "";
    const char* number = columns[c].number ? " class=\"n\"" : "";
    out += c == 0 ? fmt::format("<th scope=\"row\"{}>{}</th>", number, text) : fmt::format("<td{}>{}</td>", number, text);
  }
  return out + "</tr>\n";
}

}  // namespace

std::string table(const Table& table) {
  std::string out = "<div class=\"scroll\" role=\"region\" tabindex=\"0\" aria-label=\"" + escape(table.caption) + "\">\n";
  out += "<table>\n" + caption(table) + head(table.columns) + "<tbody>\n";
  for (const Row& r : table.rows) out += row(table.columns, r.cells, r.marked);
  out += "</tbody>\n";
  if (!table.total.empty()) out += "<tfoot>" + row(table.columns, table.total, false) + "</tfoot>\n";
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

std::string figure(std::string_view title, std::string_view note, std::string_view svg) {
  if (svg.empty()) return {};
  return fmt::format(
      "<figure>\n<figcaption><b>{0}</b> <span>{1}</span></figcaption>\n"
      "<div class=\"scroll\" role=\"region\" tabindex=\"0\" aria-label=\"{0}\">\n{2}</div>\n</figure>\n",
      escape(title), escape(note), svg);
}

}  // namespace forecourse::report::html
