#include "forecourse/base/decimal.h"

#include <fast_float/fast_float.h>

#include <cmath>
#include <system_error>

namespace forecourse {
namespace {

/// Whether a decimal has a figure that is not zero before its exponent.
bool has_figure(std::string_view decimal) {
  return decimal.substr(0, decimal.find_first_of("eE")).find_first_of("123456789") != std::string_view::npos;
}

}  // namespace

std::optional<LeadingDecimal> leading_decimal(std::string_view text) {
  double value = 0.0;
  const auto [stop, fault] = fast_float::from_chars(text.data(), text.data() + text.size(), value);
  if (fault != std::errc{}) return std::nullopt;
  const auto end = static_cast<std::size_t>(stop - text.data());
  const bool rounded_away = (value == 0.0 || std::isinf(value)) && has_figure(text.substr(0, end));
  return LeadingDecimal{value, !rounded_away, end};
}

std::optional<double> read_decimal(std::string_view text) {
  const std::optional<LeadingDecimal> read = leading_decimal(text);
  return read && read->in_range && read->end == text.size() ? std::optional(read->value) : std::nullopt;
}

}  // namespace forecourse
