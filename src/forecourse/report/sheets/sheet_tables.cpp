#include "forecourse/report/sheets/sheet_tables.h"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <iterator>
#include <vector>

#include "forecourse/report/html/parts.h"
#include "forecourse/report/sheets/sheets_view.h"

namespace forecourse::report {
namespace {

using handover::Blank;
using handover::SheetRow;
using handover::SheetSection;
using svg::escape;

constexpr std::size_t most_asked = 5;    // of a part, for a line each
constexpr std::size_t most_columns = 5;  // of parts
constexpr std::size_t most_effects = 7;  // of a matrix, side by side

std::string boxes() { return R"(<span class="fill"><span class="box"></span>yes <span class="box"></span>no</span>)"; }

std::string blank_html(const SheetRow& row, const RowWords& words) {
  switch (row.blank) {
    case Blank::none:
      return {};
    case Blank::amount:
      return "<span class=\"fill\"><span class=\"line\"></span> " + escape(words.blank_unit()) + "</span>";
    case Blank::yes_no:
      return boxes();
    case Blank::text:
    case Blank::signature:
      return "<span class=\"line long\"></span>";
  }
  return {};
}

std::string open_table(const std::string& name) {
  return "<div class=\"scroll\" role=\"group\" tabindex=\"0\" aria-label=\"" + escape(name) +
         "\">\n<table class=\"sheet\">\n";
}
constexpr const char* close_table = "</tbody>\n</table>\n</div>\n";

std::string small(const std::string& text) {
  return text.empty() ? std::string() : "<br><span class=\"small\">" + escape(text) + "</span>";
}

std::string bold(const std::string& text) { return text.empty() ? std::string() : "<b>" + escape(text) + "</b>"; }

/// The rows of one part, that stand together.
struct PartRows {
  std::string part;
  std::vector<const SheetRow*> rows;
};

/// Parts that are asked the same, that stand together.
using Block = std::vector<PartRows>;

bool asks_the_same(const PartRows& a, const PartRows& b) {
  return std::equal(a.rows.begin(), a.rows.end(), b.rows.begin(), b.rows.end(),
                    [](const SheetRow* one, const SheetRow* other) {
                      return one->what == other->what && one->amount == other->amount && one->blank == other->blank;
                    });
}

std::vector<Block> blocks_of(const SheetSection& section) {
  std::vector<PartRows> parts;
  for (const SheetRow& row : section.rows) {
    if (row.blank == Blank::signature) continue;
    if (parts.empty() || parts.back().part != row.part) parts.push_back({row.part, {}});
    parts.back().rows.push_back(&row);
  }
  std::vector<Block> out;
  for (PartRows& part : parts) {
    const bool same = !out.empty() && !part.part.empty() && asks_the_same(out.back().front(), part);
    if (!same) out.emplace_back();
    out.back().push_back(std::move(part));
  }
  return out;
}

/// What of a column is the same for all parts; empty: it differs, or there is none.
class Common {
 public:
  using Text = std::function<std::string(const SheetRow&)>;

  Common(const Block& block, std::size_t column, site::Display display)
      : block_(block), column_(column), display_(display) {}

  [[nodiscard]] bool is(const Text& text) const {
    const std::string first = text(*block_.front().rows[column_]);
    return std::all_of(block_.begin(), block_.end(),
                       [&](const PartRows& part) { return text(*part.rows[column_]) == first; });
  }

  /// Under the words of the column: by what the values are computed, tolerance, what is asked, by whom.
  [[nodiscard]] std::string head() const {
    const SheetRow& row = *block_.front().rows[column_];
    std::string out = escape(row.what);
    if (is(by)) out += small(row.value_by);
    if (is(tolerance())) out += small(tolerance()(row));
    if (is(limit())) out += small(limit()(row));
    if (is(who)) out += small(who(row));
    return out;
  }

  /// What stands in the cell of a part.
  [[nodiscard]] std::string cell(const SheetRow& row) const {
    const RowWords words(row, display_);
    std::string out = bold(words.bare_value());
    std::string beside = words.beside();
    const auto join = [&](const std::string& more) {
      if (!more.empty()) beside += (beside.empty() ? "" : "; ") + more;
    };
    if (!is(by)) join(row.value_by);
    if (!is(tolerance())) join(words.tolerance());
    if (!is(limit())) join(words.limit());
    if (!is(who)) join(row.who);
    const std::string blank = blank_html(row, words);
    if (!blank.empty()) out += (out.empty() ? "" : " ") + blank;
    if (!beside.empty()) out += out.empty() ? "<span class=\"small\">" + escape(beside) + "</span>" : small(beside);
    return out;
  }

 private:
  static std::string by(const SheetRow& row) { return row.value_by; }
  static std::string who(const SheetRow& row) { return row.who; }
  [[nodiscard]] Text tolerance() const {
    return [this](const SheetRow& row) { return RowWords(row, display_).tolerance(); };
  }
  [[nodiscard]] Text limit() const {
    return [this](const SheetRow& row) { return RowWords(row, display_).limit(); };
  }

  const Block& block_;
  std::size_t column_;
  site::Display display_;
};

/// A line for each part.
std::string lines_html(const std::string& name, const Block& block, site::Display display) {
  std::vector<Common> columns;
  const std::size_t asked = block.front().rows.size();
  columns.reserve(asked);
  for (std::size_t c = 0; c < asked; ++c) columns.emplace_back(block, c, display);
  std::string out = open_table(name) + "<thead><tr><th scope=\"col\">Part</th>";
  for (const Common& column : columns) out += "<th scope=\"col\">" + column.head() + "</th>";
  out += "</tr></thead>\n<tbody>\n";
  for (const PartRows& part : block) {
    out += "<tr><th scope=\"row\" class=\"fill\">" + escape(part.part) + "</th>";
    for (std::size_t c = 0; c < asked; ++c) out += "<td>" + columns[c].cell(*part.rows[c]) + "</td>";
    out += "</tr>\n";
  }
  return out + close_table;
}

/// A column for each part, a few of them side by side.
std::string columns_html(const std::string& name, const Block& block, site::Display display) {
  std::string out;
  for (std::size_t from = 0; from < block.size(); from += most_columns) {
    const std::size_t to = std::min(block.size(), from + most_columns);
    out += open_table(name) + "<thead><tr><th scope=\"col\">What</th>";
    for (std::size_t p = from; p < to; ++p) out += "<th scope=\"col\">" + escape(block[p].part) + "</th>";
    out += "</tr></thead>\n<tbody>\n";
    for (std::size_t r = 0; r < block.front().rows.size(); ++r) {
      const Common common(block, r, display);
      out += "<tr><th scope=\"row\">" + common.head() + "</th>";
      for (std::size_t p = from; p < to; ++p) out += "<td>" + common.cell(*block[p].rows[r]) + "</td>";
      out += "</tr>\n";
    }
    out += close_table;
  }
  return out;
}

/// A line for each row; a column that is empty throughout is left out.
class ListTable {
 public:
  ListTable(const Block& block, bool ordered, site::Display display) : ordered_(ordered) {
    for (const PartRows& part : block) {
      for (const SheetRow* row : part.rows) add(*row, display);
    }
  }

  [[nodiscard]] std::string html(const std::string& name) const {
    std::string out = open_table(name) + "<thead><tr>";
    if (ordered_) out += "<th scope=\"col\">Step</th>";
    for (std::size_t c = 0; c < heads_.size(); ++c) {
      if (used(c)) out += fmt::format("<th scope=\"col\">{}</th>", heads_[c]);
    }
    out += "</tr></thead>\n<tbody>\n";
    for (std::size_t r = 0; r < rows_.size(); ++r) out += line(r);
    return out + close_table;
  }

 private:
  static constexpr std::size_t what = 1;

  void add(const SheetRow& row, site::Display display) {
    const RowWords words(row, display);
    rows_.push_back({escape(row.part), escape(row.what), escape(words.value()), escape(words.tolerance()),
                     escape(words.limit()), escape(row.who), blank_html(row, words)});
  }

  [[nodiscard]] bool used(std::size_t column) const {
    return column == what ||
           std::any_of(rows_.begin(), rows_.end(), [&](const auto& cells) { return !cells[column].empty(); });
  }

  [[nodiscard]] std::string line(std::size_t row) const {
    std::string out = "<tr>";
    if (ordered_) out += fmt::format("<td>{}</td>", row + 1);
    for (std::size_t c = 0; c < heads_.size(); ++c) {
      if (!used(c)) continue;
      out += c == what ? "<th scope=\"row\">" + rows_[row][c] + "</th>"
                       : (c + 1 == heads_.size() ? "<td class=\"write\">" : "<td>") + rows_[row][c] + "</td>";
    }
    return out + "</tr>\n";
  }

  const std::vector<std::string> heads_{"Part",  "What", "Computed or entered", "Tolerance",
                                        "Asked", "By",   "Write here"};
  std::vector<std::vector<std::string>> rows_;
  bool ordered_;
};

/// The cause of a row of a matrix: its words without what it acts on.
std::string cause_of(const SheetRow& row) {
  const std::string end = " acts on " + row.effect;
  return row.what.ends_with(end) ? row.what.substr(0, row.what.size() - end.size()) : row.what;
}

std::string matrix_html(const SheetSection& section) {
  std::string out;
  const std::size_t width = section.effects.size();
  for (std::size_t from = 0; from < width; from += most_effects) {
    const std::size_t to = std::min(width, from + most_effects);
    out += open_table(section.title) + "<thead><tr><th scope=\"col\">Cause</th>";
    for (std::size_t c = from; c < to; ++c) out += "<th scope=\"col\">" + escape(section.effects[c]) + "</th>";
    out += "</tr></thead>\n<tbody>\n";
    for (std::size_t i = 0; i + width <= section.rows.size(); i += width) {
      out += "<tr><th scope=\"row\">" + escape(cause_of(section.rows[i])) + "</th>";
      for (std::size_t c = from; c < to; ++c) {
        out += "<td><span class=\"small\">" + escape(section.rows[i + c].words) + "</span><br>" + boxes() + "</td>";
      }
      out += "</tr>\n";
    }
    out += close_table;
  }
  return out;
}

std::string signatures(const SheetSection& section) {
  std::string out;
  for (const SheetRow& row : section.rows) {
    if (row.blank != Blank::signature) continue;
    out += "<p class=\"sign\">" + escape(row.what) +
           " <span class=\"line long\"></span> day <span class=\"line\"></span> signature <span class=\"line "
           "long\"></span></p>\n";
  }
  return out;
}

/// Parts of one table.
struct Group {
  Block parts;
  bool grid = false;
};

/// What is asked of several parts alike is a grid; what stands between is a list.
std::vector<Group> groups_of(const SheetSection& section) {
  std::vector<Group> out;
  for (Block& block : blocks_of(section)) {
    const bool grid = block.size() > 1 && !section.ordered;
    if (grid || out.empty() || out.back().grid) out.push_back({{}, grid});
    std::move(block.begin(), block.end(), std::back_inserter(out.back().parts));
  }
  return out;
}

std::string group_html(const SheetSection& section, const Group& group, site::Display display) {
  if (!group.grid) return ListTable(group.parts, section.ordered, display).html(section.title);
  const bool lines = group.parts.front().rows.size() <= most_asked;
  return lines ? lines_html(section.title, group.parts, display) : columns_html(section.title, group.parts, display);
}

}  // namespace

std::string sheet_tables(const SheetSection& section, site::Display display) {
  if (!section.effects.empty()) return matrix_html(section) + signatures(section);
  std::string out;
  for (const Group& group : groups_of(section)) out += group_html(section, group, display);
  return out + signatures(section);
}

}  // namespace forecourse::report
