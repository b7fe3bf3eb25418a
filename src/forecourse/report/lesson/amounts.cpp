#include "forecourse/report/lesson/amounts.h"

#include <array>
#include <cmath>
#include <limits>

namespace forecourse::report {
namespace {

using lesson::Quantity;

/// How a quantity is shown; empty: not by a measure of its own.
std::optional<Measure> measure_of(Quantity quantity) {
  static constexpr std::array<std::optional<Measure>, 18> measures{
      {Measure::flow, Measure::leak, Measure::volume, Measure::pressure, Measure::ullage_pressure, Measure::length,
       Measure::bore, Measure::velocity, std::nullopt, Measure::temperature, Measure::temperature_difference,
       Measure::force, Measure::angle, Measure::heat, Measure::mass, std::nullopt, std::nullopt, std::nullopt}};
  return measures.at(static_cast<std::size_t>(quantity));
}

constexpr double percent = 100.0;

/// Whether a number tells a value well enough with so many decimals.
bool tells(double value, int decimals, double share) {
  const double step = std::pow(10.0, decimals);
  return std::abs(std::round(value * step) / step - value) <= share * std::abs(value);
}

/// Decimals of a measure, fewer where a number of three digits and more before the point needs none: "118 in",
/// "5 744 gal", "406.4 gpm".
int decimals_of(Measure measure, site::Display display, double amount) {
  constexpr double well = 0.0005;
  const double value = shown_value(measure, display, amount);
  const int most = decimals(measure, display);
  if (!std::isfinite(value) || std::abs(value) < 100.0) return most;
  int out = 0;
  while (out < most && !tells(value, out, well)) ++out;
  return out;
}

/// One decimal of a percent, or two where a small share needs them: "12.5 %", "0.48 %".
int decimals_of_share(double value) {
  constexpr double well = 0.005;
  return tells(value, 1, well) ? 1 : 2;
}

std::string with_few_digits(Measure measure, site::Display display, double amount, Glyphs glyphs) {
  const int few = decimals_of(measure, display, amount);
  if (few == decimals(measure, display)) return number(measure, display, amount, glyphs);
  return number(shown_value(measure, display, amount), few, glyphs);
}

}  // namespace

std::string shown(std::optional<double> value, Quantity quantity, site::Display display, Glyphs glyphs) {
  const double amount = value.value_or(std::numeric_limits<double>::quiet_NaN());
  const char* blank = glyphs == Glyphs::unicode ? "\u00A0" : " ";
  if (const auto measure = measure_of(quantity)) {
    return with_few_digits(*measure, display, amount, glyphs) + blank + unit_label(*measure, display, glyphs);
  }
  switch (quantity) {
    case Quantity::time:
      return time_span(amount, glyphs);
    case Quantity::share:
      return number(percent * amount, decimals_of_share(percent * amount), glyphs) + blank + "%";
    case Quantity::money:
      return number(amount, 2, glyphs);
    default:
      return number(amount, 0, glyphs);
  }
}

std::string shown(const lesson::Ends& range, Quantity quantity, site::Display display, Glyphs glyphs) {
  std::string low = shown(range.low, quantity, display, glyphs);
  const std::string high = shown(range.high, quantity, display, glyphs);
  if (low == high) return low;
  if (const auto measure = measure_of(quantity)) {
    return with_few_digits(*measure, display, range.low, glyphs) + " to " + high;
  }
  const std::string blank = glyphs == Glyphs::unicode ? "\u00A0" : " ";
  const std::size_t unit = low.rfind(blank);
  const bool same = unit != std::string::npos && high.rfind(blank) != std::string::npos &&
                    low.substr(unit) == high.substr(high.rfind(blank));
  return (same ? low.substr(0, unit) : low) + " to " + high;
}

std::string shown(const lesson::Number& number, site::Display display, Glyphs glyphs) {
  if (number.range) return shown(*number.range, number.quantity, display, glyphs);
  return number.value ? shown(number.value, number.quantity, display, glyphs) : std::string();
}

}  // namespace forecourse::report
