#include "forecourse/store/records/seen_rows.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>

namespace forecourse::store {
namespace {

constexpr char between = '\x1f';  // stands in no name of a key column

/// One value typed in two units: equal up to the rounding of the conversion.
bool same_number(double a, double b) { return std::abs(a - b) <= 1e-9 * std::max(std::abs(a), std::abs(b)); }

bool is_number(const Column& column) { return column.type == ColumnType::quantity; }

}  // namespace

std::string key_of(const Kind& kind, const Row& row) {
  std::string key;
  for (std::size_t i = 0; i < kind.columns.size(); ++i) {
    if (kind.columns[i].key) key.append(row.values[i].text) += between;
  }
  return key;
}

bool same_values(const Kind& kind, const Row& a, const Row& b) { return differences(kind, a, b).empty(); }

std::string differences(const Kind& kind, const Row& here, const Row& there) {
  std::string out;
  for (std::size_t i = 0; i < kind.columns.size(); ++i) {
    const Value& a = here.values[i];
    const Value& b = there.values[i];
    const bool numbers = is_number(kind.columns[i]) && a.given() && b.given();
    if (numbers ? same_number(a.number, b.number) : a.text == b.text) continue;
    const auto shown = [](const Value& value) { return value.given() ? "'" + value.text + "'" : std::string("empty"); };
    out +=
        fmt::format("{}{} is {} here and {} there", out.empty() ? "" : ", ", kind.columns[i].name, shown(a), shown(b));
  }
  return out;
}

SeenRows::Told SeenRows::telling(const Row& row) const {
  Told told{row.where, {}, 0};
  std::string texts;
  for (std::size_t i = 0; i < row.values.size(); ++i) {
    const Value& value = row.values[i];
    const bool number = is_number(kind_.columns[i]) && value.given();
    if (number) told.numbers.push_back(value.number);
    if (!number && !kind_.columns[i].key) texts += value.text;
    texts += number ? '+' : between;
  }
  told.texts = std::hash<std::string>{}(texts);
  return told;
}

SeenRows::Seen SeenRows::add(const Row& row, SourceSpan& first) {
  Told told = telling(row);
  const auto [place, is_new] = rows_.try_emplace(key_of(kind_, row), told);
  if (is_new) return Seen::first;
  first = place->second.where;
  const bool same =
      told.texts == place->second.texts && std::ranges::equal(told.numbers, place->second.numbers, same_number);
  return same ? Seen::same : Seen::other;
}

}  // namespace forecourse::store
