// The bypass of a pump that a stronger one can hold shut. SOURCE: common practice, no source
#include "forecourse/checks/pump_checks.h"

#include <gtest/gtest.h>

#include "support/stations.h"

namespace forecourse::checks {
namespace {

using test::site_text;
using test::station;
using test::with;

std::vector<Finding> findings(const std::string& text) {
  const site::Site site = station(text);
  return check_pumps(site, studies::study_flow(site, {}));
}

TEST(PumpBypass, UnknownIsNotDetermined) {
  const auto found = findings(site_text("pell-ridge"));
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].rule, "pump-bypass");
  EXPECT_EQ(found[0].subject, "P2");
  EXPECT_EQ(found[0].state, FindingState::not_determined);
}

TEST(PumpBypass, IsHeldAgainstWhatWasEntered) {
  EXPECT_EQ(findings(with(site_text("pell-ridge"), "pump.P2.bypass", "true")).at(0).state, FindingState::meets);
  EXPECT_EQ(findings(with(site_text("pell-ridge"), "pump.P2.bypass", "false")).at(0).state, FindingState::falls_short);
}

TEST(PumpBypass, IsNotAskedOfAPumpThatNothingHoldsShut) { EXPECT_TRUE(findings(site_text("site-s")).empty()); }

}  // namespace
}  // namespace forecourse::checks
