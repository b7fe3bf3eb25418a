// SOURCE: [flotation_permit_1999, pages 6 and 8], [fema_p259, appendix C, example C7], [vault_forum, worked vault], by
// the rows BUOY, FEMA and VAULT of the check values.
#include "forecourse/parts/ground/flotation.h"

#include <gtest/gtest.h>

#include <array>
#include <numbers>
#include <vector>

#include "forecourse/parts/ground/soil_prism.h"
#include "support/check_values.h"

namespace forecourse::parts {
namespace {

using test::agrees;
using test::row;

// The examples are in feet and pounds; every law here is homogeneous, so they are held in those.
constexpr double water = 62.4;      // [lbf/ft3] as the examples take it
constexpr double concrete = 150.0;  // [lbf/ft3]

/// The permit record, water at the top of the slab: lengths [ft], weights [lbf].
struct Permit {
  static constexpr double length = 6.25, diameter = 7.83, cover = 3.0;
  SoilPrism prism{length, diameter, 0.25, cover + diameter};
  double sump_area = std::numbers::pi / 4.0 * 3.5 * 3.5;
  double slab = (12.0 * 13.0 - sump_area) * 0.67;
  Layer all{0.0, cover + diameter};

  [[nodiscard]] double tank() const { return cylinder_volume(prism, cover, all); }
  [[nodiscard]] double soil() const {
    const std::array<TakenOut, 2> taken{{{sump_area, 0.0, cover}, {slab / 0.67, 0.0, 0.67}}};
    return prism_volume(prism, all) - tank() - taken_volume(taken, all);
  }
  [[nodiscard]] std::vector<Body> bodies() const {
    const double backfill = 120.0, deadmen = 2.0 * 1.0 * 1.0 * 6.25;
    return {{4400.0, tank(), tank(), true},
            {0.0, sump_area * cover, sump_area * cover, true},
            {slab * concrete, slab, 0.0, false},
            {soil() * backfill, soil(), 0.0, false},
            {deadmen * concrete, deadmen, 0.0, false}};
  }
};

// In thousands of pounds, as printed.
constexpr double kip = 1e3;

TEST(Flotation, OfThePermitRecord) {
  const Permit permit;
  const std::vector<Body> bodies = permit.bodies();
  EXPECT_TRUE(agrees(row("BUOY-BF"), buoyant_force(bodies, water) / kip, {0.5, 0.0}));
  EXPECT_NEAR(buoyant_force(bodies, water), 20580.3, 0.1);  // recomputed in the row's tolerance
  EXPECT_TRUE(agrees(row("BUOY-VPG"), permit.soil(), {1.0, 0.0}));
  EXPECT_NEAR(permit.soil(), 285.370, 1e-3);
  EXPECT_TRUE(agrees(row("BUOY-WPG"), submerged_weight(bodies[3], water) / kip, {0.5, 0.0}));
  EXPECT_TRUE(agrees(row("BUOY-WDM"), submerged_weight(bodies[4], water) / kip, {0.01, 0.0}));
  EXPECT_TRUE(agrees(row("BUOY-HD2"), flotation_factor(bodies, water, FactorKind::hold_down).value(), {0.01, 0.0}));
  const std::vector<Body> without(bodies.begin(), bodies.end() - 1);
  EXPECT_TRUE(agrees(row("BUOY-HD1"), flotation_factor(without, water, FactorKind::hold_down).value(), {0.001, 0.0}));
}

TEST(Flotation, MissingWeightOfTheFloodExample) {
  const double volume = 250.0 * 0.134;  // [ft3], gallons as the example turns them
  const std::vector<Body> tank{{670.0, volume, volume, true}};
  const double weight = missing_weight(tank, water, 1.3);
  EXPECT_TRUE(agrees(row("FEMA-C7-F"), weight, {1.0, 0.0}));
  EXPECT_TRUE(agrees(row("FEMA-C7-V"), weight / (concrete - water), {0.05, 0.0}));
}

TEST(Flotation, OneVaultByThreeDefinitions) {
  const double walls = 340.0, soil = 384.0, room = 256.0;
  const std::vector<Body> vault{{walls * concrete, walls + room, room, true}, {soil * 110.0, soil, 0.0, false}};
  EXPECT_TRUE(agrees(row("VAULT-1"), flotation_factor(vault, water, FactorKind::total).value(), {0.005, 0.0}));
  EXPECT_TRUE(agrees(row("VAULT-2"), flotation_factor(vault, water, FactorKind::submerged).value(), {0.01, 0.0}));
  EXPECT_TRUE(agrees(row("VAULT-3"), flotation_factor(vault, water, FactorKind::hold_down).value(), {0.005, 0.0}));
}

/// Whatever the definition, a body on the point of floating has the factor 1: law of nature.
TEST(Flotation, AllDefinitionsAgreeAtTheVergeOfFloating) {
  const double weight = 1000.0;
  const std::vector<Body> tank{{weight, weight / water, weight / water, true}};
  for (const FactorKind kind : {FactorKind::hold_down, FactorKind::total, FactorKind::submerged})
    EXPECT_NEAR(flotation_factor(tank, water, kind).value(), 1.0, 1e-15);  // rounding
}

TEST(Flotation, WithoutWaterThereIsNoFactor) {
  const std::vector<Body> dry{{1000.0, 0.0, 0.0, true}};
  EXPECT_FALSE(flotation_factor(dry, water, FactorKind::hold_down).has_value());
}

TEST(SoilPrism, IsTheSumOfItsLayers) {
  const SoilPrism prism{5.0, 2.4, 0.3, 3.1};
  const double whole = prism_volume(prism, {0.0, 3.1});
  EXPECT_NEAR(whole, 5.0 * 3.1 * (2.4 + 0.3 * 3.1), 1e-12);  // a trapezoid, closed form
  EXPECT_NEAR(prism_volume(prism, {0.0, 1.2}) + prism_volume(prism, {1.2, 9.0}), whole, 1e-12);
  EXPECT_EQ(prism_volume(prism, {3.1, 9.0}), 0.0);
}

}  // namespace
}  // namespace forecourse::parts
