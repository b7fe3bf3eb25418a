// SOURCE: common practice, no source: computed rows of an independent script (96 in by 260 in), and closed forms
#include "forecourse/parts/tank/level_volume.h"

#include <gtest/gtest.h>

#include <numbers>

#include "forecourse/base/api_units.h"

namespace forecourse::parts {
namespace {

constexpr double inch = 0.0254;
constexpr LevelCylinder tank{96.0 * inch, 260.0 * inch};

double gallons(double cubic_meters) { return cubic_meters / cubic_meters_from_gallons(1.0); }

TEST(LevelVolume, ATankOf96By260Inches) {
  const double full = volume_at_depth(tank, 96.0 * inch);
  EXPECT_NEAR(gallons(full), 8147.0, 0.5);                              // printed to a gallon
  EXPECT_NEAR(depth_of_volume(tank, 0.90 * full) / inch, 80.98, 0.01);  // printed to a hundredth
  EXPECT_NEAR(depth_of_volume(tank, 0.95 * full) / inch, 86.66, 0.01);
  const double room = 0.90 * full - volume_at_depth(tank, 50.0 * inch);
  EXPECT_NEAR(gallons(room), 3043.0, 1.0);
}

/// Row TANK-flat: 108 in by 156 in, 36 in deep: 1805.188288 gal (analytic).
TEST(LevelVolume, FlatHeads) {
  EXPECT_NEAR(gallons(volume_at_depth(LevelCylinder{108.0 * inch, 156.0 * inch}, 36.0 * inch)), 1805.188288, 1e-6);
}

TEST(LevelVolume, HalfFullIsHalf) {
  const double r = 0.5 * tank.diameter;
  EXPECT_NEAR(volume_at_depth(tank, r), 0.5 * std::numbers::pi * r * r * tank.length, 1e-12);
  EXPECT_EQ(volume_at_depth(tank, -1.0), 0.0);
}

TEST(LevelVolume, ThereAndBack) {
  const TankShape shapes[] = {tank, UprightTank{3.0, 2.0}, DipChart{{{0.0, 0.0}, {0.5, 1.0}, {1.0, 3.0}}}};
  for (const TankShape& shape : shapes) {
    for (const double share : {0.01, 0.3, 0.77, 0.999}) {
      const double depth = share * full_depth(shape);
      EXPECT_NEAR(depth_of_volume(shape, volume_at_depth(shape, depth)), depth, 1e-9);
    }
  }
}

}  // namespace
}  // namespace forecourse::parts
