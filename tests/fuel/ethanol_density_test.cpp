// SOURCE: [oiml_r22, general formula] coefficients and fixed points; other rows are a second computation
#include "forecourse/fuel/ethanol_density.h"

#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/base/api_units.h"
#include "support/check_values.h"

namespace forecourse::fuel {
namespace {

using test::CheckRow;

double value_of(const CheckRow& check) {
  const auto parts = test::parts_of(check.inputs);
  const double fraction = test::number_in(parts.at(0)).value();
  if (check.quantity == "ethanol-water density") return ethanol_water_density(fraction, test::kelvin_in(parts.at(1)));
  if (check.quantity == "cubical expansion at 15 degC") {
    return ethanol_water_expansion(fraction, kelvin_from_celsius(15.0));
  }
  EXPECT_EQ(check.quantity, "ethanol volume fraction at 20 degC");
  return ethanol_volume_fraction(fraction);
}

TEST(EthanolDensity, GivesTheFixedPointsAndASecondComputation) {
  const auto rows = test::rows_starting("R22-");
  EXPECT_EQ(rows.size(), 69u);
  for (const CheckRow& check : rows) EXPECT_TRUE(test::agrees(check, value_of(check)));
}

TEST(EthanolDensity, ExpansionIsTheDerivativeOfDensity) {
  for (double fraction : {0.0, 0.3, 0.5, 0.92, 0.96, 1.0}) {
    for (double kelvin : {258.15, 273.15, 288.15, 303.15}) {
      constexpr double h = 0.02;
      const double slope =
          std::log(ethanol_water_density(fraction, kelvin + h) / ethanol_water_density(fraction, kelvin - h)) /
          (2.0 * h);
      EXPECT_NEAR(ethanol_water_expansion(fraction, kelvin), -slope, 2e-10);  // rounding of the difference
    }
  }
}

TEST(EthanolDensity, FallsWithEthanolAndVolumeFractionRisesWithMassFraction) {
  for (int percent = 1; percent < 100; ++percent) {
    const double p = percent / 100.0;
    EXPECT_LT(ethanol_water_density((percent + 1) / 100.0, 293.15), ethanol_water_density(p, 293.15));
    EXPECT_GT(ethanol_volume_fraction(p), ethanol_volume_fraction(p - 0.01));
  }
  EXPECT_DOUBLE_EQ(ethanol_volume_fraction(0.0), 0.0);
  EXPECT_DOUBLE_EQ(ethanol_volume_fraction(1.0), 1.0);
}

TEST(EthanolDensity, GivesNothingOutsideItsLimits) {
  EXPECT_TRUE(std::isnan(ethanol_water_density(1.0, kelvin_from_celsius(-20.1))));
  EXPECT_TRUE(std::isnan(ethanol_water_density(1.0, kelvin_from_celsius(40.1))));
  EXPECT_TRUE(std::isnan(ethanol_water_density(1.01, 293.15)));
  EXPECT_TRUE(std::isnan(ethanol_water_expansion(-0.01, 293.15)));
  EXPECT_FALSE(std::isnan(ethanol_water_density(1.0, kelvin_from_celsius(-20.0))));
  EXPECT_FALSE(std::isnan(ethanol_water_density(1.0, kelvin_from_celsius(40.0))));
}

}  // namespace
}  // namespace forecourse::fuel
