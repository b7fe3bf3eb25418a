#pragma once

#include <optional>
#include <span>
#include <string_view>

namespace forecourse::parts {

/// How a fuel burns in a deep open pool: see `deep_pool_rate` in pool_fire.h.
struct BurningFuel {
  std::string_view name;
  double rate_of_large_pool = 0.0;  ///< [kg/(m2 s)], what a very wide pool burns of each square meter
  double heat_of_combustion = 0.0;  ///< [J/kg]
  double absorption = 0.0;          ///< [1/m], how soon a wider pool comes near that rate ("k beta")

  friend bool operator==(const BurningFuel&, const BurningFuel&) = default;
};

/// The fuels held, as tabulated.
///
/// \return rows with rate [kg/(m2 s)], heat of combustion [J/kg] and absorption [1/m].
/// \error measured pools lie up to a factor of two off: ethanol 0.030 against 0.015, heptane 0.067 against 0.101.
/// \source [nureg_1805_sheets, table of fuels of the heat release sheets, after the SFPE Handbook]
std::span<const BurningFuel> burning_fuels();

/// A fuel of the table by its name.
///
/// \param name one word, as "gasoline" [no unit]
/// \return the row [SI units], none when the table does not hold the name.
/// \error as `burning_fuels`.
/// \source [nureg_1805_sheets, table of fuels of the heat release sheets, after the SFPE Handbook]
std::optional<BurningFuel> find_burning_fuel(std::string_view name);

/// The row that stands for a product of a site.
///
/// Gasolines with up to 15 % ethanol by volume are taken as gasoline, diesels with biodiesel as diesel; kerosene and
/// neat ethanol have rows of their own. E85, heating oil and what is no fuel have none.
/// \param kind word of the kind of product, as "gasoline-e10" [no unit]
/// \return the row [SI units]; none for any other kind: how it burns is not known here.
/// \error of the stand-in itself unknown; below that of the table.
/// \source common practice, no source
std::optional<BurningFuel> burning_fuel_of_kind(std::string_view kind);

}  // namespace forecourse::parts
