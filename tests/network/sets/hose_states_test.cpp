// Groups of hoses, and their states set by set against the solvers of one state.
// SOURCE: common practice, no source
#include "forecourse/network/sets/hose_states.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/network/build.h"
#include "support/stations.h"

namespace forecourse::network {
namespace {

using test::site_text;
using test::station;
using test::with;
using testing::ElementsAre;

TEST(HoseGroups, BlendedHosesTieTheirSystemsTogether) {
  const StationNetwork network = build_network(station(site_text("marle-cross")));
  const std::vector<HoseGroup> groups = hose_groups(network);
  ASSERT_EQ(groups.size(), 2U);
  EXPECT_EQ(groups[0].id, "regular + premium");
  EXPECT_EQ(groups[0].hoses.size(), 36U);
  EXPECT_EQ(groups[0].equal.size(), 18U);  // both sides of each dispenser alike
  EXPECT_FALSE(groups[0].opening_never_raises());
  EXPECT_EQ(groups[1].id, "diesel");
  EXPECT_TRUE(groups[1].opening_never_raises());
}

TEST(HoseGroups, ProductWithoutARunningPumpLeavesTheOthersOnTheirOwn) {
  const StationNetwork network = build_network(station(with(site_text("marle-cross"), "pump.P3.running", "false")));
  const std::vector<HoseGroup> groups = hose_groups(network);
  ASSERT_EQ(groups.size(), 2U);
  EXPECT_EQ(groups[0].id, "regular");
  EXPECT_EQ(groups[0].hoses.size(), 12U);  // no blended hose: it could not keep its ratio
}

TEST(HoseGroups, HosesOfOneDispenserAreEqualUntilOneValueDiffers) {
  EXPECT_THAT(hose_groups(build_network(station(site_text("site-s")))).front().equal,
              ElementsAre(ElementsAre(0U, 1U), ElementsAre(2U, 3U), ElementsAre(4U, 5U)));
  for (const char* change : {"loss", "lift", "limiter"}) {
    const char* value = std::string(change) == "loss"   ? "0.18 psi/gpm^2"
                        : std::string(change) == "lift" ? "12.1 ft"
                                                        : "11 gpm";
    const std::string text = with(site_text("site-s"), std::string("dispenser.D2.hose.D2.b.") + change, value);
    const StationNetwork network = build_network(station(text));
    EXPECT_EQ(hose_groups(network).front().equal.size(), 4U) << change;
  }
}

/// Flows of every hose for some sets, against the station's solver for each.
void expect_as_one_by_one(const std::string& site, const std::vector<HoseSet>& sets) {
  const StationNetwork network = build_network(station(site_text(site)));
  StationSolver solver(network);
  for (const HoseGroup& group : hose_groups(network)) {
    SetStates states;
    HoseStates(group).solve(sets, states);
    for (std::size_t i = 0; i < sets.size(); ++i) {
      std::vector<std::string> open;
      for (std::size_t h = 0; h < group.hoses.size(); ++h) {
        if ((sets[i] >> h & 1U) != 0) open.push_back(group.hoses[h].id);
      }
      const StationState expected = solver.solve(open);
      ASSERT_EQ(states.solved[i], 1);
      for (std::size_t h = 0; h < group.hoses.size(); ++h) {
        double flow = 0.0;
        for (const HosePart& part : group.hoses[h].parts) {
          const auto system = static_cast<std::size_t>(group.systems[part.system] - network.systems.data());
          flow += expected.systems[system].flow[static_cast<std::size_t>(group.point(part).run)];
        }
        // Both accept residuals of 1e-12 m3/s at a place.
        EXPECT_NEAR(states.hose_flow[i * group.hoses.size() + h], flow, 2e-12) << group.hoses[h].id;
      }
    }
  }
}

TEST(HoseStates, BatchedAreTheStatesOfEachSet) { expect_as_one_by_one("hollin-gap", {0, 1, 0b1010, 0xF, 0xFF}); }

TEST(HoseStates, BlendedAreTheStatesOfEachSet) {
  expect_as_one_by_one("marle-cross", {0, 3, 0x5A5A5A5AULL, 0xFFFFFFFFFULL, 3});
}

TEST(StationSolver, BlendSettlesWhereItsProductsTakeTurnsAsTheLeast) {
  // 31 hoses of Marle Cross: at one of the blended hoses both products can give almost the same.
  const StationNetwork network = build_network(station(site_text("marle-cross")));
  StationSolver solver(network);
  std::vector<std::string> open;
  for (const char* d : {"D1", "D2", "D3", "D4", "D5", "D6"}) {
    for (const char* side : {"a", "b"}) {
      for (const char* product : {"regular", "middle", "premium"}) {
        const bool last = std::string(product) == "premium" && std::string(side) == "b" && d[1] > '1';
        if (!last) open.push_back(std::string(d) + "." + product + "-" + side);
      }
    }
  }
  const StationState state = solver.solve(open);
  EXPECT_TRUE(state.blends_agree);
  EXPECT_LT(state.blend_rounds, 30);
}

}  // namespace
}  // namespace forecourse::network
