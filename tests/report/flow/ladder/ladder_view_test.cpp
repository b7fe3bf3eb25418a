// The ladder and the worst states in words, on every sheet the same.
#include "forecourse/report/flow/ladder/ladder_view.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/base/unit_text.h"
#include "forecourse/report/flow/ladder/ladder_html.h"
#include "forecourse/report/flow/ladder/ladder_json.h"
#include "forecourse/report/flow/ladder/ladder_terminal.h"

namespace forecourse::report {
namespace {

using studies::Ladder;
using studies::LadderOrder;
using studies::Proof;
using testing::Contains;
using testing::HasSubstr;

double gpm(double flow) { return to_si(flow, "gpm"); }

Ladder ladder(LadderOrder order, const std::vector<double>& slowest, std::optional<int> keeps) {
  Ladder out{"regular", order, {}, keeps, gpm(10.0), "clause"};
  std::vector<std::string> open;
  for (const double flow : slowest) {
    open.push_back("D" + std::to_string(open.size() + 1) + ".a");
    studies::LadderStep step;
    step.hoses = open;
    step.flow.assign(open.size(), gpm(flow));
    step.slowest = gpm(flow);
    step.slowest_hose = open.back();
    step.total = gpm(flow) * static_cast<double>(open.size());
    step.proof = open.size() == slowest.size() ? Proof::argument : Proof::enumeration;
    out.steps.push_back(step);
  }
  return out;
}

studies::FlowResult sample() {
  studies::FlowResult result;
  result.options.keep_flow = gpm(9.0);
  result.ladders = {ladder(LadderOrder::worst, {10.0, 9.5, 8.0}, 2), ladder(LadderOrder::spread, {10.0, 9.8, 8.0}, 2)};
  studies::WorstStates states;
  states.system = "regular";
  states.hose_count = 3;
  states.opening_never_raises = true;
  states.sets_solved = 12;
  const std::vector<std::string> all{"D1.a", "D2.a", "D3.a"};
  for (const std::string& id : all) {
    states.hoses.push_back({id, {gpm(8.0), all, Proof::argument}, {gpm(10.0), {id}, Proof::argument}});
  }
  states.slowest_hose = "D3.a";
  states.slowest = {gpm(8.0), all, Proof::argument};
  states.inlet = {"D1.regular", {to_si(30.0, "psi"), {}, Proof::argument}};
  states.runs = {{"trunk", false, {gpm(24.0), all, Proof::argument}, to_si(5.0, "ft/s")},
                 {"ring", false, {gpm(12.0), {"D1.a", "D3.a"}, Proof::best_found}, to_si(6.0, "ft/s")},
                 {"P1", true, {gpm(24.0), all, Proof::argument}, 0.0}};
  result.worst_states = {states};
  return result;
}

std::string terminal(const studies::FlowResult& result, std::size_t width, bool whole) {
  terminal::Page page({width, false, false, whole});
  tell_ladders(result, site::Display::us, Glyphs::ascii, whole, page);
  return page.text();
}

TEST(LadderView, SaysUpToHowManyHosesTheFlowIsKept) {
  const studies::FlowResult result = sample();
  const auto words = ladder_in_words(ladder_groups(result).front(), gpm(9.0), site::Display::us, Glyphs::ascii);
  EXPECT_THAT(words, Contains("Whichever open: every open hose keeps 9.00 gpm with up to 2 of 3 open; with 3, D3.a "
                              "does not."));
  EXPECT_THAT(words, Contains("With all 3 hoses open the slowest, D3.a, gives 8.00 gpm."));
}

TEST(LadderView, NoHoseIsNamedWhereAllAreAlike) {
  studies::FlowResult result = sample();
  studies::LadderStep& all = result.ladders.front().steps.back();
  all.tied = 2;
  all.slowest_hose = "D1.a";
  EXPECT_EQ(slowest_in_words(all), "D1.a and 1 alike");
  all.tied = 3;
  EXPECT_EQ(slowest_in_words(all), "all alike");
  const auto words = ladder_in_words(ladder_groups(result).front(), gpm(9.0), site::Display::us, Glyphs::ascii);
  EXPECT_THAT(words, Contains("With all 3 hoses open each gives 8.00 gpm."));
  studies::LadderStep& one = result.ladders.front().steps.front();
  one.mean_slowest = one.slowest;  // whichever is open
  EXPECT_EQ(slowest_in_words(one), "all alike");
}

TEST(LadderView, BestFoundIsNeverSaidToHoldForAll) {
  studies::FlowResult result = sample();
  result.ladders.front().steps[1].proof = Proof::best_found;
  const auto words = ladder_in_words(ladder_groups(result).front(), gpm(9.0), site::Display::us, Glyphs::ascii);
  EXPECT_THAT(words.front(), HasSubstr("In the worst sets found: "));
}

TEST(LadderView, NoHoseAloneAndEveryHose) {
  studies::FlowResult result = sample();
  result.ladders.front().keeps = 0;
  result.ladders[1].keeps = 3;
  const auto words = ladder_in_words(ladder_groups(result).front(), gpm(9.0), site::Display::us, Glyphs::ascii);
  EXPECT_EQ(words[0], "Whichever open: not one hose alone keeps 9.00 gpm.");
  EXPECT_EQ(words[1], "In the typical order: every open hose keeps 9.00 gpm, also with all 3 open.");
}

TEST(LadderView, WorstStatesNameTheirSetAndTheirProof) {
  const studies::FlowResult result = sample();
  const auto rows = worst_rows(ladder_groups(result).front(), false, site::Display::us, Glyphs::ascii);
  ASSERT_EQ(rows.size(), 4U);  // no highest pressure at a pump in the sample
  EXPECT_EQ(rows[0].open, "all 3 open");
  EXPECT_EQ(rows[1].open, "none open");
  EXPECT_EQ(rows[1].value, "30.0 psi gauge");
  EXPECT_EQ(rows[2].what, "most through line trunk");
  EXPECT_EQ(rows[2].proof, "proved by argument");
  EXPECT_EQ(worst_rows(ladder_groups(result).front(), true, site::Display::us).size(), 5U);
  studies::FlowResult blended = result;
  blended.worst_states.front().opening_never_raises = false;
  EXPECT_EQ(worst_rows(ladder_groups(blended).front(), true, site::Display::us).size(), 11U);
}

TEST(LadderView, TerminalStaysWithinItsWidth) {
  for (const std::size_t width : {60U, 80U, 140U}) {
    for (const bool whole : {false, true}) {
      const std::string text = terminal(sample(), width, whole);
      std::size_t start = 0;
      for (std::size_t end = text.find('\n'); end != std::string::npos; end = text.find('\n', start)) {
        EXPECT_LE(end - start, width) << text;
        start = end + 1;
      }
    }
  }
}

TEST(LadderView, LongLadderIsShownInPartAndInFull) {
  studies::FlowResult result = sample();
  result.ladders = {ladder(LadderOrder::worst, std::vector<double>(36, 8.0), 0),
                    ladder(LadderOrder::spread, std::vector<double>(36, 8.0), 0)};
  EXPECT_THAT(terminal(result, 140, false), testing::Not(HasSubstr("  D2.a ")));
  EXPECT_THAT(terminal(result, 140, false), HasSubstr("  D36.a "));
  EXPECT_THAT(terminal(result, 140, true), HasSubstr("  D2.a "));
}

TEST(LadderView, NotDeterminedIsADashAndNull) {
  studies::FlowResult result = sample();
  result.ladders.front().steps[1].slowest = std::nan("");
  EXPECT_EQ(terminal(result, 80, true).find("nan"), std::string::npos);
  EXPECT_EQ(ladder_sections(result, site::Display::us).find("nan"), std::string::npos);
  EXPECT_TRUE(ladders_json(result.ladders)[0]["steps"][1]["slowest_m3_per_s"].is_null());
}

TEST(LadderView, JsonHoldsUnitsInTheKeysAndTheProofs) {
  const Json ladders = ladders_json(sample().ladders);
  EXPECT_EQ(ladders[0]["order"], "worst");
  EXPECT_EQ(ladders[0]["keeps"], 2);
  EXPECT_EQ(ladders[0]["steps"][0]["proof"], "enumeration");
  EXPECT_TRUE(ladders[1]["steps"][0]["proof"].is_null());  // nothing to prove of an order that was chosen
  EXPECT_DOUBLE_EQ(ladders[0]["steps"][2]["hoses"][2]["flow_m3_per_s"], gpm(8.0));
  const Json states = worst_states_json(sample().worst_states);
  EXPECT_EQ(states[0]["runs"][1]["proof"], "best found");
  EXPECT_TRUE(states[0]["highest_at_pump"]["place"].is_null());
}

TEST(LadderView, SectionIsEmptyWithoutLadders) { EXPECT_TRUE(ladder_sections({}, site::Display::us).empty()); }

}  // namespace
}  // namespace forecourse::report
