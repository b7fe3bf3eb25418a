// The glossary of the handout: read from the vocabulary page, and only what the handout uses.
#include "forecourse/report/lesson/glossary.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "forecourse/report/lesson/amounts.h"

namespace forecourse::report {
namespace {

constexpr const char* page =
    "# Words\n\n| short | text |\n|---|---|\n| IFC | a code |\n\n## Tank\n\n| word | meaning | used as | source |\n"
    "|---|---|---|---|\n| ullage | the room above | *report* | – |\n| drop, dropped | the flow of `one` compartment | "
    "x | – |\n"
    "\nText.\n\n| word | meaning | used as | source |\n|---|---|---|---|\n| dip | a depth | x | – |\n";

TEST(Glossary, ReadsTheTablesOfWordsAndNoOthers) {
  const std::vector<GlossaryWord> words = read_glossary(page);
  ASSERT_EQ(words.size(), 3U);
  EXPECT_EQ(words[1].word, "drop, dropped");
  EXPECT_EQ(words[1].meaning, "the flow of one compartment");
}

TEST(Glossary, KeepsWholeWordsThatAreUsed) {
  const std::vector<GlossaryWord> words = read_glossary(page);
  EXPECT_EQ(words_used(words, "Two drops at once.").size(), 1U);
  EXPECT_TRUE(words_used(words, "a dropper, and a dip").empty());  // no whole word; too short a word
  EXPECT_EQ(words_used(words, "ULLAGE and drop").front().word, "drop, dropped");
}

TEST(Glossary, IsThatOfTheVocabulary) {
  EXPECT_GT(glossary().size(), 300U);
  EXPECT_FALSE(words_used(glossary(), "shear valve, whip hose, interstice").empty());
}

TEST(Amounts, AreShownWithTheirUnits) {
  using lesson::Quantity;
  // SOURCE: [nist_sp811, appendix B] gallon 231 in3: 10 gal/min is 6.30901964e-4 m3/s
  EXPECT_EQ(shown(6.30901964e-4, Quantity::flow, site::Display::us, Glyphs::ascii), "10.00 gpm");
  EXPECT_EQ(shown(0.95, Quantity::share, site::Display::us, Glyphs::ascii), "95.0 %");
  EXPECT_EQ(shown(6.9 * 60.0, Quantity::time, site::Display::si, Glyphs::ascii), "6.9 min");
  EXPECT_EQ(shown(12.0, Quantity::count, site::Display::si, Glyphs::ascii), "12");
  EXPECT_EQ(shown(std::nullopt, Quantity::count, site::Display::si, Glyphs::ascii), "-");
  const auto between = [](double low, double high) {
    return shown(lesson::Ends{low, high, {}, {}}, Quantity::time, site::Display::us, Glyphs::ascii);
  };
  EXPECT_EQ(between(18.9 * 60.0, 19.4 * 60.0), "18.9 to 19.4 min");  // the unit once, where it is the same
  EXPECT_EQ(between(18.9 * 60.0, 3.0 * 3600.0), "18.9 min to 3.0 h");
}

}  // namespace
}  // namespace forecourse::report
