// SOURCE: closed form
#include "forecourse/parts/escape/sump_volume.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <vector>

namespace forecourse::parts {
namespace {

const TaperedSump tapered{0.4, 0.3, 0.7, 0.5, 0.6};
const TaperedSump pyramid{0.0, 0.0, 1.0, 1.0, 0.9};  // on its point
const TaperedSump crossed{1.0, 0.2, 0.4, 0.9, 0.5};  // one size falls, the other rises
const RoundSump pit{1.2, 1.0};

std::vector<SumpRoom> all_rooms() {
  return {{box_sump(0.5, 0.6, 0.4), 0.0}, {tapered, 0.12}, {pyramid, 0.0}, {crossed, 0.3}, {pit, 0.08},
          {EnteredSump{0.11, 0.45}, 0.1}};
}

// The volume by many thin slices of a rectangle, each at its middle height.
double slices(const TaperedSump& s, double height) {
  const int count = 20000;
  double sum = 0.0;
  for (int i = 0; i < count; ++i) {
    const double x = (i + 0.5) / count * height / s.depth;
    sum += std::lerp(s.floor_length, s.top_length, x) * std::lerp(s.floor_width, s.top_width, x) * height / count;
  }
  return sum;
}

TEST(SumpVolume, OfABoxAndACylinder) {
  EXPECT_NEAR(*volume_at({box_sump(0.5, 0.6, 0.4), 0.0}, 0.1), 0.03, 1e-16);
  EXPECT_NEAR(*volume_at({pit, 0.0}, 0.25), std::numbers::pi * 0.36 * 0.25, 1e-15);
}

TEST(SumpVolume, OfAPyramidIsAThird) {
  EXPECT_NEAR(brim_volume({pyramid, 0.0}), 0.3, 1e-15);
  EXPECT_NEAR(*volume_at({pyramid, 0.0}, 0.45), 0.3 / 8.0, 1e-15);
}

// The prismatoid rule, exact for a cubic: depth/6 (floor + 4 middle + top).
TEST(SumpVolume, OfATaperedSumpIsThePrismatoid) {
  const double rule = 0.6 / 6.0 * (0.4 * 0.3 + 4.0 * 0.55 * 0.4 + 0.7 * 0.5);
  EXPECT_NEAR(brim_volume({tapered, 0.0}), rule, 1e-15);
}

TEST(SumpVolume, AgreesWithSlices) {
  for (const TaperedSump& s : {tapered, pyramid, crossed}) {
    for (const double share : {0.1, 0.5, 0.93, 1.0}) {
      const double height = share * s.depth;
      EXPECT_NEAR(*volume_at({s, 0.0}, height) / slices(s, height), 1.0, 1e-8);  // second order of the slice
    }
  }
}

TEST(SumpVolume, PartsTakeTheirShare) {
  EXPECT_DOUBLE_EQ(brim_volume({tapered, 0.2}), 0.8 * brim_volume({tapered, 0.0}));
  EXPECT_DOUBLE_EQ(*volume_at({tapered, 0.2}, 0.1), 0.8 * *volume_at({tapered, 0.0}, 0.1));
}

TEST(SumpVolume, HeightComesBackFromItsVolume) {
  for (const SumpRoom& room : all_rooms()) {
    for (int i = 1; i <= 1000; ++i) {
      const double height = i / 1000.0 * *depth_of(room);
      EXPECT_NEAR(*height_at(room, *volume_at(room, height)), height, 1e-12 * *depth_of(room));
    }
  }
}

TEST(SumpVolume, EndsAtFloorAndBrim) {
  for (const SumpRoom& room : all_rooms()) {
    EXPECT_EQ(*volume_at(room, -0.1), 0.0);
    EXPECT_DOUBLE_EQ(*volume_at(room, 9.0), brim_volume(room));
    EXPECT_EQ(*height_at(room, 0.0), 0.0);
    EXPECT_EQ(*height_at(room, 9.0), *depth_of(room));
  }
}

TEST(SumpVolume, OfUnknownDepthIsKnownAtTheBrimOnly) {
  const SumpRoom room{EnteredSump{0.11, {}}, 0.1};
  EXPECT_DOUBLE_EQ(brim_volume(room), 0.099);
  EXPECT_FALSE(volume_at(room, 0.1));
  EXPECT_FALSE(height_at(room, 0.05));
  EXPECT_FALSE(time_to_height(room, 0.1, {1e-3, 0.0}));
  EXPECT_DOUBLE_EQ(time_to_brim(room, {1e-3, 0.0}), 99.0);
}

TEST(SumpVolume, TimeTimesInflowIsTheVolume) {
  for (const SumpRoom& room : all_rooms()) {
    const double half = 0.5 * *depth_of(room), there = 0.25 * *volume_at(room, half);
    const double time = *time_to_height(room, half, {2e-4, there});
    EXPECT_NEAR(*height_at(room, there + 2e-4 * time), half, 1e-12);
    EXPECT_EQ(*time_to_height(room, half, {2e-4, brim_volume(room)}), 0.0);
    EXPECT_TRUE(std::isinf(*time_to_height(room, half, {})));
    EXPECT_DOUBLE_EQ(time_to_brim(room, {2e-4, there}), *time_to_height(room, *depth_of(room), {2e-4, there}));
  }
}

}  // namespace
}  // namespace forecourse::parts
