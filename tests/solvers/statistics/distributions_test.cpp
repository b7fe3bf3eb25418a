// SOURCE: from memory, not verified: 1.959963984540054 of the normal law. The STAT rows of check_values.csv are
// quantiles and probabilities of a general statistics library, computed; t of one degree is Cauchy's and of two
// algebraic: closed form.
#include "forecourse/solvers/statistics/distributions.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "support/check_values.h"

namespace forecourse::test {
namespace {

using namespace solvers::statistics;

TEST(Distributions, QuantilesOfStudent) {
  int held = 0;
  for (const CheckRow& check : rows_starting("STAT-t95-")) {
    EXPECT_TRUE(agrees(check, student_quantile(0.95, input_number(check, "df")))) << check.id;
    ++held;
  }
  EXPECT_EQ(held, 6);
}

TEST(Distributions, NoneSeen) {
  int held = 0;
  for (const CheckRow& check : rows_starting("STAT-0of")) {
    EXPECT_TRUE(agrees(check, share_when_none_seen(std::stoi(check.id.substr(8)), 0.95))) << check.id;
    ++held;
  }
  EXPECT_EQ(held, 6);
}

TEST(Distributions, AlarmProbabilities) {
  EXPECT_TRUE(agrees(row("STAT-PFA"), alarm_probability(0.05, 0.0, -0.003, 0.02, 24)));
  EXPECT_TRUE(agrees(row("STAT-PD"), alarm_probability(0.05, 0.1, -0.003, 0.02, 24)));
}

TEST(Distributions, StudentOfOneAndTwoDegrees) {
  for (const double t : {-30.0, -1.7, -0.01, 0.0, 0.4, 3.0, 200.0}) {
    EXPECT_NEAR(student_probability(t, 1.0), 0.5 + std::atan(t) / std::numbers::pi, 1e-13) << t;
    EXPECT_NEAR(student_probability(t, 2.0), 0.5 + t / (2.0 * std::sqrt(2.0 + t * t)), 1e-13) << t;
  }
}

TEST(Distributions, StudentOfManyDegreesIsNormal) {
  EXPECT_NEAR(student_probability(1.3, 1e7), normal_probability(1.3), 1e-7);  // they part by about t^3 / (4 n)
}

TEST(Distributions, ThereAndBack) {
  for (const double p : {1e-9, 1e-4, 0.05, 0.3, 0.5, 0.77, 0.999}) {
    EXPECT_NEAR(normal_probability(normal_quantile(p)), p, 1e-14) << p;
    EXPECT_NEAR(student_probability(student_quantile(p, 7.0), 7.0), p, 1e-13) << p;
  }
  EXPECT_NEAR(normal_quantile(0.975), 1.959963984540054, 1e-14);
}

TEST(Distributions, NoProbabilityHasNoQuantile) {
  EXPECT_TRUE(std::isnan(normal_quantile(0.0)));
  EXPECT_TRUE(std::isnan(normal_quantile(1.0)));
  EXPECT_TRUE(std::isnan(student_quantile(-0.1, 5.0)));
  EXPECT_TRUE(std::isnan(student_quantile(0.4, 0.0)));
  EXPECT_TRUE(std::isnan(alarm_probability(0.05, 0.0, 0.0, 0.0, 24)));
}

}  // namespace
}  // namespace forecourse::test
