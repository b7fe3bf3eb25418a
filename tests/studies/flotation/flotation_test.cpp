// SOURCE: [flotation_permit_1999, pages 6 and 8] by the rows BUOY of the check values; else closed forms.
#include "forecourse/studies/flotation/flotation.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "forecourse/studies/flotation/shells.h"
#include "support/check_values.h"
#include "support/stations.h"

namespace forecourse::studies {
namespace {

using test::agrees;
using test::row;
using test::station;
using test::with;

constexpr double foot = 0.3048;                  // [m]
constexpr double pound_force = 4.4482216152605;  // [N]

/// The tank of the permit record as a station.
const std::string permit = R"(format = 1
[[product]]
id = "regular"
density = "740 kg/m3"
viscosity = "0.5 mPa.s"
[[tank]]
id = "T1"
product = "regular"
surface_elevation = "-8 ft"
shape = { kind = "horizontal-cylinder", outside_diameter = "7.83 ft", length = "6.25 ft", heads = "flat" }
  [tank.flotation]
  empty_mass = "4400 lb"
  cover = "3 ft"
  water_level = "0 ft"
  water = "62.4 lbf/ft3"
  backfill = "120 lbf/ft3"
  soil_beside_crown = true
  rupture_slope = 0.25
  rupture_from = "bottom"
  factor = 1.2
  slab = { thickness = "0.67 ft", density = "150 lb/ft3", length = "12 ft", width = "13 ft" }
  sump = [{ diameter = "3.5 ft", mass = "0 lb" }]
  deadman = [{ count = 2, length = "6.25 ft", width = "1 ft", height = "1 ft", unit_weight = "150 lbf/ft3", soil_prism = false }]
)";

TankFlotation of(const std::string& text, const FlotationOptions& options = {}) {
  const FlotationResult result = study_flotation(station(text), options);
  EXPECT_TRUE(result.errors.empty());
  return result.tanks.at(0);
}

const BodyTold& body(const FlotationState& state, const std::string& name) {
  for (const BodyTold& one : state.bodies) {
    if (one.name == name) return one;
  }
  throw std::out_of_range(name);
}

TEST(FlotationStudy, ReproducesThePermitRecord) {
  const TankFlotation tank = of(permit);
  ASSERT_TRUE(tank.empty.has_value());
  const double kip = 1000.0 * pound_force;
  EXPECT_TRUE(agrees(row("BUOY-BF"), tank.empty->buoyant_force / kip, {0.5, 0.0}));
  EXPECT_TRUE(agrees(row("BUOY-VPG"), body(*tank.empty, "backfill").volume / std::pow(foot, 3.0), {1.0, 0.0}));
  EXPECT_TRUE(agrees(row("BUOY-WPG"), body(*tank.empty, "backfill").submerged_weight / kip, {0.5, 0.0}));
  EXPECT_TRUE(agrees(row("BUOY-WDM"), body(*tank.empty, "deadmen").submerged_weight / kip, {0.01, 0.0}));
  EXPECT_TRUE(agrees(row("BUOY-HD2"), tank.empty->factors.hold_down.value(), {0.01, 0.0}));
  EXPECT_TRUE(agrees(row("BUOY-HD1"), tank.empty->without_deadmen.value(), {0.001, 0.0}));
}

/// With soil over the crown only, each weight is a product of sizes: closed form.
TEST(FlotationStudy, WithoutSoilBesideTheCrownCountsTheBlockOverIt) {
  std::string text = with(permit, "tank.T1.flotation.soil_beside_crown", "false");
  const TankFlotation tank = of(text);
  const double block = 6.25 * 7.83 * 3.0;                        // [ft3] over the crown
  const double sump = std::numbers::pi / 4.0 * 3.5 * 3.5 * 3.0;  // through all of it
  const double slab = (6.25 * 7.83 - sump / 3.0) * 0.67;         // what of it lies over the tank
  EXPECT_NEAR(body(*tank.empty, "backfill").volume / std::pow(foot, 3.0), block - sump - slab, 1e-9);
  EXPECT_LT(tank.empty->factors.hold_down.value(), of(permit).empty->factors.hold_down.value());
}

/// Factor 1 is where the weight in air is that of the displaced water: law of nature.
TEST(FlotationStudy, AnEmptyTankInTheOpenHoleLiftsAtItsOwnWeight) {
  const TankFlotation tank = of(permit);
  const parts::TankVolume shell(parts::RoundTank{7.83 * foot, 6.25 * foot, {}, {}, 0.0});
  const double displaced = shell.volume(tank.open_hole.lifts_at.value());
  EXPECT_NEAR(displaced * tank.water, 4400.0 * pound_force, 1e-6 * 4400.0 * pound_force);
  EXPECT_NEAR(tank.open_hole.ballast_weight, tank.water * tank.outside_volume - 4400.0 * pound_force, 1e-6);
}

TEST(FlotationStudy, MissingWeightAddedReachesTheFactorWanted) {
  FlotationOptions options;
  options.factor = 2.0;
  const TankFlotation tank = of(permit, options);
  ASSERT_GT(tank.empty->missing_weight.value(), 0.0);
  options.filled = tank.empty->missing_contents.value();
  ASSERT_LT(*options.filled, tank.capacity);
  EXPECT_NEAR(of(permit, options).filled->factors.hold_down.value(), 2.0, 1e-9);
}

/// Deadmen hold no more than their straps do: closed form.
TEST(FlotationStudy, StrapsBoundWhatTheDeadmenHold) {
  const double deadmen = 1095.0 * pound_force;  // as the record has them, submerged
  const TankFlotation strong = of(permit + "  strap = { count = 2, working_load = \"600 lbf\" }\n");
  EXPECT_NEAR(strong.empty->hold_down_force, of(permit).empty->hold_down_force, 1e-6);
  const TankFlotation weak = of(permit + "  strap = { count = 2, working_load = \"300 lbf\" }\n");
  EXPECT_NEAR(strong.empty->hold_down_force - weak.empty->hold_down_force, deadmen - 600.0 * pound_force, 0.01);
  EXPECT_NEAR(weak.empty->without_deadmen.value(), strong.empty->without_deadmen.value(), 1e-12);
}

TEST(FlotationStudy, TheFactorFallsAsTheWaterRises) {
  const TankFlotation tank = of(permit);
  for (std::size_t i = 1; i < tank.by_level.size(); ++i) {
    const auto &high = tank.by_level[i - 1].empty, &low = tank.by_level[i].empty;
    if (high && low) {
      EXPECT_LT(*high, *low) << tank.by_level[i].water_level;
    }
  }
  EXPECT_FALSE(tank.by_level.back().empty.has_value());  // water at the underside
  EXPECT_FALSE(tank.lifts_at.has_value());               // held down by more than 1 everywhere
}

TEST(FlotationStudy, TheLevelOfAFactorHasThatFactor) {
  FlotationOptions options;
  options.factor = 1.6;
  const double level = of(permit, options).keeps_to.value();
  options.water_level = level;
  EXPECT_NEAR(of(permit, options).empty->factors.hold_down.value(), 1.6, 1e-6);
}

TEST(FlotationStudy, OfASpreadTheHighestWaterCounts) {
  std::string text = permit;
  const std::string level = "water_level = \"0 ft\"";
  text.replace(text.find(level), level.size(), "water_level = { low = \"1 ft\", likely = \"3 ft\", high = \"6 ft\" }");
  EXPECT_NEAR(of(text).water_level.value(), 1.0 * foot, 1e-12);
}

TEST(FlotationStudy, SoilAboveTheWaterWeighsMore) {
  FlotationOptions deep;
  deep.water_level = 2.0 * foot;
  const BodyTold wet = body(*of(permit).empty, "backfill"), dry = body(*of(permit, deep).empty, "backfill");
  EXPECT_NEAR(wet.volume, dry.volume, 1e-12);
  EXPECT_GT(dry.submerged_weight, wet.submerged_weight);
}

site::Tank walled_tank(const char* heads) {
  const auto length = [](double meters) {
    return site::Entered<Length>{Length::from_si(meters), Length::from_si(meters), Length::from_si(meters), {}};
  };
  site::Tank tank;
  tank.shape.emplace();
  tank.shape->kind.text = "horizontal-cylinder";
  tank.shape->outside_diameter = length(2.0);
  tank.shape->inside_diameter = length(1.9);
  tank.shape->length = length(3.0);
  tank.shape->heads.text = heads;
  return tank;
}

/// A pair of half balls is a ball: closed form. Flat heads add their walls to the length.
TEST(FlotationStudy, DisplacesHeadsAndWallsToo) {
  const double circle = std::numbers::pi;  // of radius 1
  EXPECT_NEAR(shells_of(walled_tank("flat"))->outside.capacity(), circle * 3.1, 1e-11);
  EXPECT_NEAR(shells_of(walled_tank("hemispherical"))->outside.capacity(), circle * (3.0 + 4.0 / 3.0), 1e-10);
  site::Tank box = walled_tank("flat");
  box.shape->kind.text = "rectangular";
  EXPECT_FALSE(shells_of(box).has_value());
}

/// A wall of even thickness t about a surface S adds S t + O(t2), whatever the heads: law of geometry.
TEST(FlotationStudy, EveryHeadGrowsByTheWall) {
  for (const char* heads : {"dished", "hemispherical"}) {
    const Shells shells = shells_of(walled_tank(heads)).value();
    const double inside = shells.inside->capacity(), outside = shells.outside.capacity();
    const double surface = shells.inside->wetted_area(shells.inside->full_level()).value();
    EXPECT_NEAR(outside - inside, surface * shells.wall, 0.06 * (outside - inside)) << heads;  // t / R is 0.05
    EXPECT_GT(outside - inside, surface * shells.wall) << heads;  // a convex body grows by more
  }
}

TEST(FlotationStudy, WhatIsMissingIsNamed) {
  std::string text = permit;
  text.erase(text.find("  empty_mass"), text.find("  cover") - text.find("  empty_mass"));
  const TankFlotation tank = of(text);
  ASSERT_EQ(tank.problems.size(), 1U);
  EXPECT_NE(tank.problems.front().find("flotation.empty_mass"), std::string::npos);
  EXPECT_FALSE(tank.worst.has_value());
}

TEST(FlotationStudy, ATankThatIsNotThereIsAnError) {
  FlotationOptions options;
  options.tank = "T2";
  const FlotationResult result = study_flotation(station(permit), options);
  ASSERT_EQ(result.errors.size(), 1U);
  EXPECT_EQ(result.errors.front().hint, "did you mean 'T1'?");
}

}  // namespace
}  // namespace forecourse::studies
