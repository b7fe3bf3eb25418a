// An incident at two stations on the terminal, in JSON and as a page: the sentence first, and the same figures on each.
#include <gtest/gtest.h>

#include <algorithm>

#include "forecourse/report/compare/incident/incident_compare_report.h"
#include "forecourse/report/compare/incident/incident_compare_view.h"

namespace forecourse::report {
namespace {

using decide::IncidentComparison;
using studies::Holder;

/// A run of round numbers: so much on the slab, shut after so long.
studies::IncidentResult result_of(double slab, double shut) {
  studies::IncidentResult r;
  r.version = "1.2.3";
  r.at = "D3";
  studies::IncidentRun run;
  run.name = "every barrier that is there acts";
  run.escaped = run.to_environment = slab;
  run.peak_flow = run.steady_flow = 5e-3;
  run.isolated_at = shut;
  run.holders = {Holder::slab};
  run.amounts = {{Holder::slab, 0.0, slab}};
  run.ledger = {{Holder::line, Holder::slab, "regular", "while the valve was closing", slab}};
  run.timeline = {{0.0, studies::Happening::begins, "", "it happens", 0.0, 0.0, {}, {0.0}},
                  {shut, studies::Happening::valve_shut, "V", "the valve is shut", slab, 0.0, {}, {slab}}};
  r.barrier_table = {{run.name, {}, slab, slab, 0}};
  r.runs = {run};
  r.escaped = r.to_environment = {slab, slab, slab};
  return r;
}

IncidentComparison sample(double slab_a, double slab_b) {
  IncidentComparison c;
  c.name_a = c.name_b = "Site S";
  c.a = result_of(slab_a, 2.0);
  c.b = result_of(slab_b, slab_a == slab_b ? 2.0 : 1.0);
  c.figures = decide::figure_rows(c.a.runs[0], c.b.runs[0]);
  c.holders = decide::holder_rows(c.a.runs[0], c.b.runs[0]);
  c.causes = decide::cause_rows(c.a.runs[0], c.b.runs[0]);
  c.events = decide::event_rows(c.a.runs[0], c.b.runs[0]);
  c.cases = decide::case_rows(c.a, c.b);
  return c;
}

bool has(const std::string& text, const std::string& what) { return text.find(what) != std::string::npos; }

std::string answer(const IncidentComparison& c) {
  std::string out;
  for (const std::string& one : incident_compare_answer(c, site::Display::si, Glyphs::ascii)) out += one + "\n";
  return out;
}

TEST(IncidentCompareWriters, TheSentenceSaysHowMuchLess) {
  EXPECT_EQ(answer(sample(0.100, 0.025)).substr(0, answer(sample(0.100, 0.025)).find('\n')),
            "Every barrier that is there acts: 75.0 L less escapes in B: 25.0 L instead of 100.0 L (-75.0 %).");
  EXPECT_TRUE(has(answer(sample(0.025, 0.100)), "75.0 L more escapes in B: 100.0 L instead of 25.0 L (+300.0 %)."));
}

TEST(IncidentCompareWriters, NothingIsSaidToBeNothing) {
  EXPECT_TRUE(has(answer(sample(0.1, 0.1)), "B buys nothing: amounts, flows, times and barriers are the same"));
  EXPECT_TRUE(has(answer(sample(0.1, 0.1)), "100.0 L escapes in A and in B"));
  IncidentComparison later = sample(0.1, 0.1);
  later.events[1].differs = true;
  EXPECT_TRUE(has(answer(later), "B buys nothing in what escapes"));
}

TEST(IncidentCompareWriters, WhatIsNotDeterminedIsSaidWithItsSide) {
  IncidentComparison c;
  c.b.problem = "the tank's shape is not entered";
  c.a = result_of(0.1, 2.0);
  EXPECT_TRUE(has(answer(c), "Not determined in B: the tank's shape is not entered."));
  const Json doc = incident_compare_document(c, site::Display::si);
  EXPECT_EQ(doc["result"]["same_escape"], nullptr);
  EXPECT_EQ(doc["result"]["b"]["problem"], "the tank's shape is not entered");
  EXPECT_TRUE(doc["result"]["figures"].empty());
  EXPECT_TRUE(has(incident_compare_report(c, site::Display::si), "Not determined in B"));
}

TEST(IncidentCompareWriters, PairsOfRunsAreToldWithTheirShares) {
  IncidentComparison c = sample(0.100, 0.025);
  c.options.runs = 100;
  decide::PairedSpread p;
  p.runs = p.counted = 100;
  p.escaped = {-0.09, -0.07, 0.01};
  p.less = 0.9;
  p.more = 0.1;
  c.paired = p;
  EXPECT_TRUE(has(answer(c),
                  "In 100 pairs of runs with the same draws, B less A is -70.0 L at the median, -90.0 L at "
                  "5 % and +10.0 L at 95 %; less escapes in B in 90.0 % of them, as much in 0.0 %, more in "
                  "10.0 %."))
      << answer(c);
  c.paired.reset();
  EXPECT_TRUE(has(answer(c), "is not determined: this kind is not drawn run by run"));
}

TEST(IncidentCompareWriters, EveryWriterBeginsWithWhatToDoAndHoldsTheSameFigures) {
  const IncidentComparison c = sample(0.100, 0.025);
  CompareFacts facts;
  facts.label_a = "a.toml";
  facts.label_b = "b.toml";
  const std::string text = incident_compare_summary(c, site::Display::si, {100, false, false, false}, facts);
  const std::string page = incident_compare_report(c, site::Display::si, facts);
  EXPECT_LT(text.find("Stop the pump."), text.find("A: a.toml"));
  EXPECT_LT(page.find("Stop the pump."), page.find("75.0"));
  for (const std::string* one : {&text, &page}) {
    EXPECT_TRUE(has(*one, "while the valve was closing"));
    EXPECT_TRUE(has(*one, "the valve is shut"));
  }
  EXPECT_FALSE(has(text, "safe"));
  const Json doc = incident_compare_document(c, site::Display::si, facts);
  EXPECT_EQ(doc["cautions"][0], "Stop the pump. Clear people away. Call the fire service.");
  EXPECT_NEAR(doc["result"]["holders"][0]["difference_m3"].get<double>(), -0.075, 1e-15);
  EXPECT_EQ(doc["result"]["events"][1]["time_difference_s"], -1.0);
  EXPECT_EQ(Json::parse(to_text(doc)), doc);
}

TEST(IncidentCompareWriters, ADifferenceIsThatOfTheFiguresShown) {
  const auto shown = [](double a, double b, bool differs) {
    return shown_beside(decide::IncidentAmount::volume, {a, b}, differs, site::Display::si, Glyphs::ascii);
  };
  EXPECT_EQ(shown(0.10004, 0.10016, true).difference, "+0.2");  // 100.0 and 100.2 L
  EXPECT_EQ(shown(0.00100, 0.00101, true).difference, "under 0.1");
  EXPECT_EQ(shown(0.1, 0.1, false).difference, "0.0");
}

}  // namespace
}  // namespace forecourse::report
