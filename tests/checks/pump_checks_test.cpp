// The bypass of a pump that a stronger one can hold shut. SOURCE: common practice, no source
#include "forecourse/checks/pump_checks.h"

#include <gmock/gmock.h>
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

/// The station whose weaker pump P2 has no bypass, its control changed.
std::string without_bypass(const std::string& key = "", const std::string& value = "") {
  const std::string text = with(site_text("pell-ridge"), "pump.P2.bypass", "false");
  return key.empty() ? text : with(text, "control.regular-pumps." + key, value);
}

/// Its second pump started by hoses calling.
std::string by_hoses_calling(std::string text) {
  for (const std::string line : {"starts_below = \"22 psi\"\n", "stops_above = \"27 psi\"\n"}) {
    EXPECT_NE(text.find(line), std::string::npos) << line;
    text.replace(text.find(line), line.size(), line.starts_with("starts") ? "hoses_calling = 4\n" : "");
  }
  return text;
}

Finding of_one_hose(const std::string& text) {
  const site::Site site = station(text);
  return check_pumps(site, studies::study_flow(site, {{{"one", {"D1.a"}}}, {}})).at(0);
}

TEST(PumpBypass, IsHeldAgainstWhatWasEntered) {
  EXPECT_EQ(findings(with(site_text("pell-ridge"), "pump.P2.bypass", "true")).at(0).state, FindingState::meets);
  EXPECT_EQ(findings(without_bypass("kind", "\"all\"")).at(0).state, FindingState::falls_short);
}

// P2 opens near 40 gpm in total; all hoses, and one at each dispenser, draw more.
TEST(PumpBypass, OfALagPumpThatDeliversWheneverItRunsIsNotDetermined) {
  for (const Finding& found : {findings(without_bypass()).at(0), of_one_hose(without_bypass())}) {
    EXPECT_EQ(found.state, FindingState::not_determined);
    EXPECT_EQ(found.reason,
              "its control starts the next pump only below the line pressure of starts_below, 22 psi, and in no state "
              "computed is it found running while held shut");
  }
  const Finding calling = findings(by_hoses_calling(without_bypass())).at(0);
  EXPECT_EQ(calling.state, FindingState::not_determined);
  EXPECT_THAT(calling.reason, testing::HasSubstr("only when more than 4 hoses call for each pump that runs"));
}

// One hose draws some 10 gpm.
TEST(PumpBypass, OfALagPumpThatIsStartedWhileHeldShutFallsShort) {
  const std::string later = with(without_bypass(), "control.regular-pumps.stops_above", "\"50 psi\"");
  EXPECT_EQ(of_one_hose(with(later, "control.regular-pumps.starts_below", "\"40 psi\"")).state,
            FindingState::falls_short)
      << "it starts at once";
  std::string rests = without_bypass();
  const std::string stop = "stops_above = \"27 psi\"\n";
  ASSERT_NE(rests.find(stop), std::string::npos);
  rests.erase(rests.find(stop), stop.size());
  EXPECT_EQ(of_one_hose(rests).state, FindingState::falls_short) << "it stays on when the other hoses are shut";
}

TEST(PumpBypass, IsNotAskedOfAPumpThatNothingHoldsShut) { EXPECT_TRUE(findings(site_text("site-s")).empty()); }

}  // namespace
}  // namespace forecourse::checks
