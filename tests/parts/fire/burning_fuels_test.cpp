// SOURCE: [nureg_1805_sheets, table of fuels of the heat release sheets] [nist_pool_fires, burning rates]
#include "forecourse/parts/fire/burning_fuels.h"

#include <gtest/gtest.h>

#include <string>

#include "support/check_values.h"

namespace forecourse::parts {
namespace {

// "0.055; 43700; 2.1" in kg/(m2 s), kJ/kg and 1/m
BurningFuel as_printed(const test::CheckRow& check) {
  const auto values = test::parts_of(check.expected);
  BurningFuel fuel = find_burning_fuel(check.id.substr(5)).value();
  fuel.rate_of_large_pool = std::stod(values[0]);
  fuel.heat_of_combustion = 1000.0 * std::stod(values[1]);
  fuel.absorption = std::stod(values[2]);
  return fuel;
}

TEST(BurningFuels, AreThoseOfThePublishedTable) {
  const auto rows = test::rows_starting("BURN-");
  EXPECT_EQ(rows.size(), burning_fuels().size());
  for (const auto& check : rows) {
    EXPECT_EQ(find_burning_fuel(check.id.substr(5)), as_printed(check)) << check.id;
    test::count_check(check);
  }
}

TEST(BurningFuels, MeasuredLargePoolsLieWithinAFactorOfTwo) {
  for (const char* name : {"ethanol", "heptane", "methanol"}) {
    const auto row = test::row(std::string("POOL-") + name);
    const double ratio = row.number() / find_burning_fuel(name)->rate_of_large_pool;
    EXPECT_LE(ratio, 2.0) << name;  // 2.0 for ethanol
    EXPECT_GE(ratio, 0.6) << name;  // 0.66 for heptane
    test::count_check(row);
  }
}

TEST(BurningFuels, StandForTheProductsTheyBurnLike) {
  for (const char* kind : {"gasoline-e0", "gasoline-e5", "gasoline-e10", "gasoline-e15"}) {
    EXPECT_EQ(burning_fuel_of_kind(kind), find_burning_fuel("gasoline")) << kind;
  }
  for (const char* kind : {"diesel-b0", "diesel-b5", "diesel-b7", "diesel-b20"}) {
    EXPECT_EQ(burning_fuel_of_kind(kind), find_burning_fuel("diesel")) << kind;
  }
  EXPECT_EQ(burning_fuel_of_kind("kerosene"), find_burning_fuel("kerosene"));
  EXPECT_EQ(burning_fuel_of_kind("ethanol"), find_burning_fuel("ethanol"));
}

TEST(BurningFuels, NoneStandsForWhatIsNotKnown) {
  for (const char* kind : {"diesel-exhaust-fluid", "e85", "heating-oil", "other", "", "gasoline"}) {
    EXPECT_FALSE(burning_fuel_of_kind(kind)) << kind;
  }
  EXPECT_FALSE(find_burning_fuel("hydrogen"));
}

}  // namespace
}  // namespace forecourse::parts
