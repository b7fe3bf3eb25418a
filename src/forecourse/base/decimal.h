#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace forecourse {

/// A decimal as it starts a text.
struct LeadingDecimal {
  double value = 0.0;
  bool in_range = true;  ///< false: beyond what a double can hold, or nearer to zero
  std::size_t end = 0;   ///< the byte behind it
};

/// Reads the decimal that a text starts with: "2.5", ".5", "-1e-3", "inf", "nan"; no plus sign, no blank before it. The
/// nearest double, as `std::from_chars` gives it, which not every compiler's library has for doubles.
///
/// \return empty: the text starts with none
[[nodiscard]] std::optional<LeadingDecimal> leading_decimal(std::string_view text);

/// Reads a text that is a decimal and nothing else.
///
/// \return empty: it is not, or a double cannot hold it
[[nodiscard]] std::optional<double> read_decimal(std::string_view text);

}  // namespace forecourse
