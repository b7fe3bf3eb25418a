// SOURCE: [cfr_63_cccccc, table 1 (1)(c)] [osha_1910_106, (b)(3)(iv)] limits as printed
#include "forecourse/checks/delivery_checks.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "forecourse/checks/vapor_checks.h"
#include "support/stations.h"

namespace forecourse::checks {
namespace {

using test::site_text;
using test::station;
using test::with;

std::vector<Finding> of(const std::string& text) {
  const site::Site site = station(text);
  return check_delivery(site, studies::study_delivery(site, {}));
}

const Finding& find(const std::vector<Finding>& all, const std::string& rule, const std::string& subject = {}) {
  for (const Finding& f : all) {
    if (f.rule == rule && (subject.empty() || f.subject == subject)) return f;
  }
  static const Finding none;
  ADD_FAILURE() << "no finding " << rule << " " << subject;
  return none;
}

const std::string marle = site_text("marle-cross");

TEST(DeliveryChecks, AnExampleMeetsThem) {
  const auto all = of(marle);
  for (const char* rule : {"delivery-room", "truck-pressure", "truck-vacuum", "fill-velocity", "vent-height",
                           "vent-size", "vent-restrictor", "vent-mixed"}) {
    EXPECT_EQ(find(all, rule).state, FindingState::meets) << rule << ": " << find(all, rule).reason;
  }
}

TEST(DeliveryChecks, ATruckLargerThanTheRoomFallsShort) {
  const auto all = of(with(marle, "delivery.load.compartment.front.volume", "8500 gal"));
  EXPECT_EQ(find(all, "delivery-room", "T1").state, FindingState::falls_short);
  EXPECT_LT(*find(all, "delivery-room", "T1").margin, 0.0);
}

/// Settings of vent valves bind by the throughput: the checks of vapor hold them, once.
TEST(DeliveryChecks, NoRequirementIsToldByTwoStudies) {
  const site::Site site = station(marle);
  const auto vapor = check_vapor(site, studies::study_vapor(site, {}), site::Date{2026, 11, 30, {}});
  for (const Finding& one : of(marle)) {
    EXPECT_TRUE(std::none_of(vapor.begin(), vapor.end(), [&](const Finding& other) { return other.rule == one.rule; }))
        << one.rule;
  }
}

TEST(DeliveryChecks, VaporThatGrowsStaysWithinTheTruck) {
  EXPECT_EQ(find(of(with(marle, "delivery.load.vapor_growth", "100 %")), "truck-pressure").state, FindingState::meets);
}

TEST(DeliveryChecks, WithoutAVaporHoseTheTruckLimitsDoNotApply) {
  const auto all = of(with(marle, "delivery.load.truck_open_to", "air"));
  EXPECT_EQ(find(all, "truck-pressure").state, FindingState::does_not_apply);
}

TEST(DeliveryChecks, WhatWasNotEnteredIsNotDetermined) {
  const auto all = of(site_text("hollin-gap"));
  EXPECT_EQ(find(all, "fill-velocity-start").state, FindingState::not_determined);
}

}  // namespace
}  // namespace forecourse::checks
