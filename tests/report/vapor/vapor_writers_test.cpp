// What is told of vapor and product care, of an example station. SOURCE: common practice, no source
#include <gtest/gtest.h>

#include "forecourse/checks/vapor_checks.h"
#include "forecourse/report/vapor/vapor_report.h"
#include "forecourse/report/vapor/vapor_view.h"
#include "support/stations.h"

namespace forecourse::report {
namespace {

struct Told {
  site::Site site = test::station(test::site_text("hollin-gap"));
  studies::VaporResult result = studies::study_vapor(site, {});
  VaporFacts facts{{}, {}, {}, checks::check_vapor(site, result), {}};
};

bool contains(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

TEST(VaporWriters, SayWhatIsNotVerified) {
  const Told told;
  const std::string text = vapor_summary(told.result, told.site, {100, false, false, true}, told.facts);
  EXPECT_TRUE(contains(text, "not verified"));
  const Json json = vapor_document(told.result, told.facts);
  EXPECT_EQ(json["result"]["products"][0]["losses"][0]["status"], "from memory, not verified");
}

TEST(VaporWriters, TellTiersTargetsAndCare) {
  const Told told;
  const std::string page = vapor_section(told.result, told.site);
  for (const char* part : {"What the federal rule asks by throughput", "Static pressure test", "Leak limits",
                           "Product care", "Materials against E85", "True vapor pressure"})
    EXPECT_TRUE(contains(page, part)) << part;
  const Json json = vapor_document(told.result, told.facts);
  EXPECT_EQ(json["result"]["static_targets"].size(), 5U);
  EXPECT_TRUE(json["result"]["product_care"]["stock"].is_array());
}

TEST(VaporWriters, ADoubtfulConstantIsMarked) {
  const Told told;
  const WordTable table = static_table(told.result, site::Display::us, Glyphs::ascii);
  EXPECT_TRUE(contains(table.heads.at(2), "in doubt"));
  EXPECT_FALSE(contains(table.heads.at(1), "in doubt"));
}

}  // namespace
}  // namespace forecourse::report
