#pragma once

#include <variant>

#include "forecourse/parts/escape/estimate.h"

namespace forecourse::parts {

/// A leak whose rate goes with a power of the pressure: q = k p^n.
///
/// See docs/theory/leak-rate.md.
struct LeakLaw {
  double coefficient = 0.0;  ///< k [m3/(s Pa^n)], >= 0
  double exponent = 0.5;     ///< n [1], > 0

  friend bool operator==(const LeakLaw&, const LeakLaw&) = default;
};

/// What a leak was seen to pass at a pressure.
struct LeakReading {
  double pressure = 0.0;  ///< gauge, inside minus outside [Pa], > 0
  double rate = 0.0;      ///< [m3/s], > 0
};

/// Exponents between which a leak of unchanging size lies [1]: a sharp hole, and a crack so narrow that the flow in it
/// is laminar. An opening that grows with pressure may lie above.
/// \source common practice, no source
inline constexpr double sharp_hole_exponent = 0.5;
inline constexpr double laminar_crack_exponent = 1.0;

/// Why two readings make no law.
enum class LeakFault {
  not_positive,     ///< a pressure or rate is zero, negative or not a number
  equal_pressures,  ///< the exponent cannot be told
  falling_rate,     ///< the higher pressure leaks no more: not one leak, or a reading is wrong
};

/// Law of a leak from one reading and an exponent.
/// \param reading  pressure [Pa] and rate [m3/s], both > 0
/// \param exponent [1], > 0
/// \return law through the reading, coefficient [m3/(s Pa^n)].
/// \error grows with the distance from the pressure of the reading; see `leak_rate_between`.
/// \source common practice, no source
[[nodiscard]] LeakLaw leak_law(LeakReading reading, double exponent);

/// Law of a leak from readings at two pressures, in any order.
/// \param one, other pressure [Pa] and rate [m3/s]
/// \return law through both, coefficient [m3/(s Pa^n)], or why there is none.
/// \error the exponent errs by (error of the rates' ratio) / ln(ratio of the pressures).
/// \source common practice, no source
[[nodiscard]] std::variant<LeakLaw, LeakFault> leak_law(LeakReading one, LeakReading other);

/// Rate of a leak at a pressure.
/// \param pressure gauge, inside minus outside [Pa]
/// \return rate [m3/s]; 0 where the pressure does not push outward (what would come in is not told).
/// \error that of the exponent, times the logarithm of the ratio of the pressures.
/// \source common practice, no source
[[nodiscard]] double leak_rate(const LeakLaw& law, double pressure);

/// Rates at a pressure that one reading leaves open when the exponent is not known: n from 0.5 to 1.
/// \param reading  pressure [Pa] and rate [m3/s], both > 0
/// \param pressure gauge [Pa]
/// \return rate [m3/s], one value at the pressure of the reading.
/// \error none for a leak of unchanging size; a gap that opens with pressure passes more.
/// \source common practice, no source
[[nodiscard]] Estimate leak_rate_between(LeakReading reading, double pressure);

}  // namespace forecourse::parts
