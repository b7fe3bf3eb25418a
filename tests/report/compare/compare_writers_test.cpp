// What the three writers of a comparison print, by snapshot, and the words of its answer.
#include <gtest/gtest.h>

#include <cmath>
#include <sstream>

#include "forecourse/report/compare/compare_html.h"
#include "forecourse/report/compare/compare_json.h"
#include "forecourse/report/compare/compare_terminal.h"
#include "forecourse/report/svg/ladder.h"
#include "report/compare/compare_sample.h"
#include "report/snapshot.h"

namespace forecourse::report {
namespace {

constexpr site::Display us = site::Display::us;

terminal::Style style(std::size_t width, bool utf8, bool verbose) { return {width, false, utf8, verbose}; }

std::string summary(const decide::Comparison& c, std::size_t width = 80, bool utf8 = true, bool verbose = false) {
  return compare_summary(c, us, style(width, utf8, verbose), sample_facts());
}

TEST(CompareTerminal, Prints80Columns) {
  EXPECT_TRUE(matches_snapshot(summary(sample_comparison()), "compare_80.txt"));
}

TEST(CompareTerminal, PrintsEverythingVerboseInAscii) {
  EXPECT_TRUE(matches_snapshot(summary(sample_comparison(), 100, false, true), "compare_100_verbose_ascii.txt"));
}

TEST(CompareTerminal, NoLinePassesTheWidthAndNoNameSteers) {
  decide::Comparison c = sample_comparison();
  const std::string hostile = std::string(200, 'x') + "\033]0;owned\a";
  c.a.name = c.rows[1].subject = c.changed[0].path = c.changed[0].a = hostile;
  c.worth[0].system = c.only_b[0].id = hostile;
  for (const std::size_t width : {60U, 80U, 140U}) {
    const std::string text = summary(c, width);
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) EXPECT_LE(terminal::columns(line), width);
    EXPECT_EQ(text.find('\033'), std::string::npos);
  }
}

TEST(CompareTerminal, WhatDoesNotDifferIsOnlyToldVerbose) {
  EXPECT_EQ(summary(sample_comparison()).find("flow of a hose, alone, gpm"), std::string::npos);
  EXPECT_NE(summary(sample_comparison(), 100, true, true).find("flow of a hose, alone, gpm"), std::string::npos);
}

TEST(CompareJson, IsOneDocument) {
  EXPECT_TRUE(matches_snapshot(to_text(compare_document(sample_comparison(), us, sample_facts())), "compare.json"));
}

TEST(CompareJson, WordsAreInTheUnitsAskedFor) {
  const auto words = [](site::Display display) {
    return compare_document(sample_comparison(), display)["result"]["worth"][0]["words"].dump();
  };
  EXPECT_NE(words(us), words(site::Display::si));
  EXPECT_EQ(words(site::Display::si).find("gpm"), std::string::npos) << words(site::Display::si);
}

TEST(CompareHtml, BodyIsAsItWasLookedAt) {
  const std::string page = compare_report(sample_comparison(), us, sample_facts());
  const std::size_t body = page.find("<main>");
  ASSERT_NE(body, std::string::npos);
  EXPECT_TRUE(matches_snapshot(page.substr(body), "compare_body.html"));
}

TEST(CompareHtml, EscapesWhatComesFromAFile) {
  decide::Comparison c = sample_comparison();
  c.a.name = c.rows[1].subject = c.changed[0].path = c.worth[0].system = "<script>x</script>";
  CompareFacts facts = sample_facts();
  facts.label_b = facts.command_line = "<script>y</script>";
  EXPECT_EQ(compare_report(c, us, facts).find("<script>"), std::string::npos);
}

// ---- the chart ---------------------------------------------------------------------------------------------

svg::LadderChart chart() {
  svg::LadderChart chart;
  chart.id = "ladder";
  chart.title = "The slowest hose";
  chart.description = "Flows.";
  chart.axis = "flow of the slowest hose, gpm";
  chart.series = {{"A", svg::LadderMark::square, {10.0, 9.9, 9.5, 9.0}},
                  {"B", svg::LadderMark::disc, {10.0, 10.0, std::nullopt, 9.1}}};
  chart.limits = {{{10.0, "limiter 10.00"}}, {{9.9, "to keep 9.90"}}};
  chart.named_at_end = true;
  chart.worth_from = 4;
  return chart;
}

TEST(CompareLadder, DrawsAWithSquaresAndBWithDiscs) {
  EXPECT_TRUE(matches_snapshot(draw(chart()), "compare_ladder.svg"));
}

TEST(CompareLadder, HasAMarkForEachFlow) {
  const std::string drawn = draw(chart());
  const auto count = [&](const std::string& what) {
    std::size_t n = 0;
    for (std::size_t at = drawn.find(what); at != std::string::npos; at = drawn.find(what, at + 1)) ++n;
    return n;
  };
  EXPECT_EQ(count("mark-a"), 4U);
  EXPECT_EQ(count("mark-b"), 3U);
  EXPECT_EQ(count("class=\"line-b\""), 1U);  // 1 to 2; the last mark stands alone
}

/// Height at which a label that begins so stands.
double height_of(const std::string& drawn, const std::string& label) {
  const std::size_t at = drawn.find(">" + label);
  const std::size_t y = drawn.rfind("y=\"", at);
  return at == std::string::npos ? std::nan("") : std::stod(drawn.substr(y + 3));
}

TEST(CompareLadder, NamesAtTheEndAndLimitsDoNotRunIntoEachOther) {
  const std::string drawn = draw(chart());
  EXPECT_GE(height_of(drawn, "A 9.00") - height_of(drawn, "B 9.10"), 15.0 - 0.11);  // written to a tenth
  EXPECT_GE(height_of(drawn, "to keep 9.90") - height_of(drawn, "limiter 10.00"), 15.0 - 0.11);
}

// ---- the answer --------------------------------------------------------------------------------------------

std::string words(const decide::Worth& worth) {
  std::string out;
  for (const std::string& one : worth_in_words(worth, us, Glyphs::ascii)) out += (out.empty() ? "" : " ") + one;
  return out;
}

decide::Worth worth_with(const std::vector<double>& gains, std::optional<int> from, std::optional<int> loses_from) {
  decide::Worth worth;
  worth.system = "regular";
  worth.least_gain = 0.01;
  worth.from = from;
  worth.loses_from = loses_from;
  worth.nothing_below = true;
  for (const double gain : gains) {
    decide::WorthStep step;
    step.open = static_cast<int>(worth.steps.size()) + 1;
    step.slowest_a = 6.0e-4;
    step.slowest_b = 6.0e-4 * (1.0 + gain);
    step.gain = gain;
    step.nothing = gain == 0.0;
    step.verdict = gain > 0.01 ? decide::Verdict::gains : gain < -0.01 ? decide::Verdict::loses : decide::Verdict::same;
    if ((!from || step.open < *from) && !step.nothing) worth.nothing_below = false;
    worth.steps.push_back(step);
  }
  return worth;
}

TEST(WorthWords, SayFromWhenAndWhatLiesBelow) {
  EXPECT_EQ(
      words(sample_comparison().worth[0]),
      "regular: B is worth it from 3 hoses open: the slowest hose gives 9.99 gpm instead of 9.67 gpm (+3.3 %), and "
      "9.83 gpm instead of 9.35 gpm (+5.1 %) with all 4 open. Below 3 it buys nothing: limiters hold every open "
      "hose in A and in B.");
  EXPECT_EQ(words(worth_with({0.002, 0.004, 0.03}, 3, {})),
            "regular: B is worth it from 3 hoses open: the slowest hose gives 9.80 gpm instead of 9.51 gpm (+3.0 %). "
            "Below 3 it changes that flow by no more than 1 %: at most +0.4 %, with 2 open.");
  EXPECT_EQ(words(worth_with({0.03}, 1, {})),
            "regular: B is worth it from 1 hose open: the slowest hose gives 9.80 gpm instead of 9.51 gpm (+3.0 %).");
}

TEST(WorthWords, SayWhatIsNotAGain) {
  EXPECT_EQ(words(worth_with({0.0, 0.0}, {}, {})),
            "regular: B buys nothing at any number of hoses open: the slowest hose gives the same.");
  EXPECT_EQ(
      words(worth_with({0.0, -0.05, -0.06}, {}, 2)),
      "regular: B is worse from 2 hoses open: the slowest hose gives 9.03 gpm instead of 9.51 gpm (-5.0 %). With 1 "
      "hose open it buys nothing: the slowest hose gives the same.");
  EXPECT_EQ(words(worth_with({0.05, 0.05, 0.0}, {}, {})),
            "regular: there is no number of hoses open from which B is worth it. It gains more than 1 % with 1 to 2 "
            "hoses open, but not at every larger number. With 3 hoses open it buys nothing: the slowest hose gives the "
            "same.");
  EXPECT_EQ(
      words(worth_with({-0.05, 0.0, 0.05}, 3, {})),
      "regular: B is worth it from 3 hoses open: the slowest hose gives 9.99 gpm instead of 9.51 gpm (+5.0 %). It "
      "loses more than 1 % with 1 hose open. With 2 hoses open it buys nothing: the slowest hose gives the same.");
}

TEST(ShownRow, TheDifferenceIsThatOfTheFiguresShown) {
  decide::DifferenceRow row;
  row.a = 6.0e-4;  // 9.51 gpm
  row.b = 6.3e-4;  // 9.99 gpm
  row.differs = true;
  const ShownRow shown = shown_row(row, us, Glyphs::ascii);
  EXPECT_EQ(shown.a + " " + shown.b + " " + shown.difference + " " + shown.percent, "9.51 9.99 +0.48 +5.0");
  row.b = 6.0e-4 + 1e-8;
  EXPECT_EQ(shown_row(row, us, Glyphs::ascii).difference, "under 0.01");
}

}  // namespace
}  // namespace forecourse::report
