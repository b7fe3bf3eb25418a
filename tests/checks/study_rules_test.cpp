// What the cases of the studies' requirements cannot say one by one: what decides whether one applies, days to come.
#include <gtest/gtest.h>

#include "checks/shop.h"
#include "forecourse/checks/tank_checks.h"

namespace forecourse::checks {
namespace {

/// SOURCE: [cfr_63_cccccc, 63.11111] from 10,000 and from 100,000 gal of gasoline a month
TEST(StudyRules, ThroughputDecidesWhatIsAsked) {
  const auto of = [](const char* rule, const char* gallons) {
    return finding(vapor_of(test::station(changed(shop, {"120000 gal", gallons}))), rule).state;
  };
  EXPECT_EQ(of("submerged-fill", "9999 gal"), FindingState::does_not_apply);
  EXPECT_EQ(of("submerged-fill", "10000 gal"), FindingState::meets);
  EXPECT_EQ(of("vapor-balance", "99999 gal"), FindingState::does_not_apply);
  EXPECT_EQ(of("vapor-balance", "100000 gal"), FindingState::meets);
}

TEST(StudyRules, WithoutAThroughputATruckOverItsLimitIsNotDetermined) {
  static const site::Site marle = test::station(test::site_text("marle-cross"));
  studies::DeliveryResult result = studies::study_delivery(marle, {});
  result.runs.front().truck.highest_pressure = to_si(19.0, "inH2O");
  const Finding told = finding(check_delivery(marle, result), "truck-pressure");
  EXPECT_EQ(told.state, FindingState::not_determined);
  EXPECT_LT(*told.margin, 0.0);
  EXPECT_TRUE(told.change.starts_with("enter operations.throughput")) << told.change;
}

/// Vents that share an outlet are passed by all that is dropped at once.
TEST(StudyRules, ASharedVentIsHeldAgainstAllThatBreathesThroughIt) {
  const auto of = [](double second_begins) {
    const site::Site site = test::station(changed(shop, {"shared = \"own\"", "shared = \"stack\""}));
    studies::DeliveryResult result;
    studies::DropTold drop;
    drop.tank = "T1";
    drop.highest_rate = to_si(400.0, "gpm");
    drop.begins = 0.0;
    drop.ends = 600.0;
    result.runs.emplace_back().drops.push_back(drop);
    drop.tank = "T2";
    drop.begins = second_begins;
    drop.ends = second_begins + 600.0;
    result.runs.front().drops.push_back(drop);
    return *finding(check_delivery(site, result), "vent-size").limit;
  };
  EXPECT_NEAR(of(600.0), to_si(1.5, "in"), 1e-9) << "400 gpm over 100 ft";
  EXPECT_NEAR(of(300.0), to_si(2.0, "in"), 1e-9) << "800 gpm over 100 ft";
}

/// The table counts the pipe from the tank on: a branch to a shared vent is part of its length.
TEST(StudyRules, AVentIsAsLongAsItsPipeAndItsBranch) {
  const auto of = [](const std::string& branch) {
    return finding(delivery_of(test::station(changed(
                       shop, {"bore = \"2.067 in\" }\n", "bore = \"2.067 in\" }\n  branch = { " + branch + " }\n"}))),
                   "vent-size");
  };
  EXPECT_NEAR(*of("length = \"0.1 ft\"").limit, to_si(2.0, "in"), 1e-9) << "beyond 100 ft";
  EXPECT_NEAR(*of("length = \"100 ft\"").limit, to_si(2.0, "in"), 1e-9) << "400 gpm over 200 ft";
  EXPECT_EQ(of("length = \"300 ft\"").state, FindingState::not_determined) << "beyond the table";
  EXPECT_EQ(of("bore = \"2.067 in\"").reason, "the length of its branch is not entered");
}

TEST(StudyRules, NoDeviceIsAskedOfATankAboveGroundOrOfSmallTransfers) {
  const auto of = [](const char* more) {
    const site::Site site =
        test::station(changed(shop, {"capacity = \"10000 gal\"", std::string("capacity = \"10000 gal\"\n") + more}));
    studies::TankResult result;
    studies::TankTold& tank = result.tanks.emplace_back();
    tank.id = tank.tank = "T1";
    tank.overfill.has_fill = true;
    return check_tanks(site, result).at(0).state;
  };
  EXPECT_EQ(of(""), FindingState::falls_short);
  EXPECT_EQ(of("above_ground = true"), FindingState::does_not_apply);
  EXPECT_EQ(of("largest_transfer = \"25 gal\""), FindingState::does_not_apply);
  EXPECT_EQ(of("largest_transfer = \"26 gal\""), FindingState::falls_short);
}

TEST(StudyRules, GasolineAndDieselShareNoVent) {
  const auto of = [](const char* with) {
    return finding(delivery_of(test::station(changed(shop, {"shared = \"own\"", with}))), "vent-mixed").state;
  };
  EXPECT_EQ(of("shared = \"own\""), FindingState::meets);
  EXPECT_EQ(of("shared = \"stack\""), FindingState::falls_short);
  const std::string joined = changed(shop, {"shared = \"own\"", "shared = \"stack\""});
  EXPECT_EQ(finding(delivery_of(test::station(changed(joined, {"diesel-b0", "other"}))), "vent-mixed").state,
            FindingState::not_determined)
      << "it may be gasoline";
}

TEST(StudyRules, AFuelOfUnknownKindMayBeGasoline) {
  static const site::Site unknown = test::station(changed(shop, {"gasoline-e10", "other"}));
  static const site::Site diesel = test::station(changed(shop, {"gasoline-e10", "diesel-b5"}));
  studies::DeliveryResult result;
  studies::DropTold drop;
  drop.tank = "T1";
  drop.product = "regular";
  result.runs.emplace_back().drops.push_back(drop);
  result.runs.front().truck.closed = true;
  result.runs.front().truck.highest_pressure = to_si(19.0, "inH2O");
  EXPECT_EQ(finding(check_delivery(unknown, result), "truck-pressure").state, FindingState::not_determined);
  EXPECT_EQ(finding(check_delivery(diesel, result), "truck-pressure").state, FindingState::does_not_apply);
}

TEST(StudyRules, APumpWithoutALeakDetectorIsAskedForOne) {
  const std::size_t at = shop.find("leak_detector");
  const std::string line = shop.substr(at, shop.find('\n', at) + 1 - at);
  EXPECT_EQ(finding(lines_of(test::station(changed(shop, {line, ""}))), "leak-detector").state,
            FindingState::not_determined);
}

/// A test on record that failed undoes the one entered before it.
TEST(StudyRules, AFailedTestIsToldWithItsDay) {
  using site::records::TestKind;
  static const site::Site site = test::station(shop);
  site::records::Records records;
  const auto fail = [&](TestKind kind, const char* part) {
    site::records::Test& test = records.tests.emplace_back();
    test.kind = kind;
    test.part.text = part;
    test.at.day = {2026, 10, 1, {}};
    test.passed = false;
  };
  fail(TestKind::leak_detector, "P1");
  fail(TestKind::vapor_return, "T1");
  fail(TestKind::vent_valve, "V1");
  std::vector<Finding> all = check_vapor(site, studies::study_vapor(site, {}), today, &records);
  for (Finding& one : check_line_test(site, studies::study_line_test(site, {}), today, &records)) {
    all.push_back(std::move(one));
  }
  for (const char* rule : {"leak-detector-yearly", "static-pressure-test", "vent-pressure-setting"}) {
    EXPECT_EQ(finding(all, rule).state, FindingState::not_determined) << rule;
    EXPECT_EQ(finding(all, rule).reason, "its last test failed on 2026-10-01") << rule;
  }
}

/// Parts without an id go by their tank and number, as everywhere.
TEST(StudyRules, APartWithoutAnIdGoesByItsTankAndNumber) {
  const std::string without = changed(changed(shop, {"  id = \"F1\"\n", ""}), {"  id = \"V1\"\n", ""});
  const std::vector<Finding> all = vapor_of(test::station(without));
  EXPECT_EQ(finding(all, "submerged-fill").subject, "T1 fill 1");
  EXPECT_EQ(finding(all, "vent-pressure-setting").subject, "T1 vent 1");
}

/// A test that is yet to come proves nothing, whichever study holds it.
TEST(StudyRules, ATestDatedInTheFutureIsNone) {
  const std::string later = "2026-12-01";
  const auto of = [&](const char* rule, const char* old, const char* made) {
    const site::Site site = test::station(changed(shop, {old, std::string(made) + later}));
    std::vector<Finding> all = vapor_of(site);
    for (Finding& one : lines_of(site)) all.push_back(std::move(one));
    const Finding told = finding(all, rule);
    EXPECT_EQ(told.state, FindingState::not_determined) << rule;
    EXPECT_EQ(told.reason, "it is dated 2026-12-01, which is yet to come") << rule;
    EXPECT_EQ(told.change, "correct the date") << rule;
  };
  of("static-pressure-test", "end = \"1.85 inH2O\", tested = 2025-01-01", "end = \"1.85 inH2O\", tested = ");
  of("vent-pressure-setting", "vacuum_leak = \"0.21 ft3/h\", tested = 2025-01-01",
     "vacuum_leak = \"0.21 ft3/h\", tested = ");
  of("leak-detector-yearly", "acts_within = \"1 h\", tested = 2026-05-02", "acts_within = \"1 h\", tested = ");
  of("line-yearly", "bore = \"2.00 in\"\ntested = 2026-05-02", "bore = \"2.00 in\"\ntested = ");
}

}  // namespace
}  // namespace forecourse::checks
