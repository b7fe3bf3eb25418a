// SOURCE: closed form; the figures are invented.
#include "forecourse/checks/flotation_checks.h"

#include <gtest/gtest.h>

namespace forecourse::checks {
namespace {

studies::FlotationResult result_of(double factor, std::optional<double> wanted) {
  studies::FlotationResult result;
  studies::TankFlotation& tank = result.tanks.emplace_back();
  tank.tank = "T1";
  tank.water_level = 1.0;
  tank.factor_wanted = wanted;
  tank.empty.emplace();
  tank.empty->factors.hold_down = factor;
  return result;
}

TEST(FlotationChecks, HoldsTheFactorAgainstTheOneWanted) {
  EXPECT_EQ(check_flotation(result_of(1.5, 1.2)).at(0).state, FindingState::meets);
  EXPECT_EQ(check_flotation(result_of(1.21, 1.2)).at(0).state, FindingState::close);
  EXPECT_EQ(check_flotation(result_of(1.1, 1.2)).at(0).state, FindingState::falls_short);
}

TEST(FlotationChecks, WithoutAFactorWantedNothingIsMet) {
  const Finding finding = check_flotation(result_of(3.0, std::nullopt)).at(0);
  EXPECT_EQ(finding.state, FindingState::not_determined);
  EXPECT_FALSE(finding.change.empty());
}

TEST(FlotationChecks, StrapsWithoutAWorkingLoadAreNotDetermined) {
  studies::FlotationResult result = result_of(1.5, 1.2);
  result.tanks[0].has_deadmen = result.tanks[0].has_strap = true;
  result.tanks[0].empty->strap_pull = 5000.0;
  EXPECT_EQ(check_flotation(result).at(1).state, FindingState::not_determined);
  result.tanks[0].strap_load = 4000.0;
  EXPECT_EQ(check_flotation(result).at(1).state, FindingState::falls_short);
  result.tanks[0].strap_load = 9000.0;
  EXPECT_EQ(check_flotation(result).at(1).state, FindingState::meets);
}

}  // namespace
}  // namespace forecourse::checks
