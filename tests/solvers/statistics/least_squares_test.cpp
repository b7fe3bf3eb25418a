// SOURCE: [nist_strd, linear regression], certified to 15 digits; data as check_values2.csv and tests/data/strd.csv
// hold it. SOURCE: closed form, where columns are sums of one another.
#include "forecourse/solvers/statistics/least_squares.h"

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <sstream>

#include "support/check_values.h"

namespace forecourse::test {
namespace {

using solvers::statistics::Column;
using solvers::statistics::least_squares;
using solvers::statistics::LinearFit;

std::vector<double> numbers(const std::string& id) {
  std::istringstream text(row(id).expected);
  std::vector<double> out;
  for (double x = 0.0; text >> x;) out.push_back(x);
  return out;
}

struct Points {
  std::vector<double> x, y;
};

Points from_file(const std::string& set) {
  std::ifstream file(std::string(TEST_DATA_DIR) + "/strd.csv");
  Points out;
  for (std::string line; std::getline(file, line);) {
    if (line.rfind(set + ",", 0) != 0) continue;
    std::istringstream fields(line.substr(set.size() + 1));
    double x = 0.0;
    double y = 0.0;
    char comma = 0;
    fields >> x >> comma >> y;
    out.x.push_back(x);
    out.y.push_back(y);
  }
  return out;
}

std::vector<Column> powers(const std::vector<double>& x, int from, int to) {
  std::vector<Column> columns;
  for (int k = from; k <= to; ++k) {
    Column column{"B" + std::to_string(k), {}};
    for (const double value : x) column.values.push_back(std::pow(value, k));
    columns.push_back(std::move(column));
  }
  return columns;
}

/// Holds every certified value of a set. The rows of this set say how many digits double data allow.
void hold(const std::string& set, const LinearFit& fit) {
  ASSERT_EQ(fit.problem, "");
  int held = 0;
  for (const CheckRow& check : rows_starting("STRD-" + set + "-")) {
    const std::string what = check.id.substr(("STRD-" + set + "-").size());
    double value = 0.0;
    if (what == "s") {
      value = fit.residual_deviation;
    } else if (what == "R2") {
      value = fit.r_squared;
    } else if (what == "RSS") {
      value = fit.sum_of_squares;
    } else if (what[0] == 'B') {
      value = fit.find(what)->value.value();
    } else if (what.rfind("seB", 0) == 0) {
      value = fit.find(what.substr(2))->standard_error.value();
    } else {
      continue;  // data
    }
    // A certified zero is held to the size of the response's rounding, which is 1e-16 of up to 4e6.
    const Tolerance tolerance = parse_tolerance(check.tolerance).value_or(Tolerance{0.0, 1e-9});
    EXPECT_TRUE(agrees(check, value, {check.number() == 0.0 ? 1e-8 : tolerance.absolute, tolerance.relative}))
        << set << " " << what << " " << value;
    ++held;
  }
  EXPECT_GE(held, 4);
}

TEST(LeastSquares, MeetsNorris) {
  hold("norris", least_squares(powers(numbers("STRD-norris-x"), 0, 1), numbers("STRD-norris-y")));
}

TEST(LeastSquares, MeetsTheCovarianceOfNorris) {
  const LinearFit fit = least_squares(powers(numbers("STRD-norris-x"), 0, 1), numbers("STRD-norris-y"));
  EXPECT_NEAR(fit.covariance[0][1], -7.743275363156437e-5, 1e-16);  // exact rational least squares, computed
}

TEST(LeastSquares, MeetsLongley) {
  std::vector<Column> columns{{"B0", std::vector<double>(16, 1.0)}};
  for (int k = 1; k <= 6; ++k) {
    columns.push_back({"B" + std::to_string(k), numbers("STRD-longley-x" + std::to_string(k))});
  }
  const LinearFit fit = least_squares(columns, numbers("STRD-longley-y"));
  hold("longley", fit);
  EXPECT_EQ(fit.rank, 7u);
  EXPECT_EQ(fit.degrees_of_freedom, 9u);
  EXPECT_TRUE(fit.not_separable.empty());
}

TEST(LeastSquares, MeetsFilip) {
  const Points points = from_file("filip");
  ASSERT_EQ(points.x.size(), 82u);
  hold("filip", least_squares(powers(points.x, 0, 10), points.y));
}

TEST(LeastSquares, MeetsPontius) {
  const Points points = from_file("pontius");
  ASSERT_EQ(points.x.size(), 40u);
  hold("pontius", least_squares(powers(points.x, 0, 2), points.y));
}

TEST(LeastSquares, MeetsLinesWithoutConstant) {
  Points one;
  for (int i = 0; i <= 10; ++i) {
    one.x.push_back(60 + i);
    one.y.push_back(130 + i);
  }
  LinearFit fit = least_squares({{"B0", one.x}}, one.y);
  hold("noint1", fit);
  fit = least_squares({{"B0", {4, 5, 6}}}, {3, 4, 4});
  hold("noint2", fit);
}

TEST(LeastSquares, MeetsWampler) {
  std::vector<double> x;
  for (int i = 0; i <= 20; ++i) x.push_back(i);
  const std::vector<Column> columns = powers(x, 0, 5);
  const std::vector<double> third = numbers("STRD-wampler3-y");
  std::vector<double> first, second, fourth, fifth;
  for (std::size_t i = 0; i < x.size(); ++i) {
    double sum = 0.0;
    double falling = 0.0;
    for (int k = 0; k <= 5; ++k) {
      sum += std::pow(x[i], k);
      falling += std::pow(0.1 * x[i], k);
    }
    first.push_back(sum);
    second.push_back(falling);
    fourth.push_back(sum + 100.0 * (third[i] - sum));
    fifth.push_back(sum + 10000.0 * (third[i] - sum));
  }
  hold("wampler1", least_squares(columns, first));
  hold("wampler2", least_squares(columns, second));
  hold("wampler3", least_squares(columns, third));
  hold("wampler4", least_squares(columns, fourth));
  hold("wampler5", least_squares(columns, fifth));
}

// y = 2 + 3 a + 5 b, and c = a + 4 b: a, b and c cannot be told apart, the constant can.
TEST(LeastSquares, NamesWhatCannotBeSeparated) {
  Column one{"one", {}}, a{"a", {}}, b{"b", {}}, c{"c", {}};
  std::vector<double> y;
  for (int i = 0; i < 12; ++i) {
    one.values.push_back(1.0);
    a.values.push_back(i % 4);
    b.values.push_back((i * i) % 7);
    c.values.push_back(a.values.back() + 4.0 * b.values.back());
    y.push_back(2.0 + 3.0 * a.values.back() + 5.0 * b.values.back());
  }
  const LinearFit fit = least_squares({one, a, b, c}, y);
  EXPECT_EQ(fit.rank, 3u);
  EXPECT_TRUE(std::isinf(fit.condition));
  ASSERT_EQ(fit.not_separable.size(), 1u);
  const auto& columns = fit.not_separable[0].columns;
  ASSERT_EQ(columns.size(), 3u);
  EXPECT_EQ(columns[0].name, "a");
  EXPECT_EQ(columns[2].name, "c");
  EXPECT_NEAR(columns[1].weight / columns[0].weight, 4.0, 1e-12);
  EXPECT_NEAR(columns[2].weight / columns[0].weight, -1.0, 1e-12);
  EXPECT_NEAR(fit.find("one")->value.value(), 2.0, 1e-12);
  EXPECT_FALSE(fit.find("a")->value);
  EXPECT_FALSE(fit.find("b")->standard_error);
  EXPECT_LT(fit.sum_of_squares, 1e-24);
}

TEST(LeastSquares, AColumnOfZerosHasNoCoefficient) {
  const LinearFit fit = least_squares({{"x", {1, 2, 3}}, {"never", {0, 0, 0}}}, {2, 4, 6.3});
  EXPECT_FALSE(fit.find("never")->value);
  EXPECT_NEAR(fit.find("x")->value.value(), 28.9 / 14.0, 1e-14);
}

TEST(LeastSquares, FewerObservationsThanColumns) {
  const LinearFit fit = least_squares({{"a", {1, 2}}, {"b", {3, 1}}, {"c", {1, 1}}}, {4, 5});
  EXPECT_EQ(fit.rank, 2u);
  EXPECT_EQ(fit.degrees_of_freedom, 0u);
  EXPECT_TRUE(std::isnan(fit.residual_deviation));
  EXPECT_EQ(fit.not_separable.size(), 1u);
}

// A weight of two is the observation made twice.
TEST(LeastSquares, AWeightIsARepeatedObservation) {
  const LinearFit weighted = least_squares({{"one", {1, 1, 1}}, {"x", {1, 2, 4}}}, {1, 3, 4}, {.weights = {1, 2, 1}});
  const LinearFit repeated = least_squares({{"one", {1, 1, 1, 1}}, {"x", {1, 2, 2, 4}}}, {1, 3, 3, 4});
  EXPECT_NEAR(*weighted.coefficients[1].value, *repeated.coefficients[1].value, 1e-14);
  EXPECT_NEAR(weighted.sum_of_squares, repeated.sum_of_squares, 1e-14);
}

TEST(LeastSquares, RefusesWhatDoesNotFitTogether) {
  EXPECT_EQ(least_squares({}, {1}).problem, "there is no column to fit");
  EXPECT_EQ(least_squares({{"x", {1}}}, {1, 2}).problem, "column x has not one value per observation");
  EXPECT_EQ(least_squares({{"x", {1, NAN}}}, {1, 2}).problem, "column x holds a value that is no number");
  EXPECT_EQ(least_squares({{"x", {1, 2}}}, {1, 2}, {.weights = {1, -1}}).problem,
            "a weight is below zero or no number");
}

}  // namespace
}  // namespace forecourse::test
