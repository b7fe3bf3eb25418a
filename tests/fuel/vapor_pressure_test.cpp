// SOURCE: [ap42_7_1, figures 7.1-13b, 7.1-14b, 7.1-15 and table 7.1-2]; [directive_98_70, Annex III]
#include "forecourse/fuel/vapor_pressure.h"

#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/base/api_units.h"
#include "support/check_values.h"

namespace forecourse::fuel {
namespace {

using test::CheckRow;
using test::input_number;

TEST(VaporPressure, RefinedStockAgreesWithASecondComputation) {
  const auto rows = test::rows_starting("TVP-RVP");
  EXPECT_EQ(rows.size(), 28u);
  for (const CheckRow& check : rows) {
    const double pascal =
        true_vapor_pressure_refined(pascal_from_psi(input_number(check, "RVP")), input_number(check, "S"),
                                    kelvin_from_fahrenheit(input_number(check, "T")));
    EXPECT_TRUE(test::agrees(check, psi_from_pascal(pascal)));
  }
}

TEST(VaporPressure, CrudeStockAndConstantsAgreeWithASecondComputation) {
  const CheckRow crude = test::row("TVP-crude-RVP10-60F");
  EXPECT_TRUE(test::agrees(
      crude, psi_from_pascal(true_vapor_pressure_crude(pascal_from_psi(10.0), kelvin_from_fahrenheit(60.0)))));
  const VaporPressureLaw law = vapor_pressure_law(pascal_from_psi(10.0), motor_gasoline_slope);
  EXPECT_TRUE(test::agrees(test::row("TVP-A-RVP10"), law.a));
  EXPECT_TRUE(test::agrees(test::row("TVP-B-RVP10"), law.b));
}

// As printed: Reid [psi], A [1], B [degR], true vapor pressure at 60 degF [psi].
struct Table7_1_2 {
  double reid, a, b, at_60;
};

TEST(VaporPressure, GasolinesAgreeWithTable7_1_2) {
  for (const Table7_1_2& row : {Table7_1_2{13.0, 11.644, 5043.6, 7.0}, Table7_1_2{10.0, 11.724, 5237.3, 5.2},
                                Table7_1_2{7.0, 11.833, 5500.6, 3.5}}) {
    const VaporPressureLaw law = vapor_pressure_law(pascal_from_psi(row.reid), motor_gasoline_slope);
    EXPECT_NEAR(law.a, row.a, 0.0005);  // half of the last printed digit
    EXPECT_NEAR(law.b, row.b, 0.05);    // half of the last printed digit
    const double kelvin = kelvin_from_fahrenheit(60.0);
    const double refined = true_vapor_pressure_refined(pascal_from_psi(row.reid), motor_gasoline_slope, kelvin);
    EXPECT_NEAR(psi_from_pascal(refined), row.at_60, 0.1);  // one unit of the printed digit: the two figures differ
    EXPECT_NEAR(psi_from_pascal(true_vapor_pressure(law, kelvin)), row.at_60, 0.1);
  }
}

TEST(VaporPressure, DieselAgreesWithTable7_1_2) {
  const double at_60 = true_vapor_pressure(number_2_fuel_oil, kelvin_from_fahrenheit(60.0));
  EXPECT_NEAR(psi_from_pascal(at_60), 0.006, 0.0005);  // half of the last printed digit
}

TEST(VaporPressure, RisesWithTemperatureAndReid) {
  for (double psi = 7.0; psi < 15.0; psi += 1.0) {
    for (double fahrenheit = 20.0; fahrenheit < 110.0; fahrenheit += 10.0) {
      const double kelvin = kelvin_from_fahrenheit(fahrenheit);
      const double here = true_vapor_pressure_refined(pascal_from_psi(psi), motor_gasoline_slope, kelvin);
      EXPECT_GT(true_vapor_pressure_refined(pascal_from_psi(psi), motor_gasoline_slope, kelvin + 1.0), here);
      EXPECT_GT(true_vapor_pressure_refined(pascal_from_psi(psi + 0.5), motor_gasoline_slope, kelvin), here);
    }
  }
}

TEST(VaporPressure, EthanolWaiverIsThatOfTheAnnex) {
  const auto rows = test::rows_starting("RVPW-");
  EXPECT_EQ(rows.size(), 14u);
  for (const CheckRow& check : rows) {
    const double pascal = ethanol_vapor_pressure_waiver(test::number_in(check.inputs).value() / 100.0);
    EXPECT_TRUE(test::agrees(check, pascal / 1000.0));
  }
  EXPECT_TRUE(std::isnan(ethanol_vapor_pressure_waiver(0.11)));
  EXPECT_TRUE(std::isnan(ethanol_vapor_pressure_waiver(-0.01)));
}

}  // namespace
}  // namespace forecourse::fuel
