// Laws of nature, and ranges held against every corner. SOURCE: common practice, no source
#include "forecourse/studies/flow/spans/spans.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "forecourse/site/uncertain_values.h"
#include "forecourse/studies/flow/spans/ranges.h"
#include "support/stations.h"

namespace forecourse::studies {
namespace {

using site::End;
using test::site_text;
using test::station;
using test::with;

TEST(HoseRanges, AreThoseOfAllCorners) {
  std::string text =
      with(site_text("site-s"), "line.trunk.length", R"({ low = "140 ft", likely = "150 ft", high = "170 ft" })");
  text = with(text, "product.regular.density", R"({ low = "730 kg/m3", likely = "740 kg/m3", high = "750 kg/m3" })");
  text = with(text, "dispenser.D1.hose.D1.a.limiter", R"({ low = "9 gpm", likely = "9.7 gpm", high = "11 gpm" })");
  const site::Site site = station(text);
  const auto values = site::uncertain_values(site);
  const HoseSets sets{{"D1.a", "D1.b", "D2.a", "D3.a"}, {"D1.a"}};
  const auto singles = one_at_a_time(site, std::vector<bool>(values.size(), true), sets, {});
  const Ranges ranges = hose_ranges(site, singles, sets, {});
  ASSERT_EQ(values.size(), 3U);
  std::vector<std::map<std::string, FlowRange>> brute(sets.size());
  for (int corner = 0; corner < 27; ++corner) {
    std::vector<End> ends;
    for (int v = 0, rest = corner; v < 3; ++v, rest /= 3) ends.push_back(static_cast<End>(rest % 3));
    const auto flows = solve_sets(site::at_ends(site, ends), sets);
    for (std::size_t s = 0; s < sets.size(); ++s) {
      for (const auto& [hose, give] : flows[s].hoses) {
        FlowRange& range = brute[s].emplace(hose, FlowRange{give.flow, give.flow}).first->second;
        range.low = std::min(range.low, give.flow);
        range.high = std::max(range.high, give.flow);
      }
    }
  }
  for (std::size_t s = 0; s < sets.size(); ++s) {
    ASSERT_EQ(ranges.sets[s].size(), brute[s].size());
    for (const auto& [hose, range] : brute[s]) {
      EXPECT_NEAR(ranges.sets[s].at(hose).low, range.low, 1e-10) << hose;  // [m3/s] the solver's agreement
      EXPECT_NEAR(ranges.sets[s].at(hose).high, range.high, 1e-10) << hose;
    }
  }
}

TEST(Spans, FullerTankAndHotterFuelDoNotGiveLessAndALoadedFilterNotMore) {
  std::string text = with(site_text("thornby"), "site.ground_temperature",
                          R"({ low = "2 degC", likely = "9 degC", high = "20 degC" })");
  text = with(text, "dispenser.D1.inlet.regular.filter.loaded",
              "{ points = [[\"20 L/min\", \"40 kPa\"], [\"40 L/min\", \"110 kPa\"], [\"60 L/min\", \"200 kPa\"]] }");
  const FlowResult result = study_flow(station(text), {});
  int seen = 0;
  for (const FlowSpan& span : result.spans.sets.front().flows) {
    ASSERT_TRUE(span.at_likely && span.at_high) << span.subject << ": " << span.reason;
    ++seen;
    if (span.kind == SpanKind::filter || span.subject == "line.line.length") {  // lose more at their high
      EXPECT_LT(span.at_high->total, span.at_likely->total);
    } else {
      EXPECT_GT(span.at_high->total, span.at_likely->total);
      EXPECT_LT(span.at_low->total, span.at_likely->total);
    }
  }
  EXPECT_EQ(seen, 4);
}

TEST(Spans, PressureOfTheAirMovesNoFlow) {
  const std::string text = site_text("thornby");
  const FlowResult low = study_flow(station(with(text, "site.altitude", "2000 m")), {});
  const FlowResult none = study_flow(station(text), {});
  EXPECT_EQ(low.states.front().systems.front().total_flow, none.states.front().systems.front().total_flow);
  EXPECT_FALSE(low.spans.margins.front().reason.empty());
}

}  // namespace
}  // namespace forecourse::studies
