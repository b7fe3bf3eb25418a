// SOURCE: [spearman_1904, by its definition] ranks by hand; [hyndman_fan_1996, definition 7] quantiles by hand
#include "forecourse/studies/incident/spread/spread.h"

#include <gtest/gtest.h>

#include <cmath>
#include <thread>

#include "forecourse/studies/incident/spread/ranks.h"
#include "studies/incident/incident_ground.h"

namespace forecourse::studies {
namespace {

using test::IncidentGround;
using test::site_text;

TEST(IncidentSpread, RankCorrelationByHand) {
  EXPECT_NEAR(rank_correlation({1.0, 2.0, 3.0, 4.0, 5.0}, {2.0, 1.0, 4.0, 3.0, 5.0}), 0.8, 1e-12);  // 1 - 6*4/120
  EXPECT_NEAR(rank_correlation({1.0, 10.0, 100.0}, {3.0, 2.0, 1.0}), -1.0, 1e-12);
  EXPECT_EQ(rank_correlation({1.0, 2.0}, {5.0, 5.0}), 0.0);
}

TEST(IncidentSpread, QuantilesByHand) {
  const std::vector<double> sorted{1.0, 2.0, 3.0, 4.0};
  EXPECT_NEAR(quantile(sorted, 0.5), 2.5, 1e-15);
  EXPECT_NEAR(quantile(sorted, 0.25), 1.75, 1e-15);
  EXPECT_NEAR(quantile(sorted, 1.0), 4.0, 1e-15);
}

IncidentGround uncertain() {
  std::string text = site_text("site-s");
  const std::string stop = "stop_at = \"45 s\"";
  text.replace(text.find(stop), stop.size(), "stop_at = { low = \"20 s\", likely = \"45 s\", high = \"180 s\" }");
  IncidentGround ground(text, IncidentKind::struck, "D3");
  ground.options.runs = 2000;
  ground.options.seed = 7;
  return ground;
}

const std::set<Barrier> unguarded{Barrier::shear_valve, Barrier::sump_sensor};

TEST(IncidentSpread, OneThreadAndTwoGiveTheSame) {
  const IncidentGround ground = uncertain();
  Context two;
  two.parallel_for = [](std::size_t count, const std::function<void(std::size_t)>& piece) {
    std::jthread half([&] {
      for (std::size_t i = 1; i < count; i += 2) piece(i);
    });
    for (std::size_t i = 0; i < count; i += 2) piece(i);
  };
  const IncidentSpread a = incident_spread(ground.scene(), unguarded, {});
  const IncidentSpread b = incident_spread(ground.scene(), unguarded, two);
  EXPECT_EQ(a.failed, 0U);
  EXPECT_EQ(a.mean, b.mean);
  EXPECT_EQ(a.quantiles, b.quantiles);
}

/// What escapes is steady flow times the time of the stop, nearly: it ranks as that time does, and its median is that
/// of a triangular draw.
TEST(IncidentSpread, TheStopMattersMost) {
  const IncidentGround ground = uncertain();
  const IncidentSpread spread = incident_spread(ground.scene(), unguarded, {});
  ASSERT_FALSE(spread.weights.empty());
  EXPECT_EQ(spread.weights.front().what, "when the pumps are stopped");
  EXPECT_GT(spread.weights.front().rank_correlation, 0.999);
  EXPECT_FALSE(spread.mainly_illustrative);
  const double flow = ground.run(unguarded).steady_flow;
  const double median = 180.0 - std::sqrt(0.5 * 160.0 * 135.0);  // of the triangle 20, 45, 180
  const double others = 0.9 * cubic_meters_from_gallons(1.0);
  // Half of 2000 draws: the median's own error is about 2 % of its value here.
  EXPECT_NEAR(spread.quantiles[2], flow * median + others, 0.05 * flow * median);
}

TEST(IncidentSpread, AnotherSeedAnotherDraw) {
  IncidentGround ground = uncertain();
  const double a = incident_spread(ground.scene(), unguarded, {}).mean;
  ground.options.seed = 8;
  EXPECT_NE(incident_spread(ground.scene(), unguarded, {}).mean, a);
}

}  // namespace
}  // namespace forecourse::studies
