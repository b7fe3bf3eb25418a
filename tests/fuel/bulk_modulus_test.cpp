// SOURCE: [api_11_1_2004, 11.1.6.1] compressibility factor; [engineeringtoolbox_585, table] handbook values
#include "forecourse/fuel/bulk_modulus.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "forecourse/base/api_units.h"
#include "forecourse/fuel/equation_of_state/helmholtz.h"
#include "forecourse/fuel/published_ranges.h"
#include "forecourse/fuel/volume_correction.h"
#include "support/check_values.h"

namespace forecourse::fuel {
namespace {

using test::CheckRow;

IsothermalBulkModulus of_petroleum(double density_60, double kelvin) {
  return isothermal_bulk_modulus(
      volume_correction(refined_group(density_60), density_60, kelvin, 0.0).scaled_compressibility);
}

TEST(BulkModulus, IsothermalAgreesWithASecondComputation) {
  const auto rows = test::rows_starting("KT-");
  EXPECT_EQ(rows.size(), 3u);
  for (const CheckRow& check : rows) {
    const double kelvin = test::kelvin_in(test::parse_inputs(check.inputs)["t"]);
    EXPECT_TRUE(test::agrees(check, of_petroleum(test::input_number(check, "rho60"), kelvin).pascal));
  }
}

TEST(BulkModulus, IsTheDerivativeOfDensityAtZeroGauge) {
  const double kelvin = kelvin_from_fahrenheit(70.0);
  constexpr double h = 1e4;  // [Pa]
  const double slope = std::log(density_at(ProductGroup::gasoline, 740.0, kelvin, h) /
                                density_at(ProductGroup::gasoline, 740.0, kelvin, 0.0)) /
                       h;
  const double modulus = of_petroleum(740.0, kelvin).pascal;
  EXPECT_NEAR(1.0 / slope, modulus, 1e-4 * modulus);  // one-sided difference: h / (2 K)
}

TEST(BulkModulus, IsentropicIsTheIsothermalTimesTheRatio) {
  EXPECT_DOUBLE_EQ(isentropic_bulk_modulus({0.914e9}, 1.28).pascal, 0.914e9 * 1.28);
  EXPECT_DOUBLE_EQ(sound_speed({1.5e9}, 900.0), std::sqrt(1.5e9 / 900.0));
}

TEST(BulkModulus, HandbookValuesAreThoseOfTheTable) {
  const std::map<std::string, PublishedRange> constants = {{"K-gasoline", handbook_gasoline_bulk_modulus},
                                                           {"K-kerosene", handbook_kerosene_bulk_modulus},
                                                           {"K-ethyl_alcohol", handbook_ethanol_bulk_modulus},
                                                           {"K-water", handbook_water_bulk_modulus},
                                                           {"K-petrol-range", handbook_petrol_bulk_modulus}};
  for (const auto& [id, constant] : constants) {
    const CheckRow check = test::row(id);
    const auto [low, high] = test::parse_range(check.expected);  // [GPa]
    EXPECT_DOUBLE_EQ(constant.low, low * 1e9) << id;
    EXPECT_DOUBLE_EQ(constant.high, high * 1e9) << id;
    test::count_check(check);
  }
}

// The documented comparison: handbook figures without a word on heat exchange are isentropic ones.
TEST(BulkModulus, HandbookValuesCompareWithTheIsentropicModulus) {
  const LiquidState ethanol = liquid_state(helmholtz_fluid(PureFluid::ethanol), kelvin_from_celsius(20.0), 101325.0);
  EXPECT_NEAR(ethanol.isentropic.pascal / handbook_ethanol_bulk_modulus.middle(), 1.0, 0.01);
  EXPECT_LT(ethanol.isothermal.pascal / handbook_ethanol_bulk_modulus.middle(), 0.86);

  const IsothermalBulkModulus gasoline = of_petroleum(740.0, kelvin_from_fahrenheit(60.0));
  EXPECT_LT(gasoline.pascal, handbook_petrol_bulk_modulus.low);
  EXPECT_NEAR(handbook_gasoline_bulk_modulus.middle() / gasoline.pascal, 1.42, 0.01);
  for (double ratio : {1.27, 1.30}) {  // n-heptane and a toluene share, 15 degC
    const double isentropic = isentropic_bulk_modulus(gasoline, ratio).pascal;
    EXPECT_GT(isentropic, handbook_petrol_bulk_modulus.low);
    EXPECT_LT(isentropic, handbook_petrol_bulk_modulus.high);
  }
}

}  // namespace
}  // namespace forecourse::fuel
