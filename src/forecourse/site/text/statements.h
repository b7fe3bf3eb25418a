#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

namespace forecourse::site {

/// One statement of a TOML text, right or wrong: a header or `key = value`, with all its lines.
struct Statement {
  std::size_t begin = 0;  ///< first byte that is no blank
  std::size_t end = 0;    ///< after its last byte, without the line break; a comment behind it included
  bool is_header = false;
  char unclosed = '\0';                                 ///< the quote or bracket that is not closed
  std::size_t quote = std::string_view::npos;           ///< offset of the quote that is not closed
  std::size_t equals = std::string_view::npos;          ///< offset of the '=' after the key
  std::size_t bare_non_ascii = std::string_view::npos;  ///< first byte above 0x7F outside quotes and comments
  std::size_t deep_key = std::string_view::npos;        ///< where a key has more parts than any parser should follow
};

/// Cuts a text into statements without asking whether they are right. A statement ends with its line, unless a
/// multi-line text or an array is open; where the following line looks like a new statement an open array ends too.
[[nodiscard]] std::vector<Statement> statements_of(std::string_view text);

/// The key of a statement as written, or the name in a header; without blanks around it.
[[nodiscard]] std::string_view key_of(std::string_view text, const Statement& statement);
/// The value of a `key = value` as written, without a comment behind it.
[[nodiscard]] std::string_view value_of(std::string_view text, const Statement& statement);

}  // namespace forecourse::site
