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

/// Follows a path from the root of a document.
[[nodiscard]] std::variant<PathTarget, Diagnostic> follow_path(const Node& root, std::string_view path);

}  // namespace forecourse::site
