// The commands of the records as they are run: what is stored, what is refused, what is printed.
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>

#include "cli/program.h"

namespace forecourse::cli {
namespace {

using nlohmann::json;

bool has(const std::string& text, const std::string& what) { return text.find(what) != std::string::npos; }

void write(const std::string& path, const std::string& text) { std::ofstream(path) << text; }

Outcome records(const std::string& folder, const std::string& arguments) {
  return run_program(folder, "records " + arguments, "LC_ALL=C.UTF-8 COLUMNS=100");
}

TEST(RecordsCommand, ImportsAFolderOnceAndNamesWhatIsThere) {
  const std::string folder = scratch_folder("records-import");
  write(folder + "/dips.csv", "day,tank,depth\n2026-11-02,T1,71 in\n2026-11-03,T1,70 in\n");
  write(folder + "/sales.csv", "day,tank,volume\n2026-11-02,T1,300 gal\n");
  const Outcome dry = records(folder, "import station.db . --dry-run");
  EXPECT_EQ(dry.exit, 0) << dry.err;
  EXPECT_TRUE(has(dry.out, "Dry run: nothing was stored; 3 rows would be.")) << dry.out;
  EXPECT_EQ(records(folder, "list station.db").exit, 2);  // and no file was made
  EXPECT_TRUE(has(records(folder, "import station.db .").out, "Stored: 3 rows are on the disk."));
  EXPECT_TRUE(has(records(folder, "import station.db .").out, "Nothing new: everything is in the store already."));
  const json listed = json::parse(records(folder, "list station.db --json").out);
  EXPECT_EQ(listed["result"]["sound"], true);
  EXPECT_EQ(listed["result"]["records"][0]["rows"], 2);
  EXPECT_EQ(listed["result"]["records"][0]["last_day"], "2026-11-03");
}

TEST(RecordsCommand, RejectsAreListedAndNothingIsStored) {
  const std::string folder = scratch_folder("records-rejects");
  write(folder + "/dips.csv", "day,tank,depth\n2026-11-02,T1,71 in\n11/03/2026,T1,70\n");
  const Outcome refused = records(folder, "import station.db dips.csv");
  EXPECT_EQ(refused.exit, 2);
  EXPECT_TRUE(has(refused.err, "dips.csv:3:1: error: day is a day, but '11/03/2026' can be read in two ways"))
      << refused.err;
  EXPECT_TRUE(has(refused.err, "dips.csv:3:15: error: depth is a length; '70' has no unit"));
  EXPECT_TRUE(has(refused.out, "Nothing was stored: 1 row is rejected."));
  EXPECT_TRUE(has(records(folder, "list station.db").out, "There are none yet."));
  const Outcome rest = records(folder, "import station.db dips.csv --without-rejects --json");
  EXPECT_EQ(rest.exit, 0);
  const json told = json::parse(rest.out);
  EXPECT_EQ(told["result"]["files"][0]["added"], 1);
  EXPECT_EQ(told["result"]["files"][0]["rejected"], 1);
  EXPECT_EQ(told["warnings"][0]["line"], 3);
}

TEST(RecordsCommand, ReadsByAMappingAndHoldsNamesAgainstTheSite) {
  const std::string folder = scratch_folder("records-mapping");
  write(folder + "/levels.txt", "Date;Tank;Level\n02.11.2026;1;1.803,4\n03.11.2026;2;1.700\n");
  write(folder + "/levels.toml",
        "kind = \"dips\"\nseparator = \";\"\ndecimal = \",\"\nthousands = \".\"\ndates = \"day/month/year\"\n"
        "[columns]\nday = \"Date\"\ntank = { column = \"Tank\", words = { \"1\" = \"T1\", \"2\" = \"T9\" } }\n"
        "depth = { column = \"Level\", unit = \"mm\" }\nby = { value = \"gauge\" }\n");
  EXPECT_EQ(records(folder, "import station.db levels.txt --mapping levels.toml --dry-run").exit, 0);
  const std::string site = quoted(std::string(SITES_DIR) + "/ludd-bank.toml");
  const Outcome refused = records(folder, "import station.db levels.txt --mapping levels.toml --site " + site);
  EXPECT_EQ(refused.exit, 2);
  EXPECT_TRUE(has(refused.err, "levels.txt:3:12: error: the station has no tank 'T9'")) << refused.err;
  const Outcome unnamed = records(folder, "import station.db levels.txt");
  EXPECT_TRUE(has(unnamed.err, "does not say what records it holds")) << unnamed.err;
}

TEST(RecordsCommand, OneRowIsAddedBackedUpAndExported) {
  const std::string folder = scratch_folder("records-add");
  EXPECT_EQ(records(folder, "add station.db dips day=2026-11-02 tank=T1 'depth=71 1/4 in'").exit, 0);
  const Outcome again = records(folder, "add station.db dips day=2026-11-02 tank=T1 'depth=70 in'");
  EXPECT_EQ(again.exit, 2);
  EXPECT_TRUE(has(again.err, "depth is '70 in' here and '71 1/4 in' there")) << again.err;
  EXPECT_TRUE(has(records(folder, "add station.db dip day=2026-11-02").err, "did you mean 'dips'?"));
  EXPECT_EQ(records(folder, "add station.db dips 'day'").exit, 2);
  EXPECT_TRUE(has(records(folder, "backup station.db --to copy.db").out, "written and checked: copy.db"));
  EXPECT_EQ(records(folder, "backup station.db --to copy.db").exit, 2);
  EXPECT_EQ(records(folder, "export copy.db --out files").exit, 0);
  EXPECT_TRUE(has(file_text(folder + "/files/dips.csv"), "2026-11-02,,T1,71 1/4 in,"));
  EXPECT_TRUE(has(records(folder, "import --help").out, "Usage: forecourse records import"));
}

TEST(RecordsCommand, WhatIsNoStoreIsLeftAsItIs) {
  const std::string folder = scratch_folder("records-no-store");
  write(folder + "/dips.csv", "day,tank,depth\n2026-11-02,T1,71 in\n");
  const Outcome wrong = records(folder, "import dips.csv dips.csv");
  EXPECT_EQ(wrong.exit, 2);
  EXPECT_TRUE(has(wrong.err, "dips.csv cannot be opened as a store: it is no store")) << wrong.err;
  EXPECT_EQ(file_text(folder + "/dips.csv"), "day,tank,depth\n2026-11-02,T1,71 in\n");
}

}  // namespace
}  // namespace forecourse::cli
