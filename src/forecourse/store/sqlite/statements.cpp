#include "forecourse/store/sqlite/statements.h"

#include <fmt/format.h>

#include <algorithm>

namespace forecourse::store {

std::string value_columns(const Kind& kind) {
  std::string out;
  for (const Column& column : kind.columns) {
    out += fmt::format("{}\"{}\"", out.empty() ? "" : ", ", column.name);
    if (column.type == ColumnType::quantity) out += fmt::format(", \"{}_si\"", column.name);
  }
  return out;
}

std::string insert_statement(const Kind& kind) {
  const std::string columns = value_columns(kind);
  std::string marks = "?, ?";
  for (auto n = std::ranges::count(columns, ',') + 1; n > 0; --n) marks += ", ?";
  return fmt::format("INSERT INTO {} (import, line, {}) VALUES ({}) ON CONFLICT DO NOTHING", kind.name, columns, marks);
}

std::string by_key_statement(const Kind& kind) {
  std::string key;
  for (const Column& column : kind.columns) {
    if (column.key) key += fmt::format("{}\"{}\" = ?", key.empty() ? "" : " AND ", column.name);
  }
  return fmt::format("SELECT source, line, {} FROM {} JOIN imports ON imports.id = import WHERE {}",
                     value_columns(kind), kind.name, key);
}

std::string all_statement(const Kind& kind) {
  return fmt::format("SELECT {} FROM {} ORDER BY day, time, id", value_columns(kind), kind.name);
}

}  // namespace forecourse::store
