#pragma once

#include <cstddef>
#include <string_view>

namespace forecourse::report {

/// One character of a text that claims to be UTF-8.
struct Character {
  char32_t value = U'\uFFFD';
  std::size_t length = 1;  ///< bytes, at least 1
  bool valid = false;      ///< false: one byte that starts no character
};

/// The character at byte `at` of `text`, which must be inside it.
[[nodiscard]] Character character_at(std::string_view text, std::size_t at);

/// Controls other than tab and line end, and marks that have no width or turn the direction of writing: nothing that
/// a name should bring into a report or a terminal.
[[nodiscard]] bool is_hidden(char32_t c);

}  // namespace forecourse::report
