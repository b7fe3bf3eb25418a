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

}  // namespace

std::string shown(std::optional<double> value, Quantity quantity, site::Display display, Glyphs glyphs) {
  const double amount = value.value_or(std::numeric_limits<double>::quiet_NaN());
  if (const auto measure = measure_of(quantity)) return with_unit(*measure, display, amount, glyphs);
  const char* blank = glyphs == Glyphs::unicode ? "\u00A0" : " ";
  switch (quantity) {
    case Quantity::time:
      return time_span(amount, glyphs);
    case Quantity::share:
      return number(percent * amount, 1, glyphs) + blank + "%";
    case Quantity::money:
      return number(amount, 2, glyphs);
    default:
      return number(amount, 0, glyphs);
  }
}

std::string shown(const lesson::Ends& range, Quantity quantity, site::Display display, Glyphs glyphs) {
  const std::string low = shown(range.low, quantity, display, glyphs);
  const std::string high = shown(range.high, quantity, display, glyphs);
  if (low == high) return low;
  const auto measure = measure_of(quantity);
  return (measure ? number(*measure, display, range.low, glyphs) : low) + " to " + high;
}

std::string shown(const lesson::Number& number, site::Display display, Glyphs glyphs) {
  if (number.range) return shown(*number.range, number.quantity, display, glyphs);
  return number.value ? shown(number.value, number.quantity, display, glyphs) : std::string();
}

}  // namespace forecourse::report
