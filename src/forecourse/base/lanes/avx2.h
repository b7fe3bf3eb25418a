#pragma once

#include "forecourse/base/lanes/baseline.h"

#if defined(__AVX2__) && defined(__FMA__)
#include <immintrin.h>

namespace forecourse::lanes {
namespace {

/// Four lanes; see `Baseline`.
struct Avx2 {
  static constexpr int count = 4;
  using Real = __m256d;
  using Words = __m256i;
  using Mask = __m256d;

  FORECOURSE_LANE Real load(const double* p) { return _mm256_loadu_pd(p); }
  FORECOURSE_LANE void store(double* p, Real a) { _mm256_storeu_pd(p, a); }
  FORECOURSE_LANE Real all(double a) { return _mm256_set1_pd(a); }
  FORECOURSE_LANE Words load_words(const std::uint64_t* p) {
    return _mm256_loadu_si256(reinterpret_cast<const __m256i*>(p));
  }
  FORECOURSE_LANE Mask has_bit(Words words, int bit) {
    const Words one = _mm256_set1_epi64x(static_cast<std::int64_t>(std::uint64_t{1} << bit));
    return _mm256_castsi256_pd(_mm256_cmpeq_epi64(_mm256_and_si256(words, one), one));
  }
  FORECOURSE_LANE Mask every_lane() { return _mm256_castsi256_pd(_mm256_set1_epi64x(-1)); }

  FORECOURSE_LANE Mask less(Real a, Real b) { return _mm256_cmp_pd(a, b, _CMP_LT_OQ); }
  FORECOURSE_LANE Mask at_most(Real a, Real b) { return _mm256_cmp_pd(a, b, _CMP_LE_OQ); }
  FORECOURSE_LANE Mask both(Mask a, Mask b) { return _mm256_and_pd(a, b); }
  FORECOURSE_LANE Mask either(Mask a, Mask b) { return _mm256_or_pd(a, b); }
  FORECOURSE_LANE Mask without(Mask a, Mask b) { return _mm256_andnot_pd(a, b); }
  FORECOURSE_LANE unsigned bits(Mask m) { return static_cast<unsigned>(_mm256_movemask_pd(m)); }

  FORECOURSE_LANE Real select(Mask m, Real a, Real b) { return _mm256_blendv_pd(b, a, m); }
  FORECOURSE_LANE Real keep(Mask m, Real a) { return _mm256_and_pd(m, a); }
  FORECOURSE_LANE Real min(Real a, Real b) { return _mm256_min_pd(a, b); }
  FORECOURSE_LANE Real max(Real a, Real b) { return _mm256_max_pd(a, b); }
  FORECOURSE_LANE Real abs(Real a) { return _mm256_andnot_pd(_mm256_set1_pd(-0.0), a); }
  FORECOURSE_LANE Real inverse(Real a) { return _mm256_set1_pd(1.0) / a; }

  FORECOURSE_LANE Real rough_inverse(Real a) { return inverse(a); }

  FORECOURSE_LANE Real exponent(Real a) {
    const Words two_to_52 = _mm256_set1_epi64x(0x4330000000000000);
    const Words biased = _mm256_or_si256(_mm256_srli_epi64(_mm256_castpd_si256(a), 52), two_to_52);
    return _mm256_castsi256_pd(biased) - _mm256_set1_pd(0x1p52 + 1023.0);
  }
  FORECOURSE_LANE Real mantissa(Real a) {
    const Words digits = _mm256_set1_epi64x(0x000fffffffffffff);
    return _mm256_or_pd(_mm256_and_pd(a, _mm256_castsi256_pd(digits)), _mm256_set1_pd(1.0));
  }
};

}  // namespace
}  // namespace forecourse::lanes
#endif
