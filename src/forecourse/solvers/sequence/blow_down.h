#pragma once

namespace forecourse::solvers::sequence {

/// A leak q = coefficient p^exponent; 0.5 for a sharp hole, 1 for a fine slit.
struct LeakLaw {
  double coefficient = 0.0;  ///< [m3/(s Pa^exponent)], >= 0
  double exponent = 0.5;     ///< [1], > 0
};

struct BlowDown {
  double pressure = 0.0;  ///< left [Pa]
  double released = 0.0;  ///< through the leak [m3]
};

/// Pressure and loss of a shut, springy volume that only a leak empties, in closed form for the whole time.
///
/// Solves C dp/dt = -k p^n: p = p0 (1 - (1 - n) y)^(1 / (1 - n)) with y = k p0^(n - 1) t / C, and p0 exp(-y) at n = 1.
///
/// \param pressure at the start, above what the leak sees outside [Pa], >= 0
/// \param compliance volume per pressure [m3/Pa], > 0
/// \param leak law of the leak
/// \param duration [s], >= 0
/// \return pressure and released volume; with n < 1 both stay once nothing is left
/// \source closed form
/// \error rounding; the released volume keeps its digits where it is small beside the pack
BlowDown blow_down(double pressure, double compliance, LeakLaw leak, double duration);

/// Time until the pressure has fallen from one value to a lower one.
/// \param from, to pressures [Pa], from >= to >= 0
/// \return [s]; infinite if it is never reached
double blow_down_time(double from, double to, double compliance, LeakLaw leak);

}  // namespace forecourse::solvers::sequence
