#include "forecourse/site/text/syntax_errors.h"

#include <gtest/gtest.h>

#include "forecourse/site/text/precheck.h"
#include "site/place_text.h"
#include "site/whole_station.h"

namespace forecourse::site {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;

/// Lines behind a good beginning, so that line 2 is the first of them.
std::vector<std::string> told_behind_format(std::string_view rest) {
  return told_of("format = 1\n" + std::string(rest));
}

struct Fault {
  const char* rest;
  std::vector<std::string> told;
};

class SyntaxFault : public testing::TestWithParam<Fault> {};

TEST_P(SyntaxFault, IsToldInWordsOfASiteFile) { EXPECT_EQ(told_behind_format(GetParam().rest), GetParam().told); }

INSTANTIATE_TEST_SUITE_P(
    SyntaxErrors, SyntaxFault,
    testing::Values(
        Fault{"[site]\nname = \"x\ndisplay = \"us\"",
              {"3:8: error: the text \"x has no closing quote | end it with \" on the same line"}},
        Fault{"[site]\nname = ", {"3:1: error: 'name' has no value | write one after the '=', or remove the line"}},
        Fault{"[site]\nname", {"3:1: error: 'name' has no '=' | write key = value"}},
        Fault{"[site]\nname = Hollin Gap", {"3:8: error: name is Hollin Gap, without quotes | write \"Hollin Gap\""}},
        Fault{"[site]\nground_temperature = 57 degF # measured",
              {"3:22: error: ground_temperature is 57 degF, without quotes | write \"57 degF\""}},
        Fault{"[site]\nname = \"a\"\nname = \"b\"",
              {"4:1: error: 'name' is given twice in one table | keep one of them", "  3:1: note: first given here"}},
        Fault{"[site]\nname = \"a\"\n[site]\nname = \"b\"",
              {"4:1: error: the table 'site' is given twice | put its keys under the first one",
               "  2:1: note: first given here"}},
        Fault{"[site\nname = \"a\"",
              {"2:1: error: the header of 'site' has no closing ']' | write [name], or [[name]] for one of a list"}},
        Fault{"[site]\nrules = [\"a\",\nname = \"b\"",
              {"3:1: error: the list of 'rules' has no closing ']' | close it with ]"}},
        Fault{"[flow]\nkeep = { low = \"1 gpm\"\norder = []",
              {"3:8: error: the table of 'keep' has no closing '}' | a table in braces stands on one line"}},
        Fault{"[site]\nname = \"C:\\q\"",
              {"3:8: error: name holds a backslash that begins no escape: \"C:\\q\" | write the text in single quotes, "
               "or "
               "each backslash twice"}},
        Fault{
            "[site]\nn\xC3\xA9 = 1",
            {"3:2: error: the letter '\xC3\xA9' stands outside quotes | keys of a site file are plain English words"}},
        Fault{"[site]\nname = \xC3\x84pfel",
              {"3:8: error: the letter '\xC3\x84' stands outside quotes | put the text in double quotes"}},
        Fault{"# bell \a\n[site]\nname = \"x\"", {"2:1: error: a comment holds a control character | remove it"}},
        Fault{"[[tank]]\nid = \"T",
              {"3:6: error: the text \"T has no closing quote | end it with \" on the same line"}}));

TEST(SyntaxErrors, TellsOfSeveralInOneRunAndReadsTheRest) {
  const std::string text =
      "format = 1\n[site]\nname = \"x\ndisplay = us\nrules = [\"us-federal\"]\nground_temperature = \n";
  EXPECT_EQ(told_of(text).size(), 3U);
  EXPECT_EQ(read_site(text).value.rules.size(), 1U);
}

TEST(SyntaxErrors, StopsAfterTen) {
  std::string text = "format = 1\n[site]\n";
  for (int i = 0; i < 15; ++i) text += "key" + std::to_string(i) + " = \n";
  const std::vector<std::string> told = told_of(text);
  EXPECT_EQ(told.size(), 11U);
  EXPECT_THAT(told.back(), HasSubstr("more errors were not looked for"));
}

TEST(SyntaxErrors, AnUnreadIdMakesNoFurtherTrouble) {
  std::string text(whole_station);
  const std::size_t at = text.find("id = \"T1\"");
  text.replace(at, 9, "id = \"T1");
  EXPECT_EQ(told_of(text).size(), 1U);
}

TEST(SyntaxErrors, ABrokenHeaderTakesItsKeysAndSubtablesAlong) {
  std::string text(whole_station);
  const std::size_t at = text.find("[[dispenser]]");
  text.replace(at, 13, "[[dispenser]");
  EXPECT_EQ(told_of(text).size(), 1U);
}

TEST(SyntaxErrors, AFileMayEndAnywhere) {
  for (std::size_t length = 0; length < whole_station.size(); length += 7) {
    const Parsed<Site> read = read_site(whole_station.substr(0, length));
    for (const Diagnostic& d : read.diagnostics) {
      if (d.where) {
        EXPECT_LE(d.where->end, length);
      }
    }
  }
}

TEST(Precheck, RefusesWhatIsNotUtf8) {
  EXPECT_THAT(told_of("format = 1\nname = \"\xFF\""),
              ElementsAre("2:9: error: the text is not UTF-8: byte 19 on line 2 is 0xFF | save the file as UTF-8"));
  EXPECT_EQ(first_invalid_utf8("a\xC0\x80"), 1U);         // overlong
  EXPECT_EQ(first_invalid_utf8("\xED\xA0\x80"), 0U);      // surrogate
  EXPECT_EQ(first_invalid_utf8("\xF4\x90\x80\x80"), 0U);  // above the last code point
  EXPECT_EQ(first_invalid_utf8("\xE2\x82"), 0U);          // cut short
  EXPECT_EQ(first_invalid_utf8("\xF0\x9F\x9A\x97 \xE2\x82\xAC \xC3\xA9 a"), std::string_view::npos);
}

TEST(Precheck, RefusesNulBytesAndHugeTexts) {
  EXPECT_THAT(
      told_of(std::string_view("a = 1\nb\0c", 9)),
      ElementsAre("2:2: error: the text holds a NUL byte, at byte 7 on line 2 | save the file as plain UTF-8 text "
                  "(not UTF-16)"));
  EXPECT_THAT(
      told_of(std::string(10'000'000, 'x')),
      ElementsAre(
          "1:1: error: 10000000 bytes are too large for a site file; at most 2097152 are read | a station takes a "
          "few thousand lines at most: is this the right file?"));
}

TEST(Precheck, NoiseIsNoTrouble) {
  std::string noise;
  std::uint32_t state = 1;
  while (noise.size() < 1'000'000) {
    state = state * 1664525U + 1013904223U;
    noise += static_cast<char>(32 + (state >> 24U) % 95U);
    if (state % 61U == 0) noise += '\n';
  }
  EXPECT_THAT(told_of(noise), Contains(HasSubstr("more errors were not looked for")));
}

}  // namespace
}  // namespace forecourse::site
