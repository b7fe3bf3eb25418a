#include "forecourse/report/delivery/delivery_report.h"

#include <gtest/gtest.h>

#include "forecourse/checks/delivery_checks.h"
#include "support/stations.h"

namespace forecourse::report {
namespace {

struct Told {
  site::Site site;
  studies::DeliveryResult result;
  std::vector<checks::Finding> findings;
};

Told told(bool table) {
  Told out{test::station(test::site_text("marle-cross")), {}, {}};
  studies::DeliveryOptions options;
  options.table = table;
  out.result = studies::study_delivery(out.site, options);
  out.findings = checks::check_delivery(out.site, out.result);
  return out;
}

TEST(DeliveryReport, TheCautionStandsFirstWhereACaseEndsUnderPressure) {
  const Told all = told(true);
  ASSERT_TRUE(any_under_pressure(all.result));
  const std::string text = delivery_summary(all.result, all.findings, all.site, {400, false, true, false});
  EXPECT_LT(text.find("never open it"), text.find("delivery load"));
  EXPECT_EQ(delivery_document(all.result, all.findings)["cautions"][0], stalled_caution);
  const std::string page = delivery_section(all.result, all.site);
  EXPECT_LT(page.find("never open it"), page.find("<table"));
}

TEST(DeliveryReport, AQuietDeliveryHasNoSuchCaution) {
  const Told one = told(false);
  EXPECT_FALSE(any_under_pressure(one.result));
  EXPECT_EQ(delivery_summary(one.result, one.findings, one.site, {80, false, true, false}).find("Caution:"),
            std::string::npos);
}

TEST(DeliveryReport, EveryCourseIsOverOneBaseOfTime) {
  const Told one = told(false);
  const Json document = delivery_document(one.result, one.findings);
  const Json& chart = document["result"]["runs"][0]["chart"];
  const std::size_t count = chart["time_s"].size();
  ASSERT_GT(count, 20U);
  for (const char* key :
       {"rate_m3_per_s", "truck_m3", "hose_m3", "tank_m3", "depth_m", "ullage_pressure_gauge_pa", "vented_m3_per_s",
        "to_truck_m3_per_s", "return_riser_pressure_gauge_pa", "vapor_hose_pressure_gauge_pa"}) {
    ASSERT_FALSE(chart[key].empty()) << key;
    for (const auto& [name, course] : chart[key].items()) EXPECT_EQ(course.size(), count) << key << " " << name;
  }
  EXPECT_EQ(chart["truck_pressure_gauge_pa"].size(), count);
  EXPECT_LE(document["result"]["runs"][0]["vapor_balance"].get<double>(), 1e-12);
}

TEST(DeliveryReport, WhatIsNotDeterminedIsNull) {
  Told one{test::station(test::site_text("hollin-gap")), {}, {}};
  one.result = studies::study_delivery(one.site, {});
  const Json document = delivery_document(one.result, {});
  EXPECT_TRUE(document["result"]["runs"][0]["ullages"][0]["highest_pressure_gauge_pa"].is_null());
  EXPECT_FALSE(document["result"]["runs"][0]["ullages"][0]["problem"].is_null());
}

}  // namespace
}  // namespace forecourse::report
