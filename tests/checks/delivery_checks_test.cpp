// SOURCE: [cfr_63_cccccc, table 1 (1)(c) and (1)(g)] [osha_1910_106, (b)(3)(iv)] limits as printed
#include "forecourse/checks/delivery_checks.h"

#include <gtest/gtest.h>

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
  for (const char* rule :
       {"delivery-room", "truck-pressure", "truck-vacuum", "fill-velocity", "vent-height", "vent-size",
        "vent-restrictor", "vent-pressure-setting", "vent-vacuum-setting", "vent-mixed"}) {
    EXPECT_EQ(find(all, rule).state, FindingState::meets) << rule << ": " << find(all, rule).reason;
  }
}

TEST(DeliveryChecks, ATruckLargerThanTheRoomFallsShort) {
  const auto all = of(with(marle, "delivery.load.compartment.front.volume", "8500 gal"));
  EXPECT_EQ(find(all, "delivery-room", "T1").state, FindingState::falls_short);
  EXPECT_LT(*find(all, "delivery-room", "T1").margin, 0.0);
}

TEST(DeliveryChecks, SettingsOutsideTheirBandFallShort) {
  const auto all = of(with(marle, "delivery.load.vapor_growth", "100 %"));
  EXPECT_EQ(find(all, "truck-pressure").state, FindingState::meets);
  std::string text = marle;
  for (std::size_t at = 0; (at = text.find("opens_at = \"3 inH2O\"", at)) != std::string::npos; ++at)
    text.replace(at, 20, "opens_at = \"2 inH2O\"");
  EXPECT_EQ(find(of(text), "vent-pressure-setting").state, FindingState::falls_short);
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
