// Two single incidents are what their comparison is held against; the statistics are those of paired samples.
// SOURCE: closed form: variance of a difference of paired and of independent samples
#include "forecourse/decide/compare/incident/incident_comparison.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "forecourse/site/edit.h"
#include "support/stations.h"

namespace forecourse::decide {
namespace {

using studies::IncidentKind;
using studies::IncidentOptions;
using test::site_text;
using test::station;
using test::with;

IncidentOptions struck_at(const std::string& place) {
  IncidentOptions options;
  options.kind = IncidentKind::struck;
  options.request.at.text = place;
  return options;
}

/// Site S with a stop that is not certain.
std::string uncertain_stop() {
  return with(site_text("site-s"), "incident.1.stop_at", "{ low = \"20 s\", likely = \"45 s\", high = \"180 s\" }");
}

/// Hollin Gap, whose heights are entered, so that a strike can be worked out without a shear valve too.
const std::string& valved() {
  static const std::string text = site_text("hollin-gap");
  return text;
}

const std::string& bare() {
  static const std::string text = [] {
    std::string out = valved();
    for (const char* inlet : {"regular", "premium", "diesel"}) {
      const std::string path = std::string("dispenser.D3.inlet.") + inlet + ".shear_valve";
      const Parsed<std::string> changed = site::remove_value(out, path);
      if (!changed.ok()) ADD_FAILURE() << changed.diagnostics.front().message;
      out = changed.value;
    }
    return out;
  }();
  return text;
}

IncidentComparison compare_texts(const std::string& a, const std::string& b, const IncidentOptions& options) {
  return compare_incident(station(a), station(b), options);
}

/// Few runs: the ranges then take in these, and not as many as they take in unasked.
IncidentOptions struck_with_few_runs() {
  IncidentOptions options = struck_at("D3");
  options.runs = 8;
  return options;
}

/// Struck with and without its shear valves.
const IncidentComparison& with_and_without() {
  static const IncidentComparison c = compare_texts(valved(), bare(), struck_with_few_runs());
  return c;
}

const CaseRow* case_of(const IncidentComparison& c, const std::string& name) {
  const auto found = std::find_if(c.cases.begin(), c.cases.end(), [&](const CaseRow& row) { return row.name == name; });
  return found == c.cases.end() ? nullptr : &*found;
}

double variance(const std::vector<double>& values) {
  const double mean = std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
  double squares = 0.0;
  for (const double v : values) squares += (v - mean) * (v - mean);
  return squares / static_cast<double>(values.size());
}

TEST(IncidentComparison, AgainstItselfEveryDifferenceIsZero) {
  IncidentOptions options = struck_at("D3");
  options.runs = 50;
  const IncidentComparison c = compare_texts(uncertain_stop(), uncertain_stop(), options);
  ASSERT_TRUE(c.is_determined());
  EXPECT_TRUE(c.same_in_all());
  for (const FigureRow& row : c.figures) EXPECT_EQ(row.value.difference().value_or(0.0), 0.0);
  for (const HolderRow& row : c.holders) EXPECT_EQ(row.amount.difference(), 0.0);
  for (const CauseAmount& row : c.causes) EXPECT_EQ(row.amount.difference(), 0.0);
  for (const CaseRow& row : c.cases) EXPECT_EQ(row.escaped.difference(), 0.0);
  for (const EventRow& row : c.events) EXPECT_EQ(row.time.difference(), 0.0) << row.words;
  ASSERT_TRUE(c.paired);
  EXPECT_EQ(c.paired->escaped, (std::array<double, 3>{0.0, 0.0, 0.0}));
  EXPECT_EQ(c.paired->deviation, 0.0);
  EXPECT_NEAR(c.paired->same, 1.0, 1e-12);
  EXPECT_EQ(c.a.runs.front().hash, c.b.runs.front().hash);
}

TEST(IncidentComparison, WithAndWithoutAShearValveItEqualsTheTwoSingleRuns) {
  const IncidentOptions options = struck_with_few_runs();
  const IncidentComparison& c = with_and_without();
  const studies::IncidentResult one = studies::study_incident(station(valved()), options);
  const studies::IncidentResult other = studies::study_incident(station(bare()), options);
  ASSERT_TRUE(c.is_determined());
  EXPECT_EQ(c.a.runs.front().hash, one.runs.front().hash);
  EXPECT_EQ(c.b.runs.front().hash, other.runs.front().hash);
  ASSERT_EQ(c.figures.front().figure, IncidentFigure::escaped);
  EXPECT_EQ(c.figures.front().value.a, one.runs.front().escaped);
  EXPECT_EQ(c.figures.front().value.b, other.runs.front().escaped);
  EXPECT_GT(c.figures.front().value.difference().value_or(0.0), 0.0);
  EXPECT_FALSE(c.same_escape());
  EXPECT_EQ(c.a.escaped.high, one.escaped.high);
  EXPECT_EQ(c.b.escaped.high, other.escaped.high);
}

/// Site S enters the height of the groove with the valve alone.
TEST(IncidentComparison, SiteSWithAnotherValveEqualsTheTwoSingleRuns) {
  const std::string text = site_text("site-s");
  const std::string slow = with(text, "dispenser.D3.inlet.regular.shear_valve.closing.equivalent_time", "\"2 s\"");
  const IncidentOptions options = struck_at("D3");
  const IncidentComparison c = compare_texts(text, slow, options);
  EXPECT_EQ(c.a.runs.front().hash, studies::study_incident(station(text), options).runs.front().hash);
  EXPECT_EQ(c.b.runs.front().hash, studies::study_incident(station(slow), options).runs.front().hash);
  EXPECT_GT(c.figures.front().value.difference().value_or(0.0), 0.0);
  const std::string none = site::remove_value(text, "dispenser.D3.inlet.regular.shear_valve").value;
  const IncidentComparison undetermined = compare_texts(text, none, options);
  EXPECT_FALSE(undetermined.is_determined());
  EXPECT_TRUE(undetermined.a.problem.empty());
  EXPECT_NE(undetermined.b.problem.find("shear groove"), std::string::npos);
  EXPECT_TRUE(undetermined.figures.empty());
}

TEST(IncidentComparison, CausesAddUpToWhatIsHeld) {
  const IncidentComparison& c = with_and_without();
  double slab_a = 0.0, slab_b = 0.0;
  for (const CauseAmount& row : c.causes) {
    const double sign = row.to == studies::Holder::slab ? 1.0 : row.from == studies::Holder::slab ? -1.0 : 0.0;
    slab_a += sign * row.amount.a.value_or(0.0);
    slab_b += sign * row.amount.b.value_or(0.0);
  }
  const auto slab = std::find_if(c.holders.begin(), c.holders.end(),
                                 [](const HolderRow& row) { return row.holder == studies::Holder::slab; });
  ASSERT_NE(slab, c.holders.end());
  EXPECT_NEAR(slab_a, slab->amount.a.value_or(-1.0), 1e-9);
  EXPECT_NEAR(slab_b, slab->amount.b.value_or(-1.0), 1e-9);
}

TEST(IncidentComparison, WhatOnlyOneOfThemHasStandsAlone) {
  const IncidentComparison& c = with_and_without();
  const CaseRow* only_a = case_of(c, "without shear valve");
  ASSERT_NE(only_a, nullptr);
  EXPECT_TRUE(only_a->escaped.a);
  EXPECT_FALSE(only_a->escaped.b);
  EXPECT_FALSE(only_a->escaped.difference());
  EXPECT_TRUE(only_a->differs);
  const auto shut = std::find_if(c.events.begin(), c.events.end(),
                                 [](const EventRow& row) { return row.what == studies::Happening::valve_shut; });
  ASSERT_NE(shut, c.events.end());
  EXPECT_TRUE(shut->time.a && !shut->time.b);
}

TEST(IncidentComparison, EventsStandInTheOrderOfTime) {
  const IncidentComparison& c = with_and_without();
  double last = 0.0;
  for (const EventRow& row : c.events) {
    ASSERT_TRUE(row.time.a || row.time.b);
    const double at = std::min(row.time.a.value_or(1e9), row.time.b.value_or(1e9));
    EXPECT_GE(at, last);
    last = at;
  }
}

/// Single runs of both, drawn with the same seed, give the difference pair by pair.
TEST(IncidentComparison, PairsAreDrawnAlike) {
  IncidentOptions options = struck_at("D3");
  options.runs = 200;
  options.seed = 11;
  options.without = {studies::Barrier::shear_valve};
  const std::string text = uncertain_stop();
  const IncidentComparison c = compare_texts(text, with(text, "line.trunk.bore", "1.50 in"), options);
  ASSERT_TRUE(c.paired);
  ASSERT_TRUE(c.a.spread && c.b.spread);
  EXPECT_EQ(c.paired->counted, 200U);
  std::vector<double> differences;
  for (std::size_t i = 0; i < 200; ++i) {
    differences.push_back(c.b.spread->escaped_by_run[i] - c.a.spread->escaped_by_run[i]);
  }
  EXPECT_NEAR(c.paired->deviation, std::sqrt(variance(differences)), 1e-12);
  const std::vector<std::string>& alike = c.paired->drawn_in_both;
  EXPECT_NE(std::find(alike.begin(), alike.end(), "when the pumps are stopped"), alike.end());
  EXPECT_TRUE(c.paired->only_a.empty() && c.paired->only_b.empty());
  EXPECT_NEAR(c.paired->less + c.paired->same + c.paired->more, 1.0, 1e-12);
  // The rank of a run is that of its stop in both, since both have drawn the same stop.
  const auto by = [](const std::vector<double>& values) {
    return std::max_element(values.begin(), values.end()) - values.begin();
  };
  EXPECT_EQ(by(c.a.spread->escaped_by_run), by(c.b.spread->escaped_by_run));
}

TEST(IncidentComparison, PairedTheDifferenceVariesFarLessThanUnpaired) {
  IncidentOptions options = struck_at("D3");
  options.runs = 300;
  options.without = {studies::Barrier::shear_valve};
  const std::string text = uncertain_stop();
  const std::string narrow = with(text, "line.trunk.bore", "1.90 in");
  const IncidentComparison c = compare_texts(text, narrow, options);
  options.seed = 2;
  const IncidentComparison other_luck = compare_texts(text, narrow, options);
  std::vector<double> unpaired;
  for (std::size_t i = 0; i < 300; ++i) {
    unpaired.push_back(other_luck.b.spread->escaped_by_run[i] - c.a.spread->escaped_by_run[i]);
  }
  ASSERT_TRUE(c.paired);
  const double paired = c.paired->deviation * c.paired->deviation;
  EXPECT_GT(paired, 0.0);
  EXPECT_LT(paired, 0.05 * variance(unpaired));
  EXPECT_NEAR(c.paired->deviation_apart * c.paired->deviation_apart, variance(unpaired), 0.25 * variance(unpaired));
  EXPECT_NEAR(c.paired->less, 1.0, 1e-12);
}

TEST(IncidentComparison, AnInputOfOneAloneIsTold) {
  IncidentOptions options = struck_at("D3");
  options.runs = 20;
  const std::string text = site_text("site-s");
  const IncidentComparison c =
      compare_texts(text, with(text, "line.trunk.loss", "{ low = 3, likely = 4, high = 6 }"), options);
  ASSERT_TRUE(c.paired);
  EXPECT_TRUE(c.paired->only_a.empty());
  EXPECT_NE(std::find_if(c.paired->only_b.begin(), c.paired->only_b.end(),
                         [](const std::string& s) { return s.starts_with("line.trunk.loss"); }),
            c.paired->only_b.end());
}

TEST(IncidentComparison, RunsThatFailedInOneAreLeftOutOfBoth) {
  studies::IncidentSpread a, b;
  a.runs = b.runs = 4;
  a.escaped_by_run = a.environment_by_run = {1.0, std::nan(""), 3.0, 4.0};
  b.escaped_by_run = b.environment_by_run = {2.0, 2.0, std::nan(""), 2.0};
  const auto paired = pair_spreads(a, b);
  ASSERT_TRUE(paired);
  EXPECT_EQ(paired->counted, 2U);
  EXPECT_NEAR(paired->mean, -0.5, 1e-15);
  EXPECT_NEAR(paired->escaped[1], -0.5, 1e-15);
  EXPECT_NEAR(paired->less, 0.5, 1e-15);
  EXPECT_NEAR(paired->more, 0.5, 1e-15);
  a.escaped_by_run.assign(4, std::nan(""));
  EXPECT_FALSE(pair_spreads(a, b));
}

/// The incident is that of A's file for both; B's own is left aside.
TEST(IncidentComparison, TheIncidentIsOneForBoth) {
  const std::string text = site_text("site-s");
  IncidentOptions options;
  options.kind = IncidentKind::struck;
  const IncidentComparison c = compare_texts(text, with(text, "incident.1.stop_at", "\"5 s\""), options);
  EXPECT_TRUE(c.same_in_all());
  const IncidentComparison other_way = compare_texts(with(text, "incident.1.stop_at", "\"5 s\""), text, options);
  ASSERT_TRUE(other_way.options.request.stop_at);
  EXPECT_EQ(other_way.options.request.stop_at->likely.si(), 5.0);
  EXPECT_TRUE(objections(station(text), station(site::remove_value(text, "incident.1").value), options).empty());
}

TEST(IncidentComparison, ObjectionsSayAtWhichOfTheTwo) {
  std::string fewer = site_text("site-s");
  for (const char* part : {"incident.1", "interlock.I1", "dispenser.D3", "line.gap-2"}) {
    fewer = site::remove_value(fewer, part).value;
  }
  const auto found = objections(station(site_text("site-s")), station(fewer), struck_at("D3"));
  ASSERT_EQ(found.size(), 1U);
  EXPECT_FALSE(found.front().in_a);
  EXPECT_TRUE(found.front().in_b);
  const auto both = objections(station(site_text("site-s")), station(site_text("site-s")), struck_at("D9"));
  ASSERT_EQ(both.size(), 1U);
  EXPECT_TRUE(both.front().in_a && both.front().in_b);
}

TEST(IncidentComparison, SmallDifferencesOfSingleRunsAreNone) {
  EXPECT_TRUE(same_amount(IncidentAmount::volume, {1.0, 1.00009}));
  EXPECT_FALSE(same_amount(IncidentAmount::volume, {1.0, 1.0002}));
  EXPECT_TRUE(same_amount(IncidentAmount::volume, {0.0, 9e-9}));
  EXPECT_FALSE(same_amount(IncidentAmount::volume, {std::nullopt, 0.0}));
  EXPECT_TRUE(same_amount(IncidentAmount::time, {std::nullopt, std::nullopt}));
}

}  // namespace
}  // namespace forecourse::decide
