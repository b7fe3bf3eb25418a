#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "forecourse/base/diagnostic.h"

namespace forecourse::store {

/// One cell of a row: what it says, without quotes and the blanks around it, and where it stands, quotes included.
struct CsvCell {
  std::string text;
  SourceSpan where{};
};

/// Reads a text of comma-separated values row by row.
///
/// Rows end with a line feed, a carriage return, or both. A cell in double quotes may hold separators, line ends and
/// doubled quotes; a quote that does not begin a cell stands for itself, so that `71"` is read. Rows in which nothing
/// stands are passed over. A byte order mark is no part of the first cell.
/// \source [rfc_4180, section 2] the form; other separators than the comma are common practice, no source
class CsvReader {
 public:
  CsvReader(std::string_view text, std::uint32_t text_index, char separator);

  /// The next row with something in it; false at the end. The row keeps its memory from call to call.
  [[nodiscard]] bool next(std::vector<CsvCell>& row);
  /// From the first byte of the row that `next` gave to its last.
  [[nodiscard]] SourceSpan row_span() const { return row_; }
  /// Passes over whole lines, whatever stands in them.
  void skip_lines(std::size_t count);
  /// What was no CSV in the rows so far: a quote that never ends, something behind the closing quote.
  [[nodiscard]] const std::vector<Diagnostic>& diagnostics() const { return diagnostics_; }

 private:
  void read_cell(CsvCell& cell);
  void read_quoted(CsvCell& cell);
  void read_plain(CsvCell& cell);
  [[nodiscard]] bool at_cell_end() const;
  [[nodiscard]] SourceSpan span(std::size_t begin, std::size_t end) const;
  void pass_line_end();

  std::string_view text_;
  std::uint32_t index_ = 0;
  char separator_ = ',';
  std::size_t at_ = 0;
  SourceSpan row_{};
  std::vector<Diagnostic> diagnostics_;
};

/// The separator of a text: of comma, semicolon and tab the one that stands most often in its first line, outside
/// quotes; a comma when none does.
[[nodiscard]] char likely_separator(std::string_view text);

/// Why a text cannot be read as CSV at all: not UTF-8, NUL bytes, larger than spans can tell. Empty: it can.
[[nodiscard]] std::vector<Diagnostic> why_no_csv(std::string_view text, std::uint32_t text_index);

}  // namespace forecourse::store
