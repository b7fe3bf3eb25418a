// SOURCE: closed form of comparing ranges
#include "forecourse/parts/pull/pull_limits.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/parts/pull/breakaway.h"

namespace forecourse::parts {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

constexpr double never = std::numeric_limits<double>::infinity();

TEST(PullLimits, LowestRangeComesFirst) {
  const GivenLimit limits[] = {{PullLimit::hose, PullRange{5e3, 7e3, 9e3}},
                               {PullLimit::breakaway, PullRange{600.0, 900.0, 1500.0}},
                               {PullLimit::anchorage, PullRange{2e3, 3e3, 4e3}}};
  const FirstLimit result = first_limit(limits);
  EXPECT_EQ(result.first, PullLimit::breakaway);
  EXPECT_EQ(result.likely_first, PullLimit::breakaway);
  EXPECT_THAT(result.could_be_first, ElementsAre(PullLimit::breakaway));
  EXPECT_THAT(result.not_known, IsEmpty());
  EXPECT_EQ(result.reached_at_most, 1500.0);
  EXPECT_EQ(result.reached_at_least, 600.0);
}

TEST(PullLimits, UnknownLimitLeavesTheOrderOpen) {
  const GivenLimit limits[] = {{PullLimit::breakaway, PullRange{600.0, 900.0, 1500.0}},
                               {PullLimit::nozzle_pull_out, std::nullopt}};
  const FirstLimit result = first_limit(limits);
  EXPECT_FALSE(result.first);
  EXPECT_EQ(result.likely_first, PullLimit::breakaway);  // of the known ones
  EXPECT_THAT(result.not_known, ElementsAre(PullLimit::nozzle_pull_out));
  EXPECT_EQ(result.reached_at_most, 1500.0);  // holds whatever the unknown one is
  EXPECT_FALSE(result.reached_at_least);
}

TEST(PullLimits, OverlappingRangesLeaveTheOrderOpen) {
  const GivenLimit limits[] = {{PullLimit::breakaway, PullRange{600.0, 900.0, 2500.0}},
                               {PullLimit::anchorage, PullRange{2e3, 3e3, 4e3}},
                               {PullLimit::hose, PullRange{5e3, 7e3, 9e3}}};
  const FirstLimit result = first_limit(limits);
  EXPECT_FALSE(result.first);
  EXPECT_EQ(result.likely_first, PullLimit::breakaway);
  EXPECT_THAT(result.could_be_first, ElementsAre(PullLimit::breakaway, PullLimit::anchorage));
}

TEST(PullLimits, LockedBreakawayLetsTheDispenserBePulledOver) {
  const PullRange locked = separation_pull({1335.0, 1335.0, 1335.0}, {1.5, 1.5, 1.5}, 0.15);
  const GivenLimit limits[] = {{PullLimit::breakaway, locked}, {PullLimit::anchorage, PullRange{2e3, 2368.0, 3e3}}};
  EXPECT_EQ(first_limit(limits).first, PullLimit::anchorage);
}

TEST(PullLimits, NoneReachedIsNotDetermined) {
  const GivenLimit limits[] = {{PullLimit::breakaway, PullRange{never, never, never}}};
  const FirstLimit result = first_limit(limits);
  EXPECT_FALSE(result.first);
  EXPECT_FALSE(result.likely_first);
  EXPECT_THAT(result.could_be_first, IsEmpty());
  EXPECT_TRUE(std::isinf(result.reached_at_most));
  EXPECT_FALSE(first_limit({}).first);
}

TEST(PullLimits, LimitThatMayNeverBeReachedIsNotSurelyFirst) {
  const GivenLimit limits[] = {{PullLimit::breakaway, PullRange{600.0, 900.0, never}}};
  EXPECT_FALSE(first_limit(limits).first);
}

TEST(PullLimits, TiedLikelyPullsNameNone) {
  const GivenLimit limits[] = {{PullLimit::breakaway, PullRange{600.0, 900.0, 1500.0}},
                               {PullLimit::swivel, PullRange{500.0, 900.0, 1500.0}}};
  EXPECT_FALSE(first_limit(limits).likely_first);
}

}  // namespace
}  // namespace forecourse::parts
