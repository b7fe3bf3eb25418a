#include "forecourse/site/text/line_starts.h"

#include <algorithm>

namespace forecourse::site {

namespace {
bool is_continuation(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }
bool is_plain(std::string_view line) {
  return std::all_of(line.begin(), line.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80U; });
}
}  // namespace

LineStarts::LineStarts(std::string_view text) : text_(text) {
  std::size_t begin = text.substr(0, 3) == "\xEF\xBB\xBF" ? 3 : 0;  // a byte order mark is no column
  while (begin <= text.size()) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    starts_.push_back(static_cast<std::uint32_t>(begin));
    plain_.push_back(is_plain(text.substr(begin, end - begin)));
    begin = end + 1;
  }
}

std::uint32_t LineStarts::offset(std::size_t line, std::size_t column) const {
  if (line == 0 || line > starts_.size()) return static_cast<std::uint32_t>(text_.size());
  const std::size_t skip = column > 0 ? column - 1 : 0;
  if (plain_[line - 1]) return static_cast<std::uint32_t>(std::min(starts_[line - 1] + skip, text_.size()));
  std::size_t at = starts_[line - 1];
  for (std::size_t seen = 0; seen < skip && at < text_.size(); ++seen) {
    ++at;
    while (at < text_.size() && is_continuation(text_[at])) ++at;
  }
  return static_cast<std::uint32_t>(at);
}

std::size_t LineStarts::line(std::size_t offset) const {
  const auto after = std::upper_bound(starts_.begin(), starts_.end(), offset);
  return static_cast<std::size_t>(after - starts_.begin());
}

}  // namespace forecourse::site
