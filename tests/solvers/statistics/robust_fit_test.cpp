// SOURCE: [statsmodels, robust/tests/results/results_rlm.py, carried there from R's rlm]: coefficients, standard
// errors, scale and weights on the stack loss data, printed to 8 digits.
#include "forecourse/solvers/statistics/robust_fit.h"

#include <gtest/gtest.h>

#include <cmath>

namespace forecourse::test {
namespace {

using solvers::statistics::Column;
using solvers::statistics::robust_fit;
using solvers::statistics::RobustFit;
using solvers::statistics::RobustRule;

std::vector<Column> stack_columns() {
  return {{"air", {80, 80, 75, 62, 62, 62, 62, 62, 58, 58, 58, 58, 58, 58, 50, 50, 50, 50, 50, 56, 70}},
          {"water", {27, 27, 25, 24, 22, 23, 24, 24, 23, 18, 18, 17, 18, 19, 18, 18, 19, 19, 20, 20, 20}},
          {"acid", {89, 88, 90, 87, 87, 87, 93, 93, 87, 80, 89, 88, 82, 93, 89, 86, 72, 79, 80, 82, 91}},
          {"one", std::vector<double>(21, 1.0)}};
}

const std::vector<double> stack_loss{42, 37, 37, 28, 18, 18, 19, 20, 15, 14, 14, 13, 11, 12, 8, 7, 8, 8, 9, 15, 15};

/// The printed values stop where R stops, at a change of 1e-4 of the residuals: as far off are coefficients.
void hold(const RobustFit& robust, const std::vector<double>& values, const std::vector<double>& errors, double scale,
          double last_weight) {
  EXPECT_TRUE(robust.settled);
  for (std::size_t j = 0; j < values.size(); ++j) {
    EXPECT_NEAR(*robust.fit.coefficients[j].value, values[j], 5e-4 * std::abs(values[j])) << j;
    EXPECT_NEAR(*robust.fit.coefficients[j].standard_error, errors[j], 2e-3 * errors[j]) << j;
  }
  EXPECT_NEAR(robust.scale, scale, 1e-3 * scale);
  EXPECT_NEAR(robust.fit.weights.back(), last_weight, 1e-3);
}

TEST(RobustFit, HuberMeetsThePrintedFit) {
  hold(robust_fit(stack_columns(), stack_loss, RobustRule::huber), {0.82937387, 0.92610818, -0.12784916, -41.02653105},
       {0.11118035, 0.3034081, 0.12885259, 9.8073472}, 2.4407137948148447, 0.36814106);
}

TEST(RobustFit, BisquareMeetsThePrintedFit) {
  hold(robust_fit(stack_columns(), stack_loss), {0.9275471, 0.65073222, -0.11233103, -42.28525369},
       {0.10805398, 0.29487634, 0.12522928, 9.5315672}, 2.2818858795649497, 0.00222999);
}

TEST(RobustFit, ATypoHasNoSay) {
  std::vector<double> x, y;
  for (int i = 0; i < 30; ++i) {
    x.push_back(i);
    y.push_back(1.5 + 0.25 * i + 0.1 * std::sin(17.0 * i));
  }
  std::vector<double> typed = y;
  typed[12] *= 10.0;
  const std::vector<Column> columns{{"one", std::vector<double>(30, 1.0)}, {"x", x}};
  const RobustFit clean = robust_fit(columns, y);
  const RobustFit robust = robust_fit(columns, typed);
  EXPECT_EQ(robust.fit.weights[12], 0.0);
  EXPECT_NEAR(*robust.fit.coefficients[1].value, *clean.fit.coefficients[1].value, 5e-4);  // one of 30 rows is gone
}

TEST(RobustFit, WhereHalfLieOnALineItIsTheLine) {
  const RobustFit robust =
      robust_fit({{"one", std::vector<double>(7, 1.0)}, {"x", {0, 1, 2, 3, 4, 5, 6}}}, {0, 1, 2, 3, 4, 5, 6});
  EXPECT_NEAR(*robust.fit.coefficients[1].value, 1.0, 1e-12);
}

}  // namespace
}  // namespace forecourse::test
