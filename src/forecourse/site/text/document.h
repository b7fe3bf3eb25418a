#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/site/entered.h"

namespace forecourse::site {

/// What a value of a TOML text is.
enum class NodeKind { text, number, boolean, date, time, array, table };

struct Entry;

/// One value of a TOML text with its place, in bytes. A table's place is its header, its braces, or, for a table
/// that only dotted keys make, its first key. The root's place is empty.
struct Node {
  NodeKind kind = NodeKind::table;
  SourceSpan where{};
  std::string text;            ///< of a text, unescaped
  double number = 0.0;         ///< of a number
  bool truth = false;          ///< of a boolean
  Date date{};                 ///< of a date
  std::vector<Entry> entries;  ///< of a table, in the order of the text
  std::vector<Node> items;     ///< of an array
};

/// A key of a table and its value.
struct Entry {
  std::string key;
  SourceSpan key_where{};
  Node node;

  /// True for tables and lists of tables that are opened by a header: `[key]` or `[[key]]`.
  [[nodiscard]] bool has_header() const {
    return node.where.begin < key_where.begin && key_where.begin < node.where.end;
  }
  /// True for tables that only dotted keys make: `shape.length = ...`.
  [[nodiscard]] bool is_dotted() const { return node.kind == NodeKind::table && node.where == key_where; }
};

/// What could be read of a text.
struct Document {
  Node root;
  bool complete = true;               ///< nothing was passed over
  bool ids_lost = false;              ///< what was passed over may have been an id or a whole table
  std::vector<SourceSpan> half_read;  ///< headers of the tables of which a value was passed over
};

/// The entry with this key; null when there is none.
[[nodiscard]] const Entry* find_entry(const Node& table, std::string_view key);

/// Reads a text as TOML, whatever its state: every stretch that is not TOML is told and passed over, up to ten.
/// A text that cannot be read at all (not UTF-8, NUL bytes, JSON, over 2 MiB) gives an empty table.
[[nodiscard]] Parsed<Document> read_document(std::string_view text, std::uint32_t text_index);

/// The bytes of `text` under a span.
[[nodiscard]] std::string_view text_of(std::string_view text, SourceSpan where);

}  // namespace forecourse::site
