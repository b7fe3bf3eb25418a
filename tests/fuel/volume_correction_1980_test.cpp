// SOURCE: [api_11_1_1980, Tables 6B and 54B] constants as public programs carry them; rows are a second
// computation
#include "forecourse/fuel/volume_correction_1980.h"

#include <gtest/gtest.h>

#include "forecourse/base/api_units.h"
#include "forecourse/fuel/volume_correction.h"
#include "support/check_values.h"

namespace forecourse::fuel {
namespace {

using test::CheckRow;

TEST(VolumeCorrection1980, Table54BAgreesWithASecondComputation) {
  const auto rows = test::rows_starting("VCF-1980-54B");
  EXPECT_EQ(rows.size(), 11u);
  for (const CheckRow& check : rows) {
    const double kelvin = test::kelvin_in(test::parse_inputs(check.inputs)["t"]);
    EXPECT_TRUE(test::agrees(check, correction_54b_1980(test::input_number(check, "rho15"), kelvin)));
  }
}

TEST(VolumeCorrection1980, Table6BAgreesWithASecondComputation) {
  const auto rows = test::rows_starting("VCF-1980-6B");
  EXPECT_EQ(rows.size(), 6u);
  for (const CheckRow& check : rows) {
    const double kelvin = test::kelvin_in(test::parse_inputs(check.inputs)["t"]);
    EXPECT_TRUE(test::agrees(check, correction_6b_1980(test::input_number(check, "API60"), kelvin)));
  }
}

TEST(VolumeCorrection1980, StaysNearTheProcedureOf2004) {
  for (double density_15 : {720.0, 745.0, 780.0, 820.0, 850.0}) {
    for (double celsius : {-10.0, 0.0, 15.0, 25.0, 40.0}) {
      const double kelvin = kelvin_from_celsius(celsius);
      // as the header states: the constants of the transition group in degC were rounded on their own
      const double close = density_15 == 780.0 ? 1.2e-4 : 1.1e-5;
      EXPECT_NEAR(correction_54b_1980(density_15, kelvin), correction_to_15(density_15, kelvin, 0.0), close);
    }
  }
}

}  // namespace
}  // namespace forecourse::fuel
