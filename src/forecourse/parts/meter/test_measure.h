#pragma once

namespace forecourse::parts {

/// Expansion of the volume of a test measure [1/K]: mild steel, stainless steel.
/// \source [nist_prover_article, cubical coefficients per degF]
[[nodiscard]] double mild_steel_measure_expansion();
[[nodiscard]] double stainless_measure_expansion();

/// Volume that a test measure truly holds when it reads a volume at a temperature.
/// \param read [m3] on its scale, which holds at the reference temperature
/// \param expansion of its volume [1/K]; 0: left out
/// \param temperature, reference [K]
/// \return [m3] at that temperature
/// \error 1e-8 of the volume over 50 K, by the square of what is left out
/// \source [nist_prover_article, volume of a prover off its reference temperature]
[[nodiscard]] inline double true_volume(double read, double expansion, double temperature, double reference) {
  return read * (1.0 + expansion * (temperature - reference));
}

/// Error of a meter: what it tells above what it gave.
/// \param told [m3]; \param given [m3], > 0; both at one temperature
/// \return [1]; positive: it tells more than it gives
/// \error exact
/// \source closed form
[[nodiscard]] inline double meter_error(double told, double given) { return told / given - 1.0; }

}  // namespace forecourse::parts
