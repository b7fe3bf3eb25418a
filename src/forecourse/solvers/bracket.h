#pragma once

#include <algorithm>
#include <cmath>

namespace forecourse::solvers {

/// Two ends between which a function passes zero once: below zero at one, above at the other.
struct Bracket {
  double low = 0.0;
  double off_low = 0.0;  ///< value of the function there
  double high = 0.0;
  double off_high = 0.0;
};

/// When a search may end.
struct BracketEnd {
  double width = 0.0;  ///< of the bracket
  double off = 0.0;    ///< of the function
};

/// Zero of a function between two ends: secant steps, the value at an end that is kept twice halved, and bisection
/// where the secant stays at an end.
/// \source common practice, no source
/// \return a point whose value is within `end.off`, or that lies within `end.width` of the zero; NaN where the
///         function is not a number
template <class Function>
double bracketed_root(const Function& off, Bracket b, BracketEnd end) {
  constexpr int most_rounds = 200;
  constexpr int bisect_each = 4;
  int kept = 0;  // which end the last round kept: -1 low, 1 high
  double x = 0.5 * (b.low + b.high);
  for (int i = 1; i <= most_rounds && b.high - b.low > end.width; ++i) {
    const double secant = b.low + (b.high - b.low) * b.off_low / (b.off_low - b.off_high);
    const double middle = 0.5 * (b.low + b.high);
    x = i % bisect_each == 0 || !std::isfinite(secant) ? middle : std::clamp(secant, b.low, b.high);
    const double value = off(x);
    if (!std::isfinite(value) || std::abs(value) <= end.off) return std::isfinite(value) ? x : value;
    const bool at_low = (value < 0.0) == (b.off_low < 0.0);
    if (at_low) {
      b.low = x;
      b.off_low = value;
      if (kept == 1) b.off_high *= 0.5;
      kept = 1;
    } else {
      b.high = x;
      b.off_high = value;
      if (kept == -1) b.off_low *= 0.5;
      kept = -1;
    }
  }
  return x;
}

}  // namespace forecourse::solvers
