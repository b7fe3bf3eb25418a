// What is told of the ground water: words, table, drawing and JSON of one invented tank. SOURCE: common practice, no
// source
#include <gtest/gtest.h>

#include "forecourse/checks/flotation_checks.h"
#include "forecourse/report/flotation/flotation_report.h"
#include "forecourse/report/flotation/flotation_view.h"
#include "support/stations.h"

namespace forecourse::report {
namespace {

const std::string buried = R"(format = 1
[site]
name = "Wet hollow, invented"
[[product]]
id = "regular"
density = "740 kg/m3"
viscosity = "0.5 mPa.s"
[[tank]]
id = "T1"
product = "regular"
surface_elevation = "-8 ft"
shape = { kind = "horizontal-cylinder", inside_diameter = "94 in", outside_diameter = "96 in", length = "26 ft", heads = "flat" }
  [tank.flotation]
  empty_mass = "9000 lb"
  cover = "3 ft"
  water_level = "2 ft"
  backfill = "115 lbf/ft3"
  soil_beside_crown = true
  slab = { thickness = "8 in", density = "150 lb/ft3", overhang = "1 ft" }
)";

struct Told {
  site::Site site = test::station(buried);
  studies::FlotationResult result = study_flotation(site, options());
  FlotationFacts facts{{}, {}, {}, checks::check_flotation(result), {}};

  static studies::FlotationOptions options() {
    studies::FlotationOptions out;
    out.filled = 4.0;
    return out;
  }
};

bool contains(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

TEST(FlotationWriters, TheCautionStandsBeforeAnyNumber) {
  const Told told;
  const std::string text = flotation_summary(told.result, told.site, {80, false, false, true}, told.facts);
  const std::size_t caution = text.find("Never empty a tank in wet ground");
  ASSERT_NE(caution, std::string::npos);
  EXPECT_LT(caution, text.find("factor"));
  const std::string page = flotation_report(told.result, told.site, told.facts);
  EXPECT_LT(page.find("Never empty a tank in wet ground"), page.find("<table"));
}

TEST(FlotationWriters, EachFactorStandsBesideItsDefinition) {
  const Told told;
  const std::string page = flotation_section(told.result, told.site);
  for (const FactorWords& words : factor_words()) {
    EXPECT_TRUE(contains(page, words.name));
    EXPECT_TRUE(contains(page, words.definition));
  }
  const Json json = flotation_document(told.result, told.facts);
  const Json& empty = json["result"]["tanks"][0]["empty"];
  for (const char* kind : {"hold_down", "total", "submerged"}) {
    EXPECT_TRUE(empty[kind]["factor"].is_number()) << kind;
    EXPECT_FALSE(empty[kind]["definition"].get<std::string>().empty());
  }
}

TEST(FlotationWriters, ShowsTheDrawingAndBothCurves) {
  const Told told;
  const std::string page = flotation_section(told.result, told.site);
  EXPECT_TRUE(contains(page, "Section across tank T1"));
  EXPECT_TRUE(contains(page, "Factor against the level of the water"));
  EXPECT_TRUE(contains(page, "Factor against what is in it"));
  EXPECT_TRUE(contains(page, "data-part=\"tank.T1\""));
}

TEST(FlotationWriters, WithoutAFactorWantedItIsForInformation) {
  const Told told;
  const std::vector<std::string> answer = flotation_answer(told.result.tanks.at(0), site::Display::us, Glyphs::ascii);
  EXPECT_TRUE(contains(answer.front(), "for information"));
  EXPECT_EQ(told.facts.findings.at(0).state, checks::FindingState::not_determined);
}

/// The sums of the table are those of its rows: what holds, and what lifts.
TEST(FlotationWriters, TheBalanceAddsUp) {
  const Told told;
  const studies::FlotationState& state = told.result.tanks.at(0).filled.value();
  double down = 0.0, up = 0.0;
  for (const studies::BodyTold& body : state.bodies) {
    down += body.lifted ? body.weight : body.submerged_weight;
    up += body.lifted ? body.weight - body.submerged_weight : 0.0;
  }
  EXPECT_NEAR(down, state.hold_down_force, 1e-9 * down);
  EXPECT_NEAR(up, state.buoyant_force, 1e-9 * up);
  EXPECT_EQ(balance_table(state, site::Display::us, Glyphs::ascii).rows.size(), state.bodies.size() + 1);
}

}  // namespace
}  // namespace forecourse::report
