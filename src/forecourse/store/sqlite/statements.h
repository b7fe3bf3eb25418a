#pragma once

#include <string>

#include "forecourse/store/records/column.h"

namespace forecourse::store {

/// The columns of a kind's table that hold its values, in order, quoted: each as typed, a quantity in SI behind it.
[[nodiscard]] std::string value_columns(const Kind& kind);

/// Adds a row unless its key is there: import, line, then the values.
[[nodiscard]] std::string insert_statement(const Kind& kind);
/// The row of a key with source and line before its values.
[[nodiscard]] std::string by_key_statement(const Kind& kind);
/// All rows in the order of time.
[[nodiscard]] std::string all_statement(const Kind& kind);

}  // namespace forecourse::store
