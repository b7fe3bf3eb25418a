// SOURCE: [nist_prover_article, coefficients and reference temperature]: PROVER rows of check_values2.csv; the worked
// case is computed.
#include "forecourse/parts/meter/test_measure.h"

#include <gtest/gtest.h>

#include "forecourse/base/api_units.h"
#include "forecourse/fuel/volume_correction_1980.h"
#include "support/check_values.h"

namespace forecourse::test {
namespace {

using namespace parts;

constexpr double cubic_inches_per_gallon = 231.0;

TEST(TestMeasure, MeetsTheCoefficients) {
  EXPECT_TRUE(agrees(row("PROVER-mild"), per_fahrenheit_from_per_kelvin(mild_steel_measure_expansion()), {0.0, 1e-12}));
  EXPECT_TRUE(agrees(row("PROVER-ss"), per_fahrenheit_from_per_kelvin(stainless_measure_expansion()), {0.0, 1e-12}));
}

TEST(TestMeasure, MeetsTheChangesOfVolume) {
  int held = 0;
  for (const double gallons : {100.0, 5.0}) {
    for (const CheckRow& check : rows_starting(gallons == 5.0 ? "PROVER-5-" : "PROVER-100-")) {
      const bool stainless = check.id.find("2.65e-05") != std::string::npos;
      const double expansion = stainless ? stainless_measure_expansion() : mild_steel_measure_expansion();
      const double fahrenheit = std::stod(check.id.substr(check.id.rfind('-') + 1));
      const double volume =
          true_volume(gallons, expansion, kelvin_from_fahrenheit(fahrenheit), kelvin_from_fahrenheit(60.0));
      EXPECT_TRUE(agrees(check, (volume - gallons) * cubic_inches_per_gallon)) << check.id;
      ++held;
    }
  }
  EXPECT_EQ(held, 5);
}

TEST(TestMeasure, MeetsTheWorkedCase) {
  const double can = true_volume(19.93, 4.77e-5, kelvin_from_celsius(23.5), kelvin_from_celsius(15.0));
  EXPECT_TRUE(agrees(row("PROVER-ex-V"), can));
  const double in_can = fuel::correction_54b_1980(745.0, kelvin_from_celsius(23.5));
  const double at_meter = fuel::correction_54b_1980(745.0, kelvin_from_celsius(25.0));
  EXPECT_TRUE(agrees(row("PROVER-ex-VCF1"), in_can));
  EXPECT_TRUE(agrees(row("PROVER-ex-VCF2"), at_meter));
  EXPECT_TRUE(agrees(row("PROVER-ex-err"), 100.0 * meter_error(20.0 * at_meter, can * in_can)));
}

}  // namespace
}  // namespace forecourse::test
