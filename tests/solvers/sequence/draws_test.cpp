// SOURCE: [random123, tests/kat_vectors, the three lines "philox4x32 10"]
// SOURCE: closed form: moments and quantiles of the distributions
#include "forecourse/solvers/sequence/random/draws.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <vector>

#include "forecourse/solvers/sequence/blow_down.h"
#include "forecourse/solvers/sequence/laws.h"
#include "forecourse/solvers/sequence/random/philox.h"
#include "forecourse/solvers/statistics/distributions.h"

namespace forecourse::solvers::sequence {
namespace {

TEST(Philox, PublishedKnownAnswers) {
  EXPECT_EQ(philox({0, 0, 0, 0}, {0, 0}), (PhiloxCounter{0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8}));
  constexpr std::uint32_t all = 0xffffffff;
  EXPECT_EQ(philox({all, all, all, all}, {all, all}), (PhiloxCounter{0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd}));
  EXPECT_EQ(philox({0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344}, {0xa4093822, 0x299f31d0}),
            (PhiloxCounter{0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1}));
}

TEST(Draws, QuantileIsTheInverseOfTheDistribution) {
  for (const double share : {1e-16, 1e-9, 1e-3, 0.02425, 0.3, 0.5, 0.8, 0.999, 1.0 - 1e-9}) {
    const double back = 0.5 * std::erfc(-statistics::normal_quantile(share) / std::numbers::sqrt2);
    EXPECT_NEAR(back, share, 1e-14 * share) << share;
  }
}

struct Moments {
  double mean = 0.0;
  double variance = 0.0;
};

template <class Draw>
Moments moments(const Draw& draw) {
  constexpr std::uint64_t count = 200'000;
  double sum = 0.0, squares = 0.0;
  for (std::uint64_t run = 0; run < count; ++run) {
    const double x = draw(Draws(5, run));
    sum += x;
    squares += x * x;
  }
  const double mean = sum / count;
  return {mean, squares / count - mean * mean};
}

// Tolerances are five standard errors of 200,000 draws; the draws are always the same.
TEST(Draws, MomentsOfTheDistributions) {
  const auto u = moments([](const Draws& d) { return d.uniform(3); });
  EXPECT_NEAR(u.mean, 0.5, 5.0 * std::sqrt(1.0 / 12.0 / 2e5));
  EXPECT_NEAR(u.variance, 1.0 / 12.0, 1e-3);
  const auto n = moments([](const Draws& d) { return d.normal(3, 10.0, 2.0); });
  EXPECT_NEAR(n.mean, 10.0, 5.0 * 2.0 / std::sqrt(2e5));
  EXPECT_NEAR(n.variance, 4.0, 5.0 * 4.0 * std::sqrt(2.0 / 2e5));
  const auto l = moments([](const Draws& d) { return std::log(d.lognormal(3, 60.0, 0.7)); });
  EXPECT_NEAR(l.mean, std::log(60.0), 5.0 * 0.7 / std::sqrt(2e5));
  const auto t = moments([](const Draws& d) { return d.triangular(3, 1.0, 2.0, 6.0); });
  EXPECT_NEAR(t.mean, 3.0, 5.0 * std::sqrt(21.0 / 18.0 / 2e5));
  EXPECT_NEAR(t.variance, 21.0 / 18.0, 0.02);
}

TEST(Draws, ADrawBelongsToSeedRunAndParameterAlone) {
  const Draws draws(1, 2);
  const double first = draws.uniform(3);
  (void)draws.uniform(9);
  EXPECT_EQ(draws.uniform(3), first);
  EXPECT_NE(Draws(2, 2).uniform(3), first);
  EXPECT_NE(Draws(1, 3).uniform(3), first);
  EXPECT_NE(draws.uniform(4), first);
  EXPECT_EQ(draws.triangular(0, 4.0, 4.0, 4.0), 4.0);
}

TEST(BlowDownLaw, SolvesItsEquation) {
  const double compliance = 3e-9;
  for (const double exponent : {0.5, 0.7, 1.0 - 1e-9, 1.0, 1.3}) {
    const LeakLaw leak{2.4e-9 * std::pow(1.9e5, 0.5 - exponent), exponent};
    const double duration = 40.0;
    const auto at = [&](double t) { return blow_down(1.9e5, compliance, leak, t); };
    const double rate = (at(duration + 0.01).pressure - at(duration - 0.01).pressure) / 0.02;
    const double expected = -leak.coefficient * std::pow(at(duration).pressure, exponent) / compliance;
    EXPECT_NEAR(rate, expected, 1e-6 * -expected) << exponent;
    EXPECT_NEAR(at(duration).released, compliance * (1.9e5 - at(duration).pressure), 1e-19) << exponent;
    EXPECT_NEAR(blow_down_time(1.9e5, at(duration).pressure, compliance, leak), duration, 1e-9) << exponent;
  }
}

TEST(BlowDownLaw, EndsWhenNothingIsLeftAndKeepsSmallLosses) {
  const LeakLaw leak{2.4e-9, 0.5};
  const double empty = 2.0 * 3e-9 * std::sqrt(1.9e5) / 2.4e-9;  // 2 C sqrt(p0) / k
  EXPECT_NEAR(blow_down_time(1.9e5, 0.0, 3e-9, leak), empty, 1e-9);
  EXPECT_EQ(blow_down(1.9e5, 3e-9, leak, 1.0001 * empty).pressure, 0.0);
  EXPECT_EQ(blow_down(1.9e5, 3e-9, leak, 1.0001 * empty).released, 3e-9 * 1.9e5);
  EXPECT_TRUE(std::isinf(blow_down_time(1.9e5, 0.0, 3e-9, {1e-12, 1.0})));
  const double instant = 1e-9;
  EXPECT_NEAR(blow_down(1.9e5, 3e-9, leak, instant).released, 2.4e-9 * std::sqrt(1.9e5) * instant, 1e-23);
}

TEST(Laws, RegularizedRootKeepsItsStatedErrors) {
  EXPECT_EQ(regularized_root(0.0, 300.0), 0.0);
  EXPECT_EQ(regularized_root(-5.0, 300.0), -regularized_root(5.0, 300.0));
  EXPECT_NEAR(regularized_root(300.0, 300.0) / std::sqrt(300.0), std::pow(2.0, -0.25), 1e-15);  // -16 %
  EXPECT_NEAR(regularized_root(3e4, 300.0) / std::sqrt(3e4), 1.0 - 0.25e-4, 1e-8);
  EXPECT_NEAR(regularized_root(1e-6, 300.0) / 1e-6, 1.0 / std::sqrt(300.0), 1e-12);
  EXPECT_EQ(one_way_root(-5.0, 300.0), 0.0);
  const Split parts = split(0.1, 0.3);
  EXPECT_EQ(parts.first + parts.rest, 0.1);
}

}  // namespace
}  // namespace forecourse::solvers::sequence
