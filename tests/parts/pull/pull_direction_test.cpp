// SOURCE: closed form of directions in space
#include "forecourse/parts/pull/pull_direction.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace forecourse::parts {
namespace {

using std::numbers::pi;

TEST(PullDirection, LooksFromOutletToNozzle) {
  const Direction down = pull_direction({.outlet_height = 1.9, .nozzle_height = 0.9, .reach = 1.0, .azimuth = 0.3});
  EXPECT_NEAR(down.elevation, -pi / 4.0, 1e-15);
  EXPECT_EQ(down.azimuth, 0.3);
  EXPECT_EQ(pull_direction({0.8, 0.8, 2.0, 0.0}).elevation, 0.0);
}

TEST(PullDirection, AngleBetweenDirections) {
  EXPECT_NEAR(angle_between({0.0, 0.0}, {pi / 2.0, 0.0}), pi / 2.0, 1e-15);
  EXPECT_NEAR(angle_between({0.0, pi / 4.0}, {0.0, -pi / 4.0}), pi / 2.0, 1e-15);
  EXPECT_NEAR(angle_between({0.0, 0.0}, {pi, 0.0}), pi, 1e-15);
  EXPECT_NEAR(angle_between({1.0, pi / 2.0}, {2.0, pi / 2.0}), 0.0, 1e-15);  // straight up is one direction
  EXPECT_NEAR(angle_between({0.0, 0.0}, {1e-9, 0.0}), 1e-9, 1e-24);
  EXPECT_NEAR(angle_between({0.0, pi / 4.0}, {pi / 2.0, pi / 4.0}), pi / 3.0, 1e-15);  // cos = sin2 = 1/2
}

TEST(PullDirection, AgreesWithUnitVectors) {
  for (const double azimuth : {-3.0, -1.7, -0.2, 0.3, 1.1, 2.9}) {
    for (const double elevation : {-1.5, -0.8, 0.0, 0.35, 1.4}) {
      const double cosine =
          std::cos(elevation) * std::cos(0.4) * std::cos(azimuth - 1.0) + std::sin(elevation) * std::sin(0.4);
      EXPECT_NEAR(angle_between({azimuth, elevation}, {1.0, 0.4}), std::acos(cosine), 1e-12);
    }
  }
}

}  // namespace
}  // namespace forecourse::parts
