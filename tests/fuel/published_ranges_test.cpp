// SOURCE: [afdc_fuel_properties, table], [en_14214, limits], [techzle_expansion, page]
#include "forecourse/fuel/published_ranges.h"

#include <gtest/gtest.h>

#include <functional>
#include <map>

#include "forecourse/fuel/volume_correction_1980.h"
#include "support/check_values.h"

namespace forecourse::fuel {
namespace {

double as_printed(double value) { return value; }

struct Printed {
  PublishedRange range;
  std::function<double(double)> to_si;
};

void expect_as_printed(const std::string& id, const Printed& constant) {
  const test::CheckRow check = test::row(id);
  const auto [low, high] = test::parse_range(check.expected);
  EXPECT_DOUBLE_EQ(constant.range.low, constant.to_si(low)) << id;
  EXPECT_DOUBLE_EQ(constant.range.high, constant.to_si(high)) << id;
  test::count_check(check);
}

TEST(PublishedRanges, AreThoseOfTheFuelPropertyTable) {
  const std::map<std::string, Printed> constants = {
      {"PROP-gas-sg", {gasoline_relative_density, as_printed}},
      {"PROP-gas-mu", {gasoline_viscosity, pascal_second_from_centipoise}},
      {"PROP-gas-rvp", {gasoline_reid_vapor_pressure, pascal_from_psi}},
      {"PROP-eth-sg", {ethanol_relative_density, as_printed}},
      {"PROP-eth-mu", {ethanol_viscosity, pascal_second_from_centipoise}},
      {"PROP-eth-rvp", {ethanol_reid_vapor_pressure, pascal_from_psi}},
      {"PROP-dsl-sg", {diesel_relative_density, as_printed}},
      {"PROP-dsl-mu", {diesel_viscosity, pascal_second_from_centipoise}},
      {"PROP-dsl-rvp", {diesel_reid_vapor_pressure, pascal_from_psi}},
  };
  for (const auto& [id, constant] : constants) expect_as_printed(id, constant);
  EXPECT_EQ(test::rows_starting("PROP-").size(), constants.size() + 1);  // and the rule of thumb below
}

TEST(PublishedRanges, AreTheLimitsOfEn14214) {
  const std::map<std::string, double> limits = {
      {"EN14214-rho-min", biodiesel_density_15.low},
      {"EN14214-rho-max", biodiesel_density_15.high},
      {"EN14214-nu-min", centistoke_from_square_meter_per_second(biodiesel_viscosity_40.low)},
      {"EN14214-nu-max", centistoke_from_square_meter_per_second(biodiesel_viscosity_40.high)},
  };
  EXPECT_EQ(test::rows_starting("EN14214-").size(), limits.size());
  for (const auto& [id, limit] : limits) EXPECT_TRUE(test::agrees(test::row(id), limit));
}

TEST(PublishedRanges, RuleOfThumbForExpansionIsLowForMotorGasoline) {
  const test::CheckRow check = test::row("PROP-beta-gas");
  EXPECT_DOUBLE_EQ(rule_of_thumb_gasoline_expansion, check.number());
  test::count_check(check);
  for (double density_15 : {720.0, 745.0}) {
    constexpr double h = 0.1;  // [K] about 15 degC
    const double expansion = (correction_54b_1980(density_15, kelvin_from_celsius(15.0 - h)) -
                              correction_54b_1980(density_15, kelvin_from_celsius(15.0 + h))) /
                             (2.0 * h);
    const double shortfall = 1.0 - rule_of_thumb_gasoline_expansion / expansion;
    EXPECT_GT(shortfall, 0.20);  // 20 to 26 %, as docs/theory/volume-correction.md says
    EXPECT_LT(shortfall, 0.26);
  }
}

}  // namespace
}  // namespace forecourse::fuel
