// SOURCE: [cfr_63_cccccc, 63.11132] throughput; closed forms; the stations are invented.
#include "forecourse/studies/vapor/vapor.h"

#include <gtest/gtest.h>

#include "forecourse/base/api_units.h"
#include "forecourse/fuel/vapor_pressure.h"
#include "support/check_values.h"
#include "support/stations.h"

namespace forecourse::studies {
namespace {

using test::station;
using test::with;

const std::string shop = R"(format = 1
[site]
ground_temperature = "60 degF"
[[product]]
id = "regular"
kind = "gasoline-e10"
gravity = "60 degAPI"
viscosity = "0.5 mPa.s"
reid_vapor_pressure = "10 psi"
[[tank]]
id = "T1"
product = "regular"
surface_elevation = "-8 ft"
  [[tank.fill]]
  id = "F1"
  drop_tube = { length = "12 ft", bore = "4 in", end_above_bottom = "6 in" }
[[delivery]]
id = "load"
  [[delivery.compartment]]
  tank = "T1"
  product = "regular"
  volume = "8000 gal"
  temperature = "80 degF"
[operations]
throughput = [{ product = "regular", per_month = "100000 gal" }]
)";

VaporResult of(const std::string& text, const VaporOptions& options = {}) {
  return study_vapor(station(text), options);
}

const LossTold& loss(const ProductVapor& product, const std::string& what, const std::string& by) {
  for (const LossTold& one : product.losses) {
    if (one.what == what && one.by == by) return one;
  }
  throw std::out_of_range(what);
}

/// The row of the published law at Reid 10 psi and 60 degF.
TEST(VaporStudy, TellsTheTrueVaporPressure) {
  const ProductVapor product = of(shop).products.at(0);
  EXPECT_TRUE(test::agrees(test::row("TVP-RVP10-60F"), psi_from_pascal(product.true_vapor_pressure.value())));
  EXPECT_NEAR(product.molar_mass.value(), 0.066, 1e-12);
  VaporOptions warm;
  warm.temperature = kelvin_from_fahrenheit(100.0);
  EXPECT_TRUE(test::agrees(test::row("TVP-RVP10-100F"),
                           psi_from_pascal(of(shop, warm).products.at(0).true_vapor_pressure.value())));
}

/// 12.46 S P M / T with the row's pressure at 60 degF: a second computation of the closed form.
TEST(VaporStudy, LoadsByTheEquation) {
  const VaporResult result = of(shop);
  const LossTold& told = loss(result.products.at(0), "filling the tank, submerged", "loading equation, S 0.60");
  const double pounds = 12.46 * 0.6 * test::row("TVP-RVP10-60F").number() * 66.0 / (60.0 + 459.67);
  const double expected = kilograms_per_cubic_meter_from_pounds_per_thousand_gallons(pounds);
  EXPECT_NEAR(told.mass_per_volume.value(), expected, 1e-4 * expected);  // digits of the row
  EXPECT_NEAR(told.mass_per_month.value(), expected * cubic_meters_from_gallons(100000.0), 1e-4 * *told.mass_per_month);
  EXPECT_TRUE(told.here.value());
}

TEST(VaporStudy, TierByThroughput) {
  EXPECT_EQ(of(shop).tier, parts::ThroughputTier::from_100000);
  const std::string less = with(shop, "operations.throughput.1.per_month", "99000 gal");
  EXPECT_EQ(of(less).tier, parts::ThroughputTier::from_10000);
  std::string none = shop;
  none.erase(none.find("[operations]"));
  EXPECT_FALSE(of(none).tier.has_value());
  EXPECT_FALSE(of(none).products.at(0).lost.has_value());
}

TEST(VaporStudy, StageOneTakesItsShare) {
  const std::string balanced = with(shop, "tank.T1.vapor_return.efficiency", "95 %");
  const ProductVapor product = of(balanced).products.at(0);
  const LossTold& told = loss(product, "filling the tank, submerged, vapor balanced", "loading equation, S 1.00");
  const LossTold& open = loss(product, "filling the tank, submerged", "loading equation, S 0.60");
  EXPECT_NEAR(told.mass_per_volume.value(), 0.05 / 0.6 * open.mass_per_volume.value(), 1e-12);
  EXPECT_EQ(product.lost, product.with_stage_one);
  EXPECT_LT(product.with_stage_one.value(), product.without_stage_one.value());
}

TEST(VaporStudy, APressureOutOfThinAirIsNotTold) {
  std::string text = shop;
  const std::string line = "reid_vapor_pressure = \"10 psi\"\n";
  text.erase(text.find(line), line.size());
  const ProductVapor product = of(text).products.at(0);
  EXPECT_FALSE(product.true_vapor_pressure.has_value());
  EXPECT_NE(product.pressure_source.find("reid_vapor_pressure"), std::string::npos);
}

/// From 80 to 60 degF gasoline of 60 degAPI shrinks by the table's factor: CTL at 80 degF is about 0.9864, at 60 it
/// is 1.
TEST(ProductCare, TheStockShrinksAsItCools) {
  const ProductCare care = of(shop).care;
  ASSERT_EQ(care.stock.size(), 1U);
  EXPECT_NEAR(care.stock[0].factor.value(), 0.9864, 5e-4);
  EXPECT_NEAR(care.stock[0].change.value(), cubic_meters_from_gallons(8000.0) * (*care.stock[0].factor - 1.0), 1e-12);
}

TEST(ProductCare, WaterOnlyBetweenThePublishedPoints) {
  EXPECT_NEAR(of(shop).care.water.at(0).share.value(), 0.004948, 1e-6);
  VaporOptions hot;
  hot.temperature = kelvin_from_fahrenheit(85.0);
  EXPECT_FALSE(of(shop, hot).care.water.at(0).share.has_value());
  EXPECT_FALSE(of(with(shop, "product.regular.kind", "gasoline-e15")).care.water.at(0).share.has_value());
}

TEST(ProductCare, ProofIsAskedAboveTenPercent) {
  EXPECT_FALSE(of(shop).care.tanks.at(0).must_be_shown);
  EXPECT_TRUE(of(with(shop, "product.regular.kind", "gasoline-e15")).care.tanks.at(0).must_be_shown);
}

}  // namespace
}  // namespace forecourse::studies
