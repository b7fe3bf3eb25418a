// What becomes of a site's parts: which are there, which defaults come in, what is missing.
// SOURCE: common practice, no source
#include "forecourse/network/build.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "forecourse/network/run_laws.h"
#include "forecourse/site/edit.h"
#include "forecourse/site/read.h"
#include "support/stations.h"

namespace forecourse::network {
namespace {

using test::site_text;
using test::station;
using test::with;
using testing::HasSubstr;

const Run& run_of(const PipingSystem& system, const std::string& id, RunKind kind) {
  return *std::find_if(system.runs.begin(), system.runs.end(),
                       [&](const Run& run) { return run.id == id && run.kind == kind; });
}

std::vector<ElementKind> kinds_of(const Run& run) {
  std::vector<ElementKind> kinds;
  for (const Element& element : run.elements) kinds.push_back(element.kind);
  return kinds;
}

bool has_default(const StationNetwork& network, const std::string& what) {
  return std::any_of(network.defaults.begin(), network.defaults.end(),
                     [&](const DefaultUsed& used) { return used.what == what; });
}

TEST(BuildNetwork, SiteSIsOneSystemOfRunsInSeries) {
  const StationNetwork network = build_network(station(site_text("site-s")));
  ASSERT_EQ(network.systems.size(), 1U);
  const PipingSystem& system = network.systems.front();
  EXPECT_EQ(system.id, "regular");
  EXPECT_TRUE(system.problems.empty());
  EXPECT_EQ(system.hoses.size(), 6U);
  EXPECT_FALSE(system.elevations_known);
  EXPECT_EQ(kinds_of(run_of(system, "D1.regular", RunKind::riser)), std::vector{ElementKind::riser});
  EXPECT_EQ(kinds_of(run_of(system, "D1.a", RunKind::hose)), std::vector{ElementKind::hose_set});
}

TEST(BuildNetwork, EnteredPropertiesAndLossesNeedNoDefault) {
  EXPECT_TRUE(build_network(station(site_text("site-s"))).defaults.empty());
}

TEST(BuildNetwork, PartNotListedAddsNothing) {
  const PipingSystem system = build_network(station(site_text("truck-lane"))).systems.front();
  for (const network::Run& run : system.runs) EXPECT_NE(run.kind, RunKind::riser);
}

TEST(BuildNetwork, EnteredRiserLossCoversTeeAndShearValve) {
  std::string text = with(site_text("site-s"), "dispenser.D1.inlet.regular.shear_valve", "{ poppet = \"double\" }");
  EXPECT_EQ(kinds_of(run_of(build_network(station(text)).systems.front(), "D1.regular", RunKind::riser)),
            std::vector{ElementKind::riser});
}

TEST(BuildNetwork, ListedPartsTakeTheShelfsLossAndSaySo) {
  const StationNetwork network = build_network(station(site_text("marle-cross")));
  const PipingSystem& regular = network.systems.front();
  EXPECT_EQ(kinds_of(run_of(regular, "D6.regular", RunKind::riser)),
            (std::vector{ElementKind::connection, ElementKind::riser, ElementKind::shear_valve, ElementKind::filter}));
  EXPECT_TRUE(has_default(network, "loss of shear valve of D6.regular (illustrative-shear-valve)"));
  EXPECT_TRUE(has_default(network, "loss of connection of D6.regular (tee-branch)"));
  EXPECT_TRUE(has_default(network, "bore of riser of D6.regular (schedule-40-one-and-a-half-inch)"));
}

TEST(BuildNetwork, BlendedHoseStandsInTheSystemOfEachProduct) {
  const StationNetwork network = build_network(station(site_text("marle-cross")));
  double shares = 0.0;
  int parts = 0;
  for (const PipingSystem& system : network.systems) {
    for (const HosePoint& hose : system.hoses) {
      if (hose.id != "D1.middle-a") continue;
      shares += hose.share;
      ++parts;
      EXPECT_EQ(system.runs[static_cast<std::size_t>(hose.run)].elements.front().flow_factor, 1.0 / hose.share);
    }
  }
  EXPECT_EQ(parts, 2);
  EXPECT_DOUBLE_EQ(shares, 1.0);
}

struct MissingCase {
  const char* path;
  const char* message;
};

class Missing : public testing::TestWithParam<MissingCase> {};

TEST_P(Missing, MakesItsSystemNotDetermined) {
  const auto removed = site::remove_value(site_text("thornby"), GetParam().path);
  ASSERT_TRUE(removed.ok());
  const Parsed<site::Site> read = site::read_site(removed.value);
  const StationNetwork network = build_network(read.value);
  ASSERT_FALSE(network.systems.empty());
  EXPECT_EQ(network.systems.front().graph, nullptr);
  ASSERT_FALSE(network.systems.front().problems.empty());
  EXPECT_THAT(network.systems.front().problems.front().message, HasSubstr(GetParam().message));
  EXPECT_FALSE(network.systems.front().problems.front().hint.empty());
}

INSTANTIATE_TEST_SUITE_P(
    Inputs, Missing,
    testing::Values(MissingCase{"line.line.bore", "has no bore"}, MissingCase{"pump.P1.curve", "has no curve"},
                    MissingCase{"tank.T1.reading", "level in tank 'T1' is not known"},
                    MissingCase{"dispenser.D1.hose.D1.a.outlet_elevation", "how high the nozzle of hose 'D1.a'"}));

TEST(BuildNetwork, LineWithoutLengthTakesThePlansAndSaysSo) {
  const auto removed = site::remove_value(site_text("thornby"), "line.line.length");
  ASSERT_TRUE(removed.ok());
  const std::string text = with(removed.value, "pump.P1.position", "[\"0 m\", \"0 m\"]");
  EXPECT_TRUE(has_default(build_network(station(text)), "length of line line"));
}

TEST(RunLaws, GatheredLawsGiveWhatTheElementsGive) {
  for (const char* name : {"site-s", "thornby", "marle-cross"}) {
    for (const PipingSystem& system : build_network(station(site_text(name))).systems) {
      const RunLaws laws(system);
      for (std::size_t r = 0; r < system.runs.size(); ++r) {
        for (const double flow : {-1e-4, 0.0, 1e-6, 4e-4, 3e-3}) {
          parts::Loss sum;
          for (const Element& element : system.runs[r].elements) sum = sum + loss(element, flow);
          const solvers::EdgeLoss gathered = laws.loss(static_cast<int>(r), flow);
          // rounding of a sum in another order
          EXPECT_NEAR(gathered.loss, sum.pressure_loss, 1e-12 * (1.0 + std::abs(sum.pressure_loss)));
          EXPECT_NEAR(gathered.slope, sum.slope, 1e-12 * (1.0 + sum.slope));
        }
      }
    }
  }
}

}  // namespace
}  // namespace forecourse::network
