#pragma once

namespace forecourse::fuel {

/// Gives the pressure of the standard atmosphere at an altitude, which a liquid's vapor pressure is held against.
/// Theory: docs/theory/spans.md.
///
/// \param altitude geopotential, above mean sea level [m], up to 11 000; geometric height is 1.4 m more at 3000 m
/// \return pressure of the air, absolute [Pa]; NaN above 11 000 m.
/// \source [us_standard_atmosphere_1976, equation 33a with table 4] lapse of 6.5 K per km from 288.15 K and 101 325 Pa.
/// \error the weather moves the pressure at a place by about 3 % either way (from memory, not verified).
/// \fails NaN for an altitude above the layer.
[[nodiscard]] double standard_atmosphere_at(double altitude);

}  // namespace forecourse::fuel
