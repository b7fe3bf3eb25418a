#pragma once

namespace forecourse {

/// Standard acceleration of gravity [m/s2], exact by convention.
/// \source [nist_sp811, appendix B.8]
inline constexpr double standard_gravity = 9.80665;

/// Standard atmosphere [Pa], exact by convention.
/// \source [nist_sp811, appendix B.8]
inline constexpr double standard_atmosphere = 101325.0;

/// Density of water at 60 degF that relates degrees API and relative density to density [kg/m3].
/// \source [api_11_1_2004, equation of section 11.1.6 for gravity in degrees API]
inline constexpr double water_density_at_60_fahrenheit = 999.016;

}  // namespace forecourse
