#include "forecourse/studies/gasoline.h"

#include <gtest/gtest.h>

#include "forecourse/base/unit_text.h"
#include "forecourse/studies/delivery/limits.h"
#include "forecourse/studies/vapor/vapor.h"
#include "support/stations.h"

namespace forecourse::studies {
namespace {

/// Regular, premium and diesel in three tanks, a fourth product in none.
site::Site shop(const std::string& premium_kind, const std::string& throughput) {
  return test::station(
      "format = 1\n[[product]]\nid = \"regular\"\nkind = \"gasoline-e10\"\n[[product]]\nid = \"premium\"\nkind = \"" +
      premium_kind +
      "\"\n[[product]]\nid = \"diesel\"\nkind = \"diesel-b5\"\n[[product]]\nid = \"pure\"\nkind = "
      "\"gasoline-e0\"\n[[tank]]\nid = \"T1\"\nproduct = \"regular\"\n[[tank]]\nid = \"T2\"\nproduct = "
      "\"premium\"\n[[tank]]\nid = \"T3\"\nproduct = \"diesel\"\n[operations]\nthroughput = [" +
      throughput + "]\n");
}

std::string sells(const std::string& product, const std::string& amount) {
  return "{ product = \"" + product + "\", per_month = \"" + amount + "\" }, ";
}

const std::string regular = sells("regular", "90000 gal"), premium = sells("premium", "20000 gal");

/// One sum, whichever study asks.
void expect_sum(const site::Site& site, std::optional<double> gallons) {
  const std::optional<double> sum = gasoline_throughput(site);
  ASSERT_EQ(sum.has_value(), gallons.has_value());
  EXPECT_EQ(study_vapor(site, {}).gasoline_throughput, sum);
  EXPECT_EQ(is_in_top_tier(site).has_value(), sum.has_value());
  if (!sum) return;
  EXPECT_NEAR(from_si(*sum, "gal"), *gallons, 1e-6);
  EXPECT_EQ(*is_in_top_tier(site), *gallons >= 100000.0);
}

TEST(GasolineThroughput, IsThatOfTheGasolinesInTanks) {
  expect_sum(shop("gasoline-e10", regular + premium), 110000.0);
  expect_sum(shop("gasoline-e10", regular + premium + sells("diesel", "50000 gal") + sells("pure", "7 gal")), 110000.0);
  expect_sum(shop("diesel-b5", regular), 90000.0);
}

TEST(GasolineThroughput, IsNotKnownWhereThatOfOneIsNot) { expect_sum(shop("gasoline-e10", regular), std::nullopt); }

TEST(GasolineThroughput, IsNotKnownWhereAFuelMayBeGasoline) {
  expect_sum(shop("other", regular + premium), std::nullopt);
  expect_sum(shop("other", regular), std::nullopt);
}

}  // namespace
}  // namespace forecourse::studies
