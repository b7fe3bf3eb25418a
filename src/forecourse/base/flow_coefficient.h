#pragma once

#include "forecourse/base/api_units.h"

namespace forecourse {

/// Flow coefficients of valves as an area Av [m2]: flow = Av sqrt(pressure loss / density).
///
/// Cv is the flow in US gallons a minute at 1 psi, Kv in m3/h at 1 bar, both of water. The water is taken at
/// 1000 kg/m3 for both; water of 60 degF (999.0) would make Av 0.05 % smaller.
namespace flow_coefficients {
inline constexpr double us_gallon = 231.0 * 0.0254 * 0.0254 * 0.0254;  // [m3], 231 in3
inline constexpr double root_of_water_over_bar = 0.1;                  // sqrt(1000 / 1e5)
inline constexpr double root_of_bar_over_psi = 3.80838204136887001;    // sqrt(1e5 / pascal_per_psi)
static_assert(root_of_bar_over_psi * root_of_bar_over_psi * pascal_per_psi / 1e5 - 1.0 < 1e-15);
static_assert(root_of_bar_over_psi * root_of_bar_over_psi * pascal_per_psi / 1e5 - 1.0 > -1e-15);
inline constexpr double area_per_kv = root_of_water_over_bar / 3600.0;                                   // [m2] per Kv
inline constexpr double area_per_cv = us_gallon / 60.0 * root_of_water_over_bar * root_of_bar_over_psi;  // [m2] per Cv
}  // namespace flow_coefficients

/// Flow area [m2] of a valve with flow coefficient Cv, [US gal/min at 1 psi].
/// \source [isa_75_01, definition of Cv]
constexpr double flow_area_from_cv(double cv) { return cv * flow_coefficients::area_per_cv; }

/// Flow area [m2] of a valve with flow coefficient Kv, [m3/h at 1 bar].
/// \source [isa_75_01, definition of Kv]
constexpr double flow_area_from_kv(double kv) { return kv * flow_coefficients::area_per_kv; }

/// A length in inches, as correlations with the nominal pipe size or bore in inches want it.
///
/// \param length [m]
/// \return the same length [in]
constexpr double in_inches(double length) { return length / 0.0254; }

}  // namespace forecourse
