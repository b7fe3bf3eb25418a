// SOURCE: [cran_spc, manual pages of the run length functions]: the CUSUM and EWMA rows of check_values.csv, printed in
// two papers and a statistics manual; rows marked computed are a second integral-equation code.
#include "forecourse/solvers/statistics/control_chart.h"

#include <gtest/gtest.h>

#include <cmath>

#include "support/check_values.h"

namespace forecourse::test {
namespace {

using namespace solvers::statistics;

double shift_of(const CheckRow& check) { return input_number(check, "mu"); }

TEST(ControlChart, CusumRunLengths) {
  int held = 0;
  for (const double limit : {4.0, 5.0}) {
    for (const CheckRow& check : rows_starting(limit == 4.0 ? "CUSUM-h4-" : "CUSUM-h5-")) {
      // The 1982 table was got from a Markov chain: its last digit is off by up to one.
      const double digits = limit == 4.0 ? 3.5e-3 : 0.0;
      const Tolerance tolerance = parse_tolerance(check.tolerance, check.expected).value();
      EXPECT_TRUE(agrees(check, cusum_run_length({0.5, limit, 0.0}, shift_of(check)),
                         {tolerance.absolute, tolerance.relative + digits}))
          << check.id;
      ++held;
    }
  }
  EXPECT_EQ(held, 19);
}

TEST(ControlChart, CusumOfOneSide) {
  // The first is printed from a Markov chain of few states; its exact value is 117.5957, which the row names.
  EXPECT_NEAR(upper_cusum_run_length({0.5, 3.0, 0.0}, 0.0), 117.5957, 5e-5);
  EXPECT_TRUE(agrees(row("CUSUM-BE0"), upper_cusum_run_length({0.5, 3.0, 0.0}, 0.0), {6e-3, 0.0}));
  EXPECT_TRUE(agrees(row("CUSUM-BE1.5"), upper_cusum_run_length({0.5, 3.0, 0.0}, 1.5)));
  // The manual's program is off in its eighth digit: Simpson's rule at 640 steps gives 4.15008372612, as is got here.
  EXPECT_TRUE(agrees(row("CUSUM-SAS"), upper_cusum_run_length({0.25, 8.0, 0.0}, 2.5), {1.1e-7, 0.0}));
  EXPECT_TRUE(agrees(row("CUSUM-SAShs"), upper_cusum_run_length({0.25, 8.0, 0.1}, 2.5), {1.1e-7, 0.0}));
  EXPECT_NEAR(upper_cusum_run_length({0.25, 8.0, 0.0}, 2.5), 4.15008372612, 2e-10);  // computed
  EXPECT_TRUE(agrees(row("CUSUM-SAS2"), cusum_run_length({0.25, 8.0, 0.0}, 2.5)));
}

TEST(ControlChart, EwmaRunLengths) {
  int held = 0;
  const auto hold = [&](const std::string& prefix, const EwmaChart& chart) {
    for (const CheckRow& check : rows_starting(prefix)) {
      // The printed limits hold three or four digits: at no shift the length is off by half a percent from them.
      const Tolerance tolerance = parse_tolerance(check.tolerance, check.expected).value();
      const double rounded = check.verified == Verified::published ? 5e-3 : 0.0;
      EXPECT_TRUE(
          agrees(check, ewma_run_length(chart, shift_of(check)), {tolerance.absolute, tolerance.relative + rounded}))
          << check.id;
      ++held;
    }
  };
  hold("EWMA-.5-", {0.5, 3.071});
  hold("EWMA-.03-", {0.03, 2.437});
  hold("EWMA-0.2-", {0.2, 2.962});
  hold("EWMA-0.1-", {0.1, 2.814});
  EXPECT_EQ(held, 26);
  EXPECT_TRUE(agrees(row("EWMA-SAS"), ewma_run_length({0.25, 3.0}, 1.0)));
}

// By hand: reference 0.5, limit 2.
TEST(ControlChart, SumsByHand) {
  const std::vector<CusumPoint> points = cusum({1.0, 2.0, -3.0, 0.0}, {0.5, 1.9, 0.0});
  EXPECT_DOUBLE_EQ(points[0].upper, 0.5);
  EXPECT_DOUBLE_EQ(points[1].upper, 2.0);
  EXPECT_TRUE(points[1].signals_up);
  EXPECT_DOUBLE_EQ(points[2].upper, 0.0);
  EXPECT_DOUBLE_EQ(points[2].lower, 2.5);
  EXPECT_TRUE(points[2].signals_down);
  EXPECT_DOUBLE_EQ(points[3].lower, 2.0);
}

TEST(ControlChart, AverageByHand) {
  const std::vector<EwmaPoint> points = ewma({1.0, 0.0}, {0.2, 3.0});
  EXPECT_DOUBLE_EQ(points[0].average, 0.2);
  EXPECT_DOUBLE_EQ(points[0].limit, 3.0 * 0.2);  // one observation: its own share of one deviation
  EXPECT_DOUBLE_EQ(points[1].average, 0.16);
  EXPECT_FALSE(points[1].signals);
}

TEST(ControlChart, ChartsWithoutSenseHaveNoRunLength) {
  EXPECT_TRUE(std::isnan(cusum_run_length({0.5, 0.0, 0.0}, 0.0)));
  EXPECT_TRUE(std::isnan(ewma_run_length({0.0, 3.0}, 0.0)));
  EXPECT_TRUE(std::isnan(ewma_run_length({1.5, 3.0}, 0.0)));
}

}  // namespace
}  // namespace forecourse::test
