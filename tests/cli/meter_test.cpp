// The command `meter` as it is run: draws by hand, records, and everything that is wrong at once.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "cli/program.h"

namespace forecourse::cli {
namespace {

using nlohmann::json;

bool has(const std::string& text, const std::string& what) { return text.find(what) != std::string::npos; }

Outcome meter(const std::string& folder, const std::string& site, const std::string& arguments) {
  return run_program(folder, "meter " + quoted(std::string(SITES_DIR) + "/" + site) + " " + arguments,
                     "LC_ALL=C.UTF-8 COLUMNS=200");
}

TEST(MeterCommand, JudgesADrawByHand) {
  const std::string folder = scratch_folder("meter-draw");
  const std::string draw = "--hose D1.a --draw 'indicated=5 gal, measure=5 gal, scale=-7 in3'";
  const Outcome told = meter(folder, "site-s.toml", draw);
  EXPECT_EQ(told.exit, 1) << told.err;  // it falls short
  EXPECT_TRUE(has(told.out, "falls short")) << told.out;
  EXPECT_TRUE(has(told.out, "Not corrected for the fuel")) << told.out;
  const json document = json::parse(meter(folder, "site-s.toml", draw + " --json").out);
  EXPECT_NEAR(document["result"]["meters"][0]["error"].get<double>(), 1155.0 / 1148.0 - 1.0, 1e-12);
  EXPECT_EQ(meter(folder, "site-s.toml", "--hose D1.a --draw 'indicated=5 gal, measured=5.01 gal, state=as-left'").exit,
            0);
}

TEST(MeterCommand, TellsAllThatIsWrongAtOnce) {
  const std::string folder = scratch_folder("meter-wrong");
  const Outcome told = meter(folder, "site-s.toml",
                             "--hose D9 --price x --draw 'indicated=-5 gal, mesure=5 gal, scale' --draw 'flow=3 psi'");
  EXPECT_EQ(told.exit, 2);
  for (const char* words : {"--price is a number above zero for a volume", "the station has no hose 'D9'",
                            "must be above zero", "a draw has no 'mesure'", "did you mean 'measure'?",
                            "'scale' has no '='", "this draw has no indicated", "flow is a flow"}) {
    EXPECT_TRUE(has(told.err, words)) << words << "\n" << told.err;
  }
  const Outcome units = meter(folder, "site-s.toml",
                              "--hose D1.a --draw 'indicated=5 gal, measure=5 gal, scale=-700 in3, "
                              "meter-temperature=60 degF' --draw 'indicated=5 gal, measured=5 gal, "
                              "measure-temperature=60 degF'");
  EXPECT_EQ(units.exit, 2);
  EXPECT_TRUE(has(units.err, "more than a neck shows: was it in another unit?")) << units.err;
  EXPECT_TRUE(has(units.err, "that of the meter is not")) << units.err;
  EXPECT_TRUE(has(meter(folder, "site-s.toml", "").err, "there is no draw to judge"));
}

TEST(MeterCommand, ReadsRecordsAndWritesAReport) {
  const std::string folder = scratch_folder("meter-records");
  const std::string records = "--records " + quoted(std::string(SITES_DIR) + "/records/hollin-gap");
  const Outcome told = meter(folder, "hollin-gap.toml", records + " --out out --price '3.20 crowns per gal'");
  EXPECT_EQ(told.exit, 0) << told.err;
  EXPECT_TRUE(has(told.out, "Which meters explain T1")) << told.out;
  EXPECT_TRUE(has(file_text(folder + "/out/meter.html"), "meter-errors"));
  const json document = json::parse(file_text(folder + "/out/meter.json"));
  EXPECT_EQ(document["result"]["meters"].size(), 4U);
  EXPECT_EQ(document["result"]["books"].size(), 3U);
  // A period that ends before the last provings knows nothing of them.
  const json before = json::parse(meter(folder, "hollin-gap.toml", records + " --to 2026-10-10 --json").out);
  EXPECT_EQ(before["result"]["meters"][0]["provings"].size(), 3U);
}

}  // namespace
}  // namespace forecourse::cli
