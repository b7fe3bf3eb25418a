#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>

#include "forecourse/base/unit_table.h"

namespace forecourse {

/// A unit put together from symbols, as read at a place of a text.
struct UnitExpression {
  double factor = 1.0;  ///< SI value of one of it
  UnitDimension dimension;
  const Unit* single = nullptr;  ///< the unit, when it is one symbol to the power of one
  std::size_t begin = 0;         ///< bytes [begin, end) it takes up in the text
  std::size_t end = 0;
};

/// Why a text is no unit.
struct UnitExpressionFault {
  enum class Why { missing, unknown_symbol, stands_alone, bad_power, unfinished };
  Why why = Why::missing;
  std::size_t begin = 0;  ///< bytes [begin, end) at fault
  std::size_t end = 0;
};

/// Reads the unit that starts at byte `begin` of a text, up to the text's end or to the next number.
///
/// Symbols combine with '.', '*', '·', '-' or a blank; with '/' and with powers ("^2", "²", or a digit behind the
/// symbol). Everything after the first '/' stands below the line, with or without parentheses.
/// "1" may stand above it ("1/degF"). A period that abbreviates ("ft.") is passed over.
[[nodiscard]] std::variant<UnitExpression, UnitExpressionFault> read_unit(std::string_view text, std::size_t begin);

/// The byte behind the blanks (also no-break ones) that start at `begin`.
[[nodiscard]] std::size_t skip_blanks(std::string_view text, std::size_t begin);

}  // namespace forecourse
