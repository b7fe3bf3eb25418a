#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <variant>

#include "forecourse/base/quantity.h"

namespace forecourse {

/// Why a text is not the quantity that was asked for.
struct UnitTextError {
  std::string message;    ///< continues a sentence that starts with the key: "is a length, but 'psi' is a pressure"
  std::string hint;       ///< what to write instead; may be empty
  std::size_t begin = 0;  ///< bytes [begin, end) of the text that are at fault, for the caret row
  std::size_t end = 0;
};

/// Reads a quantity that is written as a number and its unit, and gives its SI value.
///
/// The number may be a decimal with a point and an exponent ("2.5e-3"), a fraction or a mixed number
/// ("1/4 in", "7 1/2 in", "7-1/2 in"). Parts of one dimension may follow each other from the larger to
/// the smaller unit ("12 ft 6 in", "12' 6\"", "12'-6\"", "1 h 30 min"); a leading minus goes for all parts.
/// Units combine with '.', '*' or '·', with '/' and powers ("psi/gpm^2", "m3/h", "psi/gpm²"); everything
/// after the first '/' stands below the line, so "kJ/kg.K" is per kilogram and kelvin.
/// A pressure without a datum ("psi", "kPa") fits whatever pressure is asked for; "psig" and "psia" do not mix.
/// Does not depend on the locale.
///
/// \param text what the user wrote, without quotes; blanks around it do not count
/// \param kind what is asked for, e.g. `Length::kind()`
/// \return the value in the SI unit of `kind`, or why there is none
[[nodiscard]] std::variant<double, UnitTextError> read_quantity(std::string_view text, const QuantityKind& kind);

/// Reads a quantity of a dimension that has no kind of its own, e.g. the coefficient "-0.0020 psi/gpm^2" of a
/// pump curve: `read_dimensioned(text, pressure + (-n) * flow, "a rise per flow^2", "\"-0.0020 psi/gpm^2\"")`.
///
/// \param noun     with its article, for messages
/// \param examples how to write one, in quotes, for hints
[[nodiscard]] std::variant<double, UnitTextError> read_dimensioned(std::string_view text, Dimension dimension,
                                                                   const char* noun = "a coefficient",
                                                                   const char* examples = "");

/// Reads a quantity as its strong type: `read_as<Length>("2.00 in")`.
template <class Q>
[[nodiscard]] std::variant<Q, UnitTextError> read_as(std::string_view text) {
  auto read = read_quantity(text, Q::kind());
  if (auto* error = std::get_if<UnitTextError>(&read)) return std::move(*error);
  return Q::from_si(std::get<double>(read));
}

/// An SI value in the unit with this name: `from_si(0.0254, "in")` is 1.
///
/// \param unit  written as in a site file; one that is not known is our mistake: std::logic_error
/// \param datum must say `thermometer` or `difference` when the unit is one of temperature
[[nodiscard]] double from_si(double si, std::string_view unit, Datum datum = Datum::none);

/// A quantity in the unit with this name: `in_unit(ground_temperature, "degF")`.
template <class Kind>
[[nodiscard]] double in_unit(Quantity<Kind> quantity, std::string_view unit) {
  return from_si(quantity.si(), unit, Kind::kind.datum);
}

/// The SI value of a number of this unit, for writers and tests: `to_si(1.0, "in")` is 0.0254. As `from_si` otherwise.
[[nodiscard]] double to_si(double value, std::string_view unit, Datum datum = Datum::none);

/// Number and unit as a site file has them, to six significant digits: "2.5 in". As `from_si` otherwise.
[[nodiscard]] std::string show_quantity(double si, std::string_view unit, Datum datum = Datum::none);

}  // namespace forecourse
