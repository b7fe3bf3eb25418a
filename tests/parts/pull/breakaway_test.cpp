// SOURCE: [ul_567, clause 6.3, excerpt] closed form of forces on a sliding fit
#include "forecourse/parts/pull/breakaway.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace forecourse::parts {
namespace {

constexpr double degree = std::numbers::pi / 180.0;
constexpr double newton_per_pound_force = 4.4482216152605;  // exact by definition

TEST(Breakaway, PublishedBandIsInPounds) {
  EXPECT_NEAR(published_separation.low / newton_per_pound_force, 100.0, 1e-6);  // ten digits kept
  EXPECT_NEAR(published_separation.high / newton_per_pound_force, 350.0, 1e-6);
}

TEST(Breakaway, StraightPullIsTheSeparationForce) { EXPECT_EQ(separation_pull(1335.0, 0.0, 0.15), 1335.0); }

TEST(Breakaway, AskewItTakesMore) {
  // 60 degrees and a friction of 0.15: 1335 / (0.5 - 0.15 sqrt(3)/2) = 3607 N
  EXPECT_NEAR(separation_pull(1335.0, 60.0 * degree, 0.15), 1335.0 / (0.5 - 0.075 * std::sqrt(3.0)), 1e-9);
  EXPECT_NEAR(separation_pull(1335.0, 60.0 * degree, 0.15), 3607.0, 0.5);
}

TEST(Breakaway, LocksBeyondItsAngle) {
  const double locks_at = std::atan(1.0 / 0.15);
  EXPECT_TRUE(std::isfinite(separation_pull(1335.0, locks_at - 1e-6, 0.15)));
  EXPECT_TRUE(std::isinf(separation_pull(1335.0, locks_at + 1e-6, 0.15)));
  EXPECT_TRUE(std::isinf(separation_pull(1335.0, std::numbers::pi, 0.15)));
  EXPECT_TRUE(std::isinf(separation_pull(1335.0, 91.0 * degree, 0.0)));
}

TEST(Breakaway, PullGrowsWithTheAngle) {
  double last = 0.0;
  for (int angle = 0; angle <= 180; ++angle) {
    const double here = separation_pull(1000.0, angle * degree, 0.3);
    EXPECT_GE(here, last);
    last = here;
  }
}

TEST(Breakaway, RangeGoesFromLowToHigh) {
  const PullRange pull = separation_pull({600.0, 900.0, 1500.0}, {0.0, 0.2, 85.0 * degree}, 0.15);
  EXPECT_EQ(pull.low, 600.0);
  EXPECT_GT(pull.likely, 900.0);
  EXPECT_TRUE(std::isinf(pull.high));
}

TEST(Breakaway, WithoutWhipItTakesTheWholeAngle) {
  EXPECT_EQ(misalignment(1.2, std::nullopt), (AngleRange{1.2, 1.2, 1.2}));
}

TEST(Breakaway, LongEnoughWhipTurnsItIntoThePull) {
  const double needed = needed_length(0.15, 1.2);
  EXPECT_DOUBLE_EQ(needed, 0.18);
  EXPECT_EQ(misalignment(1.2, WhipHose{0.3, needed, 0.1}), (AngleRange{0.0, 0.1, 0.1}));
  EXPECT_EQ(misalignment(0.05, WhipHose{0.3, needed, 0.1}), (AngleRange{0.0, 0.05, 0.05}));
}

TEST(Breakaway, ShortOrUnknownWhipLeavesTheAngleOpen) {
  EXPECT_EQ(misalignment(1.2, WhipHose{0.1, 0.18, 0.1}), (AngleRange{0.0, 1.2, 1.2}));
  EXPECT_EQ(misalignment(1.2, WhipHose{0.3, std::nullopt, 0.1}), (AngleRange{0.0, 1.2, 1.2}));
}

}  // namespace
}  // namespace forecourse::parts
