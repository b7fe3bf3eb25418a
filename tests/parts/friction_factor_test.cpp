// SOURCE: [colebrook_1939, the transition law] [fluids_library, tests/test_friction.py]
// SOURCE: [tp410, example 7.1] [hydr_watres, example 4.3]
#include "forecourse/parts/friction_factor.h"

#include <gtest/gtest.h>

#include <cmath>

#include "parts/sweep.h"
#include "support/check_values.h"

namespace forecourse::parts {
namespace {

using test::agrees;
using test::row;

constexpr double roughnesses[] = {0.0, 1e-6, 1e-4, 1e-3, 1e-2, 5e-2};

double factor(double reynolds, double relative_roughness) {
  return friction(friction_law(relative_roughness), reynolds).factor;
}

TEST(FrictionFactor, AgreesWithPublishedAndComputedColebrookValues) {
  int seen = 0;
  for (const auto& check : test::rows_starting("F-")) {
    if (check.inputs.find("eps/D") == std::string::npos) continue;
    const double f = factor(test::input_number(check, "Re"), test::input_number(check, "eps/D"));
    // Twelve decimals are stored: half of the last one.
    EXPECT_TRUE(agrees(check, f, {.absolute = 5.1e-13})) << check.id;
    ++seen;
  }
  EXPECT_EQ(seen, 105);
}

TEST(FrictionFactor, IsLaminarAsPublished) { EXPECT_TRUE(agrees(row("F-lam-128"), factor(128.0, 1e-3))); }

TEST(FrictionFactor, AgreesWithHandbookExample7_1) {
  EXPECT_TRUE(agrees(row("TP-7.1-f"), factor(100600.0, 0.0)));  // the handbook reads a chart
}

TEST(FrictionFactor, AgreesWithTextbookExample4_3) {
  // The row's tolerance: half of the last printed digit, 0.0133.
  EXPECT_TRUE(agrees(row("DW-ex4.3-f"), factor(row("DW-ex4.3-Re").number(), 4.6e-5 / 0.5)));
}

TEST(FrictionFactor, SolvesColebrookToRounding) {
  for (const double roughness : roughnesses) {
    const FrictionLaw law = friction_law(roughness);
    for (double reynolds = 4000.1; reynolds < 1e11; reynolds *= 1.07) {
      const double f = friction(law, reynolds).factor;
      const double x = 1.0 / std::sqrt(f);
      const double rest = x + 2.0 * std::log10(roughness / 3.7 + 2.51 * x / reynolds);
      EXPECT_NEAR(rest / x, 0.0, 3e-15) << reynolds;  // some ten roundings of 2e-16
    }
  }
}

TEST(FrictionFactor, IsContinuousInValueAndSlopeAtBothLimits) {
  for (const double roughness : roughnesses) {
    const FrictionLaw law = friction_law(roughness);
    for (const double limit : {laminar_limit, turbulent_limit}) {
      const Friction below = friction(law, limit * (1.0 - 1e-12)), above = friction(law, limit * (1.0 + 1e-12));
      EXPECT_NEAR(below.factor, above.factor, 1e-12);  // 2e-12 of the limit times the slope
      EXPECT_NEAR(below.slope * limit, above.slope * limit, 1e-11);
    }
  }
}

TEST(FrictionFactor, SlopeIsTheDerivative) {
  for (const double roughness : roughnesses) {
    const FrictionLaw law = friction_law(roughness);
    for (double reynolds = 500.0; reynolds < 1e9; reynolds *= 1.13) {
      const double step = 1e-5 * reynolds;
      const double difference = friction(law, reynolds + step).factor - friction(law, reynolds - step).factor;
      const Friction here = friction(law, reynolds);
      // Rounding 1e-15/1e-5 and curvature (1e-5)^2 of the factor itself.
      EXPECT_NEAR(difference / 2e-5, here.slope * reynolds, 2e-9 * here.factor) << reynolds << " " << roughness;
    }
  }
}

TEST(FrictionFactor, ExplicitFormInvertsTheImplicitOne) {
  for (const double roughness : roughnesses) {
    const FrictionLaw law = friction_law(roughness);
    for (double reynolds = 4001.0; reynolds < 1e9; reynolds *= 1.5) {
      const double root = std::sqrt(friction(law, reynolds).factor);
      EXPECT_NEAR(inverse_root_friction(law, reynolds * root) * root, 1.0, 1e-14);
    }
  }
}

TEST(FrictionFactor, PassesNanThrough) { EXPECT_TRUE(std::isnan(friction(friction_law(1e-3), std::nan("")).factor)); }

}  // namespace
}  // namespace forecourse::parts
