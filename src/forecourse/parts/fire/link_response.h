#pragma once

#include <array>
#include <string_view>

#include "forecourse/parts/fire/hot_gas.h"

namespace forecourse::parts {

// When a link that heat releases lets go: docs/theory/link-response.md. No figure of the link of a valve below a
// dispenser is held; none was found published.

/// How fast a link takes up heat.
struct HeatLink {
  double response_index = 0.0;  ///< [(m s)^0.5], > 0: its time constant times the root of the speed of the gas
  double conduction = 0.0;      ///< [(m/s)^0.5], >= 0: what flows off into the body it is fixed to

  friend bool operator==(const HeatLink&, const HeatLink&) = default;
};

/// Time until a link that starts as cool as the surroundings is as warm as it may be, in steady gas.
///
/// \param link           response index [(m s)^0.5], conduction [(m/s)^0.5]
/// \param gas            rise [K] and speed [m/s], both from then on
/// \param operating_rise from the start to the rated temperature [K]
/// \return time [s]; 0 for a rise of 0 or less, infinite when it never gets so warm.
/// \pre heat comes from the streaming gas alone, the link is warm throughout alike, its body stays cool.
/// \error the index is not the same at low speeds and low gas temperatures; by how much is not known here. Parts that
/// must move, and a melt that must flow, take time besides.
/// \source [nureg_1805_sheets, sprinkler activation sheet] and with conduction [imo_a800, appendix 1, sensitivity]
double operating_time(const HeatLink& link, const HotGas& gas, double operating_rise);

/// How fast the link warms at a moment: what an integrator needs where the gas changes.
///
/// \param link      response index [(m s)^0.5], conduction [(m/s)^0.5]
/// \param gas       rise [K] and speed [m/s] at the moment
/// \param link_rise of the link above the surroundings [K]
/// \return [K/s]
/// \error as `operating_time`.
/// \source [imo_a800, appendix 1, sensitivity]
double heating_rate(const HeatLink& link, const HotGas& gas, double link_rise);

/// Rise of a link after some time in steady gas, from the temperature of the surroundings.
///
/// \param link response index [(m s)^0.5], conduction [(m/s)^0.5]
/// \param gas  rise [K] and speed [m/s]
/// \param time [s], >= 0
/// \return rise [K].
/// \error as `operating_time`.
/// \source closed form of `heating_rate`, common practice, no source
double link_rise_after(const HeatLink& link, const HotGas& gas, double time);

/// Least rise of the gas at which the link lets go at all.
///
/// \param link           conduction [(m/s)^0.5]
/// \param speed          of the gas [m/s]
/// \param operating_rise from the surroundings to the rated temperature [K]
/// \return rise [K]; infinite in gas at rest when heat flows off.
/// \error as `operating_time`.
/// \source [imo_a800, appendix 1, sensitivity]
double least_gas_rise(const HeatLink& link, double speed, double operating_rise);

/// Response index from the time a link took in a test oven.
///
/// \param time           it took [s]
/// \param gas            of the oven, rise above the link's start [K] and speed [m/s]
/// \param operating_rise from the start to the rated temperature [K], below the rise of the gas
/// \param conduction     [(m/s)^0.5]
/// \return index [(m s)^0.5]; NaN where the oven is too cool to let it go.
/// \error that of the test.
/// \source [imo_a800, appendix 1, sensitivity]
double response_index(double time, const HotGas& gas, double operating_rise, double conduction);

/// A link that only radiation warms, in air that cools it: a plain balance of heat on its facing area.
struct RadiatedLink {
  double absorbed_flux = 0.0;  ///< [W/m2], what falls on it times the share it takes up
  double heat_capacity = 0.0;  ///< [J/(m2 K)] of the link for each square meter that faces the fire, > 0
  double cooling = 0.0;        ///< [W/(m2 K)] to the air and the body, of the same area, >= 0
};

/// Time until a link that radiation alone warms is as warm as it may be.
///
/// \param link           flux [W/m2], heat capacity [J/(m2 K)] and cooling [W/(m2 K)], none of them held here
/// \param operating_rise from the surroundings to the rated temperature [K]
/// \return time [s]; infinite when it never gets so warm.
/// \pre steady fire, the link is warm throughout alike.
/// \error of the balance: none but what the link itself radiates; of the figures: the user's.
/// \source law of nature: heat taken up = heat kept + heat lost
double operating_time(const RadiatedLink& link, double operating_rise);

/// How fast a link that radiation alone warms does so at a moment.
///
/// \param link      flux [W/m2], heat capacity [J/(m2 K)] and cooling [W/(m2 K)]
/// \param link_rise above the surroundings [K]
/// \return [K/s]
/// \error as `operating_time`.
/// \source law of nature: heat taken up = heat kept + heat lost
double heating_rate(const RadiatedLink& link, double link_rise);

/// A response index that is published for a kind of sprinkler. For comparison only: a valve's link is no sprinkler.
struct SprinklerIndex {
  std::string_view kind;
  double response_index;  ///< [(m s)^0.5]
};

/// \source [nureg_1805_sheets, sprinkler activation sheet, generic values]
inline constexpr std::array<SprinklerIndex, 4> sprinkler_indices{
    {{"standard bulb", 235.0}, {"standard link", 130.0}, {"quick bulb", 42.0}, {"quick link", 34.0}}};

/// Range of the mean index, and of any single one, that the class "special response" must keep [(m s)^0.5].
/// \source [imo_a800, appendix 1, sensitivity]
inline constexpr std::array<double, 2> special_response_mean{50.0, 80.0};
inline constexpr std::array<double, 2> special_response_single{40.0, 100.0};

}  // namespace forecourse::parts
