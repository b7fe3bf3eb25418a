#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "forecourse/report/terminal/text.h"

namespace forecourse::report::terminal {

struct Column {
  std::string head;
  bool number = false;  ///< right-aligned, never cut
  bool wraps = false;   ///< its cells may take several lines
};

struct Table {
  std::vector<Column> columns;
  std::vector<std::vector<std::string>> rows;
};

/// Builds a text of paragraphs, lists and tables in which no line passes the width. Whatever is handed in is made
/// plain first, so a name from a file cannot steer the terminal.
class Page {
 public:
  explicit Page(Style style) : style_(style) {}

  /// The title with a thick line under it.
  void title(std::string_view text);
  /// A heading, with a blank line before it.
  void heading(std::string_view text);
  void paragraph(std::string_view text);
  /// A paragraph set in like the tables, to go with one.
  void remark(std::string_view text);
  void blank();
  /// A list item; its further lines are set in under the first.
  void item(std::string_view text);
  /// A line that says to look out: it starts with `word`, in color where there is color.
  void notice(std::string_view word, std::string_view text);
  /// A table set in by two columns, without the wrapping columns that are empty; where it is too wide its heads wrap,
  /// then the columns that may, then names are cut.
  void table(const Table& table);

  [[nodiscard]] const std::string& text() const { return out_; }

 private:
  void lines(std::string_view text, std::string_view first, std::string_view rest);
  [[nodiscard]] std::string painted(std::string_view text, const char* code) const;

  Style style_;
  std::string out_;
};

}  // namespace forecourse::report::terminal
