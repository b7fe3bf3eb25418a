// The flows of Site S with a 2-in and a 3-in trunk were computed by an independent script, not by this program.
// SOURCE: common practice, no source
#include "forecourse/decide/compare/compare.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "forecourse/site/edit.h"
#include "support/stations.h"

namespace forecourse::decide {
namespace {

using test::in_gpm;
using test::site_text;
using test::station;
using test::with;
using testing::ElementsAre;
using testing::IsEmpty;

constexpr double half_percent = 0.005;  // the agreement asked of the script's figures, which are printed to 0.01 gpm

constexpr const char* all_open = "all hoses open";
constexpr const char* one_each = "one hose of each product at each dispenser";

std::string everywhere(const std::string& text, const std::string& path, const std::string& value) {
  const Parsed<std::string> changed = site::set_everywhere(text, path, value);
  for (const Diagnostic& d : changed.diagnostics) ADD_FAILURE() << path << ": " << d.message;
  return changed.value;
}

const std::string& site_s() {
  static const std::string text = site_text("site-s");
  return text;
}

/// Site S without its last dispenser and what refers to it.
std::string without_last() {
  std::string text = site_s();
  for (const char* part : {"incident.1", "interlock.I1", "dispenser.D3", "line.gap-2"}) {
    text = site::remove_value(text, part).value;
  }
  return text;
}

std::string with_limiters(const std::string& text) { return everywhere(text, "hose.*.limiter", "10 gpm"); }
std::string wide_trunk(const std::string& text) { return with(text, "line.trunk.bore", "3.00 in"); }

Comparison compare_texts(const std::string& a, const std::string& b, const CompareOptions& options = {}) {
  return compare(station(a), station(b), options);
}

const DifferenceRow& find(const Comparison& c, Topic topic, const std::string& state, const std::string& subject) {
  static const DifferenceRow none;
  const auto found = std::find_if(c.rows.begin(), c.rows.end(), [&](const DifferenceRow& row) {
    return row.topic == topic && row.state == state && row.subject == subject;
  });
  EXPECT_NE(found, c.rows.end()) << static_cast<int>(topic) << " " << state << " " << subject;
  return found == c.rows.end() ? none : *found;
}

// ---- the flows ---------------------------------------------------------------------------------------------

TEST(Compare, SiteSWithAWiderTrunkAgreesWithIndependentComputation) {
  const Comparison c = compare_texts(site_s(), wide_trunk(site_s()));
  const auto expect = [&](const char* state, const char* hose, double a, double b) {
    const DifferenceRow& row = find(c, Topic::hose_flow, state, hose);
    EXPECT_NEAR(in_gpm(row.a.value_or(0.0)), a, half_percent * a) << state << " " << hose;
    EXPECT_NEAR(in_gpm(row.b.value_or(0.0)), b, half_percent * b) << state << " " << hose;
    EXPECT_TRUE(row.differs);
  };
  expect(all_open, "D1.a", 9.68, 10.25);
  expect(all_open, "D2.b", 9.60, 10.17);
  expect(all_open, "D3.a", 9.58, 10.15);
  expect(DifferenceRow::alone, "D3.a", 12.25, 12.29);
  expect(one_each, "D1.a", 11.48, 11.73);
  expect(one_each, "D3.a", 11.45, 11.70);
}

TEST(Compare, AStationAgainstItselfDiffersInNothing) {
  for (const char* name : {"site-s", "hollin-gap", "marle-cross", "truck-lane", "thornby"}) {
    const Comparison c = compare_texts(site_text(name), site_text(name));
    EXPECT_FALSE(c.rows.empty()) << name;
    for (const DifferenceRow& row : c.rows) {
      EXPECT_FALSE(row.differs) << name << " " << row.subject;
      EXPECT_EQ(row.difference(), 0.0) << name << " " << row.subject;
    }
    for (const Unchanged& u : c.unchanged) EXPECT_TRUE(u.whole_topic);
    for (const Worth& worth : c.worth) {
      EXPECT_FALSE(worth.from) << name;
      EXPECT_TRUE(worth.nothing_below) << name;
    }
    EXPECT_THAT(c.only_a, IsEmpty());
    EXPECT_THAT(c.only_b, IsEmpty());
    EXPECT_THAT(c.findings, IsEmpty());
  }
}

TEST(Compare, SwappedItGivesTheNegativeOfEachDifference) {
  const std::string variant = with(with(site_text("hollin-gap"), "line.regular-trunk.bore", "3 in"),
                                   "dispenser.D2.hose.D2.regular-a.limiter", "8 gpm");
  const Comparison there = compare_texts(site_text("hollin-gap"), variant);
  const Comparison back = compare_texts(variant, site_text("hollin-gap"));
  ASSERT_EQ(there.rows.size(), back.rows.size());
  int differing = 0;
  for (const DifferenceRow& row : there.rows) {
    if (row.bore) continue;  // has no id to look it up by
    const DifferenceRow& other = find(back, row.topic, row.state, row.subject);
    EXPECT_EQ(row.a, other.b) << row.subject;
    EXPECT_EQ(row.b, other.a) << row.subject;
    EXPECT_EQ(row.differs, other.differs);
    if (row.difference()) {
      EXPECT_EQ(*row.difference(), -*other.difference());
    }
    differing += row.differs ? 1 : 0;
  }
  EXPECT_GT(differing, 20);
}

TEST(Compare, WhatOneProductChangesLeavesTheOthersAlone) {
  const Comparison c =
      compare_texts(site_text("hollin-gap"), with(site_text("hollin-gap"), "line.regular-trunk.bore", "3 in"));
  for (const DifferenceRow& row : c.rows) {
    if (row.system == "premium" || row.system == "diesel") {
      EXPECT_FALSE(row.differs) << row.subject;
    }
  }
}

TEST(Compare, SpreadIsTheNearestLessTheFarthestHose) {
  const Comparison c = compare_texts(site_s(), wide_trunk(site_s()));
  const DifferenceRow& spread = find(c, Topic::spread, all_open, "regular");
  EXPECT_EQ(spread.detail_a, "D1.a to D3.a");
  const double near = *find(c, Topic::hose_flow, all_open, "D1.a").a;
  const double far = *find(c, Topic::hose_flow, all_open, "D3.a").a;
  EXPECT_EQ(spread.a, near - far);
}

// ---- what is told of the piping ----------------------------------------------------------------------------

TEST(Compare, CountsPipeAndJointsByHand) {
  // Site S: a trunk and two gaps (two ends each), three risers (two ends each), a shear valve under D3.
  const Comparison c = compare_texts(site_s(), with(site_s(), "line.gap-2.length", "45 ft"));
  EXPECT_EQ(find(c, Topic::joints_total, "", "").a, 13.0);
  EXPECT_EQ(find(c, Topic::joints_at, "", "P1").a, 1.0);
  EXPECT_EQ(find(c, Topic::joints_at, "", "D1").a, 4.0);
  EXPECT_EQ(find(c, Topic::joints_at, "", "D3").a, 4.0);
  const double feet = 0.3048;  // exact, by definition
  EXPECT_NEAR(*find(c, Topic::pipe_total, "", "").a, 212.0 * feet, 1e-9);
  EXPECT_NEAR(*find(c, Topic::pipe_total, "", "").difference(), 20.0 * feet, 1e-9);
  EXPECT_NEAR(*find(c, Topic::line_length, "", "gap-2").difference(), 20.0 * feet, 1e-9);
}

TEST(Compare, CountsAShearValveAndItsInletOnATeeWithoutRiser) {
  const std::string valve = with(site_s(), "dispenser.D1.inlet.regular.shear_valve", "{ poppet = \"single\" }");
  EXPECT_EQ(find(compare_texts(site_s(), valve), Topic::joints_at, "", "D1").b, 5.0);
  const std::string bare = site::remove_value(valve, "dispenser.D1.inlet.regular.riser").value;
  EXPECT_EQ(find(compare_texts(site_s(), bare), Topic::joints_at, "", "D1").b, 4.0);
}

TEST(Compare, OneBoreInTwoUnitsIsOneBore) {
  const Comparison c = compare_texts(site_s(), with(site_s(), "line.trunk.bore", "50.8 mm"));
  const auto bores = std::count_if(c.rows.begin(), c.rows.end(),
                                   [](const DifferenceRow& row) { return row.topic == Topic::pipe_of_bore; });
  EXPECT_EQ(bores, 2);  // 2.00 in and the risers' 1.61 in
}

TEST(Compare, StationsWithOtherPartsAreHeldByWhatBothHave) {
  const Comparison c = compare_texts(site_s(), without_last());
  EXPECT_THAT(c.only_a, ElementsAre(OnePart{"line", "gap-2"}, OnePart{"dispenser", "D3"},
                                    OnePart{"inlet", "D3.regular"}, OnePart{"hose", "D3.a"}, OnePart{"hose", "D3.b"}));
  EXPECT_THAT(c.only_b, IsEmpty());
  EXPECT_FALSE(find(c, Topic::hose_flow, all_open, "D3.a").b);
  EXPECT_TRUE(find(c, Topic::hose_flow, all_open, "D3.a").differs);
  EXPECT_TRUE(find(c, Topic::hose_flow, all_open, "D1.a").b);
  ASSERT_EQ(c.worth.size(), 1U);
  EXPECT_EQ(c.worth.front().steps.size(), 4U);
}

TEST(Compare, NearToFarIsNothingWhereNothingFlows) {
  const Comparison c = compare_texts(site_s(), with(site_s(), "pump.P1.running", "false"));
  EXPECT_GT(*find(c, Topic::spread, all_open, "regular").a, 0.0);
  EXPECT_EQ(find(c, Topic::spread, all_open, "regular").b, 0.0);
}

TEST(Compare, WithoutAPumpNothingFlowsAndThereIsNoAnswer) {
  const Comparison c = compare_texts(site_s(), with(site_s(), "pump.P1.running", "false"));
  EXPECT_EQ(find(c, Topic::hose_flow, all_open, "D1.a").b, 0.0);
  ASSERT_EQ(c.fed_once.size(), 1U);
  EXPECT_TRUE(c.fed_once.front().in_a);
  EXPECT_EQ(c.fed_once.front().reason, "no pump of 'regular' runs: off is P1");
  EXPECT_EQ(c.b.hoses, 6);
  EXPECT_THAT(c.worth, IsEmpty());
}

// ---- requirements ------------------------------------------------------------------------------------------

TEST(Compare, TellsRequirementsThatChangeTheirState) {
  CompareOptions options;
  options.flow.keep_flow = station(with(site_s(), "flow.keep", "10 gpm")).flow.keep->likely.si();
  const Comparison c = compare(station(site_s()), station(wide_trunk(site_s())), options);
  ASSERT_EQ(c.findings.size(), 6U);
  for (const FindingChange& change : c.findings) {
    ASSERT_TRUE(change.a && change.b);
    EXPECT_EQ(change.a->rule, "flow-to-keep");
    EXPECT_EQ(change.a->state, checks::FindingState::falls_short);
    EXPECT_NE(change.b->state, checks::FindingState::falls_short);
  }
}

TEST(Compare, AnOpenSetMayNameAHoseOfOneOfThem) {
  CompareOptions options;
  options.flow.open_sets = {{"D1.a, D3.a", {"D1.a", "D3.a"}}};
  EXPECT_THAT(check_options(station(site_s()), station(site_s()), options), IsEmpty());
  const std::string less = without_last();
  EXPECT_THAT(check_options(station(less), station(site_s()), options), IsEmpty());
  const Comparison c = compare(station(less), station(site_s()), options);
  EXPECT_EQ(c.a.flow.options.open_sets.back().hoses, std::vector<std::string>{"D1.a"});
  options.flow.open_sets = {{"D1.c", {"D1.c"}}};
  const std::vector<Diagnostic> problems = check_options(station(less), station(site_s()), options);
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems.front().hint, "did you mean 'D1.a'?");
}

// ---- worth it ----------------------------------------------------------------------------------------------

/// The slowest hose over all sets of each number of hoses, by solving every set.
std::vector<double> slowest_by_number(const std::string& text) {
  const site::Site site = station(text);
  std::vector<std::string> hoses;
  for (const site::Dispenser& d : site.dispensers) {
    for (const site::Hose& hose : d.hoses) hoses.push_back(hose.id.text);
  }
  studies::FlowOptions options;
  options.ladders = false;
  for (std::size_t set = 1; set < std::size_t{1} << hoses.size(); ++set) {
    studies::OpenSet open{"set", {}};
    for (std::size_t i = 0; i < hoses.size(); ++i) {
      if ((set >> i & 1U) != 0) open.hoses.push_back(hoses[i]);
    }
    options.open_sets.push_back(open);
  }
  std::vector<double> slowest(hoses.size(), std::numeric_limits<double>::infinity());
  for (const studies::FlowState& state : studies::study_flow(site, options).states) {
    double& least = slowest[state.open_set.hoses.size() - 1];
    for (const studies::HoseFlow& hose : state.systems.front().hoses) {
      if (hose.open) least = std::min(least, hose.flow);
    }
  }
  return slowest;
}

struct WorthCase {
  const char* name;
  bool limiters;
  const char* trunk;
  double least_gain;
};

class WorthOfSiteS : public testing::TestWithParam<WorthCase> {};

TEST_P(WorthOfSiteS, IsWhatEverySetSolvedByItselfSays) {
  const std::string a = GetParam().limiters ? with_limiters(site_s()) : site_s();
  const std::string b = with(a, "line.trunk.bore", GetParam().trunk);
  CompareOptions options;
  options.least_gain = GetParam().least_gain;
  const Comparison c = compare_texts(a, b, options);
  const std::vector<double> slowest_a = slowest_by_number(a);
  const std::vector<double> slowest_b = slowest_by_number(b);
  ASSERT_EQ(c.worth.size(), 1U);
  const Worth& worth = c.worth.front();
  ASSERT_EQ(worth.steps.size(), slowest_a.size());
  constexpr double solver = 1e-7;  // relative; two ways of solving one state agree to the solver's tolerance
  std::optional<int> from;
  for (std::size_t i = slowest_a.size(); i-- > 0;) {
    EXPECT_NEAR(worth.steps[i].slowest_a, slowest_a[i], solver * slowest_a[i]) << i + 1;
    EXPECT_NEAR(worth.steps[i].slowest_b, slowest_b[i], solver * slowest_b[i]) << i + 1;
    const bool gains = slowest_b[i] > slowest_a[i] * (1.0 + GetParam().least_gain);
    EXPECT_EQ(worth.steps[i].verdict == Verdict::gains, gains) << i + 1;
    if (gains && (i + 1 == slowest_a.size() || from)) from = static_cast<int>(i) + 1;
    if (!gains && from && *from == static_cast<int>(i) + 2) {
      EXPECT_EQ(worth.from, from);
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Trunks, WorthOfSiteS,
                         testing::Values(WorthCase{"wider", false, "3.00 in", 0.01},
                                         WorthCase{"wider_with_limiters", true, "3.00 in", 0.01},
                                         WorthCase{"wider_for_5_percent", false, "3.00 in", 0.05},
                                         WorthCase{"narrower", false, "1.50 in", 0.01}),
                         [](const auto& tested) { return std::string(tested.param.name); });

TEST(Worth, WithLimitersTheWiderTrunkPaysFromSixHosesAndBelowBuysNothing) {
  // By the script's figures of a 2-in trunk only six open hoses fall below 10 gpm.
  const std::string a = with_limiters(site_s());
  const Comparison c = compare_texts(a, wide_trunk(a));
  ASSERT_EQ(c.worth.size(), 1U);
  EXPECT_EQ(c.worth.front().from, 6);
  EXPECT_TRUE(c.worth.front().nothing_below);
  EXPECT_TRUE(c.worth.front().held_below);
  for (const WorthStep& step : c.worth.front().steps) EXPECT_NE(step.proof_a, studies::Proof::best_found);
}

TEST(Worth, WithoutLimitersLessIsGainedBelow) {
  const Worth worth = compare_texts(site_s(), wide_trunk(site_s())).worth.front();
  EXPECT_EQ(worth.from, 2);
  EXPECT_FALSE(worth.nothing_below);
  EXPECT_FALSE(worth.held_below);
  EXPECT_EQ(worth.steps.front().verdict, Verdict::same);
}

/// A ladder put together by hand.
studies::Ladder ladder(const std::vector<double>& slowest) {
  studies::Ladder out;
  out.system = "regular";
  for (const double flow : slowest) {
    studies::LadderStep step;
    step.slowest = flow;
    out.steps.push_back(step);
  }
  return out;
}

TEST(Worth, IsFromTheFirstNumberOfAnUnbrokenStretch) {
  const auto worth = worth_of({}, {ladder({1.0, 1.0, 1.0, 1.0})}, {}, {ladder({1.1, 1.0, 1.1, 1.2})}, 0.01).front();
  EXPECT_EQ(worth.from, 3);
  EXPECT_THAT(numbers_with(worth, Verdict::gains), ElementsAre(1, 3, 4));
  EXPECT_FALSE(worth.nothing_below);
}

TEST(Worth, IsNowhereWhereTheLargestNumberGainsNothing) {
  const auto worth = worth_of({}, {ladder({1.0, 1.0})}, {}, {ladder({1.1, 1.0})}, 0.01).front();
  EXPECT_FALSE(worth.from);
}

TEST(Worth, SaysFromWhereItLoses) {
  const auto worth = worth_of({}, {ladder({1.0, 1.0, 1.0})}, {}, {ladder({1.0, 0.9, 0.8})}, 0.01).front();
  EXPECT_FALSE(worth.from);
  EXPECT_EQ(worth.loses_from, 2);
}

TEST(Worth, WhatIsNotDeterminedIsNoGain) {
  const double none = std::numeric_limits<double>::quiet_NaN();
  const auto worth = worth_of({}, {ladder({1.0, none})}, {}, {ladder({1.1, 1.1})}, 0.01).front();
  EXPECT_FALSE(worth.from);
  EXPECT_EQ(worth.steps.back().verdict, Verdict::not_determined);
}

TEST(Worth, FromNothingToSomethingIsAGain) {
  const auto worth = worth_of({}, {ladder({0.0})}, {}, {ladder({1e-4})}, 0.01).front();
  EXPECT_EQ(worth.from, 1);
}

TEST(DifferenceRow, ShareIsOfTheSizeAndNoneWhereTheFlowTurnsRound) {
  const auto share = [](double a, double b) {
    DifferenceRow row;
    row.topic = Topic::line_velocity;
    row.a = a;
    row.b = b;
    return row.share();
  };
  EXPECT_DOUBLE_EQ(*share(5.0, 3.0), -0.4);
  EXPECT_DOUBLE_EQ(*share(-5.0, -3.0), -0.4);
  EXPECT_FALSE(share(5.0, -3.0));
  EXPECT_FALSE(share(0.0, 3.0));
}

TEST(SameValue, IsWithinTheSolversAccuracyAndExactForCounts) {
  EXPECT_TRUE(same_value(Amount::flow, 6e-4, 6e-4 + 5e-10));
  EXPECT_FALSE(same_value(Amount::flow, 6e-4, 6e-4 + 5e-9));
  EXPECT_TRUE(same_value(Amount::pressure_difference, 1e5, 1e5 + 0.05));
  EXPECT_FALSE(same_value(Amount::count, 12.0, 13.0));
}

}  // namespace
}  // namespace forecourse::decide
