// SOURCE: [ap42_5_2, equation 1] inputs and results worked in a second computation (4.93416, 8.2236 and 11.92422 lb per
// 1000 gal); [nonroad_source, clcevems.f] both equations of refueling, worked in a second computation.
#include "forecourse/parts/vapor/emissions.h"

#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/base/api_units.h"

namespace forecourse::parts {
namespace {

double pounds_per_thousand_gallons(double kilograms_per_cubic_meter) {
  return kilograms_per_cubic_meter / kilograms_per_cubic_meter_from_pounds_per_thousand_gallons(1.0);
}

const SaturatedVapor vapor{pascal_from_psi(5.2), 0.066, 520.0 / 1.8};  // 520 degR

TEST(LoadingLoss, OfTheWorkedFigures) {
  constexpr double rounding = 1e-5;  // of the printed digits
  EXPECT_NEAR(pounds_per_thousand_gallons(loading_loss(vapor, 0.6)), 4.93416, rounding);
  EXPECT_NEAR(pounds_per_thousand_gallons(loading_loss(vapor, 1.0)), 8.2236, rounding);
  EXPECT_NEAR(pounds_per_thousand_gallons(loading_loss(vapor, 1.45)), 11.92422, rounding);
}

/// The constant is the gas law in the units of the source: law of nature, rounded there by 0.03 %.
TEST(LoadingLoss, IsTheGasLaw) {
  const double gas = vapor.pressure * vapor.molar_mass / (8.314462618 * vapor.temperature);
  EXPECT_NEAR(loading_loss(vapor, 1.0), gas, 3e-4 * gas);
}

TEST(LoadingLoss, SaturationFactorsByTheRowsOfTheTable) {
  EXPECT_EQ(saturation_factor(Loading::clean_submerged), 0.50);
  EXPECT_EQ(saturation_factor(Loading::dedicated_submerged), 0.60);
  EXPECT_EQ(saturation_factor(Loading::balanced_submerged), 1.00);
  EXPECT_EQ(saturation_factor(Loading::clean_splash), 1.45);
  EXPECT_EQ(saturation_factor(Loading::dedicated_splash), 1.45);
  EXPECT_EQ(saturation_factor(Loading::balanced_splash), 1.00);
}

TEST(VaporMolarMass, AtAndBetweenTheTabulatedPoints) {
  EXPECT_NEAR(gasoline_vapor_molar_mass(pascal_from_psi(7.0)), 0.068, 1e-12);
  EXPECT_NEAR(gasoline_vapor_molar_mass(pascal_from_psi(11.5)), 0.064, 1e-12);
  EXPECT_NEAR(gasoline_vapor_molar_mass(pascal_from_psi(13.0)), 0.062, 1e-12);
  EXPECT_TRUE(std::isnan(gasoline_vapor_molar_mass(pascal_from_psi(15.0))));
}

/// The factors stand in two units in the source; the pairs agree to the digits printed.
TEST(StationFactors, AgreeInBothPrintedUnits) {
  EXPECT_NEAR(pounds_per_thousand_gallons(station_factor(StationLoss::filling_submerged).mass_per_volume), 7.3, 0.05);
  EXPECT_NEAR(pounds_per_thousand_gallons(station_factor(StationLoss::filling_splash).mass_per_volume), 11.5, 0.05);
  EXPECT_NEAR(pounds_per_thousand_gallons(station_factor(StationLoss::filling_balanced).mass_per_volume), 0.3, 0.05);
  EXPECT_NEAR(pounds_per_thousand_gallons(station_factor(StationLoss::breathing).mass_per_volume), 1.0, 0.05);
  EXPECT_NEAR(pounds_per_thousand_gallons(station_factor(StationLoss::refueling).mass_per_volume), 11.0, 0.05);
  EXPECT_NEAR(pounds_per_thousand_gallons(station_factor(StationLoss::refueling_controlled).mass_per_volume), 1.1,
              0.05);
  EXPECT_NEAR(pounds_per_thousand_gallons(station_factor(StationLoss::spillage).mass_per_volume), 0.7, 0.05);
  EXPECT_EQ(station_factor(StationLoss::breathing).status, FigureStatus::unverified);
}

TEST(RefuelingLoss, OlderAndNewerEquation) {
  struct Case {
    double dispensed_fahrenheit, excess, reid_psi, older, newer;  // [g/gal]
  };
  const Case cases[] = {{70.0, 0.0, 10.0, 5.129, 4.290},
                        {80.0, 0.0, 9.0, 5.528, 4.608},
                        {60.0, 0.0, 12.5, 5.458, 4.864},
                        {70.0, 10.0, 10.0, 4.180, 4.085}};
  constexpr double rounding = 6e-4;  // of three printed decimals
  for (const Case& c : cases) {
    const Refueling refueling{kelvin_from_fahrenheit(c.dispensed_fahrenheit), c.excess / 1.8,
                              pascal_from_psi(c.reid_psi)};
    const double gallon = grams_from_kilograms(cubic_meters_from_gallons(1.0));
    EXPECT_NEAR(refueling_loss_older(refueling) * gallon, c.older, rounding);
    EXPECT_NEAR(refueling_loss(refueling) * gallon, c.newer, rounding);
  }
}

}  // namespace
}  // namespace forecourse::parts
