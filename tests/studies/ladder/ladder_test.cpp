// Ladders, orders, and blended hoses that cannot keep their ratio.
// SOURCE: [rheinboldt_1970, M-functions and network flows] a law of the networks: no hose gains by another's opening
#include "forecourse/studies/flow/ladder/ladder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "forecourse/base/unit_text.h"
#include "forecourse/studies/flow/flow.h"
#include "studies/worst/invented_station.h"
#include "support/stations.h"

namespace forecourse::studies {
namespace {

using test::in_gpm;
using test::site_text;
using test::station;
using test::with;
using testing::ElementsAre;
using testing::HasSubstr;

FlowOptions asking(std::vector<std::string> order = {}, double keep_gpm = 10.0) {
  FlowOptions options;
  options.spans = false;
  options.lines_at_rest = false;
  options.order = std::move(order);
  options.keep_flow = to_si(keep_gpm, "gpm");
  return options;
}

const Ladder& ladder_of(const FlowResult& result, LadderOrder order, std::size_t which = 0) {
  for (const Ladder& ladder : result.ladders) {
    if (ladder.order == order && which-- == 0) return ladder;
  }
  ADD_FAILURE() << "no such ladder";
  return result.ladders.front();
}

/// The flows with the hoses of each step open, by the study of that very set.
void expect_states_of_their_own(const std::string& text, const Ladder& ladder) {
  for (const LadderStep& step : ladder.steps) {
    FlowOptions options;
    options.open_sets = {{"step", step.hoses}};
    const FlowResult result = study_flow(station(text), options);
    double total = 0.0;
    double slowest = INFINITY;
    for (const SystemFlow& system : result.states.front().systems) {
      for (const HoseFlow& hose : system.hoses) {
        total += hose.flow;
        if (hose.open) slowest = std::min(slowest, hose.hose_flow);
      }
    }
    EXPECT_NEAR(step.total, total, 1e-9 * total);  // two solvers of one law, residuals of a billionth
    EXPECT_NEAR(step.slowest, slowest, 1e-9 * slowest);
  }
}

TEST(Ladder, SiteSKeepsTenGallonsAMinuteUpToFiveHoses) {
  const FlowResult result = study_flow(station(site_text("site-s")), asking());
  const Ladder& worst = ladder_of(result, LadderOrder::worst);
  ASSERT_EQ(worst.steps.size(), 6U);
  EXPECT_NEAR(in_gpm(worst.steps.front().slowest), 12.25, 0.005);  // alone at the far end, as computed independently
  EXPECT_NEAR(in_gpm(worst.steps.back().slowest), 9.58, 0.005);    // all six open, likewise
  EXPECT_EQ(worst.keeps, 5);
  EXPECT_EQ(worst.steps[4].proof, Proof::enumeration);
  EXPECT_EQ(worst.steps[5].proof, Proof::argument);
  expect_states_of_their_own(site_text("site-s"), worst);
}

TEST(Ladder, LimiterMakesTheLargerTrunkWorthNothingBelowTheNumberWhereItBinds) {
  std::string text = site_text("site-s");
  for (const char* hose : {"D1.a", "D1.b", "D2.a", "D2.b", "D3.a", "D3.b"}) {
    text =
        with(text, std::string("dispenser.") + std::string(hose).substr(0, 2) + ".hose." + hose + ".limiter", "10 gpm");
  }
  const FlowResult two_inch = study_flow(station(text), asking());
  const FlowResult three_inch = study_flow(station(with(text, "line.trunk.bore", "3 in")), asking());
  const auto& two = ladder_of(two_inch, LadderOrder::worst).steps;
  const auto& three = ladder_of(three_inch, LadderOrder::worst).steps;
  for (std::size_t n = 0; n < 5; ++n) EXPECT_NEAR(two[n].slowest, three[n].slowest, 1e-12);  // held by the limiters
  EXPECT_GT(three[5].slowest, 1.01 * two[5].slowest);
  EXPECT_EQ(two[2].tied, 3);
  EXPECT_EQ(two[2].slowest_hose, two[2].hoses.front());  // of those alike, the first
  EXPECT_TRUE(all_alike(two[0]));
  EXPECT_FALSE(all_alike(two[5]));
}

TEST(Ladder, SpreadOpensOneHoseAtEachDispenserFirst) {
  const Ladder ladder = ladder_of(study_flow(station(site_text("site-s")), asking()), LadderOrder::spread);
  EXPECT_THAT(ladder.steps.back().hoses, ElementsAre("D1.a", "D2.a", "D3.a", "D1.b", "D2.b", "D3.b"));
  expect_states_of_their_own(site_text("site-s"), ladder);
}

TEST(Ladder, GivenOrderIsTheUsersAndMayLeaveHosesOut) {
  const Ladder ladder =
      ladder_of(study_flow(station(site_text("site-s")), asking({"D3.b", "D1.a", "D3.a"})), LadderOrder::given);
  ASSERT_EQ(ladder.steps.size(), 3U);
  EXPECT_THAT(ladder.steps[1].hoses, ElementsAre("D3.b", "D1.a"));
  EXPECT_EQ(ladder.keeps, 3);
  expect_states_of_their_own(site_text("site-s"), ladder);
}

TEST(Ladder, OrderOfTheFileServesWhereNoneIsAskedFor) {
  const std::string text = site_text("site-s") + "\n[flow]\norder = [\"D2.a\", \"D2.b\"]\nkeep = \"11.5 gpm\"\n";
  FlowOptions options = asking();
  options.keep_flow.reset();
  const FlowResult result = study_flow(station(text), options);
  EXPECT_THAT(result.options.order, ElementsAre("D2.a", "D2.b"));
  EXPECT_EQ(ladder_of(result, LadderOrder::given).keeps, 2);
  EXPECT_EQ(ladder_of(result, LadderOrder::worst).keeps, 2);
}

TEST(Ladder, NoFlowAskedForNoAnswerWhatIsKept) {
  FlowOptions options = asking();
  options.keep_flow.reset();
  for (const Ladder& ladder : study_flow(station(site_text("hollin-gap")), options).ladders) EXPECT_FALSE(ladder.keeps);
}

TEST(Ladder, WorstNeverRisesWithTheNumberAndIsNeverAboveOtherOrders) {
  const FlowResult result = study_flow(station(site_text("hollin-gap")), asking());
  for (std::size_t system = 0; system < 3; ++system) {
    const Ladder& worst = ladder_of(result, LadderOrder::worst, system);
    const Ladder& spread = ladder_of(result, LadderOrder::spread, system);
    for (std::size_t n = 0; n < worst.steps.size(); ++n) {
      // Sets whose slowest hoses agree to 1e-10 count as equal, and the one with least pressure to spare is told.
      constexpr double alike = 1.0 + 2e-10;
      const double before = n > 0 ? worst.steps[n - 1].slowest : INFINITY;
      EXPECT_LE(worst.steps[n].slowest, before * alike);
      EXPECT_LE(worst.steps[n].slowest, spread.steps[n].slowest * alike);
      EXPECT_LE(worst.steps[n].slowest, *worst.steps[n].mean_slowest * alike);
    }
  }
}

TEST(Ladder, BlendedHosesTieTheirProductsTogetherAndAreBestFound) {
  const FlowResult result = study_flow(station(site_text("marle-cross")), asking());
  const Ladder& worst = ladder_of(result, LadderOrder::worst);
  EXPECT_EQ(worst.system, "regular + premium");
  ASSERT_EQ(worst.steps.size(), 36U);
  EXPECT_EQ(worst.steps[10].proof, Proof::best_found);
  EXPECT_FALSE(result.worst_states.front().opening_never_raises);
  EXPECT_EQ(result.worst_states.front().sets_failed, 0U);
  EXPECT_EQ(result.worst_states.front().inlet.gauge.proof, Proof::argument);
  for (const HoseExtremes& hose : result.worst_states.front().hoses) {
    EXPECT_EQ(hose.least.proof, Proof::best_found);
    EXPECT_LE(hose.least.value, hose.greatest.value);
  }
}

TEST(Ladder, PumpControlIsEnumeratedAndNotArgued) {
  const std::string text =
      site_text("site-s") +
      "\n[[pump]]\nid = \"P2\"\ntank = \"T1\"\ncheck_valve = true\ncurve = { shutoff = \"30.0 psi\", "
      "per_flow_squared = \"0.0020 psi/gpm^2\" }\n[[line]]\nid = \"leg-2\"\nfrom = \"P2\"\n"
      "to = \"D1.regular\"\nlength = \"20 ft\"\nbore = \"2 in\"\nroughness = \"0.01 mm\"\nloss = 1\n"
      "[[control]]\nid = \"C1\"\nproduct = \"regular\"\nkind = \"lead-lag\"\nhoses_calling = 3\n";
  const FlowResult result = study_flow(station(text), asking());
  const WorstStates& worst = result.worst_states.front();
  EXPECT_FALSE(worst.opening_never_raises);
  for (const HoseExtremes& hose : worst.hoses) EXPECT_EQ(hose.least.proof, Proof::enumeration);
  // The second pump joins at the fourth hose: the slowest gains by it, which no fixed pump can do.
  const auto& steps = ladder_of(result, LadderOrder::worst).steps;
  EXPECT_GT(steps[3].slowest, steps[2].slowest);
}

TEST(Ladder, SearchUnderAPumpControlFindsWhatTryingEverySetFinds) {
  FlowOptions searched = asking();
  searched.search.most_single = 1;
  const FlowResult tried = study_flow(station(site_text("pell-ridge")), asking());
  const FlowResult found = study_flow(station(site_text("pell-ridge")), searched);
  const auto& every = ladder_of(tried, LadderOrder::worst).steps;
  const auto& best = ladder_of(found, LadderOrder::worst).steps;
  ASSERT_EQ(every.size(), best.size());
  EXPECT_EQ(every[3].proof, Proof::enumeration);
  EXPECT_EQ(best[3].proof, Proof::best_found);
  for (std::size_t n = 0; n < every.size(); ++n) {
    EXPECT_NEAR(best[n].slowest, every[n].slowest, 1e-9 * every[n].slowest) << n + 1;  // one solver for both
  }
}

TEST(WorstStates, LargeStationWithoutEqualHosesIsSearchedAndSaysSo) {
  test::Draws draws(9);
  const FlowResult result = study_flow(station(invented_station(draws, test::Layout::ring, true, false, 10)), asking());
  const Ladder& worst = ladder_of(result, LadderOrder::worst);
  ASSERT_EQ(worst.steps.size(), 20U);
  EXPECT_EQ(worst.steps[9].proof, Proof::best_found);
  EXPECT_EQ(worst.steps[0].proof, Proof::enumeration);
  EXPECT_EQ(worst.steps[19].proof, Proof::argument);
  EXPECT_EQ(result.worst_states.front().hoses.front().least.proof, Proof::argument);
}

// ---- orders that cannot be ------------------------------------------------------------------------------

std::vector<std::string> wrong(const std::string& text, const FlowOptions& options) {
  std::vector<std::string> out;
  for (const Diagnostic& d : check_options(station(text), options)) out.push_back(d.message + "|" + d.hint);
  return out;
}

TEST(HoseOrder, AllThatIsWrongIsToldAtOnce) {
  FlowOptions options = asking({"D3.a", "D9.a", "D1.a", "D3.a", "D2.b"});
  options.open_sets = {{"these", {"D1.a", "D3.a"}}};
  EXPECT_THAT(wrong(site_text("site-s"), options),
              ElementsAre(HasSubstr("'D9.a', but there is no such hose"), HasSubstr("hose 'D3.a' twice"),
                          HasSubstr("'D2.b', which is closed in every set")));
}

TEST(HoseOrder, UnknownHoseIsOfferedTheNearest) {
  EXPECT_THAT(wrong(site_text("hollin-gap"), asking({"D1.regulr-a"})),
              ElementsAre(HasSubstr("did you mean 'D1.regular-a'?")));
}

TEST(HoseOrder, HoseWithoutARunningPumpCannotBeInIt) {
  EXPECT_THAT(
      wrong(with(site_text("hollin-gap"), "pump.P2.running", "false"), asking({"D1.premium-a", "D1.regular-a"})),
      ElementsAre(HasSubstr("'D1.premium-a', which cannot deliver: no pump of 'premium' runs: off is P2")));
}

TEST(HoseOrder, OneOfTheFileHasItsPlace) {
  const std::string text = site_text("site-s") + "\n[flow]\norder = [\"D2.a\", \"D2.a\"]\n";
  const auto problems = check_options(station(text), asking());
  ASSERT_EQ(problems.size(), 1U);
  ASSERT_TRUE(problems.front().where);
  EXPECT_EQ(text.substr(problems.front().where->begin, 6), "\"D2.a\"");
}

TEST(HoseOrder, GoodOnesPass) { EXPECT_TRUE(wrong(site_text("site-s"), asking({"D3.b", "D1.a"})).empty()); }

// ---- blends whose ratio cannot be met -------------------------------------------------------------------

const HoseFlow& hose_in(const FlowResult& result, const std::string& system, const std::string& id) {
  for (const SystemFlow& s : result.states.front().systems) {
    for (const HoseFlow& hose : s.hoses) {
      if (s.system == system && hose.id == id) return hose;
    }
  }
  ADD_FAILURE() << "no hose " << id;
  return result.states.front().systems.front().hoses.front();
}

TEST(BlendRatio, HoseWithoutOneOfItsProductsGivesNothingAndIsTold) {
  FlowOptions options = asking();
  options.open_sets = {{"two", {"D1.middle-a", "D1.regular-a"}}};
  const FlowResult result = study_flow(station(with(site_text("marle-cross"), "pump.P3.running", "false")), options);
  for (const char* system : {"regular", "premium"}) {
    const HoseFlow& middle = hose_in(result, system, "D1.middle-a");
    EXPECT_TRUE(middle.open);
    EXPECT_FALSE(middle.ratio_met);
    EXPECT_EQ(middle.share_reached, 0.0);
    EXPECT_EQ(middle.hose_flow, 0.0);
  }
  EXPECT_GT(hose_in(result, "regular", "D1.regular-a").flow, 0.0);
  const auto told = std::find_if(result.warnings.begin(), result.warnings.end(), [](const Diagnostic& d) {
    return d.message.find("cannot keep the ratio regular 60 % + premium 40 %: no pump of 'premium' runs: off is P3") !=
           std::string::npos;
  });
  ASSERT_NE(told, result.warnings.end());
  EXPECT_TRUE(told->where);
  EXPECT_EQ(result.ladders.front().system, "regular");  // what is left, without the blended hoses
  EXPECT_EQ(result.ladders.front().steps.size(), 12U);
}

TEST(BlendRatio, ShareReachedIsTheShareAskedForWhereBothFlow) {
  const FlowResult result = study_flow(station(site_text("marle-cross")), asking());
  EXPECT_NEAR(*hose_in(result, "regular", "D1.middle-a").share_reached, 0.6, 1e-8);  // the rounds agree to 1e-9
  EXPECT_NEAR(*hose_in(result, "premium", "D1.middle-a").share_reached, 0.4, 1e-8);
  EXPECT_TRUE(hose_in(result, "premium", "D1.middle-a").ratio_met);
}

}  // namespace
}  // namespace forecourse::studies
