#include "forecourse/report/terminal/page.h"

#include <algorithm>
#include <numeric>

namespace forecourse::report::terminal {
namespace {

constexpr const char* bold = "1";
constexpr const char* notice_color = "1;33";
constexpr std::size_t indent = 2;
constexpr std::size_t gap = 2;

using Rows = std::vector<std::vector<std::string>>;

/// The table without the columns that may wrap and have nothing to say.
Table without_empty(const Table& table) {
  const auto is_used = [&](std::size_t c) {
    return !table.columns[c].wraps || std::any_of(table.rows.begin(), table.rows.end(),
                                                  [c](const auto& row) { return c < row.size() && !row[c].empty(); });
  };
  Table out;
  out.rows.resize(table.rows.size());
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    if (!is_used(c)) continue;
    out.columns.push_back(table.columns[c]);
    for (std::size_t r = 0; r < table.rows.size(); ++r) {
      out.rows[r].push_back(c < table.rows[r].size() ? table.rows[r][c] : std::string());
    }
  }
  return out;
}

/// Head and cells as they will be printed.
Rows plain_cells(const Table& table, bool utf8) {
  Rows rows(1);
  for (const Column& column : table.columns) rows.front().push_back(plain(column.head, utf8));
  for (const auto& row : table.rows) {
    rows.emplace_back();
    for (std::size_t c = 0; c < table.columns.size(); ++c) {
      rows.back().push_back(c < row.size() ? plain(row[c], utf8) : std::string());
    }
  }
  return rows;
}

std::size_t natural_width(const Rows& rows, std::size_t column) {
  std::size_t width = 0;
  for (const auto& row : rows) width = std::max(width, columns(row[column]));
  return width;
}

std::size_t total(const std::vector<std::size_t>& widths) {
  return indent + std::accumulate(widths.begin(), widths.end(), std::size_t{0}) + gap * (widths.size() - 1);
}

/// Takes what is too much from the columns that `may_give`, the widest first, down to `least`.
template <class MayGive>
void give_way(std::vector<std::size_t>& widths, std::size_t width, std::size_t least, MayGive may_give) {
  while (total(widths) > width) {
    std::size_t widest = widths.size();
    for (std::size_t c = 0; c < widths.size(); ++c) {
      const bool wider = widest == widths.size() || widths[c] > widths[widest];
      if (may_give(c) && widths[c] > least && wider) widest = c;
    }
    if (widest == widths.size()) return;
    --widths[widest];
  }
}

/// Width of a column whose head is broken at every blank.
std::size_t least_width(const Rows& rows, std::size_t column) {
  std::size_t width = 0;
  for (std::size_t r = 1; r < rows.size(); ++r) width = std::max(width, columns(rows[r][column]));
  const std::string_view head = rows.front()[column];
  for (std::size_t at = 0; at < head.size();) {
    const std::size_t end = std::min(head.find(' ', at), head.size());
    width = std::max(width, columns(head.substr(at, end - at)));
    at = end + 1;
  }
  return width;
}

std::vector<std::size_t> column_widths(const Table& table, const Rows& rows, std::size_t width) {
  std::vector<std::size_t> widths;
  std::vector<std::size_t> least;
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    widths.push_back(natural_width(rows, c));
    least.push_back(least_width(rows, c));
  }
  give_way(widths, width, 0, [&](std::size_t c) { return table.columns[c].number && widths[c] > least[c]; });
  give_way(widths, width, 22, [&](std::size_t c) { return table.columns[c].wraps; });
  give_way(widths, width, 8, [&](std::size_t c) { return !table.columns[c].number; });
  give_way(widths, width, 3, [](std::size_t) { return true; });
  return widths;
}

/// The lines of each cell of a row; a cell that may not wrap has one.
std::vector<std::vector<std::string>> broken(const Table& table, const std::vector<std::string>& row, bool is_head,
                                             const std::vector<std::size_t>& widths, bool utf8) {
  std::vector<std::vector<std::string>> cells;
  for (std::size_t c = 0; c < widths.size(); ++c) {
    const bool wraps = table.columns[c].wraps || is_head;
    cells.push_back(wraps ? wrap(row[c], widths[c]) : std::vector<std::string>{fit(row[c], widths[c], utf8)});
  }
  return cells;
}

std::string repeated(std::string_view text, std::size_t count) {
  std::string out;
  for (std::size_t i = 0; i < count; ++i) out += text;
  return out;
}

std::string trimmed(std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  return line;
}

}  // namespace

std::string Page::painted(std::string_view text, const char* code) const {
  if (!style_.color) return std::string(text);
  return "\033[" + std::string(code) + "m" + std::string(text) + "\033[0m";
}

void Page::lines(std::string_view text, std::string_view first, std::string_view rest) {
  const std::string clean = plain(text, style_.utf8);
  const std::size_t set_in = columns(rest);
  const auto wrapped = wrap(clean, style_.width > set_in + 8 ? style_.width - set_in : 8);
  for (std::size_t i = 0; i < wrapped.size(); ++i) {
    out_ += trimmed(std::string(i == 0 ? first : rest) + wrapped[i]) + "\n";
  }
}

void Page::title(std::string_view text) {
  for (const std::string& line : wrap(plain(text, style_.utf8), style_.width)) out_ += painted(line, bold) + "\n";
  out_ += repeated(style_.utf8 ? "\u2501" : "=", style_.width) + "\n";
}

void Page::heading(std::string_view text) {
  out_ += "\n";
  for (const std::string& line : wrap(plain(text, style_.utf8), style_.width)) out_ += painted(line, bold) + "\n";
}

void Page::paragraph(std::string_view text) { lines(text, "", ""); }

void Page::remark(std::string_view text) { lines(text, "  ", "  "); }

void Page::blank() { out_ += "\n"; }

void Page::item(std::string_view text) { lines(text, "  - ", "    "); }

void Page::notice(std::string_view word, std::string_view text) {
  const std::string start = "  " + painted(word, notice_color) + " ";
  const std::string rest(columns(word) + 3, ' ');
  lines(text, start, rest);
}

void Page::table(const Table& all) {
  const Table table = without_empty(all);
  const Rows rows = plain_cells(table, style_.utf8);
  const std::vector<std::size_t> widths = column_widths(table, rows, style_.width);
  for (std::size_t r = 0; r < rows.size(); ++r) {
    std::vector<std::vector<std::string>> cells = broken(table, rows[r], r == 0, widths, style_.utf8);
    std::size_t height = 0;
    for (const auto& cell : cells) height = std::max(height, cell.size());
    for (auto& cell : cells) {
      if (r == 0) cell.insert(cell.begin(), height - cell.size(), "");  // heads stand on the rule
      cell.resize(height);
    }
    for (std::size_t h = 0; h < height; ++h) {
      std::string line(indent, ' ');
      for (std::size_t c = 0; c < widths.size(); ++c) {
        line += (c == 0 ? "" : std::string(gap, ' ')) + pad(cells[c][h], widths[c], table.columns[c].number);
      }
      out_ += trimmed(line) + "\n";
    }
    if (r == 0)
      out_ += std::string(indent, ' ') + repeated(style_.utf8 ? "\u2500" : "-", total(widths) - indent) + "\n";
  }
}

}  // namespace forecourse::report::terminal
