#pragma once

#include <string>
#include <string_view>
#include <variant>

#include "forecourse/base/diagnostic.h"
#include "forecourse/site/text/document.h"

namespace forecourse::site {

/// Where a path leads in a document: to an entry of a table, to an item of a list of tables, or to a key that is
/// still to be added.
struct PathTarget {
  const Node* table = nullptr;   ///< the table that holds the entry, or would hold it
  const Entry* entry = nullptr;  ///< null: `missing` is to be added to `table`
  const Node* item = nullptr;    ///< the path ends at this item of the list `entry`
  std::string missing;           ///< key to be added, with dots where tables are missing too
};

/// What a path calls an item of a list of tables: its id, else its product; empty when it has neither.
[[nodiscard]] std::string_view item_name(const Node& item);

/// How many bytes at the beginning of `rest` name this item, by its name or its number from 1; 0 when it is not meant.
[[nodiscard]] std::size_t item_match(const Node& item, std::size_t number, std::string_view rest);

/// True for a list of tables.
[[nodiscard]] bool is_table_list(const Node& node);

/// Follows a path from the root of a document.
[[nodiscard]] std::variant<PathTarget, Diagnostic> follow_path(const Node& root, std::string_view path);

}  // namespace forecourse::site
