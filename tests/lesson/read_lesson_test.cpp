// Lessons as their writers get them wrong, each with all that is told of it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <set>

#include "forecourse/lesson/failures/replay.h"
#include "forecourse/lesson/lesson.h"
#include "forecourse/lesson/numbers/number.h"
#include "forecourse/lesson/pages/merged_page.h"
#include "forecourse/lesson/pages/page_kind.h"
#include "site/place_text.h"
#include "support/stations.h"

namespace forecourse::lesson {
namespace {

using testing::ElementsAre;

constexpr site::Date today{2026, 11, 30, {}};

std::vector<std::string> told_of_reading(const std::string& text) {
  std::vector<std::string> out;
  for (const Diagnostic& one : read_lesson(text).diagnostics) out.push_back(site::told(text, one));
  return out;
}

/// What does not fit an example station.
std::vector<std::string> told_of_fit(const std::string& text, const std::string& name) {
  const site::Site site = test::station(test::site_text(name));
  const Studies studies = make_studies(site, today);
  const auto read = read_lesson(text);
  EXPECT_TRUE(read.ok());
  std::vector<std::string> out;
  for (const Diagnostic& one : check_lesson(read.value, ground_of(site, studies))) out.push_back(site::told(text, one));
  return out;
}

TEST(ReadLesson, TellsAllThatIsWrongInOneGo) {
  EXPECT_THAT(
      told_of_reading("format = 1\ntitel = \"x\"\n[[page]]\nnumbers = \"drop-rate\"\n[[page]]\npage = \"\"\n"),
      ElementsAre("4:11: error: numbers is a list of texts, but \"drop-rate\" is a text | write the list in [ ]",
                  "6:8: error: page is empty | write a text, or remove the key",
                  "2:1: error: 'titel' is not a key of lesson | did you mean 'title'?",
                  "3:1: error: the page has no name | write the name of one: page = \"shear-groove\"",
                  "5:1: error: the page has no name | write the name of one: page = \"shear-groove\""));
}

TEST(ReadLesson, AsksForAPageAndForItsFormat) {
  EXPECT_THAT(told_of_reading("\n"),
              ElementsAre("1:1: error: the file holds no lesson | begin with format = 1, then title and [[page]]"));
  EXPECT_THAT(told_of_reading("format = 1\ntitle = \"x\"\n"),
              ElementsAre("1:1: error: the lesson has no page | add a [[page]] with the name of one: page = "
                          "\"shear-groove\""));
  EXPECT_THAT(told_of_reading("format = 2\n[[page]]\npage = \"drop\"\n"),
              ElementsAre("1:10: error: format is 2, but this program reads format 1 | a newer version of this program "
                          "reads it"));
}

TEST(ReadLesson, KnowsAListThatIsEmptyFromOneThatIsNotThere) {
  const LessonFile file = read_lesson("format = 1\n[[page]]\npage = \"drop\"\nfailures = []\n").value;
  ASSERT_EQ(file.pages.size(), 1U);
  ASSERT_TRUE(file.pages[0].failures.has_value());
  EXPECT_TRUE(file.pages[0].failures->empty());
  EXPECT_FALSE(file.pages[0].numbers.has_value());
  const PageEntry merged = merged_page(file.pages[0]);
  EXPECT_TRUE(merged.failures->empty());
  EXPECT_FALSE(merged.numbers->empty());
  EXPECT_EQ(merged.title.text, "The drop");
}

TEST(CheckLesson, TellsNamesThatThereAreNone) {
  EXPECT_THAT(told_of_fit("format = 1\n[[page]]\npage = \"shear-grove\"\n[[page]]\npage = \"drop\"\n"
                          "stop = \"tankr\"\nnumbers = [\"drop-rat\"]\nclauses = [\"us-federal.nothing-like-it\"]\n"
                          "[[page]]\npage = \"drop\"\n",
                          "hollin-gap"),
              ElementsAre("3:8: error: there is no page 'shear-grove' | did you mean 'shear-groove'?",
                          "6:8: error: there is no stop 'tankr' | did you mean 'tanker'?",
                          "7:12: error: there is no number 'drop-rat' | did you mean 'drop-rate'?",
                          testing::StartsWith("8:12: error: there is no requirement 'us-federal.nothing-like-it' | "),
                          "10:8: error: page 'drop' stands twice | leave one of them out"));
}

TEST(CheckLesson, TellsAPartThatTheStationLacks) {
  const std::string lesson =
      "format = 1\n[[page]]\npage = \"sump\"\nat = \"D33\"\n[[page]]\npage = \"drop\"\nat = \"load\"\n";
  EXPECT_THAT(told_of_fit(lesson, "site-s"),
              ElementsAre("4:6: error: 'D33' is no dispenser with a sump of this station | did you mean 'D3'?",
                          "7:6: error: 'load' is no delivery of this station | the station has none: leave the page "
                          "out, or add a [[delivery]] that says how a tanker unloads here"));
  EXPECT_THAT(told_of_fit("format = 1\n[[page]]\npage = \"drop\"\nat = \"load\"\n", "hollin-gap"), ElementsAre());
}

TEST(BuiltInLesson, HasEveryPageOnceAndNothingUnknown) {
  std::set<std::string> pages;
  for (const PageEntry& page : built_in_lesson().pages) {
    SCOPED_TRACE(page.page.text);
    EXPECT_TRUE(pages.insert(page.page.text).second);
    EXPECT_NE(find_page(page.page.text), nullptr);
    EXPECT_TRUE(stop_of(page.stop.text).has_value());
    for (const site::Name* text : {&page.title, &page.prevents, &page.without, &page.notes})
      EXPECT_FALSE(text->empty());
    EXPECT_GE(page.numbers.value().size(), 2U);
    EXPECT_LE(page.numbers.value().size(), 3U);
    // No study breaches a tank's wall.
    EXPECT_EQ(page.failures.value().empty(), page.page.text == "tank-walls");
    EXPECT_FALSE(page.clauses.value().empty());
    for (const site::Name& one : *page.clauses) EXPECT_NE(requirement_of(one.text).requirement, nullptr) << one.text;
    for (const site::Name& one : *page.numbers) EXPECT_NE(find_number(one.text), nullptr) << one.text;
    for (const site::Name& one : *page.failures) EXPECT_NE(find_failure(one.text), nullptr) << one.text;
  }
  EXPECT_EQ(pages.size(), page_kinds().size());
}

TEST(NumberKinds, AreCalledByOneNameEach) {
  std::set<std::string_view> ids;
  for (const NumberKind& kind : number_kinds()) EXPECT_TRUE(ids.insert(kind.id).second) << kind.id;
  EXPECT_GE(ids.size(), 60U);
}

// The handbook lists every page and every number by name, with its own words.
TEST(HandbookOfTheLesson, ListsPagesAndNumbers) {
  std::ifstream file(std::string(TEST_SOURCE_DIR) + "/../docs/handbook/lesson.md");
  const std::string text{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
  for (const PageKind& kind : page_kinds()) {
    EXPECT_NE(text.find("| `" + std::string(kind.id) + "` | "), std::string::npos) << kind.id;
  }
  for (const NumberKind& kind : number_kinds()) {
    const std::string row = "| `" + std::string(kind.id) + "` | " + std::string(kind.label) + " |";
    EXPECT_NE(text.find(row), std::string::npos) << row;
  }
}

}  // namespace
}  // namespace forecourse::lesson
