// Planted series: what is claimed is held against what thousands of them show, which is the meaning of the claim.
// SOURCE: closed form, where a case has one.
#include "forecourse/solvers/statistics/level_fit.h"

#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/solvers/sequence/random/draws.h"
#include "forecourse/solvers/statistics/distributions.h"

namespace forecourse::test {
namespace {

using namespace solvers::statistics;
using solvers::sequence::Draws;

struct Planted {
  double reading = 1.0;  ///< deviation of a reading
  double between = 1.0;  ///< of what goes astray
  double slope = 0.0;    ///< per difference
};

constexpr std::size_t days = 30;

LevelNoise noise(const Planted& what, double times = 1.0) {
  return {std::vector<double>(days + 1, times * what.reading), std::vector<double>(days, times * what.between)};
}

std::vector<double> planted(const Planted& what, std::uint64_t run) {
  const Draws draws(7, run);
  std::vector<double> out;
  double before = what.reading * draws.normal(0, 0.0, 1.0);
  for (std::uint32_t i = 0; i < days; ++i) {
    const double now = what.reading * draws.normal(2 * i + 1, 0.0, 1.0);
    out.push_back(what.slope + now - before + what.between * draws.normal(2 * i + 2, 0.0, 1.0));
    before = now;
  }
  return out;
}

const std::vector<Column>& steady() {
  static const std::vector<Column> columns{{"steady", std::vector<double>(days, 1.0)}};
  return columns;
}

/// What many series of one kind show of the slope.
struct Shown {
  double scatter = 0.0;
  double claimed = 0.0;       ///< root of the mean square of the standard errors
  double false_alarms = 0.0;  ///< share above the one-sided 95 % quantile
};

Shown shown(const Planted& what, int series) {
  double squares = 0.0;
  double claimed = 0.0;
  int alarms = 0;
  const double quantile = student_quantile(0.95, days - 1.0);
  for (int run = 0; run < series; ++run) {
    // the scatter given is three times the planted one: its size is found
    const LinearFit fit = fit_level(steady(), planted(what, static_cast<std::uint64_t>(run)), noise(what, 3.0));
    const double off = fit.coefficients[0].value.value() - what.slope;
    const double error = fit.coefficients[0].standard_error.value();
    squares += off * off;
    claimed += error * error;
    alarms += off / error > quantile ? 1 : 0;
  }
  return {std::sqrt(squares / series), std::sqrt(claimed / series), static_cast<double>(alarms) / series};
}

/// The goal is 5 %; the scatter of 10,000 series is itself known to 0.7 %. False alarms: 5 % and three deviations of a
/// share found from 10,000.
TEST(FullLevelFit, ClaimsTheStandardErrorThatTheScatterShows) {
  for (const Planted& what :
       {Planted{1.0, 0.3, 2.5}, Planted{1.0, 1.0, 2.5}, Planted{0.3, 1.0, 0.0}, Planted{1.0, 0.01, 0.0}}) {
    const Shown got = shown(what, 10000);
    EXPECT_NEAR(got.claimed / got.scatter, 1.0, 0.05) << what.reading << ' ' << what.between;
    EXPECT_LE(got.false_alarms, 0.05 + 3.0 * std::sqrt(0.05 * 0.95 / 10000));
  }
}

/// Where nothing but the readings scatters, the differences' fit is that of the levels on a straight line.
TEST(LevelFit, OfReadingsAloneIsTheLineThroughTheLevels) {
  const Planted what{1.0, 1e-7, 2.5};
  const std::vector<double> differences = planted(what, 3);
  std::vector<Column> line{{"constant", std::vector<double>(days + 1, 1.0)}, {"slope", {}}};
  std::vector<double> level{0.0};
  for (std::size_t i = 0; i <= days; ++i) line[1].values.push_back(static_cast<double>(i));
  for (const double difference : differences) level.push_back(level.back() + difference);
  const LinearFit through = least_squares(line, level);
  const LinearFit got = fit_level(steady(), differences, noise(what));
  EXPECT_NEAR(*got.coefficients[0].value, *through.coefficients[1].value, 1e-9);
  EXPECT_NEAR(*got.coefficients[0].standard_error, *through.coefficients[1].standard_error, 1e-9);
  EXPECT_EQ(got.degrees_of_freedom, through.degrees_of_freedom);
}

/// Where only what goes astray scatters, it is the mean of the differences.
TEST(LevelFit, WithoutScatterOfReadingsIsTheMean) {
  const Planted what{0.0, 2.0, 2.5};
  const std::vector<double> differences = planted(what, 3);
  double sum = 0.0;
  for (const double one : differences) sum += one;
  EXPECT_NEAR(*fit_level(steady(), differences, noise(what)).coefficients[0].value, sum / days, 1e-12);
}

TEST(LevelFit, ThatCannotBeMadeSaysWhy) {
  EXPECT_NE(fit_level({}, {1.0, 2.0}, {{1, 1, 1}, {1, 1}}).problem, "");
  EXPECT_NE(fit_level(steady(), {1.0, 2.0}, {{1, 1, 1}, {1, 1}}).problem, "");
  EXPECT_NE(fit_level(steady(), std::vector<double>(days, 1.0), {{1, 1}, {1}}).problem, "");
  LevelNoise none = noise({1.0, 1.0});
  none.between[4] = 0.0;
  EXPECT_NE(fit_level(steady(), std::vector<double>(days, 1.0), none).problem, "");
}

TEST(LevelFaults, FindAWildReadingAndAStepThatHideOneAnother) {
  const Planted what{1.0, 0.5};
  std::vector<double> differences = planted(what, 11);
  differences[9] += 12.0;
  differences[10] -= 12.0;  // reading 10 is 12 too high
  differences[20] -= 10.0;  // 10 are gone between readings 20 and 21
  const std::vector<LevelFault> found = level_faults(steady(), differences, noise(what), 0.01, 6);
  ASSERT_EQ(found.size(), 2U);
  const LevelFault& reading = found[0].kind == LevelFault::Kind::reading ? found[0] : found[1];
  const LevelFault& step = found[0].kind == LevelFault::Kind::reading ? found[1] : found[0];
  EXPECT_EQ(reading.at, 10U);
  EXPECT_NEAR(reading.size, 12.0, 4.0 * reading.standard_error);
  EXPECT_EQ(step.kind, LevelFault::Kind::step);
  EXPECT_EQ(step.at, 20U);
  EXPECT_NEAR(step.size, -10.0, 4.0 * step.standard_error);
}

/// Chance 1 %: at most 1 % of 4,000 series and three deviations of a share found from them.
TEST(FullLevelFaults, CryWolfNoMoreOftenThanSaid) {
  constexpr int series = 4000;
  int cried = 0;
  for (int run = 0; run < series; ++run) {
    const Planted what{1.0, 0.5};
    cried +=
        level_faults(steady(), planted(what, static_cast<std::uint64_t>(run)), noise(what), 0.01, 4).empty() ? 0 : 1;
  }
  EXPECT_LE(static_cast<double>(cried) / series, 0.01 + 3.0 * std::sqrt(0.01 * 0.99 / series));
  EXPECT_GT(cried, 0);
}

}  // namespace
}  // namespace forecourse::test
