#pragma once

#include <cstddef>
#include <string_view>
#include <variant>

namespace forecourse {

/// A number without its sign, as read at a place of a text.
struct NumberText {
  double value = 0.0;
  bool is_whole = false;  ///< written without a fraction, a point or an exponent
  std::size_t end = 0;    ///< the byte behind it
};

/// Why a text is no number.
struct NumberFault {
  enum class Why {
    missing,        ///< no digit here
    not_finite,     ///< "inf", "nan", or beyond the range of a double
    comma,          ///< "2,5" or "8,000": says nothing certain
    blank_inside,   ///< "8 000"
    two_points,     ///< "1.2.3"
    zero_below,     ///< "1/0"
    mixed_decimal,  ///< "2.5 1/2"
  };
  Why why = Why::missing;
  std::size_t begin = 0;  ///< bytes [begin, end) at fault
  std::size_t end = 0;
};

/// Reads the number that starts at byte `begin` of a text: a decimal ("2.5", ".5", "1e-3"), a fraction ("1/4") or
/// a mixed number ("7 1/2", "7-1/2"). Takes no sign. Does not depend on the locale.
[[nodiscard]] std::variant<NumberText, NumberFault> read_number(std::string_view text, std::size_t begin);

}  // namespace forecourse
