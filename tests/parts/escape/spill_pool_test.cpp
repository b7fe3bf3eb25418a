// SOURCE: closed form; rows EVAP are a second computation of an equation from memory, not verified
#include "forecourse/parts/escape/spill_pool.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "forecourse/base/constants.h"
#include "support/check_values.h"

namespace forecourse::parts {
namespace {

constexpr double pound = 0.45359237;                        // [kg]
constexpr double square_foot = 0.3048 * 0.3048;             // [m2]
constexpr double millimeter_of_mercury = 101325.0 / 760.0;  // [Pa], to 1.4e-7 of the conventional one
double in_pounds_per_minute(double rate) { return rate / pound * 60.0; }

TEST(SpillPool, HoldsItsVolume) {
  const Pool pool = pool_of(0.234, 2e-3);
  EXPECT_DOUBLE_EQ(pool.area, 117.0);
  EXPECT_NEAR(std::numbers::pi * pool.radius * pool.radius, 117.0, 1e-12);
  EXPECT_EQ(pool_of(0.0, 2e-3).area, 0.0);
}

TEST(SpillPool, ThickFilmMakesTheSmallPool) {
  const PoolRange range = pool_between(0.01, {1e-3, 4e-3});
  EXPECT_DOUBLE_EQ(range.smallest.area, 2.5);
  EXPECT_DOUBLE_EQ(range.largest.area, 10.0);
  EXPECT_DOUBLE_EQ(range.largest.radius, 2.0 * range.smallest.radius);
}

TEST(SpillPool, LiesStillAtItsFilm) {
  EXPECT_EQ(spreading_rate(2e-3, 2e-3), 0.0);
  EXPECT_EQ(spreading_rate(1e-3, 2e-3), 0.0);
  EXPECT_DOUBLE_EQ(spreading_rate(6e-3, 1e-3), std::sqrt(2.0 * standard_gravity * 5e-3));
}

// The same law by many short steps of the classic fourth-order rule, from a radius that is not zero.
TEST(SpillPool, SpreadsAsItsRateSays) {
  const double volume = 0.02, film = 2e-3, start = 0.2 * spreading_time(volume, film);
  const double end = 0.7 * spreading_time(volume, film);
  const auto rate = [&](double r) { return spreading_rate(volume / (std::numbers::pi * r * r), film); };
  double r = pool_after(volume, film, start).radius;
  const int steps = 1000;
  const double h = (end - start) / steps;
  for (int i = 0; i < steps; ++i) {
    const double a = rate(r), b = rate(r + 0.5 * h * a), c = rate(r + 0.5 * h * b), d = rate(r + h * c);
    r += h / 6.0 * (a + 2.0 * b + 2.0 * c + d);
  }
  EXPECT_NEAR(r / pool_after(volume, film, end).radius, 1.0, 1e-10);  // fourth order of the step
}

TEST(SpillPool, GrowsFromNothingToItsLast) {
  const double volume = 0.02, film = 2e-3, time = spreading_time(volume, film);
  EXPECT_EQ(pool_after(volume, film, 0.0).area, 0.0);
  EXPECT_EQ(pool_after(volume, film, time).area, pool_of(volume, film).area);
  EXPECT_EQ(pool_after(volume, film, 2.0 * time).radius, pool_of(volume, film).radius);
  EXPECT_EQ(pool_after(0.0, film, 1.0).area, 0.0);
}

TEST(SpillPool, EvaporatesAsTheSecondComputation) {
  const Evaporating slow{1.5, 0.066, 270.0 * millimeter_of_mercury, 298.0};
  Evaporating fast = slow;
  fast.wind = 3.0;
  const double area = 100.0 * square_foot;
  // Relative 1e-6: the digits of the rows and of the millimeter of mercury.
  EXPECT_TRUE(
      agrees(test::row("EVAP-gas-1.5"), in_pounds_per_minute(evaporation_rate(slow, area)), {.relative = 1e-6}));
  EXPECT_TRUE(agrees(test::row("EVAP-gas-3"), in_pounds_per_minute(evaporation_rate(fast, area)), {.relative = 1e-6}));
}

TEST(SpillPool, EvaporationGoesWithAreaAndVaporPressure) {
  const Evaporating from{2.0, 0.066, 3e4, 290.0};
  Evaporating twice = from;
  twice.vapor_pressure = 6e4;
  EXPECT_DOUBLE_EQ(evaporation_rate(from, 20.0), 2.0 * evaporation_rate(from, 10.0));
  EXPECT_DOUBLE_EQ(evaporation_rate(twice, 10.0), 2.0 * evaporation_rate(from, 10.0));
}

}  // namespace
}  // namespace forecourse::parts
