#include "forecourse/store/csv/csv_reader.h"

#include <algorithm>
#include <array>
#include <limits>

#include "forecourse/site/text/precheck.h"

namespace forecourse::store {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

bool is_blank(char c) { return c == ' ' || c == '\t'; }

}  // namespace

CsvReader::CsvReader(std::string_view text, std::uint32_t text_index, char separator)
    : text_(text), index_(text_index), separator_(separator) {
  if (text_.starts_with(byte_order_mark)) at_ = byte_order_mark.size();
}

bool CsvReader::next(std::vector<CsvCell>& row) {
  while (at_ < text_.size()) {
    const std::size_t begin = at_;
    std::size_t count = 0;
    bool empty = true;
    while (true) {
      if (row.size() == count) row.emplace_back();
      read_cell(row[count]);
      empty = empty && row[count].text.empty();
      ++count;
      if (at_ == text_.size() || text_[at_] != separator_) break;
      ++at_;
    }
    row.resize(count);
    row_ = span(begin, at_);
    pass_line_end();
    if (!empty) return true;
  }
  return false;
}

void CsvReader::skip_lines(std::size_t count) {
  while (count-- > 0 && at_ < text_.size()) {
    at_ = std::min(text_.find_first_of("\r\n", at_), text_.size());
    pass_line_end();
  }
}

void CsvReader::pass_line_end() {
  if (at_ < text_.size() && text_[at_] == '\r') ++at_;
  if (at_ < text_.size() && text_[at_] == '\n') ++at_;
}

bool CsvReader::at_cell_end() const {
  return at_ == text_.size() || text_[at_] == separator_ || text_[at_] == '\n' || text_[at_] == '\r';
}

SourceSpan CsvReader::span(std::size_t begin, std::size_t end) const {
  return {index_, static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
}

void CsvReader::read_cell(CsvCell& cell) {
  cell.text.clear();
  while (!at_cell_end() && is_blank(text_[at_])) ++at_;
  if (at_ < text_.size() && text_[at_] == '"') {
    read_quoted(cell);
  } else {
    read_plain(cell);
  }
}

void CsvReader::read_plain(CsvCell& cell) {
  const std::size_t begin = at_;
  while (!at_cell_end()) ++at_;
  std::size_t end = at_;
  while (end > begin && is_blank(text_[end - 1])) --end;
  cell.text.assign(text_.substr(begin, end - begin));
  cell.where = span(begin, end);
}

void CsvReader::read_quoted(CsvCell& cell) {
  const std::size_t begin = at_++;
  while (true) {
    const std::size_t quote = text_.find('"', at_);
    if (quote == std::string_view::npos) {
      diagnostics_.push_back({Severity::error,
                              "a quoted cell begins here and does not end",
                              span(begin, begin + 1),
                              "close it with a second quote; a quote inside a quoted cell is written twice",
                              {}});
      cell.where = span(begin, text_.size());
      at_ = text_.size();
      return;
    }
    cell.text.append(text_.substr(at_, quote - at_));
    at_ = quote + 1;
    if (at_ == text_.size() || text_[at_] != '"') break;
    cell.text += '"';
    ++at_;
  }
  cell.where = span(begin, at_);
  while (!at_cell_end() && is_blank(text_[at_])) ++at_;
  if (at_cell_end()) return;
  const std::size_t rest = at_;
  while (!at_cell_end()) ++at_;
  diagnostics_.push_back({Severity::error,
                          "something stands behind the closing quote of this cell",
                          span(rest, at_),
                          "write a quote inside a quoted cell twice: \"12\"\" riser\"",
                          {}});
}

char likely_separator(std::string_view text) {
  if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
  constexpr std::array<char, 3> separators{',', ';', '\t'};
  std::array<std::size_t, 3> count{};
  bool quoted = false;
  for (const char c : text) {
    if (c == '"') quoted = !quoted;
    if (!quoted && (c == '\n' || c == '\r')) break;
    for (std::size_t i = 0; i < separators.size(); ++i) {
      if (!quoted && c == separators[i]) ++count[i];
    }
  }
  return separators[static_cast<std::size_t>(std::ranges::max_element(count) - count.begin())];
}

std::vector<Diagnostic> why_no_csv(std::string_view text, std::uint32_t text_index) {
  const auto fault = [&](std::size_t begin, std::string message, std::string hint) {
    const auto at = static_cast<std::uint32_t>(begin);
    return std::vector<Diagnostic>{
        {Severity::error, std::move(message), SourceSpan{text_index, at, at + 1}, std::move(hint), {}}};
  };
  if (text.size() >= std::numeric_limits<std::uint32_t>::max()) {
    return {{Severity::error, "a file of 4 GB or more is not read", {}, "part it by years", {}}};
  }
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF")) {
    return fault(0, "this file is UTF-16", "save it as CSV in UTF-8");
  }
  if (const std::size_t nul = text.find('\0'); nul != std::string_view::npos) {
    return fault(nul, "a NUL byte stands here: this is no CSV", "save it as CSV in UTF-8");
  }
  if (const std::size_t bad = site::first_invalid_utf8(text); bad != std::string_view::npos) {
    return fault(bad, "this is not UTF-8 from here on", "save it as CSV in UTF-8");
  }
  return {};
}

}  // namespace forecourse::store
