// SOURCE: [cfr_1090_1550, paragraph (b)] 10 gallons per minute
#include "forecourse/checks/flow_checks.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "forecourse/site/edit.h"
#include "support/stations.h"

namespace forecourse::checks {
namespace {

using test::in_gpm;
using test::site_text;
using test::station;
using test::with;

std::vector<Finding> findings_of(const std::string& text, std::optional<double> keep_gpm = {}) {
  studies::FlowOptions options;
  if (keep_gpm) options.keep_flow = *keep_gpm / in_gpm(1.0);
  const site::Site site = station(text);
  return check_flow(site, studies::study_flow(site, options));
}

const Finding& about(const std::vector<Finding>& findings, const std::string& hose) {
  return *std::find_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.subject == hose; });
}

std::string federal(const std::string& text) { return with(text, "site.rules", "[\"us-federal\"]"); }

std::string limited(const std::string& text, const std::string& limit) {
  return with(text, "dispenser.D1.hose.D1.a.limiter", limit);
}

TEST(NozzleFlowCap, JustInsideIsClose) {
  const auto findings = findings_of(federal(limited(site_text("site-s"), "9.99 gpm")));
  EXPECT_EQ(about(findings, "D1.a").state, FindingState::close);
}

TEST(NozzleFlowCap, OnTheLimitIsClose) {
  const auto findings = findings_of(federal(limited(site_text("site-s"), "10 gpm")));
  EXPECT_EQ(about(findings, "D1.a").state, FindingState::close);
}

TEST(NozzleFlowCap, JustOutsideFallsShort) {
  const auto findings = findings_of(federal(limited(site_text("site-s"), "10.01 gpm")));
  const Finding& finding = about(findings, "D1.a");
  EXPECT_EQ(finding.state, FindingState::falls_short);
  EXPECT_LT(*finding.margin, 0.0);
  EXPECT_FALSE(finding.change.empty());
}

TEST(NozzleFlowCap, WellInsideMeets) {
  const auto findings = findings_of(federal(limited(site_text("site-s"), "9 gpm")));
  EXPECT_EQ(about(findings, "D1.a").state, FindingState::meets);
}

TEST(NozzleFlowCap, HoseWhoseFlowIsNotKnownHasNoFinding) {
  const std::string text = federal(site_text("site-s"));
  const auto removed = site::remove_value(text, "dispenser.D1.hose.D1.a.lift");
  ASSERT_TRUE(removed.ok());
  const site::Site site = site::Site(station(removed.value));
  for (const Finding& finding : check_flow(site, studies::study_flow(site, {}))) {
    EXPECT_NE(finding.state, FindingState::meets);
  }
}

TEST(FlowToKeep, HoseWithoutARunningPumpGivesNothingAndFallsShort) {
  const auto findings = findings_of(federal(with(site_text("site-s"), "pump.P1.running", "false")), 5.0);
  int told = 0;
  for (const Finding& finding : findings) {
    if (finding.subject != "D1.a") continue;
    ++told;
    EXPECT_EQ(finding.state, finding.rule == "flow-to-keep" ? FindingState::falls_short : FindingState::does_not_apply);
    EXPECT_EQ(*finding.value, 0.0);
    EXPECT_NE(finding.reason.find("no pump of 'regular' runs: off is P1"), std::string::npos) << finding.reason;
  }
  EXPECT_EQ(told, 2);
}

TEST(FlowToKeep, PumpTooWeakToLiftIsToldAsSuch) {
  const std::string weak =
      with(site_text("site-s"), "pump.P1.curve", "{ shutoff = \"2.0 psi\", per_flow_squared = \"0.002 psi/gpm^2\" }");
  const auto findings = findings_of(weak, 5.0);
  const Finding& finding = about(findings, "D1.a");
  EXPECT_EQ(finding.state, FindingState::falls_short);
  EXPECT_EQ(*finding.value, 0.0);
  EXPECT_NE(finding.reason.find("pump P1 cannot lift the fuel to hose"), std::string::npos) << finding.reason;
  EXPECT_NE(finding.reason.find("its shut-off pressure, 2 psi, is under the static need of"), std::string::npos);
}

TEST(NozzleFlowCap, DoesNotConcernDieselNorStationsUnderOtherRules) {
  EXPECT_TRUE(findings_of(federal(site_text("truck-lane"))).empty());
  EXPECT_TRUE(findings_of(site_text("site-s")).empty());
}

TEST(FlowToKeep, ThreeRows) {
  // Site S, all six open: D3.a gives 9.58 gpm.
  EXPECT_EQ(about(findings_of(site_text("site-s"), 9.3), "D3.a").state, FindingState::meets);
  EXPECT_EQ(about(findings_of(site_text("site-s"), 9.5), "D3.a").state, FindingState::close);
  EXPECT_EQ(about(findings_of(site_text("site-s"), 9.6), "D3.a").state, FindingState::falls_short);
}

TEST(FlowToKeep, RestingOnAnIllustrativeDefaultIsNotDetermined) {
  const Finding finding = about(findings_of(site_text("marle-cross"), 5.0), "D7.a");
  EXPECT_EQ(finding.state, FindingState::not_determined);
  EXPECT_TRUE(finding.value.has_value());
  EXPECT_NE(finding.reason.find("illustrative"), std::string::npos);
}

TEST(FlowToKeep, IsHeldAgainstTheWholeSpreadOfUncertainValues) {
  const std::string spread = "{ low = \"140 ft\", likely = \"150 ft\", high = \"170 ft\" }";
  const std::string text = with(site_text("site-s"), "line.trunk.length", spread);
  EXPECT_EQ(about(findings_of(text, 9.3), "D3.a").state, FindingState::meets);
  EXPECT_EQ(about(findings_of(text, 9.57), "D3.a").state, FindingState::close);
  EXPECT_EQ(about(findings_of(text, 9.8), "D3.a").state, FindingState::falls_short);
}

TEST(FlowToKeep, UncertainTimeToStopThePumpsIsNoMatterOfFlow) {
  const std::string text = site_text("site-s") +
                           "\n[[emergency_stop]]\nid = \"E2\"\nacts_in = { low = \"40 s\", likely = \"60 s\", high = "
                           "\"180 s\" }\n";
  EXPECT_EQ(about(findings_of(text, 9.3), "D3.a").state, FindingState::meets);
}

}  // namespace
}  // namespace forecourse::checks
