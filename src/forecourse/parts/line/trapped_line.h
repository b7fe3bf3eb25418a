#pragma once

namespace forecourse::parts {

/// How a thin-walled line and the fuel in it yield, per volume: 1/K + D/(E e).
/// \param bulk_modulus isothermal, of the fuel [Pa], > 0
/// \param bore [m]; \param wall [m], > 0; \param modulus of elasticity of the wall [Pa], > 0
/// \return [1/Pa]
/// \error a pipe anchored along its length yields less by the square of Poisson's ratio
/// \source [trapped_liquid_faq, dP/dT of a filled pipe]
[[nodiscard]] double thin_line_yield(double bulk_modulus, double bore, double wall, double modulus);

/// The same with closed ends that pull it along: 1/K + D (2.5 - 2 nu) / (2 E e).
/// \param poisson_ratio of the wall [1]
/// \return [1/Pa]
/// \error as a thin wall
/// \source [api_521, symbols of thermal expansion of trapped liquid; the form from memory, not verified]
[[nodiscard]] double closed_line_yield(double bulk_modulus, double bore, double wall, double modulus,
                                       double poisson_ratio);

/// Pressure that a trapped line gains with each degree.
/// \param fuel_expansion of the fuel's volume [1/K]
/// \param line_expansion of the line's volume, three times that of its length [1/K]; 0: left out
/// \param yield of line and fuel per volume [1/Pa], > 0
/// \return [Pa/K]
/// \error no vapor in the line; a pocket of it takes up most of the change
/// \source [trapped_liquid_faq, dP/dT of a filled pipe]
[[nodiscard]] double pressure_per_degree(double fuel_expansion, double line_expansion, double yield);

/// Air or vapor trapped in a line.
struct Pocket {
  double volume = 0.0;    ///< [m3] at that pressure, >= 0
  double pressure = 0.0;  ///< absolute [Pa] at which it has that volume, > 0
};

/// Volume of a trapped pocket at a pressure.
/// \param pressure absolute [Pa], > 0
/// \return [m3]
/// \error as air that keeps its temperature; vapor of the fuel itself collapses and is not told
/// \source law of nature: p V constant
[[nodiscard]] inline double pocket_volume(const Pocket& pocket, double pressure) {
  return pocket.volume * pocket.pressure / pressure;
}

}  // namespace forecourse::parts
