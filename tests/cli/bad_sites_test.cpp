// Every wrong file of the folder bad_sites with the whole text that the program answers it with.
#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <map>
#include <random>
#include <regex>

#include "cli/program.h"

namespace forecourse::cli {
namespace {

const std::string& folder() {
  static const std::string path = std::string(TEST_SOURCE_DIR) + "/bad_sites";
  return path;
}

/// The names of the files with this ending, without it.
std::vector<std::string> names_with(const std::string& ending) {
  std::vector<std::string> names;
  for (const auto& file : std::filesystem::directory_iterator(folder())) {
    if (file.path().extension() == ending) names.push_back(file.path().stem().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

class BadSite : public testing::TestWithParam<std::string> {};

TEST_P(BadSite, IsAnsweredWithItsWholeText) {
  const std::string& name = GetParam();
  const Outcome outcome = run_program(folder(), "flow " + quoted(name + ".toml"));
  EXPECT_EQ(outcome.exit, 2);
  const std::string path = folder() + "/" + name + ".txt";
  if (outcome.err == file_text(path)) return;
  std::ofstream(path + ".new", std::ios::binary) << outcome.err;
  ADD_FAILURE() << "differs from " << path << "; the new text is beside it as .new:\n" << outcome.err;
}

std::string test_name(const testing::TestParamInfo<std::string>& info) {
  std::string name = info.param;
  std::replace_if(
      name.begin(), name.end(), [](unsigned char c) { return std::isalnum(c) == 0; }, '_');
  return name;
}

INSTANTIATE_TEST_SUITE_P(BadSites, BadSite, testing::ValuesIn(names_with(".toml")), test_name);

TEST(BadSiteFolder, HoldsAFileAndItsTextForEachTrouble) {
  EXPECT_EQ(names_with(".toml"), names_with(".txt"));
  EXPECT_GE(names_with(".toml").size(), 60U);
}

/// A wrong file and its text with the names of parts and all numbers blanked.
std::string blanked(const std::string& name) {
  const std::string toml = file_text(folder() + "/" + name + ".toml");
  std::string both = toml + "\n" + std::regex_replace(file_text(folder() + "/" + name + ".txt"), std::regex(name), "");
  static const std::regex id_line("\\bid = \"([^\"]*)\"");
  for (std::sregex_iterator found(toml.begin(), toml.end(), id_line), end; found != end; ++found) {
    const std::string id = (*found)[1].str();
    if (id.empty()) continue;
    for (const char* quote : {"\"", "'"}) {
      const std::string named = quote + id + quote;
      for (std::size_t at = both.find(named); at != std::string::npos; at = both.find(named, at + 1)) {
        both.replace(at, named.size(), "~");
      }
    }
  }
  return std::regex_replace(both, std::regex("[0-9]+"), "#");
}

TEST(BadSiteFolder, HoldsNoTwoThatDifferByANameOrNumberOnly) {
  std::map<std::string, std::string> seen;
  for (const std::string& name : names_with(".toml")) {
    const auto [first, fresh] = seen.emplace(blanked(name), name);
    EXPECT_TRUE(fresh) << name << " is " << first->second << " again";
  }
}

// ---- too large to be stored -----------------------------------------------------------------------------

constexpr std::size_t ten_megabytes = 10'000'000;

/// Stores a text as `name` and has the program read it; the time it took is kept.
Outcome answer_to(const std::string& name, const std::string& text) {
  const std::string place = scratch_folder("large");
  std::ofstream(place + "/" + name, std::ios::binary) << text;
  const auto start = std::chrono::steady_clock::now();
  const Outcome outcome = run_program(place, "flow " + name);
  const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
  testing::Test::RecordProperty("milliseconds", std::to_string(took.count()));
  std::filesystem::remove_all(place);
  return outcome;
}

TEST(LargeFile, OfTenMegabytesOfNoiseIsNotRead) {
  std::mt19937 random(7);
  std::string noise(ten_megabytes, '\0');
  for (char& c : noise) c = static_cast<char>(random() & 0xFFU);
  const Outcome outcome = answer_to("noise.toml", noise);
  EXPECT_EQ(outcome.exit, 2);
  EXPECT_EQ(outcome.out, "");
  EXPECT_TRUE(outcome.err.starts_with(
      "noise.toml:1:1: error: 10000000 bytes are too large for a site file; at most 2097152 are read\n"))
      << outcome.err;
  EXPECT_LT(outcome.err.size(), 1000U);
}

TEST(LargeFile, OfNoiseUnderTheLimitIsToldToBeNoText) {
  std::mt19937 random(7);
  std::string noise(2'000'000, '\0');
  for (char& c : noise) c = static_cast<char>(random() & 0xFFU);
  const Outcome outcome = answer_to("noise.toml", noise);
  EXPECT_EQ(outcome.exit, 2);
  EXPECT_NE(outcome.err.find("error: the text is not UTF-8: byte "), std::string::npos) << outcome.err;
  EXPECT_LT(outcome.err.size(), 1000U);
}

/// Lines of a site file, over and over, until there are `size` bytes of them.
std::string many_lines(std::size_t size) {
  std::string text = "format = 1\n";
  for (std::size_t i = 0; text.size() < size; ++i) {
    text += "[[branch]]\nid = \"B" + std::to_string(i) + "\"\nelevation = \"-2 ft 6 in\"\n";
  }
  return text;
}

TEST(LargeFile, OfTenMegabytesOfRightLinesIsNotReadEither) {
  const Outcome outcome = answer_to("lines.toml", many_lines(ten_megabytes));
  EXPECT_EQ(outcome.exit, 2);
  EXPECT_NE(outcome.err.find("bytes are too large for a site file"), std::string::npos) << outcome.err;
}

TEST(LargeFile, JustUnderTheLimitIsRead) {
  const Outcome outcome = answer_to("lines.toml", many_lines(2'090'000));
  EXPECT_EQ(outcome.exit, 2);
  EXPECT_NE(outcome.err.find("error: the station has no hose"), std::string::npos) << outcome.err.substr(0, 400);
}

TEST(LargeFile, OfOneWrongLineOverAndOverIsToldInBounds) {
  std::string text = "format = 1\n";
  while (text.size() < 2'000'000) text += "id = \"no end\n";
  const Outcome outcome = answer_to("lines.toml", text);
  EXPECT_EQ(outcome.exit, 2);
  EXPECT_NE(outcome.err.find("more errors were not looked for"), std::string::npos) << outcome.err.substr(0, 400);
  EXPECT_LT(outcome.err.size(), 10'000U);
}

/// `count` pieces of text one behind the other, each with its number for '#'.
std::string repeated(const std::string& piece, std::size_t count) {
  std::string text;
  for (std::size_t i = 0; i < count; ++i) {
    for (const char c : piece) text += c == '#' ? std::to_string(i) : std::string(1, c);
  }
  return text;
}

TEST(LargeFile, OfAnyRepetitionIsToldInBounds) {
  const std::vector<std::string> rests{
      repeated("a.", 900'000) + "a = 1\n",        // a key that would nest tables without end
      "[" + repeated("a.", 900'000) + "a]\n",     // the same in a header
      "x = " + std::string(900'000, '[') + "\n",  // lists in lists
      repeated("k# = 1\n", 130'000),              // unknown keys
      repeated("\xC3\xA4 = 1\n", 200'000),        // letters outside quotes
      repeated("[[line]]\nid = \"L#\"\nfrom = \"x#\"\nto = \"y#\"\n", 30'000),  // lines to nowhere
      "[[branch]]\nid = \"" + std::string(1'900'000, 'k') + "\"\n",             // a very long id
  };
  for (const std::string& rest : rests) {
    const Outcome outcome = answer_to("large.toml", "format = 1\n" + rest);
    EXPECT_EQ(outcome.exit, 2) << rest.substr(0, 40);
    EXPECT_NE(outcome.err.find("error: "), std::string::npos) << rest.substr(0, 40);
    EXPECT_LT(outcome.err.size(), 100'000U) << rest.substr(0, 40);
  }
}

}  // namespace
}  // namespace forecourse::cli
