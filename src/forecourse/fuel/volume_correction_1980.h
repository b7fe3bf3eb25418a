#pragma once

namespace forecourse::fuel {

/// Corrects volume to 15 degC by the equations of 1980 (Table 54B), still written into older meters and gauges.
///
/// \param density_15 at 15 degC [kg/m3]
/// \param temperature [K]
/// \return volume at 15 degC over volume at the temperature [1], not rounded.
/// \pre refined products; a later national metric form has other constants and breaks: not this one.
/// \source [api_11_1_1980, Table 54B] constants as several public programs carry them.
/// \error rounding only; from -10 to 40 degC within 1.1e-5 of the 2004 procedure, 1.2e-4 between 770 and 787.5 kg/m3.
[[nodiscard]] double correction_54b_1980(double density_15, double temperature);

/// Corrects volume to 60 degF by the equations of 1980 (Table 6B).
///
/// \param api_gravity at 60 degF [degAPI]
/// \param temperature [K]
/// \return volume at 60 degF over volume at the temperature [1], not rounded.
/// \pre refined products; water at 60 degF was then 999.012 kg/m3.
/// \source [api_11_1_1980, Table 6B] constants as those of 2004.
/// \error rounding only.
[[nodiscard]] double correction_6b_1980(double api_gravity, double temperature);

}  // namespace forecourse::fuel
