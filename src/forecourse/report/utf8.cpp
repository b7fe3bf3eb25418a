#include "forecourse/report/utf8.h"

namespace forecourse::report {
namespace {

std::size_t length_from(unsigned char first) { return first < 0x80U ? 1 : first >= 0xF0U ? 4 : first >= 0xE0U ? 3 : 2; }

bool is_character(char32_t c, std::size_t length) {
  constexpr char32_t least[] = {0, 0, 0x80U, 0x800U, 0x10000U};
  const bool surrogate = c >= 0xD800U && c <= 0xDFFFU;
  return c >= least[length] && c <= 0x10FFFFU && !surrogate;
}

}  // namespace

Character character_at(std::string_view text, std::size_t at) {
  const auto first = static_cast<unsigned char>(text[at]);
  if (first < 0x80U) return {first, 1, true};
  if (first < 0xC2U || first > 0xF4U) return {};
  const std::size_t length = length_from(first);
  char32_t value = first & (0x7FU >> length);
  for (std::size_t i = 1; i < length; ++i) {
    if (at + i >= text.size()) return {};
    const auto next = static_cast<unsigned char>(text[at + i]);
    if ((next & 0xC0U) != 0x80U) return {};
    value = (value << 6U) | (next & 0x3FU);
  }
  return is_character(value, length) ? Character{value, length, true} : Character{};
}

bool is_hidden(char32_t c) {
  if (c == U'\t' || c == U'\n') return false;
  const bool control = c < 0x20U || (c >= 0x7FU && c < 0xA0U);
  const bool mark = (c >= 0x200BU && c <= 0x200FU) || (c >= 0x2028U && c <= 0x202EU) || (c >= 0x2060U && c <= 0x2069U);
  return control || mark || c == 0xFEFFU;
}

}  // namespace forecourse::report
