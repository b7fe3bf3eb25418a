#include <array>

#include "forecourse/fuel/equation_of_state/helmholtz.h"

namespace forecourse::fuel {
namespace {

// Coefficients as published, read in the fluid files of the second source.
// SOURCE: [span_2000, form of the equations], [coolprop, dev/fluids]
using Form = HeatTerm::Form;

// SOURCE: [schroeder_2014, table of coefficients]
namespace ethanol {
constexpr double tc = 514.71;
constexpr std::array<HeatTerm, 4> heat = {{{Form::einstein, 2.14326, 0.816771 * tc},
                                           {Form::einstein, 5.09206, 2.59175 * tc},
                                           {Form::einstein, 6.60138, 3.80408 * tc},
                                           {Form::einstein, 5.70777, 8.58736 * tc}}};
constexpr std::array<PowerTerm, 16> power = {{{0.058200796, 1.0, 4, 0},
                                              {0.94391227, 1.04, 1, 0},
                                              {-0.80941908, 2.72, 1, 0},
                                              {0.55359038, 1.174, 2, 0},
                                              {-1.4269032, 1.329, 2, 0},
                                              {0.13448717, 0.195, 3, 0},
                                              {0.42671978, 2.43, 1, 1},
                                              {-1.1700261, 1.274, 1, 1},
                                              {-0.92405872, 4.16, 1, 2},
                                              {0.34891808, 3.3, 3, 1},
                                              {-0.9132772, 4.177, 3, 2},
                                              {0.022629481, 2.5, 2, 1},
                                              {-0.15513423, 0.81, 2, 2},
                                              {0.21055146, 2.02, 6, 1},
                                              {-0.2199769, 1.606, 6, 1},
                                              {-0.0065857238, 0.86, 8, 1}}};
constexpr std::array<GaussianTerm, 9> gaussian = {{{0.75564749, 2.5, 1, 1.075, 1.207, 1.194, 0.779},
                                                   {0.1069411, 3.72, 1, 0.463, 0.0895, 1.986, 0.805},
                                                   {-0.069533844, 1.19, 2, 0.876, 0.581, 1.583, 1.869},
                                                   {-0.24947395, 3.25, 3, 1.108, 0.947, 0.756, 0.694},
                                                   {0.027177891, 3.0, 3, 0.741, 2.356, 0.495, 1.312},
                                                   {-0.0009053953, 2.0, 2, 4.032, 27.01, 1.002, 2.054},
                                                   {-0.12310953, 2.0, 2, 2.453, 4.542, 1.077, 0.441},
                                                   {-0.08977971, 1.0, 2, 2.3, 1.287, 1.493, 0.793},
                                                   {-0.39512601, 1.0, 1, 3.143, 3.09, 1.542, 0.313}}};
constexpr HelmholtzFluid fluid{8.314472,     0.04606844, tc,   5930.0, 159.0,   280e6,
                               19729.112579, 3.43069,    heat, power,  gaussian};
}  // namespace ethanol

// SOURCE: [span_wagner_2003b, n-heptane], heat capacity [jaeschke_schley_1995, n-heptane]
namespace n_heptane {
constexpr std::array<HeatTerm, 3> heat = {
    {{Form::einstein, 13.7266, 2.0 * 169.789}, {Form::cosh, 30.4707, 836.195}, {Form::cosh, 43.5561, 1760.46}}};
constexpr std::array<PowerTerm, 12> power = {{{1.0543748, 0.25, 1, 0},
                                              {-2.6500682, 1.125, 1, 0},
                                              {0.81730048, 1.5, 1, 0},
                                              {-0.30451391, 1.375, 2, 0},
                                              {0.12253869, 0.25, 3, 0},
                                              {0.00027266473, 0.875, 7, 0},
                                              {0.49865826, 0.625, 2, 1},
                                              {-0.00071432815, 1.75, 5, 1},
                                              {-0.54236896, 3.625, 1, 2},
                                              {-0.13801822, 3.625, 4, 2},
                                              {-0.0061595287, 14.5, 3, 3},
                                              {0.0004860251, 12.0, 4, 3}}};
constexpr HelmholtzFluid fluid{8.31451, 0.100202, 540.13, 2315.323047444163, 182.55, 100e6, 7745.6852, 3.0,
                               heat,    power,    {}};
}  // namespace n_heptane

// SOURCE: [beckmueller_2019, n-octane]
namespace n_octane {
constexpr double tc = 568.74;
constexpr std::array<HeatTerm, 3> heat = {{{Form::einstein, 17.47, 0.6681436157119246 * tc},
                                           {Form::einstein, 33.25, 3.031262088124626 * tc},
                                           {Form::einstein, 15.63, 6.8238562436262615 * tc}}};
constexpr std::array<PowerTerm, 10> power = {{{0.042240369, 1.0, 4, 0},
                                              {1.4800888, 0.243, 1, 0},
                                              {-2.0975357, 0.856, 1, 0},
                                              {-0.72303256, 1.07, 2, 0},
                                              {0.26084383, 0.52, 3, 0},
                                              {-1.6713762, 2.3, 1, 2},
                                              {-1.3023632, 2.55, 3, 2},
                                              {0.67710461, 1.075, 2, 1},
                                              {-1.1644509, 2.24, 2, 2},
                                              {-0.030939987, 0.951, 7, 1}}};
constexpr std::array<GaussianTerm, 4> gaussian = {{{3.1437871, 0.59, 1, 0.985, 1.52, 1.448, 0.989},
                                                   {-0.011637891, 0.917, 1, 13.6, 998.0, 1.08, 0.986},
                                                   {-0.95649696, 1.05, 3, 1.03, 1.57, 1.185, 0.532},
                                                   {-0.36897912, 1.634, 2, 1.084, 1.44, 1.3, 1.16}}};
constexpr HelmholtzFluid fluid{8.3144598, 0.114229, tc, 2031.0, 216.37, 1e9, 6682.3167, 3.0, heat, power, gaussian};
}  // namespace n_octane

// SOURCE: [lemmon_span_2006, toluene]
namespace toluene {
constexpr double tc = 591.75;
constexpr std::array<HeatTerm, 5> heat = {{{Form::einstein, 1.6994, 0.3210815378115758 * tc},
                                           {Form::einstein, 8.0577, 1.346852555978031 * tc},
                                           {Form::einstein, 17.059, 2.735952682720744 * tc},
                                           {Form::einstein, 8.4567, 5.191381495564005 * tc},
                                           {Form::einstein, 8.6423, 13.37558090409801 * tc}}};
constexpr std::array<PowerTerm, 12> power = {{{0.96464, 0.25, 1, 0},
                                              {-2.7855, 1.125, 1, 0},
                                              {0.86712, 1.5, 1, 0},
                                              {-0.1886, 1.375, 2, 0},
                                              {0.11804, 0.25, 3, 0},
                                              {0.00025181, 0.875, 7, 0},
                                              {0.57196, 0.625, 2, 1},
                                              {-0.029287, 1.75, 5, 1},
                                              {-0.43351, 3.625, 1, 2},
                                              {-0.1254, 3.625, 4, 2},
                                              {-0.028207, 14.5, 3, 3},
                                              {0.014076, 12.0, 4, 3}}};
constexpr HelmholtzFluid fluid{8.314472, 0.09213842, tc, 3169.0, 178.0, 500e6, 10580.0605, 3.0, heat, power, {}};
}  // namespace toluene

// SOURCE: [huber_2009, methyl oleate]
namespace methyl_oleate {
constexpr double tc = 782.0;
constexpr std::array<HeatTerm, 4> heat = {{{Form::power, 10.85318466404121, 0.146118},
                                           {Form::einstein, 28.23955628210667, 0.7845639386189258 * tc},
                                           {Form::einstein, 40.38356254011078, 1.797071611253197 * tc},
                                           {Form::einstein, 51.91670619613609, 3.667212276214834 * tc}}};
constexpr std::array<PowerTerm, 10> power = {{{0.04596121, 1.0, 4, 0},
                                              {2.2954, 0.34, 1, 0},
                                              {-3.554366, 1.14, 1, 0},
                                              {-0.2291674, 1.4, 2, 0},
                                              {0.06854534, 0.6, 3, 0},
                                              {-1.535778, 3.3, 1, 2},
                                              {-0.7334697, 4.1, 3, 2},
                                              {1.7127, 1.9, 2, 1},
                                              {-1.471394, 3.8, 2, 2},
                                              {-0.01724678, 1.3, 7, 1}}};
constexpr std::array<GaussianTerm, 3> gaussian = {{{2.11547, 3.4, 1, 1.1, 0.9, 1.14, 0.79},
                                                   {-0.7555374, 3.8, 1, 1.6, 0.65, 0.65, 0.9},
                                                   {-0.4134269, 4.0, 3, 1.1, 0.75, 0.77, 0.76}}};
constexpr HelmholtzFluid fluid{8.314472, 0.29648794, tc, 812.85, 253.47, 50e6, 3048.2388, -1.0, heat, power, gaussian};
}  // namespace methyl_oleate

}  // namespace

const HelmholtzFluid& helmholtz_fluid(PureFluid fluid) {
  switch (fluid) {
    case PureFluid::ethanol:
      return ethanol::fluid;
    case PureFluid::n_heptane:
      return n_heptane::fluid;
    case PureFluid::n_octane:
      return n_octane::fluid;
    case PureFluid::toluene:
      return toluene::fluid;
    case PureFluid::methyl_oleate:
      break;
  }
  return methyl_oleate::fluid;
}

}  // namespace forecourse::fuel
