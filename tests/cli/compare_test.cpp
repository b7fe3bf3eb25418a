// The command compare as it is run: what is B, what is told of wrong input, and what is written.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "cli/program.h"

namespace forecourse::cli {
namespace {

using nlohmann::json;

Outcome compare(const std::string& arguments) {
  return run_program(SITES_DIR, "compare " + arguments, "LC_ALL=C.UTF-8");
}

json document(const std::string& arguments) {
  const Outcome outcome = compare(arguments + " --json");
  EXPECT_LE(outcome.exit, 1) << outcome.err;
  return json::parse(outcome.out, nullptr, false);
}

bool has(const std::string& text, const std::string& what) { return text.find(what) != std::string::npos; }

constexpr const char* limiters = "--set-both 'hose.*.limiter=10 gpm' ";

TEST(CompareCommand, SaysFromWhenAWiderTrunkIsWorthItAndThatBelowItBuysNothing) {
  const Outcome outcome = compare(std::string("site-s.toml ") + limiters + "--set 'line.trunk.bore=3 in'");
  EXPECT_EQ(outcome.exit, 0) << outcome.err;
  EXPECT_TRUE(has(outcome.out, "B is worth it from 6 hoses open")) << outcome.out;
  EXPECT_TRUE(has(outcome.out, "Below 6 it buys nothing: limiters hold every open hose in A and in B."));
  EXPECT_TRUE(has(outcome.out, "B does not change: "));
}

TEST(CompareCommand, SetsApplyToBAlone) {
  const json result = document("site-s.toml --set 'line.trunk.bore=3 in'")["result"];
  ASSERT_EQ(result["changed_values"].size(), 1U);
  EXPECT_EQ(result["changed_values"][0]["key"], "line.trunk.bore");
  EXPECT_EQ(result["changed_values"][0]["a"], "\"2.00 in\"");
  EXPECT_EQ(result["changed_values"][0]["b"], "\"3 in\"");
}

TEST(CompareCommand, TwoFilesAndSetsTogetherChangeTheSecond) {
  const std::string folder = scratch_folder("two-sites");
  const std::string copy = quoted(folder + "/b.toml");
  ASSERT_EQ(std::system(("cp " + quoted(std::string(SITES_DIR) + "/site-s.toml") + " " + copy).c_str()), 0);
  EXPECT_TRUE(document("site-s.toml " + copy)["result"]["changed_values"].empty());
  const json with_set = document("site-s.toml --set 'line.gap-1.bore=3 in' " + copy)["result"];
  ASSERT_EQ(with_set["changed_values"].size(), 1U);
  EXPECT_EQ(with_set["changed_values"][0]["key"], "line.gap-1.bore");
}

TEST(CompareCommand, WorthInJsonIsWhatIsPrinted) {
  const json worth =
      document(std::string("site-s.toml ") + limiters + "--set 'line.trunk.bore=3 in'")["result"]["worth"];
  ASSERT_EQ(worth.size(), 1U);
  EXPECT_EQ(worth[0]["worth_it_from"], 6);
  EXPECT_EQ(worth[0]["nothing_below"], true);
  EXPECT_EQ(worth[0]["limiters_hold_below"], true);
  EXPECT_EQ(worth[0]["steps"].size(), 6U);
}

TEST(CompareCommand, TheGainThatIsWorthHavingCanBeChosen) {
  const std::string wider = "site-s.toml --set 'line.trunk.bore=3 in'";
  EXPECT_EQ(document(wider)["result"]["worth"][0]["worth_it_from"], 2);
  EXPECT_EQ(document(wider + " --gain '3 %'")["result"]["worth"][0]["worth_it_from"], 4);
  EXPECT_EQ(document(wider + " --gain 0.2")["result"]["worth"][0]["worth_it_from"], nullptr);
}

TEST(CompareCommand, EndsWithOneWhenARequirementFallsShort) {
  EXPECT_EQ(compare("site-s.toml --keep '10 gpm' --set 'line.trunk.bore=3 in'").exit, 1);  // A falls short
  EXPECT_EQ(compare("site-s.toml --keep '9 gpm' --set 'line.trunk.bore=3 in'").exit, 0);
}

TEST(CompareCommand, WritesPageAndData) {
  const std::string folder = scratch_folder("compare");
  const Outcome outcome = compare("site-s.toml --set 'line.trunk.bore=3 in' --out " + quoted(folder));
  EXPECT_EQ(outcome.exit, 0) << outcome.err;
  EXPECT_TRUE(has(file_text(folder + "/compare.html"), "class=\"line-b\""));
  EXPECT_FALSE(json::parse(file_text(folder + "/compare.json"), nullptr, false).is_discarded());
}

TEST(CompareCommand, ShowsSiWhenAsked) {
  const Outcome outcome = compare("site-s.toml --set 'line.trunk.bore=3 in' --units si");
  EXPECT_TRUE(has(outcome.out, "L/min"));
  EXPECT_FALSE(has(outcome.out, "gpm,"));
}

TEST(CompareCommand, StationsOfOtherProductsAreComparedByWhatBothHave) {
  const Outcome outcome = compare("site-s.toml hollin-gap.toml");
  EXPECT_LE(outcome.exit, 1) << outcome.err;
  EXPECT_TRUE(has(outcome.out, "Only in B: product premium")) << outcome.out;
}

TEST(CompareCommand, SaysWhyThereIsNoAnswerForWhatOneSideDoesNotFeed) {
  const std::string off = compare("hollin-gap.toml --set pump.P2.running=false --keep '8 gpm'").out;
  EXPECT_TRUE(has(off, "premium: no answer: it is fed in A only; in B, no pump of 'premium' runs: off is P2.")) << off;
  EXPECT_TRUE(has(off, "With all hoses open, ")) << off;
  const auto result = document(
      "hollin-gap.toml --set pump.P2.running=false --set 'line.regular-trunk.bore=2 in' --keep '3 gpm'")["result"];
  EXPECT_EQ(result["no_answer"].size(), 1U);
  EXPECT_EQ(result["no_answer"][0]["fed_in"], "a");
  EXPECT_EQ(result["changed_values"].size(), 1U);  // "2.00 in" is "2 in"
  EXPECT_GT(result["a"]["hoses_that_keep"], result["b"]["hoses_that_keep"]) << result["a"];
}

// ---- wrong input -------------------------------------------------------------------------------------------

TEST(CompareCommand, TellsEveryWrongSetInOneGo) {
  const Outcome outcome = compare(
      "site-s.toml --set 'line.trunk.bor=3 in' --set 'lin.trnk.bore=3 in' --set 'line.trunk.bore=3 psi' "
      "--set 'dispenser.D1.hose.D1a.limiter=9 gpm' --set x");
  EXPECT_EQ(outcome.exit, 2);
  EXPECT_EQ(outcome.out, "");
  EXPECT_EQ(outcome.err,
            "error: --set line.trunk.bor=3 in: 'bor' is not a key of line 'trunk'\n"
            "  hint: did you mean line.trunk.bore?\n"
            "error: --set lin.trnk.bore=3 in: 'lin' is not a key of a site file\n"
            "  hint: did you mean line.trunk.bore?\n"
            "error: --set line.trunk.bore=3 psi: bore is a length, but 'psi' is a pressure\n"
            "  hint: write \"2.00 in\" or \"52 mm\"\n"
            "error: --set dispenser.D1.hose.D1a.limiter=9 gpm: there is no hose 'D1a'\n"
            "  hint: did you mean dispenser.D1.hose.D1.a.limiter?\n"
            "error: --set x has no '='\n  hint: write --set line.trunk.bore=\"3 in\"\n");
}

TEST(CompareCommand, TellsTheErrorsOfBothFilesWithTheirNames) {
  const std::string bad = std::string(TEST_SOURCE_DIR) + "/bad_sites/";
  const Outcome outcome = compare(quoted(bad + "unknown-key.toml") + " " + quoted(bad + "unknown-unit.toml"));
  EXPECT_EQ(outcome.exit, 2);
  EXPECT_TRUE(has(outcome.err, "unknown-key.toml:")) << outcome.err;
  EXPECT_TRUE(has(outcome.err, "unknown-unit.toml:")) << outcome.err;
}

TEST(CompareCommand, TellsTheErrorsOfOneFileOnce) {
  const std::string bad = quoted(std::string(TEST_SOURCE_DIR) + "/bad_sites/unknown-key.toml");
  const std::string err = compare(bad).err;
  EXPECT_EQ(err, run_program(SITES_DIR, "flow " + bad).err);
}

TEST(CompareCommand, TellsOfBothFilesThatCannotBeRead) {
  const Outcome outcome = compare("nowhere.toml neither.toml");
  EXPECT_EQ(outcome.exit, 2);
  EXPECT_TRUE(has(outcome.err, "nowhere.toml: error") && has(outcome.err, "neither.toml: error"));
}

TEST(CompareCommand, TellsOfAWrongOption) {
  EXPECT_EQ(compare("site-s.toml --gain '1 psi'").exit, 2);
  EXPECT_EQ(compare("site-s.toml --gain -0.1").exit, 2);
  const Outcome gain = compare("site-s.toml --gain 2");
  EXPECT_EQ(gain.exit, 2);
  EXPECT_EQ(gain.err,
            "error: --gain is a share from 0 to 100 %, but '2' is written, which is 2 times A's flow\n"
            "  hint: write \"2 %\"\n");
  EXPECT_EQ(compare("site-s.toml --gain '200 %'").exit, 2);
  const Outcome dispenser = compare("site-s.toml --open D1");
  EXPECT_TRUE(has(dispenser.err, "'D1' is a dispenser; its hoses are D1.a, D1.b")) << dispenser.err;
  const Outcome hose = compare("site-s.toml --open D1.c");
  EXPECT_EQ(hose.exit, 2);
  EXPECT_TRUE(has(hose.err, "there is no hose 'D1.c' in A or in B\n  hint: did you mean 'D1.a'?")) << hose.err;
  EXPECT_TRUE(has(compare("--help").out, "--set changes values of B alone"));
}

}  // namespace
}  // namespace forecourse::cli
