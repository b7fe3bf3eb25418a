// The command `draw` as it is run: what it prints and writes, and what it says of wrong options.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "cli/program.h"

namespace forecourse::cli {
namespace {

using nlohmann::json;

bool has(const std::string& text, const std::string& what) { return text.find(what) != std::string::npos; }

Outcome draw(const std::string& folder, const std::string& site, const std::string& arguments) {
  return run_program(folder, "draw " + quoted(std::string(SITES_DIR) + "/" + site) + " " + arguments,
                     "LC_ALL=C.UTF-8 COLUMNS=120");
}

TEST(DrawCommand, ADateThatIsNoDayIsRefused) {
  const Outcome told = draw(scratch_folder("draw-date"), "marle-cross.toml", "--date 2026-13-45");
  EXPECT_EQ(told.exit, 2);
  EXPECT_TRUE(has(told.err, "--date is a day, but '2026-13-45' is written")) << told.err;
}

TEST(DrawCommand, WritesEveryDrawing) {
  const std::string folder = scratch_folder("draw-files");
  const Outcome told = draw(folder, "marle-cross.toml", "--out out --date 2026-11-30 --drawn-by 'R. Tay'");
  EXPECT_EQ(told.exit, 0) << told.err;
  for (const std::string name : {"plan", "section", "tank", "dispenser"}) {
    EXPECT_TRUE(has(told.out, "written: out/" + name + ".svg")) << told.out;
    EXPECT_TRUE(has(file_text(folder + "/out/" + name + ".svg"), "2026-11-30"));
    EXPECT_TRUE(file_text(folder + "/out/" + name + ".dxf").ends_with("EOF\n"));
  }
  const json written = json::parse(file_text(folder + "/out/draw.json"));
  EXPECT_EQ(written["study"], "draw");
  EXPECT_EQ(written["result"]["drawings"][0]["cells"]["Drawn by"], "R. Tay");
}

// A changed length moves the outline's corner and nothing else: half of 4 ft.
TEST(DrawCommand, FollowsAChangedValue) {
  const std::string folder = scratch_folder("draw-set");
  const auto right = [&](const std::string& arguments) {
    const json document = json::parse(draw(folder, "marle-cross.toml", "plan --json " + arguments).out);
    for (const json& one : document["result"]["drawings"][0]["paths"]) {
      if (one["layer"] == "tanks") return one["points_m"][1][0].get<double>();
    }
    return 0.0;
  };
  EXPECT_NEAR(right("--set 'tank.T1.shape.length=40 ft'") - right(""), 2.0 * 0.3048, 1e-9);
}

TEST(DrawCommand, TellsWhatIsWrongWithItsOptions) {
  const std::string folder = scratch_folder("draw-wrong");
  const Outcome scale = draw(folder, "marle-cross.toml", "plan --scale 1:50");
  EXPECT_EQ(scale.exit, 2);
  EXPECT_TRUE(has(scale.err, "the plan does not fit on the paper at 1:50")) << scale.err;
  const Outcome hose = draw(folder, "marle-cross.toml", "section --hose D6.premium-c");
  EXPECT_EQ(hose.exit, 2);
  EXPECT_TRUE(has(hose.err, "there is no hose 'D6.premium-c'")) << hose.err;
  EXPECT_TRUE(has(hose.err, "did you mean 'D6.premium-")) << hose.err;
  EXPECT_EQ(draw(folder, "marle-cross.toml", "--paper a9").exit, 2);
  EXPECT_EQ(draw(folder, "marle-cross.toml", "--pdf").exit, 2);
  EXPECT_EQ(draw(folder, "no-such.toml", "").exit, 2);
}

}  // namespace
}  // namespace forecourse::cli
