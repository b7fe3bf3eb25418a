#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace forecourse::report::terminal {

/// How a terminal wants its text.
struct Style {
  std::size_t width = 80;  ///< columns that no line passes
  bool color = false;      ///< bold and color by escape codes; nothing needs them to be understood
  bool utf8 = true;        ///< false: ASCII only
  bool verbose = false;    ///< lists in full
};

/// A text that cannot steer the terminal: hidden characters and line ends become blanks, bytes that are no UTF-8 and,
/// on an ASCII terminal, letters that it does not have become '?'.
[[nodiscard]] std::string plain(std::string_view text, bool utf8);

/// Columns that a plain text takes: two for a wide East Asian character, none for a combining mark.
[[nodiscard]] std::size_t columns(std::string_view text);

/// Cut to `width` columns, with an ellipsis where something is left out.
[[nodiscard]] std::string fit(std::string_view text, std::size_t width, bool utf8);

/// Filled up with blanks to `width` columns.
[[nodiscard]] std::string pad(std::string_view text, std::size_t width, bool right_aligned);

/// Broken at blanks into lines of at most `width` columns; a longer word is cut. At least one line.
[[nodiscard]] std::vector<std::string> wrap(std::string_view text, std::size_t width);

}  // namespace forecourse::report::terminal
