#include "forecourse/report/lesson/questions/questions_report.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <set>

#include "forecourse/lesson/ground.h"
#include "support/stations.h"

namespace forecourse::report {
namespace {

using lesson::Amount;
using lesson::Option;
using lesson::Quantity;
using lesson::Question;

/// An order of three, which stands by the alphabet on paper.
Question an_order() {
  Question out;
  out.question = "order-course";
  out.form = lesson::Form::order;
  out.page = "swivel";
  out.asks = {"In which order?", {}};
  for (const char* words : {"pump", "line", "nozzle"}) out.options.push_back({{words, {}}, true, {}});
  out.explains = {"The course.", {}};
  return out;
}

Question a_choice() {
  Question out;
  out.question = "room-for-load";
  out.page = "drop";
  out.asks = {"{} are in T1. How much fits in?", {{3.785411784, Quantity::volume}}};
  out.options = {{{"{}", {{7.570823568, Quantity::volume}}}, false, "All of it."},
                 {{"{}", {{1.892705892, Quantity::volume}}}, true, {}}};
  out.answer = Amount{1.892705892, Quantity::volume};
  out.tolerance = 0.05;
  out.explains = {"Half.", {}};
  out.follows = {"By half: {} / 2 = {}", {{3.785411784, Quantity::volume}, {1.892705892, Quantity::volume}}};
  return out;
}

TEST(QuestionsReport, PutsValuesInTheirPlaces) {
  EXPECT_EQ(phrase_words({"{} at {}", {{3.785411784, Quantity::volume}, {0.5, Quantity::share}}}, site::Display::us,
                         Glyphs::ascii),
            "1000 gal at 50.0 %");
  EXPECT_EQ(phrase_words({"{} at rest", {{3.785411784, Quantity::volume}}}, site::Display::si, Glyphs::ascii),
            "3785 L at rest");
  EXPECT_EQ(phrase_words({"no value", {}}, site::Display::us), "no value");
}

TEST(QuestionsReport, ShowsAnOrderByTheAlphabetAndKeysIt) {
  const Question order = an_order();
  const std::vector<ShownOption> shown = shown_options(order);
  ASSERT_EQ(shown.size(), 3U);
  EXPECT_EQ(shown[0].option->words.words, "line");
  EXPECT_EQ(answer_words(order, site::Display::us, Glyphs::ascii), "C, A, B");  // pump, line, nozzle
  const lesson::AskResult asked{{}, {order}, {}};
  const Json json = questions_document(asked, "1");
  EXPECT_EQ(json["result"]["questions"][0]["order"], (Json{2, 0, 1}));
}

TEST(QuestionsReport, TellsBothSystemsOfUnits) {
  const lesson::AskResult asked{{}, {a_choice()}, {{"drop-time", "no delivery"}}};
  const Json json = questions_document(asked, "1");
  const Json& one = json["result"]["questions"][0];
  EXPECT_EQ(one["words"], "1\u00A0000\u00A0gal are in T1. How much fits in?");
  EXPECT_EQ(one["answer"]["value"], 1.892705892);
  EXPECT_EQ(one["answer"]["unit"], "m3");
  EXPECT_EQ(one["options"][1]["words"], "500\u00A0gal");
  EXPECT_EQ(one["follows"], "By half: 1\u00A0000\u00A0gal / 2 = 500\u00A0gal");
  EXPECT_EQ(one["options"][1]["right"], true);
  EXPECT_EQ(one["options"][0]["why"], "All of it.");
  EXPECT_EQ(json["result"]["left_out"][0]["reason"], "no delivery");
  EXPECT_EQ(answer_words(a_choice(), site::Display::us, Glyphs::ascii), "B: 500 gal");
}

TEST(QuestionsReport, KeepsTheKeyOffThePaper) {
  const site::Site site = test::station(test::site_text("hollin-gap"));
  const lesson::AskResult asked{{}, {a_choice(), an_order()}, {}};
  const std::string paper = questions_paper(asked, "1", site);
  EXPECT_EQ(paper.find("All of it."), std::string::npos);
  EXPECT_EQ(paper.find("Half."), std::string::npos);
  EXPECT_EQ(paper.find("not given"), std::string::npos);
  const std::string key = questions_key(asked, "1", site);
  for (const char* told : {"All of it.", "Half.", "B: 500\u00A0gal", "C, A, B", "By half: 1\u00A0000"}) {
    EXPECT_NE(key.find(told), std::string::npos) << told;
  }
}

/// Digits that nobody needs are left away, and a small share keeps those it is told by.
TEST(QuestionsReport, TellsNumbersWithTheDigitsTheyNeed) {
  const auto told = [](double value, Quantity quantity) {
    return phrase_words({"{}", {{value, quantity}}}, site::Display::us, Glyphs::ascii);
  };
  constexpr double gallon = 3.785411784e-3;  // SOURCE: [nist_sp811, appendix B] gallon 231 in3
  EXPECT_EQ(told(147000.0 * gallon, Quantity::volume), "147000 gal");
  EXPECT_EQ(told(5744.36 * gallon, Quantity::volume), "5744 gal");
  EXPECT_EQ(told(406.42 * gallon, Quantity::volume), "406.4 gal");
  EXPECT_EQ(told(130.0 * gallon, Quantity::volume), "130 gal");
  EXPECT_EQ(told(99.0 * gallon, Quantity::volume), "99.00 gal");
  EXPECT_EQ(told(0.0254 * 118.5, Quantity::bore), "118.5 in");
  EXPECT_EQ(told(0.5, Quantity::share), "50.0 %");
  EXPECT_EQ(told(0.00479, Quantity::share), "0.48 %");
  EXPECT_EQ(told(0.002, Quantity::share), "0.2 %");
}

/// On the example stations no two answers of a question look the same in either system of units.
TEST(QuestionsReport, ShowsNoTwoAnswersAlike) {
  for (const char* name : {"hollin-gap", "marle-cross", "site-s"}) {
    const site::Site site = test::station(test::site_text(name));
    const checks::Studied studied = checks::study_for_checks(site, nullptr);
    const checks::CheckResult none;
    lesson::AskOptions options;
    options.count = 100;
    for (const Question& one : lesson::ask({site, studied, none}, options).questions) {
      for (const site::Display display : {site::Display::us, site::Display::si}) {
        std::set<std::string> told;
        for (const Option& option : one.options) {
          EXPECT_TRUE(told.insert(phrase_words(option.words, display)).second)
              << name << " " << one.question << ": " << phrase_words(option.words, display);
        }
      }
    }
  }
}

/// The handbook's table has a row for each kind as the code has it.
TEST(QuestionsReport, IsListedInTheHandbook) {
  std::ifstream in(std::string(SITES_DIR) + "/../docs/handbook/questions.md");
  const std::string page{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
  for (const lesson::QuestionKind& kind : lesson::question_kinds()) {
    const std::string row = "| `" + std::string(kind.id) + "` | " + word(kind.form) + " | " +
                            std::to_string(kind.level) + " | `" + std::string(kind.page) + "` |";
    EXPECT_NE(page.find(row), std::string::npos) << row;
  }
  EXPECT_EQ(static_cast<std::size_t>(std::count(page.begin(), page.end(), '|')),
            6 * (lesson::question_kinds().size() + 2));
}

}  // namespace
}  // namespace forecourse::report
