// The command line-test: what it prints, where it writes, what it says of wrong options.
// SOURCE: common practice, no source
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "cli/program.h"

namespace forecourse::cli {
namespace {

using nlohmann::json;

Outcome run_in_sites(const std::string& arguments) {
  return run_program(SITES_DIR, arguments, "LC_ALL=C.UTF-8 COLUMNS=200");
}

TEST(LineTestCommand, TellsTheLineThatWasAsked) {
  const Outcome outcome =
      run_in_sites("line-test hollin-gap.toml --product diesel --warmer \"18 degF\" --time-constant \"1.5 h\"");
  EXPECT_EQ(outcome.exit, 0) << outcome.err;
  EXPECT_NE(outcome.out.find("Line of diesel"), std::string::npos);
  EXPECT_EQ(outcome.out.find("Line of regular"), std::string::npos);
  EXPECT_NE(outcome.out.find(" warmer than the ground (as asked)"), std::string::npos) << outcome.out;
}

TEST(LineTestCommand, ADocumentIsAllThatIsPrinted) {
  const Outcome outcome = run_in_sites("line-test hollin-gap.toml --json");
  EXPECT_EQ(outcome.err, "");
  const json document = json::parse(outcome.out);
  EXPECT_EQ(document["study"], "line-test");
  EXPECT_EQ(document["result"]["lines"].size(), 3U);
}

TEST(LineTestCommand, TellsAllWrongOptionsAtOnce) {
  const Outcome outcome = run_in_sites("line-test site-s.toml --warmer 18 --wait \"2 psi\" --exponent -1");
  EXPECT_EQ(outcome.exit, 2);
  EXPECT_EQ(outcome.out, "");
  for (const char* option : {"--warmer", "--wait", "--exponent"}) {
    EXPECT_NE(outcome.err.find(option), std::string::npos) << outcome.err;
  }
}

TEST(LineTestCommand, NamesTheLinesWhereOneIsNotThere) {
  const Outcome outcome = run_in_sites("line-test hollin-gap.toml --product kerosene");
  EXPECT_EQ(outcome.exit, 2);
  EXPECT_NE(outcome.err.find("no line carries 'kerosene'"), std::string::npos) << outcome.err;
  EXPECT_NE(outcome.err.find("there are: regular, premium, diesel"), std::string::npos) << outcome.err;
}

TEST(LineTestCommand, WritesAPageAndItsData) {
  const std::string folder = scratch_folder("line-test");
  const Outcome outcome = run_in_sites("line-test hollin-gap.toml --out " + quoted(folder));
  EXPECT_EQ(outcome.exit, 0) << outcome.err;
  EXPECT_NE(file_text(folder + "/line-test.html").find("Line tests and leak detectors"), std::string::npos);
  EXPECT_EQ(json::parse(file_text(folder + "/line-test.json"))["study"], "line-test");
}

TEST(LineTestCommand, TheReportOfTheStationHasItsSectionAndData) {
  const std::string folder = scratch_folder("study-line-test");
  static_cast<void>(run_in_sites("study hollin-gap.toml --out " + quoted(folder)));
  EXPECT_NE(file_text(folder + "/report.html").find("<section id=\"line-test\">"), std::string::npos);
  EXPECT_EQ(json::parse(file_text(folder + "/line-test.json"))["study"], "line-test");
}

}  // namespace
}  // namespace forecourse::cli
