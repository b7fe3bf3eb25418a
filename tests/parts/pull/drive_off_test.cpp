// SOURCE: closed form of steady acceleration and of a linear spring
#include "forecourse/parts/pull/drive_off.h"

#include <gtest/gtest.h>

#include <cmath>

namespace forecourse::parts {
namespace {

TEST(DriveOff, SlackIsUsedUpFromRest) {
  const VehicleMotion tight = after_travel(0.0, 1.5, 1.5);
  EXPECT_NEAR(tight.time, 1.41, 0.005);   // printed digits: sqrt(2)
  EXPECT_NEAR(tight.speed, 2.12, 0.005);  // 1.5 sqrt(2)
  EXPECT_NEAR(tight.time, std::sqrt(2.0), 1e-15);
}

TEST(DriveOff, RollingVehicleAndOneThatStops) {
  EXPECT_EQ(after_travel(2.0, 0.0, 1.5), (VehicleMotion{0.75, 2.0}));
  const VehicleMotion braking = after_travel(3.0, -1.0, 2.5);
  EXPECT_NEAR(braking.time, 1.0, 1e-15);  // 3 t - t2/2 = 2.5
  EXPECT_NEAR(braking.speed, 2.0, 1e-15);
  EXPECT_TRUE(std::isinf(after_travel(1.0, -1.0, 2.5).time));
  EXPECT_TRUE(std::isinf(after_travel(0.0, 0.0, 1.0).time));
  EXPECT_EQ(after_travel(0.0, 0.0, 0.0).time, 0.0);
}

TEST(DriveOff, HosesBehindEachOther) {
  EXPECT_EQ(stiffness_in_series(8e3, std::nullopt), 8e3);
  EXPECT_NEAR(stiffness_in_series(8e3, 8e3), 4e3, 1e-12);
  const double both = stiffness_in_series(8e3, 30e3);
  EXPECT_NEAR(1000.0 / both, 1000.0 / 8e3 + 1000.0 / 30e3, 1e-14);  // travels add
}

TEST(DriveOff, TensionGrowsWithTravel) {
  EXPECT_EQ(tension(8e3, -0.5), 0.0);
  EXPECT_EQ(tension(8e3, 0.25), 2e3);
}

TEST(DriveOff, PullEndsWhereSomethingGivesWay) {
  const PullEnd end = pull_until({1.0, 2.0}, 0.0, 8e3, 1600.0, 0.0);
  EXPECT_NEAR(end.pull, 1600.0, 1e-12);
  EXPECT_NEAR(end.time, 1.1, 1e-15);  // 0.2 m at 2 m/s
  EXPECT_NEAR(end.travel, 0.2, 1e-15);
}

TEST(DriveOff, PullGrowsWhileThePartOpens) {
  const PullEnd end = pull_until({1.0, 2.0}, 1.5, 8e3, 1600.0, 0.003);
  const double speed = std::sqrt(4.0 + 2.0 * 1.5 * 0.2);
  EXPECT_NEAR(end.pull, 1600.0 + 8e3 * (speed * 0.003 + 0.75 * 9e-6), 1e-9);
  EXPECT_NEAR(end.pull, tension(8e3, end.travel), 1e-9);
}

TEST(DriveOff, PullThatIsNeverReached) {
  const double never = std::numeric_limits<double>::infinity();
  EXPECT_TRUE(std::isinf(pull_until({1.0, 2.0}, 0.0, 8e3, never, 0.0).pull));
  EXPECT_TRUE(std::isinf(pull_until({1.0, 0.5}, -1.0, 8e3, 1600.0, 0.0).time));  // stops after 0.125 m
}

}  // namespace
}  // namespace forecourse::parts
