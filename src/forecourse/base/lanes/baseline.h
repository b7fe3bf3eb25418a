#pragma once

#include <cstdint>

#define FORECOURSE_LANE [[gnu::always_inline]] static inline

/// Lanes: one number of several states side by side, as wide as one register of the machine.
///
/// Each instruction set has a type with the same static functions, over which kernels are templates. All of it has
/// internal linkage and is always inlined: a file compiled for one instruction set must leave nothing in the program
/// that code for another could be linked with. tools/check_lanes.sh looks at the object files.
namespace forecourse::lanes {
namespace {

/// Two lanes by the compiler's own vector types, for any machine.
struct Baseline {
  static constexpr int count = 2;
  using Real = double __attribute__((vector_size(16)));
  using Words = std::int64_t __attribute__((vector_size(16)));
  using Mask = Words;

  FORECOURSE_LANE Real load(const double* p) { return Real{p[0], p[1]}; }
  FORECOURSE_LANE void store(double* p, Real a) {
    p[0] = a[0];
    p[1] = a[1];
  }
  FORECOURSE_LANE Real all(double a) { return Real{a, a}; }
  FORECOURSE_LANE Words load_words(const std::uint64_t* p) {
    return Words{static_cast<std::int64_t>(p[0]), static_cast<std::int64_t>(p[1])};
  }
  FORECOURSE_LANE Mask has_bit(Words words, int bit) {
    const Words one = words >> bit & 1;
    return -one;
  }
  FORECOURSE_LANE Mask every_lane() { return Words{-1, -1}; }

  FORECOURSE_LANE Mask less(Real a, Real b) { return a < b; }
  FORECOURSE_LANE Mask at_most(Real a, Real b) { return a <= b; }
  FORECOURSE_LANE Mask both(Mask a, Mask b) { return a & b; }
  FORECOURSE_LANE Mask either(Mask a, Mask b) { return a | b; }
  /// `b` but not `a`.
  FORECOURSE_LANE Mask without(Mask a, Mask b) { return ~a & b; }
  /// One bit a lane.
  FORECOURSE_LANE unsigned bits(Mask m) { return static_cast<unsigned>((m[0] & 1) | (m[1] & 2)); }

  FORECOURSE_LANE Real select(Mask m, Real a, Real b) {
    return reinterpret_cast<Real>((m & reinterpret_cast<Words>(a)) | (~m & reinterpret_cast<Words>(b)));
  }
  /// `a` where `m` holds, else 0.
  FORECOURSE_LANE Real keep(Mask m, Real a) { return reinterpret_cast<Real>(m & reinterpret_cast<Words>(a)); }
  FORECOURSE_LANE Real min(Real a, Real b) { return select(a < b, a, b); }
  FORECOURSE_LANE Real max(Real a, Real b) { return select(a > b, a, b); }
  FORECOURSE_LANE Real abs(Real a) { return reinterpret_cast<Real>(reinterpret_cast<Words>(a) & INT64_MAX); }
  /// 1/a to rounding, a normal number.
  FORECOURSE_LANE Real inverse(Real a) { return 1.0 / a; }
  /// 1/a to 1e-8 or better, where that is quicker.
  FORECOURSE_LANE Real rough_inverse(Real a) { return inverse(a); }

  /// The exponent of a number > 0: a = mantissa * 2^exponent, 1 <= mantissa < 2.
  FORECOURSE_LANE Real exponent(Real a) {
    constexpr std::int64_t two_to_52 = 0x4330000000000000;
    return reinterpret_cast<Real>(reinterpret_cast<Words>(a) >> 52 | two_to_52) - (0x1p52 + 1023.0);
  }
  FORECOURSE_LANE Real mantissa(Real a) {
    constexpr std::int64_t digits = 0x000fffffffffffff, one = 0x3ff0000000000000;
    return reinterpret_cast<Real>((reinterpret_cast<Words>(a) & digits) | one);
  }
};

}  // namespace
}  // namespace forecourse::lanes
