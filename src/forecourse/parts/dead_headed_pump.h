#pragma once

namespace forecourse::parts {

/// What warms in a pump that runs and delivers nothing.
struct HeldLiquid {
  double mass = 0.0;           ///< [kg] that stays in the pump
  double specific_heat = 0.0;  ///< [J/(kg K)]
};

/// Rate at which the liquid in a pump that delivers nothing warms.
///
/// All of the power goes to the liquid, none to the casing or the tank: an upper bound.
/// \param power  that goes to the liquid [W], >= 0
/// \param liquid mass [kg] and specific heat [J/(kg K)]
/// \return rate [K/s].
/// \pre mass and specific heat above 0
/// \error the bound is not met; how far below it a pump stays is not known here.
/// \source [pump_temperature_rise, example 2] heat balance of pump and liquid
[[nodiscard]] constexpr double warming_rate(double power, const HeldLiquid& liquid) {
  return power / (liquid.mass * liquid.specific_heat);
}

/// Least time in which the liquid in a pump that delivers nothing warms by a rise.
///
/// \param power  that goes to the liquid [W], > 0
/// \param liquid mass [kg] and specific heat [J/(kg K)]
/// \param rise   of temperature [K], >= 0
/// \return time [s].
/// \error a lower bound, as `warming_rate` is an upper one.
/// \source [pump_temperature_rise, example 2] heat balance of pump and liquid
[[nodiscard]] constexpr double time_to_warm(double power, const HeldLiquid& liquid, double rise) {
  return rise / warming_rate(power, liquid);
}

}  // namespace forecourse::parts
