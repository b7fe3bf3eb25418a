#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "forecourse/base/quantity_kind.h"
#include "forecourse/site/fields/rules.h"

namespace forecourse::store {

using site::Need;
using site::Range;

/// What stands in the cells of a column.
enum class ColumnType {
  day,       ///< "2026-11-02"
  time,      ///< "06:30", local
  name,      ///< any text
  word,      ///< one of a list
  fact,      ///< "yes" or "no"
  quantity,  ///< "71 1/4 in"
};

/// Which ids of the site a name must be one of.
enum class NameOf { anything, tank, hose, product };

/// One column of a kind of records.
struct Column {
  std::string_view name;
  std::string_view doc;
  ColumnType type = ColumnType::name;
  Need need = Need::optional;
  bool key = false;                        ///< part of what tells one record from another
  NameOf name_of = NameOf::anything;       ///< of a name
  std::vector<std::string_view> words{};   ///< of a word
  const QuantityKind* quantity = nullptr;  ///< of a quantity
  Range range = site::any_value;
  std::string_view outside{};  ///< what to do with a value out of range: "fuel that went back is a row of returns.csv"
};

/// A kind of records: one CSV file, one table of the store.
struct Kind {
  std::string_view name;  ///< "dips": of the file dips.csv and of the table
  std::string_view noun;  ///< "dip"
  std::string_view doc;
  std::vector<Column> columns;
  std::vector<std::vector<std::size_t>> one_of;  ///< sets of columns of which one at least must be there

  /// The place of a column in the list; empty when there is none of this name.
  [[nodiscard]] std::optional<std::size_t> find(std::string_view column) const;
};

/// Every kind there is, in the order of `Records`.
[[nodiscard]] const std::vector<Kind>& kinds();

/// The kind of this name; null when there is none.
[[nodiscard]] const Kind* find_kind(std::string_view name);

/// The names of all kinds, and of all columns of one.
[[nodiscard]] std::vector<std::string_view> kind_names();
[[nodiscard]] std::vector<std::string_view> column_names(const Kind& kind);

}  // namespace forecourse::store
