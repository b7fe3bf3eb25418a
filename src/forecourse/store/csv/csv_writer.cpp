#include "forecourse/store/csv/csv_writer.h"

namespace forecourse::store {
namespace {

/// True for a text that a spreadsheet would compute, behind any apostrophes that were there already.
bool wants_guard(std::string_view text) {
  const std::size_t first = text.find_first_not_of('\'');
  return first != std::string_view::npos && std::string_view("=+-@\t\r").find(text[first]) != std::string_view::npos;
}

void append_cell(std::string& out, std::string_view cell, char separator) {
  const bool blank_end =
      !cell.empty() && (cell.front() == ' ' || cell.back() == ' ' || cell.front() == '\t' || cell.back() == '\t');
  if (!blank_end && cell.find_first_of("\"\r\n") == std::string_view::npos && cell.find(separator) == cell.npos) {
    out += cell;
    return;
  }
  out += '"';
  for (const char c : cell) {
    if (c == '"') out += '"';
    out += c;
  }
  out += '"';
}

}  // namespace

std::string guarded(std::string_view text) { return (wants_guard(text) ? "'" : "") + std::string(text); }

std::string_view without_guard(std::string_view cell) {
  const bool guard = cell.starts_with('\'') && wants_guard(cell);
  return guard ? cell.substr(1) : cell;
}

void append_row(std::string& out, std::span<const std::string> cells, char separator) {
  bool first = true;
  for (const std::string& cell : cells) {
    if (!first) out += separator;
    first = false;
    append_cell(out, cell, separator);
  }
  out += '\n';
}

}  // namespace forecourse::store
