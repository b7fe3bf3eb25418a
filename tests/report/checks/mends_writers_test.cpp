// What would mend a finding, as it is told in the terminal, in the document and on the page.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <sstream>

#include "forecourse/report/checks/checks_report.h"
#include "forecourse/report/checks/mends_report.h"
#include "forecourse/report/delivery/delivery_report.h"
#include "forecourse/report/flotation/flotation_report.h"
#include "forecourse/site/read.h"

namespace forecourse::report {
namespace {

using testing::HasSubstr;
using testing::Not;

constexpr site::Date today{2026, 11, 30, {}};

std::string site_text(const std::string& name) {
  const std::ifstream in(std::string(SITES_DIR) + "/" + name + ".toml");
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

struct Told {
  site::Site site;
  checks::CheckResult result;
  ChecksFacts facts;
};

Told told(const std::string& name) {
  const std::string text = site_text(name);
  decide::MendResult found = decide::mend_station({text, today});
  Told out{site::read_site(text).value, std::move(found.before), {}};
  out.facts.mends = std::move(found.mends);
  return out;
}

std::string summary(const Told& told, bool all) {
  return checks_summary(told.result, told.site, {400, false, false, all}, told.facts);
}

TEST(MendsWriters, TheTerminalTellsThemBeneathTheFinding) {
  const Told station = told("hollin-gap");
  const std::string text = summary(station, false);
  EXPECT_THAT(text,
              HasSubstr("Mend T1: order less in compartment 1: delivery.load.compartment.1.volume from \"8000 gal\" "
                        "to \"5600 gal\". Then 5600.00 gal, meets. No other finding changes."));
  EXPECT_THAT(text, HasSubstr("Likewise D1.premium, D2.regular,"));
  EXPECT_LT(text.find("what is brought is no more"), text.find("Mend T1"));
}

// What is said before every number of a study goes before its findings, wherever they are told.
TEST(ChecksWriters, TheCautionsOfFlotationAndStalledDropsGoFirst) {
  const Told station = told("hollin-gap");
  const Json document = checks_document(station.result, station.facts);
  EXPECT_EQ(document["cautions"][0], stalled_caution);
  EXPECT_EQ(document["cautions"][1], flotation_first);
  const std::string text = summary(station, false);
  EXPECT_LT(text.find("never open it"), text.find("falls short"));
  EXPECT_LT(text.find("without an engineer's word"), text.find("falls short"));
  const std::string page = checks_report(station.result, station.site, station.facts);
  EXPECT_LT(page.find("never open it"), page.find("<table"));
  const Json without = checks_document(told("pell-ridge").result, {});
  EXPECT_THAT(without["cautions"][0].get<std::string>(), HasSubstr("Computed from what was entered"));
}

TEST(MendsWriters, ALongListTellsWhatWasTriedToo) {
  const Told station = told("thornby");
  EXPECT_THAT(summary(station, false), Not(HasSubstr("Tried too")));
  EXPECT_THAT(
      summary(station, true),
      HasSubstr("Tried too: let the slab reach further, by a licensed engineer (tank.T1.flotation.slab.overhang = "
                "\"0.69 m\"): mends it."));
}

TEST(MendsWriters, TheDocumentHasEachWithItsEditEffectsAndTries) {
  const Told station = told("thornby");
  const Json document = checks_document(station.result, station.facts);
  const Json& mends = document["result"]["mends"];
  ASSERT_EQ(mends.size(), 1U);
  const Json& mend = mends[0];
  EXPECT_EQ(mend["rule"], "flotation-factor-empty");
  EXPECT_EQ(mend["way"], "change");
  EXPECT_EQ(mend["work"], false);
  EXPECT_EQ(mend["edits"][0]["path"], "tank.T1.flotation.slab.thickness");
  EXPECT_EQ(mend["edits"][0]["before"], "\"200 mm\"");
  EXPECT_EQ(mend["edits"][0]["value"], "\"400 mm\"");
  EXPECT_EQ(mend["after"], "meets");
  EXPECT_GE(mend["value_after"].get<double>(), mend["limit"].get<double>());
  EXPECT_EQ(mend["tried"].size(), 2U);
  EXPECT_EQ(mend["tried"][0]["work"], false);
  EXPECT_EQ(mend["tried"][0]["step_less"], "390 mm");
  EXPECT_TRUE(mend["reason"].is_null());
}

TEST(MendsWriters, AFindingThatCameAndMeetsIsNotToldAsWorse) {
  decide::Mend mend;
  mend.of.subject = "T1";
  mend.edits = {{"tank.T1.x", std::nullopt, "true"}};
  mend.after = checks::FindingState::meets;
  decide::MendEffect& effect = mend.effects.emplace_back();
  effect.of.subject = "T2";
  effect.requirement = "a thing";
  effect.after = checks::FindingState::meets;
  const std::string meets = mends_section({mend}, site::Display::us);
  EXPECT_THAT(meets, HasSubstr("It changes too T2: a thing (meets, new)."));
  EXPECT_THAT(meets, Not(HasSubstr("for the worse")));
  effect.after = checks::FindingState::falls_short;
  EXPECT_THAT(mends_section({mend}, site::Display::us), HasSubstr("for the worse T2: a thing (falls short, new)."));
}

TEST(MendsWriters, TheirCautionStandsInTheDocument) {
  Told station = told("thornby");
  const auto has_caution = [&] {
    const Json document = checks_document(station.result, station.facts);
    const Json& all = document["cautions"];
    return std::find(all.begin(), all.end(), Json(mends_caution)) != all.end();
  };
  EXPECT_TRUE(has_caution());
  station.facts.mends.reset();
  EXPECT_FALSE(has_caution());
}

TEST(MendsWriters, WithoutBeingAskedNothingIsToldOfThem) {
  Told station = told("thornby");
  station.facts.mends.reset();
  EXPECT_FALSE(checks_document(station.result, station.facts)["result"].contains("mends"));
  EXPECT_THAT(checks_report(station.result, station.site, station.facts), Not(HasSubstr("What would mend it")));
}

TEST(MendsWriters, ThePageHasATableWithTheCautionAndWhatHasNoEdit) {
  const Told station = told("ludd-bank");
  const std::string page = checks_report(station.result, station.site, station.facts);
  EXPECT_THAT(page, HasSubstr("What would mend it"));
  EXPECT_THAT(page, HasSubstr("nothing is entered before it is so"));
  EXPECT_THAT(page, HasSubstr("what the new part has is entered once it is fitted"));
}

}  // namespace
}  // namespace forecourse::report
