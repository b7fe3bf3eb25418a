// The command `kit` as it is run: what it prints and writes, and what it says of wrong options.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "cli/program.h"

namespace forecourse::cli {
namespace {

using nlohmann::json;

bool has(const std::string& text, const std::string& what) { return text.find(what) != std::string::npos; }

Outcome kit(const std::string& folder, const std::string& site, const std::string& arguments) {
  return run_program(folder, "kit " + quoted(std::string(SITES_DIR) + "/" + site) + " " + arguments,
                     "LC_ALL=C.UTF-8 COLUMNS=120");
}

TEST(KitCommand, WritesEveryFile) {
  const std::string folder = scratch_folder("kit-files");
  const Outcome told = kit(folder, "hollin-gap.toml", "--out out");
  EXPECT_EQ(told.exit, 0) << told.err;
  EXPECT_TRUE(has(told.out, "written: out/kit.xlsx")) << told.out;
  EXPECT_TRUE(has(file_text(folder + "/out/kit.html"), "Your part number"));
  EXPECT_TRUE(has(file_text(folder + "/out/kit.csv"), "\"Your part number\"\n"));
  EXPECT_TRUE(file_text(folder + "/out/kit.xlsx").starts_with("PK"));  // a spreadsheet is a zip
  const json written = json::parse(file_text(folder + "/out/kit.json"));
  EXPECT_EQ(written["study"], "kit");
}

// A changed length changes pipe and nothing else: 50 ft more of 150 ft.
TEST(KitCommand, FollowsAChangedValue) {
  const std::string folder = scratch_folder("kit-set");
  const auto pipe = [&](const std::string& arguments) {
    double length = 0.0;
    const json document = json::parse(kit(folder, "site-s.toml", arguments + " --json").out);
    for (const json& one : document["result"]["pipes"]) length += one["length_m"].get<double>();
    return length;
  };
  EXPECT_NEAR(pipe("--set 'line.trunk.length=200 ft'") - pipe(""), 50.0 * 0.3048, 1e-9);
}

TEST(KitCommand, TellsWhatIsWrongWithItsOptions) {
  const std::string folder = scratch_folder("kit-wrong");
  const Outcome units = kit(folder, "site-s.toml", "--waste '5 psi' --stick '3 s'");
  EXPECT_EQ(units.exit, 2);
  EXPECT_TRUE(has(units.err, "--waste is a ratio, but 'psi' is a pressure")) << units.err;
  EXPECT_TRUE(has(units.err, "--stick is a length, but 's' is a time")) << units.err;
  const Outcome range = kit(folder, "site-s.toml", "--waste '-5 %' --stick '0 ft'");
  EXPECT_EQ(range.exit, 2);
  EXPECT_TRUE(has(range.err, "from 0 % to 100 %")) << range.err;
  EXPECT_TRUE(has(range.err, "more than nothing")) << range.err;
  EXPECT_EQ(kit(folder, "site-s.toml", "--pdf").exit, 2);
  EXPECT_EQ(kit(folder, "no-such.toml", "").exit, 2);
}

}  // namespace
}  // namespace forecourse::cli
