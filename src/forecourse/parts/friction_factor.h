#pragma once

#include <array>

namespace forecourse::parts {

/// Reynolds number below which flow is taken as laminar, and above which as fully turbulent [1].
inline constexpr double laminar_limit = 2000.0;
inline constexpr double turbulent_limit = 4000.0;

/// Darcy friction factor and its derivative to the Reynolds number.
struct Friction {
  double factor = 0.0;  ///< Darcy friction factor [1]
  double slope = 0.0;   ///< d(factor)/d(Re) [1]
};

/// What the friction factor of one relative roughness needs more than once; made by `friction_law`.
struct FrictionLaw {
  double roughness_term = 0.0;         ///< relative roughness / 3.7 [1]
  double start_term = 0.0;             ///< (relative roughness / 3.7)^1.11, for the first guess [1]
  std::array<double, 4> transition{};  ///< factor = c0 + c1 t + c2 t2 + c3 t3, t = (Re - 2000)/2000 [1]

  friend bool operator==(const FrictionLaw&, const FrictionLaw&) = default;
};

/// Friction law of a round pipe of one relative roughness. See docs/theory/pipe-friction.md.
///
/// \param relative_roughness roughness / inside diameter [1], 0 to 0.05
/// \return constants for `friction` [1].
/// \error rounding only.
/// \source [colebrook_1939, eq. as in docs/theory/pipe-friction.md] the two limits of the blend.
FrictionLaw friction_law(double relative_roughness);

/// Darcy friction factor: 64/Re, the blend of 2000 to 4000, or Colebrook-White, with one continuous derivative.
///
/// \param law      from `friction_law` [1]
/// \param reynolds Reynolds number [1], > 0
/// \return factor and slope [1]; NaN in, NaN out.
/// \pre full round pipe, Newtonian liquid, developed flow; up to Re 1e11.
/// \error rounding against Colebrook-White, which itself scatters about 5 % around measured pipes (common
///        judgement, not verified); between Re 2000 and 4000 nobody knows: the blend is ours.
/// \source [colebrook_1939, the transition law with 3.7 and 2.51] and Hagen-Poiseuille below Re 2000.
Friction friction(const FrictionLaw& law, double reynolds);

/// 1/sqrt(f) of Colebrook-White from Re*sqrt(f), which makes the law explicit.
///
/// \param law         from `friction_law` [1]
/// \param karman_number Re*sqrt(f) [1], > 0
/// \return 1/sqrt(f) [1].
/// \pre turbulent flow.
/// \error rounding only.
/// \source [colebrook_1939, the transition law]
double inverse_root_friction(const FrictionLaw& law, double karman_number);

}  // namespace forecourse::parts
