// SOURCE: closed form of statics
#include "forecourse/parts/pull/base_load.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "support/check_values.h"

namespace forecourse::parts {
namespace {

constexpr DispenserBase base{.outlet_height = 1.2, .weight = 2000.0, .half_width = 0.25};

TEST(BaseLoad, AnchorTensionAgreesWithASecondComputation) {
  const BaseLoad load = base_load(1000.0, 0.0, base);
  EXPECT_NEAR(load.moment, 700.0, 1e-12);
  EXPECT_TRUE(test::agrees(test::row("STAT-base"), anchor_tension(load.moment, 0.45)));
}

TEST(BaseLoad, OnlyTheLevelPartTurnsItOver) {
  const BaseLoad load = base_load(1000.0, -std::numbers::pi / 3.0, base);
  EXPECT_NEAR(load.horizontal, 500.0, 1e-12);
  EXPECT_NEAR(load.vertical, -500.0 * std::sqrt(3.0), 1e-12);
  EXPECT_NEAR(load.moment, 100.0, 1e-12);
}

TEST(BaseLoad, WeightAloneHoldsASmallPull) {
  EXPECT_LT(base_load(300.0, 0.0, base).moment, 0.0);
  EXPECT_EQ(anchor_tension(-140.0, 0.45), 0.0);
}

TEST(BaseLoad, PullComesBackFromItsMoment) {
  for (const double elevation : {-1.0, -0.3, 0.0, 0.5}) {
    const double pull = pull_for_moment(700.0, elevation, base);
    EXPECT_NEAR(base_load(pull, elevation, base).moment, 700.0, 1e-10);
  }
  EXPECT_NEAR(pull_for_moment(4500.0, 0.0, {1.9, 0.0, 0.0}), 4500.0 / 1.9, 1e-12);
  EXPECT_TRUE(std::isinf(pull_for_moment(700.0, std::numbers::pi / 2.0, base)));
}

}  // namespace
}  // namespace forecourse::parts
