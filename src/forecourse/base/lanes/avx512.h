#pragma once

#include "forecourse/base/lanes/baseline.h"

#if defined(__AVX512F__) && defined(__AVX512DQ__)
#include <immintrin.h>

namespace forecourse::lanes {
namespace {

/// Eight lanes; see `Baseline`.
struct Avx512 {
  static constexpr int count = 8;
  using Real = __m512d;
  using Words = __m512i;
  using Mask = __mmask8;

  /// Given where the compiler's plain form warns of a number that is not set (g++ 12); it costs nothing.
  static constexpr Mask full = 0xff;

  FORECOURSE_LANE Real load(const double* p) { return _mm512_loadu_pd(p); }
  FORECOURSE_LANE void store(double* p, Real a) { _mm512_storeu_pd(p, a); }
  FORECOURSE_LANE Real all(double a) { return _mm512_set1_pd(a); }
  FORECOURSE_LANE Words load_words(const std::uint64_t* p) { return _mm512_loadu_si512(p); }
  FORECOURSE_LANE Mask has_bit(Words words, int bit) {
    return _mm512_test_epi64_mask(words, _mm512_set1_epi64(static_cast<std::int64_t>(std::uint64_t{1} << bit)));
  }
  FORECOURSE_LANE Mask every_lane() { return full; }

  FORECOURSE_LANE Mask less(Real a, Real b) { return _mm512_cmp_pd_mask(a, b, _CMP_LT_OQ); }
  FORECOURSE_LANE Mask at_most(Real a, Real b) { return _mm512_cmp_pd_mask(a, b, _CMP_LE_OQ); }
  FORECOURSE_LANE Mask both(Mask a, Mask b) { return static_cast<Mask>(a & b); }
  FORECOURSE_LANE Mask either(Mask a, Mask b) { return static_cast<Mask>(a | b); }
  FORECOURSE_LANE Mask without(Mask a, Mask b) { return static_cast<Mask>(~a & b); }
  FORECOURSE_LANE unsigned bits(Mask m) { return m; }

  FORECOURSE_LANE Real select(Mask m, Real a, Real b) { return _mm512_mask_blend_pd(m, b, a); }
  FORECOURSE_LANE Real keep(Mask m, Real a) { return _mm512_maskz_mov_pd(m, a); }
  FORECOURSE_LANE Real min(Real a, Real b) { return _mm512_maskz_min_pd(full, a, b); }
  FORECOURSE_LANE Real max(Real a, Real b) { return _mm512_maskz_max_pd(full, a, b); }
  FORECOURSE_LANE Real abs(Real a) { return _mm512_abs_pd(a); }
  /// The processor's estimate to 2^-14, doubled in digits twice.
  FORECOURSE_LANE Real inverse(Real a) {
    const Real one = all(1.0);
    Real y = _mm512_maskz_rcp14_pd(full, a);
    y = y + y * (one - a * y);
    return y + y * (one - a * y);
  }

  FORECOURSE_LANE Real rough_inverse(Real a) {
    const Real y = _mm512_maskz_rcp14_pd(full, a);
    return y + y * (all(1.0) - a * y);
  }

  FORECOURSE_LANE Real exponent(Real a) { return _mm512_maskz_getexp_pd(full, a); }
  FORECOURSE_LANE Real mantissa(Real a) {
    return _mm512_maskz_getmant_pd(full, a, _MM_MANT_NORM_1_2, _MM_MANT_SIGN_src);
  }
};

}  // namespace
}  // namespace forecourse::lanes
#endif
