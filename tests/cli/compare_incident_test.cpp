// The command compare with --incident: what it says first, what it writes, and what it refuses and of which file.
#include <gtest/gtest.h>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "cli/program.h"

namespace forecourse::cli {
namespace {

using nlohmann::json;

Outcome compare(const std::string& arguments) {
  return run_program(SITES_DIR, "compare " + arguments, "LC_ALL=C.UTF-8 COLUMNS=100");
}

json document(const std::string& arguments) {
  const Outcome outcome = compare(arguments + " --json");
  EXPECT_EQ(outcome.exit, 0) << outcome.err;
  return json::parse(outcome.out, nullptr, false);
}

bool has(const std::string& text, const std::string& what) { return text.find(what) != std::string::npos; }

constexpr const char* narrow = "site-s.toml --set 'line.trunk.bore=1.5 in' --incident struck --on 2026-11-25 ";

TEST(CompareIncident, WhatToDoStandsFirstThenWhatBChanges) {
  const Outcome outcome = compare(narrow);
  EXPECT_EQ(outcome.exit, 0) << outcome.err;
  const std::size_t first = outcome.out.find("Stop the pump. Clear people away. Call the fire service.");
  ASSERT_NE(first, std::string::npos);
  EXPECT_EQ(outcome.out.find_first_of("0123456789"), outcome.out.find_first_of("0123456789", first));
  EXPECT_LT(first, outcome.out.find("What B changes"));
  EXPECT_TRUE(has(outcome.out, "Struck at D3, A against B")) << outcome.out;
  EXPECT_FALSE(has(outcome.out, "safe"));
}

TEST(CompareIncident, ItselfBuysNothing) {
  const Outcome outcome = compare("site-s.toml --incident struck");
  EXPECT_EQ(outcome.exit, 0) << outcome.err;
  EXPECT_TRUE(has(outcome.out, "B buys nothing:")) << outcome.out;
  const json result = document("site-s.toml --incident struck")["result"];
  EXPECT_EQ(result["same_in_all"], true);
  for (const json& row : result["holders"]) EXPECT_EQ(row["difference_m3"], 0.0);
}

TEST(CompareIncident, TheDocumentIsLikeTheOthersAndHoldsTheSingleRuns) {
  const json doc = document(std::string(narrow) + "--runs 40 --seed 5");
  std::vector<std::string> keys;
  for (const auto& [key, value] : doc.items()) keys.push_back(key);
  for (const char* key : {"study", "version", "cautions", "options", "defaults", "result", "findings", "warnings"}) {
    EXPECT_TRUE(doc.contains(key)) << key;
  }
  EXPECT_EQ(doc["study"], "compare-incident");
  EXPECT_EQ(doc["options"]["kind"], "struck");
  EXPECT_EQ(doc["options"]["seed"], 5);
  EXPECT_EQ(doc["result"]["paired"]["counted"], 40);
  const Outcome single = run_program(
      SITES_DIR, "incident site-s.toml struck --set 'line.trunk.bore=1.5 in' --on 2026-11-25 --json", "LC_ALL=C.UTF-8");
  const json run = json::parse(single.out)["result"]["runs"][0];
  EXPECT_EQ(doc["result"]["b"]["hash"], run["hash"]);
  EXPECT_EQ(doc["result"]["figures"][0]["b_m3"], run["escaped_m3"]);
}

TEST(CompareIncident, TheSameCallGivesTheSameText) {
  const std::string call = std::string(narrow) + "--runs 100 --json";
  EXPECT_EQ(compare(call).out, compare(call).out);
}

TEST(CompareIncident, WritesAPageAndItsData) {
  const std::string folder = scratch_folder("compare-incident");
  const Outcome outcome = compare(std::string(narrow) + "--out " + quoted(folder));
  EXPECT_EQ(outcome.exit, 0) << outcome.err;
  EXPECT_TRUE(std::filesystem::exists(folder + "/compare-struck.html"));
  EXPECT_TRUE(std::filesystem::exists(folder + "/compare-struck.json"));
}

TEST(CompareIncident, TellsWhichFileLacksThePlace) {
  const Outcome outcome = compare("hollin-gap.toml site-s.toml --incident struck --at D4");
  EXPECT_EQ(outcome.exit, 2);
  EXPECT_EQ(outcome.out, "");
  EXPECT_TRUE(has(outcome.err, "site-s.toml: error: 'D4' is no dispenser or inlet")) << outcome.err;
  EXPECT_FALSE(has(outcome.err, "hollin-gap.toml")) << outcome.err;
  const Outcome both = compare("site-s.toml --incident struck --at D9");
  EXPECT_EQ(both.err.find("error:"), both.err.rfind("error:")) << both.err;
}

TEST(CompareIncident, TellsInWhichOfTheTwoItCannotBeWorkedOut) {
  const Outcome outcome = compare("hollin-gap.toml site-s.toml --incident overfill --at T1");
  EXPECT_EQ(outcome.exit, 2);
  EXPECT_TRUE(has(outcome.out, "Not determined in B: ")) << outcome.out << outcome.err;
}

TEST(CompareIncident, RefusesWhatDoesNotGoTogether) {
  const Outcome set = compare("site-s.toml --set 'incident.1.stop_at=20 s' --incident struck");
  EXPECT_EQ(set.exit, 2);
  EXPECT_TRUE(has(set.err, "changes the incident in B alone")) << set.err;
  EXPECT_EQ(compare("site-s.toml --incident struck --keep '8 gpm'").exit, 2);
  EXPECT_EQ(compare("site-s.toml --at D3").exit, 2);
  EXPECT_EQ(compare("site-s.toml --incident struck --open D1.a --open D2.a").exit, 2);
  EXPECT_TRUE(has(compare("site-s.toml --incident sruck").err, "did you mean 'struck'?"));
}

TEST(CompareIncident, TwoFilesWithAndWithoutAShearValve) {
  const std::string folder = scratch_folder("compare-incident-files");
  const std::string bare = folder + "/bare.toml";
  const std::string site = std::string(SITES_DIR) + "/hollin-gap.toml";
  ASSERT_EQ(std::system(("sed '/shear_valve = /d' " + quoted(site) + " > " + quoted(bare)).c_str()), 0);
  const json result = document("hollin-gap.toml " + quoted(bare) + " --incident struck")["result"];
  const auto single = [](const std::string& file) {
    return json::parse(run_program(SITES_DIR, "incident " + file + " struck --json", "").out)["result"]["runs"][0];
  };
  EXPECT_EQ(result["a"]["hash"], single("hollin-gap.toml")["hash"]);
  EXPECT_EQ(result["b"]["hash"], single(quoted(bare))["hash"]);
  EXPECT_GT(result["figures"][0]["difference_m3"].get<double>(), 0.0);
}

}  // namespace
}  // namespace forecourse::cli
