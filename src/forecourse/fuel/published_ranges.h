#pragma once

#include "forecourse/base/api_units.h"

namespace forecourse::fuel {

// Ranges and handbook values of fuel properties, as published. Defaults by kind come from the middle of them and
// are marked illustrative.

/// A published range; low equals high where one value is printed.
struct PublishedRange {
  double low;
  double high;

  [[nodiscard]] constexpr double middle() const { return 0.5 * (low + high); }
};

// SOURCE: [afdc_fuel_properties, table] values at 60 degF, Reid vapor pressure at 100 degF
inline constexpr PublishedRange gasoline_relative_density{0.72, 0.78};  ///< 60/60 degF [1]
inline constexpr PublishedRange ethanol_relative_density{0.796, 0.796};
inline constexpr PublishedRange diesel_relative_density{0.81, 0.89};
inline constexpr PublishedRange gasoline_viscosity{pascal_second_from_centipoise(0.37),
                                                   pascal_second_from_centipoise(0.44)};  ///< [Pa s]
inline constexpr PublishedRange ethanol_viscosity{pascal_second_from_centipoise(1.19),
                                                  pascal_second_from_centipoise(1.19)};
inline constexpr PublishedRange diesel_viscosity{pascal_second_from_centipoise(2.6),
                                                 pascal_second_from_centipoise(4.1)};
inline constexpr PublishedRange gasoline_reid_vapor_pressure{pascal_from_psi(8.0), pascal_from_psi(15.0)};  ///< [Pa]
inline constexpr PublishedRange ethanol_reid_vapor_pressure{pascal_from_psi(2.3), pascal_from_psi(2.3)};
inline constexpr PublishedRange diesel_reid_vapor_pressure{pascal_from_psi(0.2), pascal_from_psi(0.2)};

// SOURCE: [en_14214, limits as printed in a national fuel regulation annex]
inline constexpr PublishedRange biodiesel_density_15{860.0, 900.0};  ///< at 15 degC [kg/m3]
inline constexpr PublishedRange biodiesel_viscosity_40{
    square_meter_per_second_from_centistoke(3.5), square_meter_per_second_from_centistoke(5.0)};  ///< at 40 degC [m2/s]

// SOURCE: [engineeringtoolbox_585, table] handbook bulk moduli; the table does not say isothermal or isentropic.
// Compared with the computed ones in docs/theory/bulk-modulus.md; never a default.
inline constexpr PublishedRange handbook_gasoline_bulk_modulus{1.3e9, 1.3e9};  ///< [Pa]
inline constexpr PublishedRange handbook_petrol_bulk_modulus{1.07e9, 1.49e9};
inline constexpr PublishedRange handbook_kerosene_bulk_modulus{1.3e9, 1.3e9};
inline constexpr PublishedRange handbook_ethanol_bulk_modulus{1.06e9, 1.06e9};
inline constexpr PublishedRange handbook_water_bulk_modulus{2.15e9, 2.15e9};

// SOURCE: [techzle_expansion, page] rule of thumb, 20 to 25 % low for motor gasoline; never a default.
inline constexpr double rule_of_thumb_gasoline_expansion = 0.00095;  ///< [1/K]

}  // namespace forecourse::fuel
