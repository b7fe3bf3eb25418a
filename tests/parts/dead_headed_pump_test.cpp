// SOURCE: [pump_temperature_rise, example 2] 50 000 lb of water an hour, 20 hp taken and 14 hp given: 0.31 degF
#include "forecourse/parts/dead_headed_pump.h"

#include <gtest/gtest.h>

#include "forecourse/base/api_units.h"

namespace forecourse::parts {
namespace {

constexpr double pound = 0.45359237;                             // [kg]
constexpr double horsepower = 550.0 * 0.3048 * pound * 9.80665;  // [W]
constexpr double water = 4186.8;                                 // [J/(kg K)], 1 Btu/(lb degF)
constexpr double hour = 3600.0;

TEST(WarmingRate, AgreesWithThePublishedHeatBalance) {
  const HeldLiquid liquid{50000.0 * pound, water};
  const double rise = 1.8 * hour * warming_rate((20.0 - 14.0) * horsepower, liquid);  // [degF]
  EXPECT_NEAR(rise, 0.31, 0.005);                                                     // printed to two decimals
}

TEST(WarmingRate, AndTimeLeadThereAndBack) {
  const HeldLiquid liquid{6.0, 2100.0};
  EXPECT_DOUBLE_EQ(warming_rate(750.0, liquid) * time_to_warm(750.0, liquid, 10.0), 10.0);
}

// All of the heat is in the liquid: power times time is mass times specific heat times rise.
TEST(WarmingRate, KeepsTheHeat) {
  const HeldLiquid liquid{6.0, 2100.0};
  EXPECT_DOUBLE_EQ(750.0 * time_to_warm(750.0, liquid, 10.0), 6.0 * 2100.0 * 10.0);
}

}  // namespace
}  // namespace forecourse::parts
