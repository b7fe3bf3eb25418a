// SOURCE: [cfr_63_cccccc, 63.11117, 63.11118, 63.11120, table 1]; the stations are invented.
#include "forecourse/checks/vapor_checks.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "support/stations.h"

namespace forecourse::checks {
namespace {

using test::station;
using test::with;

const std::string shop = R"(format = 1
[[product]]
id = "regular"
kind = "gasoline-e10"
gravity = "60 degAPI"
viscosity = "0.5 mPa.s"
[[tank]]
id = "T1"
product = "regular"
surface_elevation = "-8 ft"
capacity = "10000 gal"
installed = 2010-01-01
vapor_return = { kind = "two-point", pressure_test = { ullage = "5000 gal", nozzles = 6, end = "1.85 inH2O", tested = 2025-01-01 } }
  [[tank.fill]]
  id = "F1"
  drop_tube = { length = "12 ft", bore = "4 in", end_above_bottom = "5 in" }
  [[tank.vent]]
  id = "V1"
  valve = { opens_at = "3 inH2O", vacuum_opens_at = "8 inH2O", pressure_leak = "0.05 ft3/h", vacuum_leak = "0.21 ft3/h", tested = 2025-01-01 }
[operations]
throughput = [{ product = "regular", per_month = "120000 gal" }]
)";

FindingState state(const std::string& text, const std::string& rule, const site::Date& on = {2026, 11, 25, {}}) {
  const site::Site site = station(text);
  const std::vector<Finding> findings = check_vapor(site, studies::study_vapor(site, {}), on);
  const auto found = std::find_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.rule == rule; });
  return found == findings.end() ? FindingState::does_not_apply : found->state;
}

TEST(VaporChecks, AWholeStationMeets) {
  for (const char* rule : {"submerged-fill", "vapor-balance", "two-point", "static-pressure-test",
                           "vent-pressure-setting", "vent-vacuum-setting", "vent-pressure-leak", "vent-vacuum-leak"})
    EXPECT_EQ(state(shop, rule), FindingState::meets) << rule;
}

TEST(VaporChecks, ADropTubeByTheDayOfInstallation) {
  const std::string high = with(shop, "tank.T1.fill.F1.drop_tube.end_above_bottom", "10 in");
  EXPECT_EQ(state(high, "submerged-fill"), FindingState::falls_short);
  EXPECT_EQ(state(with(high, "tank.T1.installed", "2006-11-09"), "submerged-fill"), FindingState::meets);
  EXPECT_EQ(state(with(high, "tank.T1.installed", "2006-11-10"), "submerged-fill"), FindingState::falls_short);
}

TEST(VaporChecks, SmallTanksAreExempt) {
  const std::string small = with(shop, "tank.T1.capacity", "240 gal");
  EXPECT_EQ(state(small, "submerged-fill"), FindingState::does_not_apply);
  EXPECT_EQ(state(small, "vapor-balance"), FindingState::does_not_apply);
  const std::string old = with(with(shop, "tank.T1.capacity", "1900 gal"), "tank.T1.installed", "2008-01-09");
  EXPECT_EQ(state(old, "vapor-balance"), FindingState::does_not_apply);
  EXPECT_EQ(state(with(old, "tank.T1.installed", "2008-01-10"), "vapor-balance"), FindingState::meets);
}

TEST(VaporChecks, BelowTheTierNothingIsAsked) {
  const std::string less = with(shop, "operations.throughput.1.per_month", "50000 gal");
  EXPECT_EQ(state(less, "submerged-fill"), FindingState::meets);
  EXPECT_EQ(state(less, "vapor-balance"), FindingState::does_not_apply);
  std::string unknown = shop;
  unknown.erase(unknown.find("[operations]"));
  EXPECT_EQ(state(unknown, "submerged-fill"), FindingState::not_determined);
}

TEST(VaporChecks, TestsGrowOld) {
  EXPECT_EQ(state(shop, "static-pressure-test", {2028, 1, 1, {}}), FindingState::meets);
  EXPECT_EQ(state(shop, "static-pressure-test", {2028, 1, 2, {}}), FindingState::falls_short);
}

TEST(VaporChecks, ARoomThatLeaksFallsShort) {
  EXPECT_EQ(state(with(shop, "tank.T1.vapor_return.pressure_test.end", "1.80 inH2O"), "static-pressure-test"),
            FindingState::falls_short);
  EXPECT_EQ(state(with(shop, "tank.T1.vent.V1.valve.pressure_leak", "0.20 ft3/h"), "vent-pressure-leak"),
            FindingState::falls_short);
}

}  // namespace
}  // namespace forecourse::checks
