// SOURCE: [nfpa_77_2000, table 7.6]
#include "forecourse/parts/escape/static_limit.h"

#include <gtest/gtest.h>

#include <string>

#include "support/check_values.h"

namespace forecourse::parts {
namespace {

using test::row;

double in_liters_per_minute(double flow) { return flow * 1000.0 * 60.0; }

TEST(StaticLimit, FiguresOfTheTable) {
  EXPECT_TRUE(agrees(row("ELEC-slow"), start_of_fill_velocity, {}));
  EXPECT_TRUE(agrees(row("ELEC-relax"), relaxation_time, {}));
  test::count_check(row("ELEC-max"));  // the law itself, held to its figures below
  EXPECT_EQ(fill_velocity_limit(0.5), 1.0);
  EXPECT_EQ(fill_velocity_limit(0.05), 7.0);
}

TEST(StaticLimit, VelocityAndFlowBySize) {
  for (const std::string size : {"25.4", "38.1", "50.8", "76.2", "101.6"}) {
    const test::CheckRow check = row("ELEC-" + size + "mm");
    const double bore = test::input_number(check, "d"), limit = fill_velocity_limit(bore);
    const auto expected = test::parts_of(check.expected);
    EXPECT_NEAR(limit, *test::number_in(expected.at(0)), 1e-6);  // as printed
    EXPECT_NEAR(in_liters_per_minute(fill_flow(limit, bore)), *test::number_in(expected.at(1)), 1e-4);
    test::count_check(check);
  }
}

TEST(StaticLimit, ProductOfVelocityAndBoreIsHeld) {
  for (double bore = 0.02; bore < 0.3; bore += 0.001) {
    EXPECT_LE(fill_velocity_limit(bore) * bore, 0.5 * (1.0 + 1e-15));
    EXPECT_LE(fill_velocity_limit(bore), 7.0);
  }
}

}  // namespace
}  // namespace forecourse::parts
