#pragma once

#include <string>
#include <unordered_map>
#include <vector>

#include "forecourse/store/records/column.h"
#include "forecourse/store/records/row.h"

namespace forecourse::store {

/// What tells a record from the others of its kind: its key columns.
[[nodiscard]] std::string key_of(const Kind& kind, const Row& row);

/// True if two rows of one key say the same, in whatever units.
[[nodiscard]] bool same_values(const Kind& kind, const Row& a, const Row& b);

/// The columns in which two rows differ, with both values: "depth is 71 in here and 70 in there".
[[nodiscard]] std::string differences(const Kind& kind, const Row& here, const Row& there);

/// The rows of one kind that were read, to find those that come twice.
class SeenRows {
 public:
  explicit SeenRows(const Kind& kind) : kind_(kind) {}

  enum class Seen { first, same, other };
  /// Adds a row; if its key was there before, says whether the values are the same, and where the first one stands.
  [[nodiscard]] Seen add(const Row& row, SourceSpan& first);

 private:
  struct Told {
    SourceSpan where{};
    std::vector<double> numbers;
    std::size_t texts = 0;  ///< hash of the values that are no numbers
  };
  [[nodiscard]] Told telling(const Row& row) const;

  const Kind& kind_;
  std::unordered_map<std::string, Told> rows_;
};

}  // namespace forecourse::store
