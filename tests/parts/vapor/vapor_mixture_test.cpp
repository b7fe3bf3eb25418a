// SOURCE: law of nature (ideal gas): computed rows VAP-* of check_values2.csv, a second computation
#include "forecourse/parts/vapor/vapor_mixture.h"

#include <gtest/gtest.h>

#include "support/check_values.h"

namespace forecourse::parts {
namespace {

VaporMixture of(const test::CheckRow& row) {
  const std::vector<std::string> parts = test::parts_of(row.inputs);
  constexpr double per_mole = 1e-3, pascal = 1e3;  // kg/kmol to kg/mol, kPa to Pa
  return vapor_mixture(per_mole * *test::number_in(parts[0]), pascal * *test::number_in(parts[1]),
                       *test::number_in(parts[2]), pascal * *test::number_in(parts[3]));
}

TEST(VaporMixture, RowsOfTheCheckValues) {
  const auto rows = test::rows_starting("VAP-");
  ASSERT_EQ(rows.size(), 20U);
  for (const test::CheckRow& row : rows) {
    const VaporMixture mixture = of(row);
    const std::string what = row.id.substr(row.id.rfind('-') + 1);
    const double value = what == "y"     ? mixture.mole_fraction
                         : what == "M"   ? 1e3 * mixture.molar_mass
                         : what == "rho" ? mixture.density
                         : what == "rel" ? mixture.relative_density
                                         : mixture.fuel_density;
    EXPECT_NEAR(value, row.number(), 1e-5 * row.number()) << row.id;  // the rows' own tolerance
  }
}

TEST(VaporMixture, WithoutVaporItIsAir) {
  const VaporMixture air = vapor_mixture(0.066, 0.0, 288.15, 101325.0);
  EXPECT_NEAR(air.density, 1.225, 1e-4);  // SOURCE: [us_standard_atmosphere_1976, sea level] printed to four digits
  EXPECT_EQ(air.relative_density, 1.0);
  EXPECT_EQ(air.fuel_density, 0.0);
}

}  // namespace
}  // namespace forecourse::parts
