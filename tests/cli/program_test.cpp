// The program as it is run: exit codes, what stands on which stream, widths, odd paths.
#include "cli/program.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <sstream>

namespace forecourse::cli {
namespace {

using nlohmann::ordered_json;

Outcome run_in_sites(const std::string& arguments, const std::string& environment = "") {
  return run_program(SITES_DIR, arguments, environment);
}

/// A file's name as the name of a test.
std::string file_word(const testing::TestParamInfo<const char*>& tested) {
  std::string word = tested.param;
  std::replace_if(
      word.begin(), word.end(), [](char c) { return c == '-' || c == '.'; }, '_');
  return word;
}

/// A wrong call: nothing on standard output, this on standard error.
struct WrongCall {
  const char* name;
  const char* arguments;
  const char* told;
};

class Program : public testing::TestWithParam<WrongCall> {};

TEST_P(Program, TellsAWrongCallAndEndsWithTwo) {
  const Outcome outcome = run_in_sites(GetParam().arguments);
  EXPECT_EQ(outcome.exit, 2);
  EXPECT_EQ(outcome.out, "");
  EXPECT_EQ(outcome.err, GetParam().told);
}

INSTANTIATE_TEST_SUITE_P(
    WrongCalls, Program,
    testing::Values(
        WrongCall{"unknown_hose", "flow site-s.toml --open D1.a,D1b",
                  "error: there is no hose 'D1b'\n  hint: did you mean 'D1.b'?\n1 error\n"},
        WrongCall{"two_unknown_hoses", "flow site-s.toml --open D1.c --open pump",
                  "error: there is no hose 'D1.c'\n  hint: did you mean 'D1.a'?\n"
                  "error: there is no hose 'pump'\n  hint: name a hose of the site\n2 errors\n"},
        WrongCall{"dispenser_for_a_hose", "flow site-s.toml --open D1",
                  "error: there is no hose 'D1'\n  hint: 'D1' is a dispenser; its hoses are D1.a, D1.b\n1 error\n"},
        WrongCall{"order_of_a_comma", "flow site-s.toml --order ,",
                  "error: --order names no hose, but ',' is written\n"
                  "  hint: name hoses in the order in which they open: --order D1.a,D3.a\n"},
        WrongCall{"order_of_nothing", "flow site-s.toml --order ''",
                  "error: --order names no hose, but '' is written\n"
                  "  hint: name hoses in the order in which they open: --order D1.a,D3.a\n"},
        WrongCall{"keep_of_wrong_unit", "flow site-s.toml --keep '10 psi'",
                  "error: --keep is a flow, but 'psi' is a pressure\n  hint: write \"10 gpm\" or \"38 L/min\"\n"},
        WrongCall{"keep_without_unit", "flow site-s.toml --keep 10",
                  "error: --keep is a flow; '10' has no unit\n  hint: write \"10 gpm\" or \"38 L/min\"\n"},
        WrongCall{"keep_with_comma", "flow site-s.toml --keep '10,5 gpm'",
                  "error: --keep is a flow, but '10,5' has a comma\n  hint: write \"10.5 gpm\"\n"},
        WrongCall{"keep_of_nothing", "flow site-s.toml --keep '0 gpm'",
                  "error: --keep must be above zero, but '0 gpm' is written\n"},
        WrongCall{"unknown_option", "flow site-s.toml --colour",
                  "error: The following argument was not expected: --colour\n"
                  "  hint: forecourse --help, or forecourse COMMAND --help\n"},
        WrongCall{"unknown_command", "flwo site-s.toml",
                  "error: there is no command 'flwo'\n  hint: did you mean 'flow'?\n"},
        WrongCall{"command_like_no_other", "levitate site-s.toml",
                  "error: there is no command 'levitate'\n  hint: forecourse --help lists them\n"},
        WrongCall{"no_command", "",
                  "error: A subcommand is required\n  hint: forecourse --help, or forecourse COMMAND --help\n"},
        WrongCall{"no_site", "flow",
                  "error: SITE is required\n  hint: forecourse --help, or forecourse COMMAND --help\n"},
        WrongCall{"no_such_file", "flow nowhere.toml",
                  "nowhere.toml: error: cannot be read (not there, or no permission)\n"},
        WrongCall{"folder_as_file", "flow .", ".: error: is a folder, not a site file\n"},
        WrongCall{"device_as_file", "flow /dev/zero",
                  "/dev/zero: error: is larger than 64 MiB, which no site file is\n"},
        WrongCall{"nothing_as_file", "flow ''", ": error: cannot be read (not there, or no permission)\n"},
        WrongCall{"set_of_unknown_key", "flow site-s.toml --set 'line.trunk.boer=3 in'",
                  "error: --set line.trunk.boer=3 in: 'boer' is not a key of line 'trunk'\n"
                  "  hint: did you mean line.trunk.bore?\n"},
        WrongCall{"set_of_unknown_part", "flow site-s.toml --set 'line.trunc.bore=3 in'",
                  "error: --set line.trunc.bore=3 in: there is no line 'trunc'\n"
                  "  hint: did you mean line.trunk.bore?\n"},
        WrongCall{"set_of_wrong_unit", "flow site-s.toml --set 'line.trunk.bore=3 psi'",
                  "error: --set line.trunk.bore=3 psi: bore is a length, but 'psi' is a pressure\n"
                  "  hint: write \"2.00 in\" or \"52 mm\"\n"},
        WrongCall{"set_without_value", "flow site-s.toml --set line.trunk.bore",
                  "error: --set line.trunk.bore has no '='\n  hint: write --set line.trunk.bore=\"3 in\"\n"},
        WrongCall{"unknown_shelf_kind", "shelf --kind nozzel",
                  "error: the shelf has no kind 'nozzel'\n  hint: one of pipe, connection, filter, meter, "
                  "control_valve, breakaway, swivel, nozzle, shear_valve, leak_detector\n"},
        WrongCall{"out_in_a_file", "flow site-s.toml --out site-s.toml/out",
                  "site-s.toml/out: error: cannot be made: Not a directory\n"}),
    [](const auto& tested) { return std::string(tested.param.name); });

TEST(Program, EndsWithZeroWhenAllIsWell) {
  const Outcome outcome = run_in_sites("flow site-s.toml");
  EXPECT_EQ(outcome.exit, 0);
  EXPECT_EQ(outcome.err, "");
  EXPECT_NE(outcome.out.find("D1.a"), std::string::npos);
}

TEST(Program, SaysInItsFirstLinesThatNoPumpRuns) {
  const Outcome outcome = run_in_sites("flow site-s.toml --set pump.P1.running=false");
  EXPECT_EQ(outcome.exit, 0) << outcome.err;
  EXPECT_LT(outcome.out.find("No pump runs: nothing flows at any hose."), 600U) << outcome.out;
}

TEST(Program, EndsWithOneWhenAHoseFallsShortOfTheFlowToKeep) {
  const Outcome outcome = run_in_sites("flow site-s.toml --keep '10 gpm'");  // 9.6 gpm a hose when all are open
  EXPECT_EQ(outcome.exit, 1);
  EXPECT_EQ(outcome.err, "");
  EXPECT_EQ(run_in_sites("flow site-s.toml --keep '9 gpm'").exit, 0);
}

TEST(Program, ComputesWithAChangedValue) {
  // Site S with a 3-in trunk keeps 10 gpm at every hose; the file stays as it is.
  const std::string before = file_text(std::string(SITES_DIR) + "/site-s.toml");
  EXPECT_EQ(run_in_sites("flow site-s.toml --keep '10 gpm' --set line.trunk.bore='3.00 in'").exit, 0);
  EXPECT_EQ(file_text(std::string(SITES_DIR) + "/site-s.toml"), before);
}

// ---- JSON -------------------------------------------------------------------------------------------------

/// Every number of a document is one: JSON has no word for what is not, but null would stand for it.
void expect_numbers(const ordered_json& value, const std::string& path) {
  if (value.is_number()) {
    EXPECT_TRUE(std::isfinite(value.get<double>())) << path;
  }
  if (!value.is_structured()) return;
  for (const auto& [key, inner] : value.items()) {
    const std::string below = path + "/" + key;
    const bool has_unit = key.ends_with("_pa") || key.ends_with("_m3_per_s") || key.ends_with("_m_per_s");
    if (has_unit && !inner.is_structured()) {
      EXPECT_TRUE(inner.is_number() || inner.is_null()) << below;
    }
    expect_numbers(inner, below);
  }
}

class ProgramJson : public testing::TestWithParam<const char*> {};

TEST_P(ProgramJson, IsOneDocumentWithTheEightKeys) {
  const Outcome outcome = run_in_sites(std::string("flow --json ") + GetParam());
  EXPECT_LE(outcome.exit, 1) << outcome.err;
  const ordered_json document = ordered_json::parse(outcome.out, nullptr, false);
  ASSERT_TRUE(document.is_object());
  std::vector<std::string> keys;
  for (const auto& [key, value] : document.items()) keys.push_back(key);
  EXPECT_EQ(keys, (std::vector<std::string>{"study", "version", "cautions", "options", "defaults", "result", "findings",
                                            "warnings"}));
  expect_numbers(document, "");
}

INSTANTIATE_TEST_SUITE_P(Sites, ProgramJson,
                         testing::Values("site-s.toml", "truck-lane.toml", "thornby.toml", "hollin-gap.toml",
                                         "marle-cross.toml"),
                         file_word);

TEST(Program, PrintsNothingButTheDocumentAndNoneForAWrongFile) {
  EXPECT_EQ(run_in_sites("flow site-s.toml --json").err, "");
  EXPECT_EQ(run_program(std::string(TEST_SOURCE_DIR) + "/bad_sites", "flow zero-bore.toml --json").out, "");
}

// ---- help -------------------------------------------------------------------------------------------------

TEST(Program, ShowsAnExampleInTheHelpOfEachCommand) {
  for (const char* command : {"study", "flow", "shelf"}) {
    const Outcome outcome = run_in_sites(std::string(command) + " --help");
    EXPECT_EQ(outcome.exit, 0) << command;
    EXPECT_EQ(outcome.err, "") << command;
    EXPECT_NE(outcome.out.find(std::string("Example: forecourse ") + command), std::string::npos) << outcome.out;
    EXPECT_NE(run_in_sites("--help").out.find(command), std::string::npos);
  }
}

TEST(Program, EveryStudyThatPrintsAsksForAFolder) {
  for (const std::string command : {"tank", "delivery", "vapor", "flotation"}) {
    const Outcome outcome = run_in_sites(command + " marle-cross.toml --pdf");
    EXPECT_EQ(outcome.exit, 2) << command;
    EXPECT_NE(outcome.err.find("--pdf needs --out"), std::string::npos) << command;
    const std::string folder = scratch_folder("pdf-" + command);
    const Outcome without = run_in_sites(command + " marle-cross.toml --pdf --out " + quoted(folder), "PATH=/nowhere");
    EXPECT_NE(without.err.find("'weasyprint' is not installed"), std::string::npos) << without.err;
    EXPECT_NE(file_text(folder + "/" + command + ".html"), "") << command;
  }
}

TEST(Program, APdfNeedsAFolder) {
  const Outcome outcome = run_in_sites("flow site-s.toml --pdf");
  EXPECT_EQ(outcome.exit, 2);
  EXPECT_EQ(outcome.out, "");
  EXPECT_NE(outcome.err.find("--pdf needs --out"), std::string::npos);
}

TEST(Program, WithoutThePdfProgramTheReportIsThereAndTheReasonIsTold) {
  const std::string folder = scratch_folder("pdf");
  const Outcome outcome = run_in_sites("flow site-s.toml --pdf --out " + quoted(folder), "PATH=/nowhere");
  EXPECT_EQ(outcome.exit, 2);
  EXPECT_NE(outcome.err.find("weasyprint"), std::string::npos);
  EXPECT_NE(outcome.err.find("hint: "), std::string::npos);
  EXPECT_NE(file_text(folder + "/report.html"), "");
  EXPECT_EQ(file_text(folder + "/report.pdf"), "");
}

TEST(Program, TellsItsVersion) {
  const Outcome outcome = run_in_sites("--version");
  EXPECT_EQ(outcome.exit, 0);
  EXPECT_EQ(outcome.out, std::string("forecourse ") + FORECOURSE_VERSION + "\n");
}

// ---- surroundings -------------------------------------------------------------------------------------------

TEST(Program, EndsQuietlyWhenItsReaderHasSeenEnough) {
  const std::string left = scratch_folder("pipe");
  const std::string command = "cd " + quoted(SITES_DIR) + " && " + quoted(FORECOURSE_PROGRAM) +
                              " flow marle-cross.toml --json 2>" + quoted(left + "/err") + " | head -1 >" +
                              quoted(left + "/out");
  EXPECT_EQ(std::system(command.c_str()), 0);
  EXPECT_EQ(file_text(left + "/err"), "");
  EXPECT_EQ(file_text(left + "/out"), "{\n");
  std::filesystem::remove_all(left);
}

TEST(Program, ReadsAndWritesPathsWithBlanksAndLettersOfAllKinds) {
  const std::string place = scratch_folder("odd paths");
  const std::string name = "Tankstelle Süd 'B' — 第一.toml";
  std::filesystem::copy_file(std::string(SITES_DIR) + "/site-s.toml", place + "/" + name);
  const Outcome outcome = run_program(place, "flow " + quoted(name) + " --out " + quoted("mein Bericht/é"));
  EXPECT_EQ(outcome.exit, 0) << outcome.err;
  EXPECT_NE(file_text(place + "/mein Bericht/é/report.html").find("<html"), std::string::npos);
  EXPECT_TRUE(ordered_json::accept(file_text(place + "/mein Bericht/é/flow.json")));
  const Outcome wrong = run_program(place, "flow " + quoted("kein " + name));
  EXPECT_EQ(wrong.err, "kein " + name + ": error: cannot be read (not there, or no permission)\n");
  std::filesystem::remove_all(place);
}

std::size_t code_points(const std::string& line) {
  std::size_t count = 0;
  for (const char c : line) count += (static_cast<unsigned char>(c) & 0xC0U) != 0x80U ? 1U : 0U;
  return count;
}

/// Code points of the longest line.
std::size_t width_of(const std::string& text) {
  std::size_t widest = 0;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) widest = std::max(widest, code_points(line));
  return widest;
}

class ProgramWidth : public testing::TestWithParam<const char*> {};

TEST_P(ProgramWidth, KeepsWithinTheColumnsOfTheTerminal) {
  for (const std::size_t columns : {80U, 140U}) {
    for (const char* locale : {"C", "C.UTF-8"}) {
      const std::string surroundings = "COLUMNS=" + std::to_string(columns) + " LC_ALL=" + locale;
      const Outcome outcome = run_in_sites(std::string("flow --verbose ") + GetParam(), surroundings);
      EXPECT_LE(width_of(outcome.out), columns) << surroundings;
      EXPECT_EQ(outcome.out.find('\x1B'), std::string::npos) << "no color where there is no terminal";
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Sites, ProgramWidth,
                         testing::Values("site-s.toml", "thornby.toml", "hollin-gap.toml", "marle-cross.toml"),
                         file_word);

TEST(Program, WritesPlainLettersWhereTheLocaleHasNoOthers) {
  const Outcome outcome = run_in_sites("flow site-s.toml", "LC_ALL=C");
  for (const char c : outcome.out) ASSERT_LT(static_cast<unsigned char>(c), 0x80U);
}

}  // namespace
}  // namespace forecourse::cli
