#pragma once

#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"

namespace forecourse::store {

/// One value of a row: as it was written and as a number.
struct Value {
  std::string text;     ///< with its unit, as typed; a day as "2026-11-02", a time as "06:30", a fact as "yes" or "no"
  double number = 0.0;  ///< a quantity in SI; a time in seconds since midnight; the place of a word in its list; yes: 1
  SourceSpan where{};

  [[nodiscard]] bool given() const { return !text.empty(); }
};

/// One record of a kind: a value for each of its columns.
struct Row {
  std::vector<Value> values;
  SourceSpan where{};
};

}  // namespace forecourse::store
