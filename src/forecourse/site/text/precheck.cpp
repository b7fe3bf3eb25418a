#include "forecourse/site/text/precheck.h"

#include <fmt/format.h>

#include <algorithm>

namespace forecourse::site {

namespace {

unsigned byte_at(std::string_view text, std::size_t i) {
  return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
}

/// Bytes of the code point at `i`; 0 when it is malformed.
std::size_t code_point_length(std::string_view text, std::size_t i) {
  const unsigned first = byte_at(text, i);
  if (first < 0x80U) return 1;
  const std::size_t length = first >= 0xF0U ? 4 : first >= 0xE0U ? 3 : 2;
  if (first < 0xC2U || first > 0xF4U || i + length > text.size()) return 0;
  for (std::size_t k = 1; k < length; ++k) {
    if ((byte_at(text, i + k) & 0xC0U) != 0x80U) return 0;
  }
  const unsigned second = byte_at(text, i + 1);
  const bool overlong = (first == 0xE0U && second < 0xA0U) || (first == 0xF0U && second < 0x90U);
  const bool surrogate = first == 0xEDU && second > 0x9FU;
  const bool too_high = first == 0xF4U && second > 0x8FU;
  return overlong || surrogate || too_high ? 0 : length;
}

std::size_t line_of(std::string_view text, std::size_t at) {
  return 1 + static_cast<std::size_t>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
}

Diagnostic at_byte(std::string message, std::string hint, std::size_t at, std::uint32_t text_index) {
  const auto begin = static_cast<std::uint32_t>(at);
  return {Severity::error, std::move(message), SourceSpan{text_index, begin, begin + 1}, std::move(hint), {}};
}

/// A text that begins as JSON or as markup does is read no further: every line of it would be wrong.
std::optional<Diagnostic> why_other_format(std::string_view text, std::uint32_t text_index) {
  const std::size_t first = text.find_first_not_of(" \t\r\n");
  if (first == std::string_view::npos || (text[first] != '{' && text[first] != '<')) return std::nullopt;
  return at_byte(fmt::format("the text begins with '{}', as {} does; a site file is TOML", text[first],
                             text[first] == '{' ? "JSON" : "XML or HTML"),
                 "write key = value under headers: format = 1, then [site], [[product]], [[tank]] ...", first,
                 text_index);
}

}  // namespace

std::size_t first_invalid_utf8(std::string_view text) {
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t length = code_point_length(text, i);
    if (length == 0) return i;
    i += length;
  }
  return std::string_view::npos;
}

std::optional<Diagnostic> why_unreadable(std::string_view text, std::uint32_t text_index) {
  if (text.size() > largest_text) {
    return Diagnostic{
        Severity::error,
        fmt::format("{} bytes are too large for a site file; at most {} are read", text.size(), largest_text),
        SourceSpan{text_index, 0, 0},
        "a station takes a few thousand lines at most: is this the right file?",
        {}};
  }
  const std::size_t invalid = first_invalid_utf8(text);
  if (invalid != std::string_view::npos) {
    const bool is_utf16 = text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF");
    return at_byte(fmt::format("the text is not UTF-8: byte {} on line {} is 0x{:02X}", invalid, line_of(text, invalid),
                               byte_at(text, invalid)),
                   is_utf16 ? "save the file as UTF-8; it is UTF-16 now" : "save the file as UTF-8", invalid,
                   text_index);
  }
  const std::size_t nul = text.find('\0');
  if (nul == std::string_view::npos) return why_other_format(text, text_index);
  return at_byte(fmt::format("the text holds a NUL byte, at byte {} on line {}", nul, line_of(text, nul)),
                 "save the file as plain UTF-8 text (not UTF-16)", nul, text_index);
}

}  // namespace forecourse::site
