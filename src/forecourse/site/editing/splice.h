#pragma once

#include <string>
#include <string_view>

#include "forecourse/site/editing/path.h"

namespace forecourse::site {

/// Bytes [begin, end) of a text are to become `bytes`.
struct Splice {
  std::size_t begin = 0;
  std::size_t end = 0;
  std::string bytes;
};

[[nodiscard]] std::string apply(std::string_view text, const Splice& splice);

/// Replaces the value of an entry.
[[nodiscard]] Splice replace_value(const Entry& entry, std::string_view value);
/// Adds `key = value` to a table: inside its braces, or on a line of its own behind its last key.
[[nodiscard]] Splice add_key(std::string_view text, const Node& table, std::string_view key, std::string_view value);
/// Removes a key and its value from a table, with the line or the comma that it took.
[[nodiscard]] Splice remove_key(std::string_view text, const Node& table, const Entry& entry);
/// Removes a table with a header, and the tables below it.
[[nodiscard]] Splice remove_table(std::string_view text, const Node& table);

}  // namespace forecourse::site
