// SOURCE: common practice, no source
#include "forecourse/parts/bounds.h"

#include <gtest/gtest.h>

namespace forecourse::parts {
namespace {

TEST(Bounds, CheckValveStopsOnlyBackwardFlow) {
  EXPECT_EQ(nearest_allowed(one_way(), -1e-3), 0.0);
  EXPECT_EQ(nearest_allowed(one_way(), 1e-3), 1e-3);
}

TEST(Bounds, LimiterStopsAtItsLimit) {
  EXPECT_EQ(nearest_allowed(limited_to(6e-4), 1e-3), 6e-4);
  EXPECT_EQ(nearest_allowed(limited_to(6e-4), -1e-3), -1e-3);
}

TEST(Bounds, ShutLetsNothingPass) {
  EXPECT_EQ(nearest_allowed(shut(), 1e-3), 0.0);
  EXPECT_TRUE(is_shut(shut()));
  EXPECT_FALSE(is_shut(one_way()));
}

TEST(Bounds, OfPartsInSeriesAreTheTighterOnes) {
  const FlowBounds both = one_way() & limited_to(6e-4);
  EXPECT_EQ(both, (FlowBounds{0.0, 6e-4}));
  EXPECT_EQ(both & shut(), shut());
  EXPECT_EQ(both & open_both_ways(), both);
}

}  // namespace
}  // namespace forecourse::parts
