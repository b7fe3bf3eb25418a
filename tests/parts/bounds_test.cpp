// SOURCE: common practice, no source
#include "forecourse/parts/bounds.h"

#include <gtest/gtest.h>

#include <limits>

namespace forecourse::parts {
namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();

TEST(Bounds, CheckValveStopsOnlyBackwardFlow) { EXPECT_EQ(one_way(), (FlowBounds{0.0, infinite})); }

TEST(Bounds, LimiterStopsAtItsLimit) { EXPECT_EQ(limited_to(6e-4), (FlowBounds{-infinite, 6e-4})); }

TEST(Bounds, OfPartsInSeriesAreTheTighterOnes) {
  const FlowBounds both = one_way() & limited_to(6e-4);
  EXPECT_EQ(both, (FlowBounds{0.0, 6e-4}));
  EXPECT_EQ(both & open_both_ways(), both);
}

}  // namespace
}  // namespace forecourse::parts
