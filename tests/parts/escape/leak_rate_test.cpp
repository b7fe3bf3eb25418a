// SOURCE: closed form; rows LEAK are a second computation
#include "forecourse/parts/escape/leak_rate.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "forecourse/base/api_units.h"
#include "support/check_values.h"

namespace forecourse::parts {
namespace {

double from_gallons_per_hour(double gph) { return gph * 231.0 * std::pow(0.0254, 3) / 3600.0; }
double in_gallons_per_hour(double rate) { return rate / from_gallons_per_hour(1.0); }

const LeakReading three_at_ten{pascal_from_psi(10.0), from_gallons_per_hour(3.0)};

double gallons_per_hour_at(double psi, double exponent) {
  return in_gallons_per_hour(leak_rate(leak_law(three_at_ten, exponent), pascal_from_psi(psi)));
}

TEST(LeakRate, RowsOfThreeGallonsAnHourAtTenPsi) {
  int count = 0;
  for (const test::CheckRow& check : test::rows_starting("LEAK")) {
    if (check.unit != "gal/h") continue;
    const double psi = test::input_number(check, "P");
    const auto expected = test::parts_of(check.expected);
    EXPECT_NEAR(gallons_per_hour_at(psi, sharp_hole_exponent), *test::number_in(expected.at(0)), 1e-6);  // as printed
    EXPECT_NEAR(gallons_per_hour_at(psi, laminar_crack_exponent), *test::number_in(expected.at(1)), 1e-6);
    test::count_check(check);
    ++count;
  }
  EXPECT_EQ(count, 9);
}

TEST(LeakRate, OfASharpHoleAtLinePressure) {
  EXPECT_NEAR(gallons_per_hour_at(30.0, 0.5), 5.20, 0.01 * 5.20);  // 1 %
  EXPECT_NEAR(gallons_per_hour_at(26.0, 0.5), 4.84, 0.01 * 4.84);
}

TEST(LeakRate, LawComesBackFromTwoReadings) {
  for (const double exponent : {0.5, 0.63, 0.8, 1.0, 1.5}) {
    const LeakLaw law = leak_law(three_at_ten, exponent);
    const LeakReading low{7e4, leak_rate(law, 7e4)}, high{2.4e5, leak_rate(law, 2.4e5)};
    for (const auto& found : {leak_law(low, high), leak_law(high, low)}) {
      EXPECT_NEAR(std::get<LeakLaw>(found).exponent, exponent, 1e-14);
      EXPECT_NEAR(leak_rate(std::get<LeakLaw>(found), 1e5) / leak_rate(law, 1e5), 1.0, 1e-13);
    }
  }
}

TEST(LeakRate, RefusesReadingsThatMakeNoLaw) {
  const LeakReading good{1e5, 1e-6};
  const auto fault = [&](LeakReading other) { return std::get<LeakFault>(leak_law(good, other)); };
  EXPECT_EQ(fault({1e5, 2e-6}), LeakFault::equal_pressures);
  EXPECT_EQ(fault({2e5, 0.9e-6}), LeakFault::falling_rate);
  EXPECT_EQ(fault({2e5, 1e-6}), LeakFault::falling_rate);
  EXPECT_EQ(fault({2e5, 0.0}), LeakFault::not_positive);
  EXPECT_EQ(fault({-2e5, 1e-6}), LeakFault::not_positive);
  EXPECT_EQ(fault({std::numeric_limits<double>::quiet_NaN(), 1e-6}), LeakFault::not_positive);
}

TEST(LeakRate, UnknownExponentLeavesARange) {
  const Estimate above = leak_rate_between(three_at_ten, pascal_from_psi(30.0));
  EXPECT_NEAR(in_gallons_per_hour(above.low), 5.196152, 1e-6);  // sqrt(3) times 3
  EXPECT_NEAR(in_gallons_per_hour(above.high), 9.0, 1e-12);
  const Estimate below = leak_rate_between(three_at_ten, pascal_from_psi(1.5));
  EXPECT_NEAR(in_gallons_per_hour(below.low), 0.45, 1e-12);
  EXPECT_NEAR(in_gallons_per_hour(below.high), 1.161895, 1e-6);
  const Estimate there = leak_rate_between(three_at_ten, three_at_ten.pressure);
  EXPECT_EQ(there, (Estimate{three_at_ten.rate, three_at_ten.rate}));
}

TEST(LeakRate, NothingComesOutWithoutPressure) {
  EXPECT_EQ(leak_rate(leak_law(three_at_ten, 0.5), -1e4), 0.0);
  EXPECT_EQ(leak_rate_between(three_at_ten, -1e4), Estimate{});
}

}  // namespace
}  // namespace forecourse::parts
