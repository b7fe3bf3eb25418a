#include "forecourse/report/terminal/text.h"

#include <algorithm>
#include <utility>

#include "forecourse/report/utf8.h"

namespace forecourse::report::terminal {
namespace {

/// What an ASCII terminal shows for a character of ours.
const char* in_ascii(char32_t c) {
  switch (c) {
    case 0x2212U:
    case 0x2013U:
    case 0x2014U:
      return "-";
    case 0x00A0U:
      return " ";
    case 0x00B7U:
      return ".";
    case 0x00B3U:
      return "3";
    case 0x00B2U:
      return "2";
    case 0x00B0U:
      return "deg";
    default:
      return "?";
  }
}

bool is_wide(char32_t c) {
  return (c >= 0x1100U && c <= 0x115FU) || (c >= 0x2E80U && c <= 0xA4CFU) || (c >= 0xAC00U && c <= 0xD7A3U) ||
         (c >= 0xF900U && c <= 0xFAFFU) || (c >= 0xFE30U && c <= 0xFE6FU) || (c >= 0xFF00U && c <= 0xFF60U) ||
         (c >= 0x1F300U && c <= 0x1FAFFU) || (c >= 0x20000U && c <= 0x3FFFDU);
}

bool is_combining(char32_t c) {
  return (c >= 0x0300U && c <= 0x036FU) || (c >= 0x20D0U && c <= 0x20FFU) || (c >= 0xFE00U && c <= 0xFE0FU);
}

std::size_t columns_of(char32_t c) { return is_combining(c) ? 0 : is_wide(c) ? 2 : 1; }

/// Bytes of the longest beginning of `text` that takes at most `width` columns.
std::size_t beginning(std::string_view text, std::size_t width) {
  std::size_t at = 0;
  std::size_t used = 0;
  while (at < text.size()) {
    const Character c = character_at(text, at);
    if (used + columns_of(c.value) > width) break;
    used += columns_of(c.value);
    at += c.length;
  }
  return at;
}

}  // namespace

std::string plain(std::string_view text, bool utf8) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const Character c = character_at(text, at);
    if (!c.valid) {
      out += '?';
    } else if (is_hidden(c.value) || c.value == U'\n' || c.value == U'\t') {
      out += ' ';
    } else if (c.value < 0x80U || utf8) {
      out += text.substr(at, c.length);
    } else {
      out += in_ascii(c.value);
    }
    at += c.length;
  }
  return out;
}

std::size_t columns(std::string_view text) {
  std::size_t count = 0;
  for (std::size_t at = 0; at < text.size();) {
    const Character c = character_at(text, at);
    count += columns_of(c.value);
    at += c.length;
  }
  return count;
}

std::string fit(std::string_view text, std::size_t width, bool utf8) {
  if (columns(text) <= width) return std::string(text);
  const std::string_view mark = utf8 ? "\u2026" : "...";
  const std::size_t mark_width = std::min(columns(mark), width);
  return std::string(text.substr(0, beginning(text, width - mark_width))) +
         std::string(mark.substr(0, utf8 ? 3 : mark_width));
}

std::string pad(std::string_view text, std::size_t width, bool right_aligned) {
  const std::size_t used = columns(text);
  const std::string blanks(width > used ? width - used : 0, ' ');
  return right_aligned ? blanks + std::string(text) : std::string(text) + blanks;
}

std::vector<std::string> wrap(std::string_view text, std::size_t width) {
  std::vector<std::string> lines;
  std::string line;
  const auto put = [&](std::string_view word) {
    if (!line.empty() && columns(line) + 1 + columns(word) > width) lines.push_back(std::exchange(line, {}));
    while (columns(word) > width) {
      const std::size_t bytes = std::max(beginning(word, width), character_at(word, 0).length);
      lines.emplace_back(word.substr(0, bytes));
      word.remove_prefix(bytes);
    }
    if (!line.empty() && !word.empty()) line += ' ';
    line += word;
  };
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    if (end > at) put(text.substr(at, end - at));
    at = end + 1;
  }
  if (!line.empty() || lines.empty()) lines.push_back(line);
  return lines;
}

}  // namespace forecourse::report::terminal
