// The logarithm in lanes against that of the machine's library.
// SOURCE: closed form
#include "forecourse/base/lanes/logarithm.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "forecourse/base/lanes/instruction_set.h"

namespace forecourse::lanes {
namespace {

// The sum of a multiple of ln 2 and a polynomial, each rounded: a few units of the last digit of the larger of them.
constexpr double allowed = 1e-15;

TEST(Logarithm, AsTheLibrarysOverAllMagnitudes) {
  for (double v = 1e-300; v < 1e300; v *= 1.0713) {
    const double wanted = std::log(v);
    const auto got = logarithm<Baseline>(Baseline::Real{v, 2.0 * v});
    EXPECT_NEAR(got[0], wanted, allowed * std::max(1.0, std::abs(wanted))) << v;
    EXPECT_NEAR(got[1], std::log(2.0 * v), allowed * std::max(1.0, std::abs(wanted))) << v;
  }
}

TEST(Logarithm, NearOneToAFewUnitsOf1e16) {
  for (double d = -0.49; d < 1.0; d += 0.00073) {
    EXPECT_NEAR(logarithm<Baseline>(Baseline::all(1.0 + d))[0], std::log(1.0 + d), 4e-16) << d;
  }
  EXPECT_EQ(logarithm<Baseline>(Baseline::all(1.0))[0], 0.0);
}

TEST(BaselineLanes, ExponentAndMantissaMakeTheNumber) {
  for (double v = 1e-300; v < 1e300; v *= 3.7) {
    const auto exponent = Baseline::exponent(Baseline::all(v))[0];
    const auto mantissa = Baseline::mantissa(Baseline::all(v))[1];
    EXPECT_EQ(std::ldexp(mantissa, static_cast<int>(exponent)), v);
    EXPECT_GE(mantissa, 1.0);
    EXPECT_LT(mantissa, 2.0);
  }
}

TEST(BaselineLanes, MasksChooseLaneByLane) {
  const auto first_less = Baseline::less(Baseline::Real{1.0, 2.0}, Baseline::Real{2.0, 1.0});
  EXPECT_EQ(Baseline::bits(first_less), 1U);
  const auto chosen = Baseline::select(first_less, Baseline::all(5.0), Baseline::all(6.0));
  EXPECT_EQ(chosen[0], 5.0);
  EXPECT_EQ(chosen[1], 6.0);
  EXPECT_EQ(Baseline::keep(first_less, chosen)[1], 0.0);
  EXPECT_EQ(Baseline::bits(Baseline::without(first_less, Baseline::every_lane())), 2U);
}

// A maximum with a number that is none is the second argument, as the processor's own instructions have it.
TEST(BaselineLanes, MaximumOfNoNumberIsTheOther) {
  const auto none = Baseline::all(std::numeric_limits<double>::quiet_NaN());
  EXPECT_EQ(Baseline::max(none, Baseline::all(3.0))[0], 3.0);
}

TEST(InstructionSet, BaselineIsAlwaysThereAndTheWidestIsLast) {
  EXPECT_EQ(supported_instruction_sets().front(), InstructionSet::baseline);
  EXPECT_EQ(supported_instruction_sets().back(), widest_instruction_set());
}

}  // namespace
}  // namespace forecourse::lanes
