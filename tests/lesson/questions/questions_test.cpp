#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "forecourse/lesson/questions/ask.h"
#include "lesson/questions/evaluators.h"
#include "lesson/questions/ground_of.h"
#include "lesson/questions/law_line.h"
#include "support/random_station.h"
#include "support/stations.h"

namespace forecourse::test {
namespace {

using lesson::Form;
using lesson::Question;
using lesson::QuestionKind;

std::string near(double found, double expected, double tolerance) {
  if (std::abs(found - expected) <= tolerance * std::abs(expected)) return {};
  return "keyed " + std::to_string(found) + ", found another way " + std::to_string(expected) + " [SI, x " +
         std::to_string(found / expected) + "]";
}

/// No two options say the same; of a choice one is right, and a wrong one says why somebody may take it.
std::string faults_of_options(const Question& question) {
  std::set<std::string> told;
  for (const lesson::Option& option : question.options) {
    std::string words = option.words.words;
    for (const lesson::Amount& amount : option.words.values) words += " " + std::to_string(amount.value * 1e9);
    if (!told.insert(words).second) return "an option stands twice: " + words;
    if (!option.right && option.why.empty()) return "a wrong option does not say why";
  }
  const auto right =
      std::count_if(question.options.begin(), question.options.end(), [](const auto& one) { return one.right; });
  switch (question.form) {
    case Form::choice:
    case Form::fault:
      if (right != 1) return "not one option is right";
      return question.options.size() < 3 ? "fewer than three options" : "";
    case Form::order:
      return question.options.size() < 3 ? "fewer than three items" : "";
    case Form::estimate:
      return question.options.empty() && question.answer ? "" : "an estimate has options, or no answer";
  }
  return {};
}

/// Every "{}" has its value, and none is left over.
std::string faults_of(const lesson::Phrase& phrase) {
  std::size_t places = 0;
  for (std::size_t at = phrase.words.find("{}"); at != std::string::npos; at = phrase.words.find("{}", at + 2))
    ++places;
  if (places != phrase.values.size()) return "places and values differ: " + phrase.words;
  for (const lesson::Amount& one : phrase.values) {
    if (!std::isfinite(one.value)) return "a value is no number: " + phrase.words;
  }
  return {};
}

std::string faults_of_words(const Question& question) {
  std::vector<const lesson::Phrase*> all{&question.asks, &question.explains, &question.follows};
  for (const lesson::Option& option : question.options) all.push_back(&option.words);
  for (const lesson::Phrase* phrase : all) {
    if (std::string fault = faults_of(*phrase); !fault.empty()) return fault;
  }
  return question.asks.words.empty() ? "nothing is asked" : "";
}

/// Wrong answers lie beyond the tolerance of the answer that was found the other way.
std::string faults_of_wrong(const Question& question, double expected, double tolerance) {
  for (const lesson::Option& option : question.options) {
    if (option.right) continue;
    const double apart = std::abs(option.words.values.front().value - expected);
    if (apart <= (question.tolerance - tolerance) * std::abs(expected)) return "a wrong answer is right: " + option.why;
  }
  return {};
}

std::string faults_of_order(const Case& c, const Evaluator& evaluator, bool& held) {
  double last = -1e300;
  for (const lesson::Option& item : c.question.options) {
    const double key = evaluator.key(c, item.words);
    if (std::isnan(key)) return {};
    if (!(key > last))
      return "'" + item.words.words + "' comes too late: " + std::to_string(key) + " after " + std::to_string(last);
    last = key;
  }
  held = true;
  return {};
}

/// What is wrong with a question; empty if nothing is. `held`: the other way could be gone.
std::string faults(const Case& c, bool& held) {
  for (const std::string& fault :
       {faults_of_options(c.question), faults_of_words(c.question), faults_of_law(c.question)}) {
    if (!fault.empty()) return fault;
  }
  const Evaluator& evaluator = evaluators().at(c.question.question);
  if (evaluator.key) return faults_of_order(c, evaluator, held);
  if (evaluator.words) {
    held = true;
    const std::string right = evaluator.words(c);
    return !right.empty() && c.keyed().rfind(right, 0) == 0 ? "" : "keyed '" + c.keyed() + "', found '" + right + "'";
  }
  const std::optional<double> expected = evaluator.value(c);
  if (!expected) return {};
  held = true;
  const std::string fault = near(c.question.answer->value, *expected, evaluator.tolerance);
  return fault.empty() ? faults_of_wrong(c.question, *expected, evaluator.tolerance) : fault;
}

struct Tally {
  int asked = 0;
  int held = 0;  ///< against an answer found another way
  int wrong = 0;
  std::string first;  ///< of what is wrong
  std::map<std::string, int> reasons;
};

void ask_all(std::uint64_t seed, std::map<std::string, Tally>& tallies) {
  const StudiedStation station(random_station(seed));
  const lesson::Ground ground = station.ground();
  std::map<std::string, OwnNetwork> networks;
  for (const QuestionKind& kind : lesson::question_kinds()) {
    Tally& tally = tallies[std::string(kind.id)];
    const lesson::Asked asked = lesson::ask_kind(kind, ground, seed);
    const auto* question = std::get_if<Question>(&asked);
    if (question == nullptr) {
      ++tally.reasons[std::get<lesson::LeftOut>(asked).reason];
      continue;
    }
    ++tally.asked;
    bool held = false;
    std::string fault;
    try {
      fault = faults({station.site(), ground, *question, networks}, held);
    } catch (const std::exception& error) {
      fault = error.what();
    }
    tally.held += held ? 1 : 0;
    if (fault.empty()) continue;
    if (tally.wrong++ == 0)
      tally.first =
          "station " + std::to_string(seed) + ", " + question->at + ": " + fault + "\n  " + question->asks.words;
  }
}

/// \param least times that each kind must be asked, and held against another way
void expect_right(std::uint64_t first, std::uint64_t stations, int least) {
  std::map<std::string, Tally> tallies;
  for (std::uint64_t seed = first; seed < first + stations; ++seed) ask_all(seed, tallies);
  for (const auto& [kind, tally] : tallies) {
    EXPECT_EQ(tally.wrong, 0) << kind << " (" << tally.wrong << " of " << tally.asked << "): " << tally.first;
    const std::string reason = tally.reasons.empty() ? "" : tally.reasons.begin()->first;
    EXPECT_GE(tally.asked, least) << kind << ": " << reason;
    EXPECT_GE(tally.held, least) << kind << " was not held against another way";
  }
}

TEST(Questions, KeyedAnswersAreRightOnSomeStations) { expect_right(0, 12, 0); }

/// Each kind on a thousand stations, a hundred at a time: the keyed answer is what another way finds, and no wrong
/// answer is within its tolerance.
class FullQuestions : public testing::TestWithParam<int> {};

TEST_P(FullQuestions, KeyedAnswersAreRightOnAHundredStations) {
  expect_right(100 * static_cast<std::uint64_t>(GetParam()), 100, 5);
}

INSTANTIATE_TEST_SUITE_P(OfAThousand, FullQuestions, testing::Range(0, 10));

/// A line of law that does not come out is found.
TEST(LawLine, IsWorkedOut) {
  const auto fault = [](const std::string& words, std::vector<lesson::Amount> values) {
    Question question;
    question.follows = {words, std::move(values)};
    return faults_of_law(question);
  };
  const lesson::Amount two{2.0, lesson::Quantity::count};
  const lesson::Amount three{3.0, lesson::Quantity::count};
  EXPECT_EQ(fault("By six: {} × {} = 6 = 2 × (1 + √(4)) = 48 / 2 ^ 3", {two, three}), "");
  EXPECT_EQ(fault("By angles: cos(0) + ln(1) = 1 − sin(0)", {}), "");
  EXPECT_NE(fault("By six: {} × {} = 6.01", {two, three}), "");
  EXPECT_NE(fault("By two: {} = 2", {two, three}), "");
  EXPECT_NE(fault("{} = {}", {two, two}), "");
}

TEST(Questions, EveryKindIsHeldAgainstAnotherWay) {
  for (const QuestionKind& kind : lesson::question_kinds()) {
    ASSERT_TRUE(evaluators().count(std::string(kind.id)) != 0) << kind.id;
    EXPECT_FALSE(evaluators().at(std::string(kind.id)).independent.empty()) << kind.id;
  }
  EXPECT_EQ(evaluators().size(), lesson::question_kinds().size());
}

TEST(Questions, ThereAreEnoughOfEveryFormLevelAndPage) {
  std::set<std::string_view> ids;
  std::map<Form, int> forms;
  std::map<int, int> levels;
  std::set<std::string_view> pages;
  for (const QuestionKind& kind : lesson::question_kinds()) {
    EXPECT_TRUE(ids.insert(kind.id).second) << kind.id;
    ++forms[kind.form];
    ++levels[kind.level];
    pages.insert(kind.page);
  }
  EXPECT_GE(ids.size(), 48U);
  for (const Form form : {Form::choice, Form::estimate, Form::order, Form::fault})
    EXPECT_GE(forms[form], 4) << word(form);
  for (const int level : {1, 2, 3}) EXPECT_GE(levels[level], 8) << level;
  for (const char* page :
       {"drop",         "fill",         "overfill-valve", "tank-walls",  "tank-water",     "tank-breathing",
        "pump",         "tank-sump",    "leak-detector",  "double-wall", "line",           "sump",
        "shear-groove", "shear-anchor", "shear-poppets",  "shear-crack", "shear-link",     "filter",
        "meter",        "price",        "whip-hose",      "breakaway",   "curb-hose",      "swivel",
        "nozzle",       "vehicle",      "vapor-return",   "vent",        "emergency-stop", "interlocks"}) {
    EXPECT_TRUE(pages.count(page) != 0) << page;
  }
}

std::string fingerprint(const lesson::AskResult& result) {
  std::string out;
  for (const Question& one : result.questions) {
    out += one.question + "/" + one.at + "/" + one.asks.words;
    for (const lesson::Option& option : one.options) {
      out += "/" + option.words.words;
      for (const lesson::Amount& amount : option.words.values) out += std::to_string(amount.value * 1e6);
    }
  }
  return out;
}

TEST(Questions, EqualSeedsGiveEqualQuestions) {
  const StudiedStation station(site_text("hollin-gap"));
  lesson::AskOptions options;
  options.count = 12;
  options.seed = 5;
  const lesson::AskResult first = ask(station.ground(), options);
  EXPECT_EQ(first.questions.size(), 12U);
  EXPECT_EQ(fingerprint(first), fingerprint(ask(station.ground(), options)));
  options.seed = 6;
  EXPECT_NE(fingerprint(first), fingerprint(ask(station.ground(), options)));
}

TEST(Questions, AreOfTheLevelAndPageAsked) {
  const StudiedStation station(site_text("hollin-gap"));
  lesson::AskOptions options;
  options.level = 1;
  options.count = 6;
  for (const Question& one : ask(station.ground(), options).questions) EXPECT_EQ(one.level, 1) << one.question;
  options.level = 0;
  options.page = "nozzle";
  for (const Question& one : ask(station.ground(), options).questions) EXPECT_EQ(one.page, "nozzle") << one.question;
  options.page.clear();
  options.kinds = {"monthly-limit"};
  ASSERT_EQ(ask(station.ground(), options).questions.size(), 1U);
}

TEST(Questions, SayWhatIsWrongWithTheirOptions) {
  lesson::AskOptions options;
  options.level = 4;
  options.kinds = {"monthly-limits"};
  options.page = "nozle";
  const std::vector<Diagnostic> found = check_options(options);
  ASSERT_EQ(found.size(), 3U);
  EXPECT_EQ(found[0].message, "there is no level 4");
  EXPECT_EQ(found[1].message, "there is no question 'monthly-limits'");
  EXPECT_EQ(found[1].hint, "did you mean 'monthly-limit'?");
  EXPECT_EQ(found[2].message, "there is no page 'nozle'");
  EXPECT_EQ(found[2].hint, "did you mean 'nozzle'?");
}

/// A single hose: what compares hoses is trivial, and says so.
TEST(Questions, AreLeftOutWhereTheStationMakesThemTrivial) {
  std::string text = R"toml(format = 1
[site]
name = "One hose (invented)"
[[product]]
id = "regular"
kind = "gasoline-e10"
density = "738 kg/m3"
viscosity = "0.52 mPa.s"
[[tank]]
id = "T1"
product = "regular"
bottom_elevation = "-14 ft"
reading = { depth = "50 in" }
[[pump]]
id = "P1"
tank = "T1"
curve = { shutoff = "30 psi", per_flow_squared = "0.002 psi/gpm^2" }
check_valve = true
[[line]]
id = "trunk"
from = "P1"
to = "D1.regular"
length = "100 ft"
bore = "2 in"
[[dispenser]]
id = "D1"
  [[dispenser.inlet]]
  product = "regular"
  [[dispenser.hose]]
  id = "D1.a"
  product = "regular"
  outlet_elevation = "3 ft"
  loss = "0.17 psi/gpm^2"
)toml";
  const StudiedStation station(text);
  const auto reason = [&](const char* kind) {
    const lesson::Asked asked = ask_kind(*lesson::find_question(kind), station.ground(), 1);
    const auto* out = std::get_if<lesson::LeftOut>(&asked);
    return out != nullptr ? out->reason : "asked";
  };
  EXPECT_EQ(reason("flow-all-open"), "fewer than two hoses of a product flow at this station");
  EXPECT_EQ(reason("order-hoses"), "fewer than three hoses of a product flow at this station");
  EXPECT_EQ(reason("monthly-limit"), "what is sold in a month is not entered: enter operations.throughput");
  EXPECT_EQ(reason("room-for-load"), "no tank has both its shape and a reading: enter shape and reading");
  EXPECT_EQ(reason("hose-flow-alone"), "asked");
}

TEST(RandomStation, ReadsWithoutError) {
  for (std::uint64_t seed = 0; seed < 200; ++seed) station(random_station(seed));
  EXPECT_NE(random_station(1), random_station(2));
  EXPECT_EQ(random_station(3), random_station(3));
}

}  // namespace
}  // namespace forecourse::test
