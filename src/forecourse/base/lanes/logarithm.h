#pragma once

#include "forecourse/base/lanes/baseline.h"

namespace forecourse::lanes {
namespace {

/// ln(2^exponent * (1 + s) / (1 - s)) for |s| <= 1/3: what a logarithm is once mantissas are divided.
/// The series of artanh as a polynomial of degree 9 in s2 through the Chebyshev points of 0..1/9, computed with 60
/// digits; it is off by at most 5e-17.
/// \source closed form
template <class I>
[[gnu::always_inline]] inline typename I::Real logarithm_of_parts(typename I::Real exponent, typename I::Real s) {
  constexpr double ln2 = 0.69314718055994530942;
  const auto t = s * s;
  const auto t2 = t * t;
  const auto t4 = t2 * t2;
  const auto low = (1.0 + 0.33333333333341286 * t) + (0.199999999976438 + 0.1428571455582858 * t) * t2;
  const auto middle =
      (0.11111095430673142 + 0.09091429900236955 * t) + (0.07681838124445817 + 0.06795652742789947 * t) * t2;
  const auto high = 0.04940394524382393 + 0.08890381913056651 * t;
  return exponent * ln2 + (s + s) * (low + (middle + high * t4) * t4);
}

/// Natural logarithm of a normal number > 0, to a few units of its last digit or of 1e-16.
template <class I>
[[gnu::always_inline]] inline typename I::Real logarithm(typename I::Real a) {
  const auto mantissa = I::mantissa(a);
  const auto one = I::all(1.0);
  return logarithm_of_parts<I>(I::exponent(a), (mantissa - one) * I::inverse(mantissa + one));
}

}  // namespace
}  // namespace forecourse::lanes
