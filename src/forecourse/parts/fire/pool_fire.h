#pragma once

#include "forecourse/parts/fire/burning_fuels.h"

namespace forecourse::parts {

// The fire of a pool that burns freely in still air: docs/theory/pool-fire.md.

/// What a square meter of a pool burns in a second, at least and at most [kg/(m2 s)].
struct BurningRate {
  double low = 0.0;
  double high = 0.0;

  friend bool operator==(const BurningRate&, const BurningRate&) = default;
};

/// Share of the rate of a deep pool at which a layer of 1 mm on concrete was seen to burn, at least [1].
///
/// Five measured pans of 0.3 to 1.2 m side, 0.010 to 0.016 kg/(m2 s), against the rate of a deep pool of the same
/// area: gasoline 0.357, 0.312, 0.309; kerosene type 0.369, 0.283. This is the lowest, rounded down.
/// \source [nist_thin_pools, pans on concrete with 1 mm of fuel]
inline constexpr double thin_layer_share = 0.28;

/// Diameter of the round pool of the same area.
///
/// \param area [m2], >= 0
/// \return diameter [m].
/// \error rounding only.
/// \source [nureg_1805_sheets, effective diameter]
double equivalent_diameter(double area);

/// Rate at which a deep pool burns, each square meter.
///
/// \param fuel     row of the table [SI units]
/// \param diameter of the pool [m], 0.2 or more; below that flames are laminar and the law is not meant for them
/// \return [kg/(m2 s)]
/// \pre still air, much fuel left; nothing cools the pool from below.
/// \error gasoline 20 mm deep on concrete burns at 68 to 79 % of this; see also `burning_fuels`.
/// \source [babrauskas_1983, equation of the burning rate; nureg_1805_sheets, heat release sheets]
double deep_pool_rate(const BurningFuel& fuel, double diameter);

/// Range of the rate at which a layer of a few millimeters burns on a paved ground.
///
/// At least `thin_layer_share` of the deep pool's rate, at most all of it: concrete takes heat from a thin layer, and
/// with 5 mm gasoline burnt at 66 to 68 % of the deep pool's rate.
/// \param fuel     row of the table [SI units]
/// \param diameter of the pool [m], 0.3 to 1.3 in the tests
/// \return range [kg/(m2 s)].
/// \pre still air; the layer is still whole.
/// \error the tests gave one value each; other grounds differ (vinyl, 1 mm: 0.58 of the deep pool's rate).
/// \source [nist_thin_pools, pans on concrete]
BurningRate thin_layer_rate(const BurningFuel& fuel, double diameter);

/// Heat that a fire releases in a second if all vapor burns wholly.
///
/// \param fuel row of the table [SI units]
/// \param rate burnt of each square meter [kg/(m2 s)]
/// \param area of the pool [m2]
/// \return heat [W].
/// \error too high: sooty flames burn not wholly (about 0.9 is often taken, from memory, not verified).
/// \source [nureg_1805_sheets, heat release sheets]
double heat_release(const BurningFuel& fuel, double rate, double area);

/// Mean flame height after Heskestad.
///
/// \param heat_release [W], >= 0
/// \param diameter     of the pool [m]
/// \return height above the pool [m]; 0 where the law gives less (many small flames rather than one).
/// \error of the order of 20 %; the flame leaps to well above the mean height.
/// \source [nureg_1805_sheets, flame height sheet]
double flame_height_heskestad(double heat_release, double diameter);

/// Mean flame height after Thomas.
///
/// \param rate     burnt of each square meter [kg/(m2 s)]
/// \param diameter of the pool [m], > 0
/// \return height above the pool [m].
/// \error lies 17 to 20 % below Heskestad's for gasoline pools of 1 to 10 m2; 12 to 20 % with the rate of a very wide
/// pool, which the sheets take.
/// \source [nureg_1805_sheets, flame height sheet] with air of 1.2 kg/m3 and 9.81 m/s2
double flame_height_thomas(double rate, double diameter);

}  // namespace forecourse::parts
