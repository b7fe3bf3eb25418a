#pragma once

#include <optional>

namespace forecourse::network {

/// A stretch of round conduit as it yields to pressure.
struct Conduit {
  double length = 0.0;               ///< [m]
  double bore = 0.0;                 ///< [m]
  std::optional<double> wall;        ///< [m]
  std::optional<double> modulus;     ///< [Pa] of elasticity of the wall
  std::optional<double> wave_speed;  ///< [m/s], entered instead of the three properties
};

/// Volume of a conduit [m3].
[[nodiscard]] double volume_of(const Conduit& conduit);

/// Volume that a conduit takes up per pressure [m3/Pa]: V (1/K + D / (E e)), or V / (density a^2) by a wave speed.
///
/// \param bulk_modulus isothermal, of the fuel [Pa]; empty: not known
/// \return empty where neither a wave speed nor bulk modulus, modulus and wall are known
/// \error a thin wall free to lengthen at joints; anchored along its length a pipe yields less by the square of
///        Poisson's ratio. See docs/theory/line-at-rest.md.
/// \source [surge_analysis, wave speed in a steel pipe] Korteweg's relation, here with c = 1
[[nodiscard]] std::optional<double> compliance_of(const Conduit& conduit, double density,
                                                  std::optional<double> bulk_modulus);

}  // namespace forecourse::network
