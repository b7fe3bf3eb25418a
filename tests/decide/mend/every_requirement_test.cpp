// Every requirement of every built-in rule set, just outside its limit: its finding is mended by an edit, which a full
// check then meets, or says why there is none. The cases are those of tests/checks/rules/cases/.
#include <gtest/gtest.h>
#include <toml++/toml.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <sstream>

#include "decide/mend/check_text.h"
#include "forecourse/site/edit.h"

namespace forecourse::decide {
namespace {

struct Case {
  std::string set;
  std::string requirement;
  std::string subject;
  std::string text;
  site::Date on_day;
};

std::string file_text(const std::filesystem::path& path) {
  const std::ifstream in(path);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

/// The station of a case with its value just outside the limit, under the rule set of the case alone.
std::string outside(const std::string& set, const toml::table& one) {
  std::string text = "format = 1\n[site]\nname = \"Case (invented)\"\nrules = [\"" + set + "\"]\n" +
                     one["site"].value_or(std::string());
  const std::string value = one["outside"].value_or(std::string());
  for (std::size_t at = text.find('@'); at != std::string::npos; at = text.find('@')) text.replace(at, 1, value);
  return text;
}

/// Those that records do not decide.
std::vector<Case> all_cases() {
  std::vector<Case> out;
  for (const auto& entry : std::filesystem::directory_iterator(std::string(TEST_SOURCE_DIR) + "/checks/rules/cases")) {
    const toml::table table = toml::parse(file_text(entry.path()));
    for (const toml::node& node : *table["case"].as_array()) {
      const toml::table& one = *node.as_table();
      if (one["records"].is_table()) continue;
      const auto day = one["today"].value<toml::date>();
      const std::string set = entry.path().stem().string();
      out.push_back({set, one["requirement"].value_or(std::string()), one["subject"].value_or(std::string()),
                     outside(set, one),
                     day ? site::Date{day->year, day->month, day->day, {}} : site::Date{2026, 11, 30, {}}});
    }
  }
  std::sort(out.begin(), out.end(), [](const Case& a, const Case& b) {
    return std::tie(a.set, a.requirement) < std::tie(b.set, b.requirement);
  });
  return out;
}

void PrintTo(const Case& one, std::ostream* out) { *out << one.set << " " << one.requirement; }

/// By a check of everything.
checks::FindingState state_of(const std::string& text, const site::Date& day, const MendSubject& of) {
  int number = 0;
  for (const checks::FindingSet& set : check_text({text, day}, text).sets) {
    for (const checks::Finding& one : set.findings) {
      const bool is_it = set.id == of.set && set.of_study == of.of_study && one.rule == of.rule &&
                         one.subject == of.subject && number++ == of.number;
      if (is_it) return one.state;
    }
  }
  ADD_FAILURE() << "no finding " << of.rule << " at " << of.subject;
  return checks::FindingState::does_not_apply;
}

std::string name_of(const testing::TestParamInfo<Case>& info) {
  std::string name = info.param.set + "_" + info.param.requirement + "_" + std::to_string(info.index);
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
}

class EveryRequirement : public testing::TestWithParam<Case> {};

TEST_P(EveryRequirement, IsMendedByAnEditOrSaysWhyNot) {
  const Case& one = GetParam();
  const MendResult result = mend_station({one.text, one.on_day}, {});
  for (const Mend& mend : result.mends) {
    if (mend.of.of_study) continue;
    SCOPED_TRACE(mend.of.rule + " at " + mend.of.subject);
    EXPECT_NE(mend.edits.empty(), mend.reason.empty()) << mend.reason;
    EXPECT_FALSE(mend.words.empty());
    if (mend.edits.empty()) {
      RecordProperty(mend.of.rule, std::string(word(mend.way)) + ": " + mend.reason);
      continue;
    }
    EXPECT_EQ(mend.after, checks::FindingState::meets);
    EXPECT_TRUE(mend.way == MendWay::change || mend.way == MendWay::work);
    const MendEdit& edit = mend.edits.front();
    const Parsed<std::string> mended = site::set_value(one.text, edit.path, edit.after);
    ASSERT_TRUE(mended.ok());
    EXPECT_EQ(state_of(mended.value, one.on_day, mend.of), checks::FindingState::meets);
    for (const MendTry& tried : mend.tried) {
      if (tried.edit.path != edit.path || !tried.step_less) continue;
      const Parsed<std::string> short_of = site::set_value(one.text, edit.path, *tried.step_less);
      EXPECT_NE(state_of(short_of.value, one.on_day, mend.of), checks::FindingState::meets) << *tried.step_less;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(All, EveryRequirement, testing::ValuesIn(all_cases()), name_of);

/// Requirements that no lever and no other way is known for.
TEST(EveryRequirementTold, OnlyTheseHaveNoWay) {
  std::set<std::string> none;
  for (const Case& one : all_cases()) {
    for (const Mend& mend : mend_station({one.text, one.on_day}, {}).mends) {
      if (!mend.of.of_study && mend.way == MendWay::none) none.insert(mend.of.set + " " + mend.of.rule);
    }
  }
  EXPECT_EQ(none, (std::set<std::string>{"us-accessibility product-in-reach", "us-federal protected-tank-age",
                                         "us-federal protected-tank-second-test"}));
}

}  // namespace
}  // namespace forecourse::decide
