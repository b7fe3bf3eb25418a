// Rule sets that a user wrote: what is wrong in them is told with its place, and the example in sites/rules judges.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <sstream>

#include "forecourse/checks/rules/check_rules.h"
#include "forecourse/site/read.h"
#include "forecourse/site/rules/read_rule_set.h"
#include "site/place_text.h"

namespace forecourse::checks {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

std::string file_text(const std::string& name) {
  const std::ifstream in(std::string(TEST_SOURCE_DIR) + "/../sites/" + name);
  std::ostringstream out;
  out << in.rdbuf();
  EXPECT_FALSE(out.str().empty()) << name;
  return out.str();
}

/// All that is told of a rule set, one line each.
std::vector<std::string> told_of(const std::string& text) {
  const Parsed<site::RuleSet> read = site::read_rule_set(text);
  std::vector<std::string> lines;
  for (const Diagnostic& d : read.diagnostics) lines.push_back(site::told(text, d));
  for (const Diagnostic& d : bind(read.value).diagnostics) lines.push_back(site::told(text, d));
  return lines;
}

/// A set of one requirement.
std::string rules(const std::string& requirement) {
  return "format = 1\nid = \"owner\"\n[[requirement]]\nid = \"one\"\nwords = \"as wished\"\n" + requirement;
}

TEST(OwnRules, ASetInOrderIsPassedWithoutAWord) {
  EXPECT_THAT(told_of(rules("figure = \"hose-flow-all-open\"\nat_least = \"8 gpm\"\n")), IsEmpty());
  EXPECT_THAT(told_of(file_text("rules/owner.toml")), IsEmpty());
}

TEST(OwnRules, AFigureThatDoesNotExist) {
  EXPECT_THAT(told_of(rules("figure = \"hose-flow-all-opne\"\nat_least = \"8 gpm\"\n")),
              ElementsAre("6:10: error: there is no figure 'hose-flow-all-opne' | did you mean 'hose-flow-all-open'?"));
  EXPECT_THAT(told_of(rules("figure = \"weather\"\nis = true\n")),
              ElementsAre("6:10: error: there is no figure 'weather' | `forecourse checks --figures` lists them"));
}

TEST(OwnRules, ALimitOfAWrongKind) {
  EXPECT_THAT(
      told_of(rules("figure = \"hose-flow-all-open\"\nat_least = \"8 psi\"\n")),
      ElementsAre("7:12: error: at_least is a flow, but 'psi' is a pressure | write \"10 gpm\" or \"38 L/min\""));
  EXPECT_THAT(told_of(rules("figure = \"hose-flow-all-open\"\nat_least = \"8\"\n")),
              ElementsAre("7:12: error: at_least is a flow; '8' has no unit | write \"10 gpm\" or \"38 L/min\""));
  EXPECT_THAT(told_of(rules("figure = \"stop-leaves-running\"\nat_most = \"2 gpm\"\n")),
              ElementsAre("7:11: error: at_most is \"2 gpm\", but 'stop-leaves-running' is a count | write a number "
                          "without a unit: \"2\""));
  EXPECT_THAT(told_of(rules("figure = \"hose-flow-all-open\"\nat_least = 8\n")),
              ElementsAre("7:12: error: at_least is a text, but 8 is a number | write it in double quotes"));
}

TEST(OwnRules, AMostBelowTheLeast) {
  EXPECT_THAT(told_of(rules("figure = \"hose-flow-alone\"\nat_least = \"12 gpm\"\nat_most = \"9 gpm\"\n")),
              ElementsAre("8:11: error: at_most is below at_least"));
}

TEST(OwnRules, ALimitThatIsAskedTwice) {
  EXPECT_THAT(told_of(rules("figure = \"hose-flow-alone\"\nat_most = \"12 gpm\"\nbelow = \"12 gpm\"\n")),
              ElementsAre("8:9: error: at_most and below are both given | below is the stricter: its limit itself does "
                          "not meet"));
}

/// A figure that is told in the test itself.
template <int number>
FigureAt& told_at() {
  static FigureAt at;
  return at;
}
template <int number>
Figure told_figure() {
  return {"told", "the figure told", FigureKind::amount, nullptr, "", Measured::fuel, [](const Facts&) {
            return std::vector<FigureAt>{told_at<number>()};
          }};
}

/// The state of a requirement that is met, under the condition that another figure lies above 10.
FindingState state_above_10(const FigureAt& other) {
  const Figure judged = told_figure<1>();
  const Figure decides = told_figure<2>();
  told_at<1>().subject = told_at<2>().subject = "station";
  told_at<1>().value = 1.0;
  told_at<2>().value = other.value;
  told_at<2>().deviation = other.deviation;
  told_at<2>().rests_on = other.rests_on;
  const site::Requirement entered{};
  const site::RuleSet set{};
  BoundRequirement rule;
  rule.entered = &entered;
  rule.set = &set;
  rule.figure = &judged;
  rule.at_least = 0.0;
  rule.when.push_back({&decides, {}, 10.0, {}, {}, {}});
  const site::Site site{};
  return check_rules({site, {2026, 11, 30, {}}}, {&rule, 1}).front().state;
}

/// What a finding may not rest on, a condition may not either.
TEST(OwnRules, AConditionOnWhatIsNotCertainLeavesItOpen) {
  FigureAt other;
  other.value = 9.0;
  EXPECT_EQ(state_above_10(other), FindingState::does_not_apply);
  other.rests_on = "a default that is illustrative";
  EXPECT_EQ(state_above_10(other), FindingState::not_determined);
  other.rests_on.clear();
  other.deviation = 0.5;
  EXPECT_EQ(state_above_10(other), FindingState::does_not_apply);
  other.deviation = 1.5;
  EXPECT_EQ(state_above_10(other), FindingState::not_determined);
  other.value = 12.0;
  EXPECT_EQ(state_above_10(other), FindingState::meets);
}

TEST(OwnRules, AKeyThatDoesNotFitTheFigure) {
  EXPECT_THAT(told_of(rules("figure = \"hose-flow-alone\"\nevery = \"3 years\"\n")),
              ElementsAre("7:9: error: every does not fit 'hose-flow-alone', which is an amount | write at_least or "
                          "at_most with a unit"));
  EXPECT_THAT(
      told_of(rules("figure = \"hose-flow-alone\"\nis = true\n")),
      ElementsAre(
          "3:1: error: is does not fit 'hose-flow-alone', which is an amount | write at_least or at_most with a unit"));
  EXPECT_THAT(told_of(rules("figure = \"breakaway-fitted\"\nat_least = \"8 gpm\"\n")),
              ElementsAre("7:12: error: at_least does not fit 'breakaway-fitted', which is a fact | write is = true"));
  EXPECT_THAT(
      told_of(rules("figure = \"emergency-stop-tested\"\nis = true\n")),
      ElementsAre("3:1: error: is does not fit 'emergency-stop-tested', which is a day | write every = \"3 years\""));
  EXPECT_THAT(told_of(rules("figure = \"emergency-stop-tested\"\n")),
              ElementsAre("3:1: error: the requirement 'one' is on 'emergency-stop-tested', which is a day | write "
                          "every = \"3 years\""));
  EXPECT_THAT(
      told_of(rules("figure = \"emergency-stop-tested\"\nevery = \"now and then\"\n")),
      ElementsAre("7:9: error: every is \"now and then\" | write a number of years, months or days: \"3 years\""));
}

TEST(OwnRules, AConditionThatDoesNotFitItsFigure) {
  EXPECT_THAT(
      told_of(rules("figure = \"breakaway-fitted\"\nis = true\nwhen = [{ figure = \"hose-length\", is = true }]\n")),
      ElementsAre("8:9: error: the condition is on 'hose-length', which is an amount | a fact has is, an amount above "
                  "or up_to, a day after or by"));
  EXPECT_THAT(
      told_of(rules("figure = \"breakaway-fitted\"\nis = true\nwhen = [{ figure = \"hose-lenth\", above = \"1 ft\" "
                    "}]\n")),
      ElementsAre("8:20: error: there is no figure 'hose-lenth' | did you mean 'hose-length'?"));
}

TEST(OwnRules, ALimitOfAConditionOfAWrongKind) {
  const auto when = [](const std::string& condition) {
    return told_of(rules("figure = \"breakaway-fitted\"\nis = true\nwhen = [{ " + condition + " }]\n"));
  };
  EXPECT_THAT(when("figure = \"hose-length\", above = \"3 kg\""),
              ElementsAre("8:43: error: above is a length, but 'kg' is a mass | write \"2.00 in\" or \"52 mm\""));
  EXPECT_THAT(when("figure = \"tank-installed\", after = \"2016-04-11\""),
              testing::Contains("8:46: error: after is a date, but \"2016-04-11\" is a text | write it without quotes, "
                                "as 2026-03-12"));
}

TEST(OwnRules, AWordThatIsNone) {
  EXPECT_THAT(told_of(rules("figure = \"breakaway-fitted\"\nis = true\nseen = \"guess\"\n")),
              ElementsAre("8:8: error: seen cannot be \"guess\" | it is one of: text, older-text, told, memory"));
}

TEST(OwnRules, AFileThatAsksForNothing) {
  EXPECT_THAT(told_of(""), ElementsAre("1:1: error: the file holds no rule set | begin with format = 1, then id, title "
                                       "and [[requirement]]"));
  EXPECT_THAT(
      told_of("format = 1\nid = \"owner\"\n"),
      ElementsAre("1:1: error: the rule set asks for nothing | add a [[requirement]] with id, words and figure"));
}

TEST(OwnRules, TwoOfOneIdAndWhatIsMissing) {
  EXPECT_THAT(
      told_of(rules("figure = \"breakaway-fitted\"\nis = true\n[[requirement]]\nid = \"one\"\nwords = \"again\"\n"
                    "figure = \"breakaway-fitted\"\nis = false\n")),
      ElementsAre("9:6: error: there are two requirements 'one'"));
  EXPECT_THAT(told_of("format = 1\n[[requirement]]\nid = \"one\"\n"),
              ElementsAre("1:1: error: rule set has no 'id' | add id = ...",
                          "2:1: error: the requirement has no words | write what it asks in a sentence",
                          "2:1: error: the requirement has no figure | write figure = \"hose-length\", or another that "
                          "`forecourse checks --figures` lists"));
  EXPECT_THAT(
      told_of(rules("figure = \"breakaway-fitted\"\nis = true\nlimit = \"3\"\n")),
      ElementsAre(
          "8:1: error: 'limit' is not a key of requirement 'one' | its keys are: id, words, clause, "
          "edition, seen, figure, at_least, at_most, above, below, is, every, when, change, route, who, sheet"));
}

TEST(OwnRules, ASetThatASiteNamesAndThatDoesNotExist) {
  const std::string text = "format = 1\n[site]\nname = \"x\"\nrules = [\"us-fire-code\", \"us-fire-cod\", \"owner\"]\n";
  const site::Site site = site::read_site(text).value;
  std::vector<std::string> lines;
  for (const Diagnostic& d : check_rule_names(site)) lines.push_back(site::told(text, d));
  ASSERT_EQ(lines.size(), 2U);
  EXPECT_EQ(lines[0], "4:26: error: there is no rule set 'us-fire-cod' | did you mean 'us-fire-code'?");
  EXPECT_TRUE(lines[1].starts_with("4:41: error: there is no rule set 'owner' | there are: ")) << lines[1];
  const Parsed<site::RuleSet> own = site::read_rule_set(file_text("rules/owner.toml"));
  EXPECT_EQ(check_rule_names(site, {&own.value, 1}).size(), 1U);
}

FindingState state(const std::vector<Finding>& found, const std::string& rule, const std::string& subject) {
  const auto one = std::find_if(found.begin(), found.end(),
                                [&](const Finding& f) { return f.rule == rule && f.subject == subject; });
  if (one != found.end()) return one->state;
  ADD_FAILURE() << "no finding " << rule << " " << subject;
  return FindingState::does_not_apply;
}

/// The example holds Hollin Gap against every kind of requirement.
TEST(OwnRules, TheExampleJudgesAStation) {
  const site::Site site = site::read_site(file_text("hollin-gap.toml")).value;
  const studies::FlowResult flow = studies::study_flow(site, {});
  const studies::TankResult tank = studies::study_tank(site, {});
  const studies::ContainmentResult containment = studies::study_containment(site, {});
  Facts facts{site, {2026, 11, 30, {}}};
  facts.flow = &flow;
  facts.tank = &tank;
  facts.containment = &containment;
  const Parsed<site::RuleSet> own = site::read_rule_set(file_text("rules/owner.toml"));
  const auto bound = bind(own.value);
  const std::vector<Finding> found = check_rules(facts, bound.value);
  for (const Finding& f : found) {
    EXPECT_TRUE(f.clause.empty());
    EXPECT_FALSE(f.clause_verified);
  }
  EXPECT_EQ(state(found, "flow-alone", "D1.regular-a"), FindingState::meets);  // its limiter holds 10 gpm
  EXPECT_EQ(state(found, "flow-alone", "D4.diesel-a"), FindingState::falls_short);
  EXPECT_EQ(state(found, "flow-together", "D4.diesel-a"), FindingState::meets);
  EXPECT_EQ(state(found, "flow-together", "D4.premium-b"), FindingState::falls_short);
  EXPECT_EQ(state(found, "pump-rise", "P1"), FindingState::meets);
  EXPECT_EQ(state(found, "sump-brim", "D1"), FindingState::meets);
  EXPECT_EQ(state(found, "room-of-a-tank", "T3"), FindingState::meets);
  EXPECT_EQ(state(found, "emergency-stop-half-yearly", "E1"), FindingState::falls_short);
  EXPECT_EQ(state(found, "retaining-breakaway", "D4.regular-b"), FindingState::meets);
  EXPECT_EQ(state(found, "retaining-breakaway", "D1.regular-a"), FindingState::not_determined);
}

/// Figures of studies are those of the studies, and without them nothing is determined.
TEST(OwnRules, FiguresOfStudiesAreNotDeterminedWithoutThem) {
  const site::Site site = site::read_site(file_text("hollin-gap.toml")).value;
  const Facts facts{site, {2026, 11, 30, {}}};
  const Parsed<site::RuleSet> own = site::read_rule_set(file_text("rules/owner.toml"));
  const auto bound = bind(own.value);
  for (const Finding& f : check_rules(facts, bound.value)) {
    if (f.rule == "flow-alone" || f.rule == "flow-together" || f.rule == "pump-rise") {
      EXPECT_EQ(f.state, FindingState::not_determined) << f.rule << " " << f.subject;
      EXPECT_FALSE(f.change.empty());
    }
  }
}

}  // namespace
}  // namespace forecourse::checks
