// Every requirement of every built-in rule set, just inside its limit, on it, just outside, and with its input missing.
// The cases stand in tests/checks/rules/cases/, one file a set. Limits are those of the clause that the requirement
// names.
#include <gtest/gtest.h>
#include <toml++/toml.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <functional>
#include <map>
#include <sstream>

#include "forecourse/checks/rules/check_rules.h"
#include "forecourse/site/read.h"
#include "forecourse/site/rules/read_rule_set.h"
#include "forecourse/store/read_records.h"

namespace forecourse::checks {
namespace {

constexpr site::Date today{2026, 11, 30, {}};

struct Case {
  std::string set;
  std::string requirement;
  std::string site;
  std::string missing;  ///< the station without the input; empty: the site without its lines that hold '@'
  std::string subject;  ///< empty: the only finding, or the first
  std::string inside, on, outside;
  std::string never_missing;         ///< why the input cannot be missing; empty: it can
  std::vector<std::string> without;  ///< parts of lines without which the part that it is on does not exist
  bool studied = false;
  site::Date on_day = today;                   ///< by which it is judged
  std::map<std::string, std::string> records;  ///< texts by their kind, with '@' as in the site
};

std::string file_text(const std::filesystem::path& path) {
  const std::ifstream in(path);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

site::Date day_of(const toml::table& one) {
  const auto day = one["today"].value<toml::date>();
  return day ? site::Date{day->year, day->month, day->day, {}} : today;
}

std::map<std::string, std::string> records_of(const toml::table& one) {
  std::map<std::string, std::string> out;
  if (const toml::table* records = one["records"].as_table()) {
    for (const auto& [kind, text] : *records) out[std::string(kind.str())] = text.value_or(std::string());
  }
  return out;
}

std::vector<std::string> texts_of(const toml::table& one, const char* key) {
  std::vector<std::string> out;
  if (const toml::array* all = one[key].as_array()) {
    for (const toml::node& node : *all) out.push_back(node.value_or(std::string()));
  }
  return out;
}

std::vector<Case> all_cases() {
  std::vector<Case> out;
  for (const auto& entry : std::filesystem::directory_iterator(std::string(TEST_SOURCE_DIR) + "/checks/rules/cases")) {
    const toml::table table = toml::parse(file_text(entry.path()));
    for (const toml::node& node : *table["case"].as_array()) {
      const toml::table& one = *node.as_table();
      const auto text = [&](const char* key) { return one[key].value_or(std::string()); };
      out.push_back({entry.path().stem().string(), text("requirement"), text("site"), text("missing"), text("subject"),
                     text("inside"), text("on"), text("outside"), text("never_missing"), texts_of(one, "without"),
                     one["studied"].value_or(false), day_of(one), records_of(one)});
    }
  }
  std::sort(out.begin(), out.end(), [](const Case& a, const Case& b) {
    return std::tie(a.set, a.requirement) < std::tie(b.set, b.requirement);
  });
  return out;
}

void PrintTo(const Case& one, std::ostream* out) { *out << one.set << " " << one.requirement; }

const BoundRequirement* find(const Case& one) {
  for (const auto& rules : built_in_rules()) {
    for (const BoundRequirement& rule : rules) {
      if (rule.set->id.text == one.set && rule.entered->id.text == one.requirement) return &rule;
    }
  }
  return nullptr;
}

std::string with_value(std::string site, const std::string& value) {
  for (std::size_t at = site.find('@'); at != std::string::npos; at = site.find('@')) site.replace(at, 1, value);
  return site;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> out;
  for (std::string line; std::getline(in, line);) out.push_back(line);
  return out;
}

std::string without_value(const std::string& site) {
  std::string out;
  for (const std::string& line : lines_of(site)) {
    if (line.find('@') == std::string::npos) out += line + "\n";
  }
  return out;
}

/// The site, and the first fault of its text; empty: none.
struct ReadCase {
  site::Site site;
  std::string fault;
};

ReadCase read(const std::string& text) {
  auto read = site::read_site("format = 1\n[site]\nname = \"Case (invented)\"\n" + text);
  ReadCase out{std::move(read.value), {}};
  for (const Diagnostic& d : read.diagnostics) {
    const bool of_piping = d.message.starts_with("no line goes");
    if (d.severity == Severity::error && !of_piping && out.fault.empty()) out.fault = d.message;
  }
  return out;
}

site::records::Records read_records(const Case& one, const std::function<std::string(const std::string&)>& filled) {
  Parsed<site::records::Records> out;
  for (const auto& [kind, text] : one.records) {
    store::read_records_text(*store::find_kind(kind), {SourceText{kind, filled(text)}}, out);
  }
  for (const Diagnostic& d : out.diagnostics) ADD_FAILURE() << d.message;
  return std::move(out.value);
}

std::vector<Finding> findings(const Case& one, const site::Site& site, const site::records::Records& records) {
  Facts facts{site, one.on_day};
  if (!one.records.empty()) facts.records = &records;
  std::optional<studies::TankResult> tank;
  std::optional<studies::VaporResult> vapor;
  std::optional<studies::FlotationResult> flotation;
  std::optional<studies::ContainmentResult> containment;
  std::optional<studies::LineTestResult> line_test;
  std::optional<studies::FlowResult> flow;
  if (one.studied) {
    facts.tank = &tank.emplace(studies::study_tank(site, {}));
    facts.vapor = &vapor.emplace(studies::study_vapor(site, {}));
    facts.flotation = &flotation.emplace(studies::study_flotation(site, {}));
    facts.containment = &containment.emplace(studies::study_containment(site, {}));
    facts.line_test = &line_test.emplace(studies::study_line_test(site, {}));
    facts.flow = &flow.emplace(studies::study_flow(site, {}));
  }
  BoundRequirement rule = *find(one);
  return check_rules(facts, {&rule, 1});
}

FindingState state(const Case& one, const std::string& text, const site::records::Records& records) {
  const ReadCase made = read(text);
  if (!made.fault.empty()) ADD_FAILURE() << made.fault << "\n" << text;
  for (const Finding& finding : findings(one, made.site, records)) {
    if (one.subject.empty() || finding.subject == one.subject) return finding.state;
  }
  ADD_FAILURE() << "no finding on " << one.requirement << " " << one.subject << "\n" << text;
  return FindingState::does_not_apply;
}

FindingState state(const Case& one, const std::string& value) {
  const auto filled = [&](const std::string& text) { return with_value(text, value); };
  return state(one, filled(one.site), read_records(one, filled));
}

FindingState missing_state(const Case& one) {
  return state(one, one.missing.empty() ? without_value(one.site) : one.missing, read_records(one, without_value));
}

bool met(FindingState state) { return state == FindingState::meets || state == FindingState::close; }

class RuleCase : public testing::TestWithParam<Case> {};

TEST_P(RuleCase, InsideOnOutsideAndMissing) {
  const Case& one = GetParam();
  const BoundRequirement* rule = find(one);
  ASSERT_NE(rule, nullptr) << "no such requirement";
  const bool in_records = std::any_of(one.records.begin(), one.records.end(),
                                      [](const auto& r) { return r.second.find('@') != std::string::npos; });
  ASSERT_TRUE(in_records || one.site.find('@') != std::string::npos) << "there is no place for the value";
  EXPECT_TRUE(met(state(one, one.inside))) << "inside " << one.inside;
  if (rule->figure->kind != FigureKind::fact) {
    ASSERT_FALSE(one.on.empty());
    const FindingState on = state(one, one.on);
    if (rule->is_above || rule->is_below) {
      EXPECT_EQ(on, FindingState::falls_short) << "on " << one.on;
    } else {
      EXPECT_TRUE(met(on)) << "on " << one.on;
    }
  }
  EXPECT_EQ(state(one, one.outside), FindingState::falls_short) << "outside " << one.outside;
  if (!one.never_missing.empty()) return;
  EXPECT_EQ(missing_state(one), FindingState::not_determined) << "missing";
}

/// Whether a case lists a line as one without which its part does not exist, or the requirement does not apply.
bool may_drop(const Case& one, const std::string& line) {
  return std::any_of(one.without.begin(), one.without.end(),
                     [&](const std::string& part) { return line.find(part) != std::string::npos; });
}

/// What is entered less can never make a requirement met that falls short, nor let it not apply.
TEST_P(RuleCase, NoLineLessMakesItMet) {
  const Case& one = GetParam();
  const auto filled = [&](const std::string& text) { return with_value(text, one.outside); };
  const site::records::Records records = read_records(one, filled);
  const ReadCase whole = read(filled(one.site));
  std::string subject;
  for (const Finding& finding : findings(one, whole.site, records)) {
    if (!one.subject.empty() && finding.subject != one.subject) continue;
    subject = finding.subject;
    break;
  }
  const std::vector<std::string> lines = lines_of(filled(one.site));
  for (std::size_t less = 0; less < lines.size(); ++less) {
    std::string text;
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (i != less) text += lines[i] + "\n";
    }
    const ReadCase made = read(text);
    const bool opens_table = lines[less].find_first_not_of(' ') == lines[less].find('[');
    if (!made.fault.empty() || may_drop(one, lines[less])) continue;
    for (const Finding& finding : findings(one, made.site, records)) {
      if (finding.subject != subject) continue;
      EXPECT_FALSE(met(finding.state)) << "it is met without the line\n" << lines[less];
      EXPECT_TRUE(opens_table || finding.state != FindingState::does_not_apply)
          << "it does not apply without the line\n"
          << lines[less] << "\n"
          << finding.reason;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Rules, RuleCase, testing::ValuesIn(all_cases()), [](const auto& one) {
  std::string name = one.param.set + "_" + one.param.requirement + "_" + std::to_string(one.index);
  std::replace_if(
      name.begin(), name.end(), [](char c) { return c == '-' || c == '.'; }, '_');
  return name;
});

/// No requirement is without a case.
TEST(Rules, EachHasACase) {
  std::map<std::string, int> cases;
  for (const Case& one : all_cases()) ++cases[one.set + " " + one.requirement];
  for (const auto& rules : built_in_rules()) {
    for (const BoundRequirement& rule : rules) {
      EXPECT_GT(cases[rule.set->id.text + " " + rule.entered->id.text], 0)
          << rule.set->id.text << " " << rule.entered->id.text;
    }
  }
}

/// A clause names itself, says how far its text was seen, and what to change.
TEST(Rules, EachNamesItsClause) {
  for (const site::RuleSet& set : site::built_in_rule_sets()) {
    for (const site::Requirement& one : set.requirements) {
      EXPECT_FALSE(one.clause.empty()) << one.id.text;
      EXPECT_TRUE(one.seen.has_value()) << one.id.text;
      EXPECT_FALSE(one.change.empty()) << one.id.text;
      EXPECT_FALSE(set.edition.empty() && one.edition.empty()) << one.id.text;
    }
  }
}

}  // namespace
}  // namespace forecourse::checks
