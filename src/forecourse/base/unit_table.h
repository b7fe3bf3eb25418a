#pragma once

#include <span>
#include <string_view>

#include "forecourse/base/quantity_kind.h"

namespace forecourse {

/// A dimension that also tells a plain number from an angle, which the SI does not.
struct UnitDimension {
  Dimension powers;
  int angle = 0;

  friend constexpr bool operator==(const UnitDimension&, const UnitDimension&) = default;
};

/// A unit that has a symbol of its own. An SI value is `zero + factor * number`, and `zero` counts only for
/// a temperature read off a thermometer.
struct Unit {
  std::string_view symbol;
  double factor = 1.0;
  UnitDimension dimension;
  Datum datum = Datum::none;                      ///< gauge and absolute for "psig" and "psia"; none: fits every datum
  double zero = 0.0;                              ///< [K]
  bool is_gravity = false;                        ///< degrees API, which no factor turns into a density
  [[nodiscard]] bool stands_alone() const;        ///< has no meaning inside a combined unit: "psig", "degAPI"
  [[nodiscard]] bool takes_smaller_unit() const;  ///< may be followed by another of its dimension: "12 ft 6 in"
};

/// Every unit known, in the order in which they are offered to a user who misspelt one.
///
/// US customary units have their exact definitions by the international inch, gallon and pound.
/// \source [nist_handbook_44, appendix C, section 4] lengths, volumes, masses
/// \source [nist_sp811, appendix B.8] forces, pressures, powers; "inH2O" and "inHg" are the conventional ones,
/// with water of 1000 kg/m3 and mercury of 13595.1 kg/m3
[[nodiscard]] std::span<const Unit> known_units();

/// The unit with this symbol, null if there is none. Upper and lower case differ: "mPa" is not "MPa".
[[nodiscard]] const Unit* find_unit(std::string_view symbol);

/// How people also write a unit, and how it is written here: {"feet", "ft"}.
struct UnitSpelling {
  std::string_view seen;
  std::string_view meant;
};
[[nodiscard]] std::span<const UnitSpelling> other_spellings();

/// What a quantity of this dimension is called, with its article; empty if it has no name here.
[[nodiscard]] std::string_view noun_of(const UnitDimension& dimension);

/// Density at 60 degF of a liquid of this gravity in degrees API [kg/m3].
/// \source [api_11_1_2004, section 11.1.6] degrees API to density, with water of 999.016 kg/m3
[[nodiscard]] double density_from_degrees_api(double degrees_api);
/// The inverse of `density_from_degrees_api`.
/// \source [api_11_1_2004, section 11.1.6]
[[nodiscard]] double degrees_api_from_density(double density);

}  // namespace forecourse
