#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/parts/ground/flotation.h"
#include "forecourse/parts/ground/soil_prism.h"
#include "forecourse/studies/flotation/flotation.h"
#include "forecourse/studies/flotation/shells.h"

namespace forecourse::studies {

/// Something with upright walls in the ground.
struct Block {
  std::string name;
  double area = 0.0;         ///< seen from above, of all of its kind [m2]
  parts::Layer layer;        ///< depths [m]
  double unit_weight = 0.0;  ///< [N/m3]
};

/// Unit weights of the backfill [N/m3].
struct Backfill {
  double moist = 0.0;      ///< above the water
  double submerged = 0.0;  ///< under water
};

/// What the water lifts and what holds it down, ready for any level of the water and any filling.
struct BuriedTank {
  Shells shells;
  double crown = 0.0;                     ///< depth below grade [m]
  double weight = 0.0;                    ///< of the empty tank with its fittings [N]
  double water = 0.0;                     ///< unit weight of the water [N/m3]
  double contents = 0.0;                  ///< unit weight of what it is filled with [N/m3]
  std::optional<Backfill> backfill = {};  ///< empty: no soil counts
  parts::SoilPrism prism = {};
  bool beside_crown = false;                       ///< the prism begins below the crown
  std::vector<parts::TakenOut> out_of_prism = {};  ///< of the soil between the planes
  std::vector<Block> sumps = {};                   ///< lifted; their unit weight over their whole volume
  std::vector<Block> concrete = {};                ///< slab
  std::vector<Block> soil_blocks = {};             ///< soil over a buried slab
  std::vector<Block> deadmen = {};
  std::vector<Block> deadman_soil = {};
  std::optional<double> strap_capacity = {};  ///< working loads of all straps [N]; empty: not known

  [[nodiscard]] double bottom() const { return crown + shells.diameter; }
};

/// A tank as entered, or what is missing. What can be left out without harm is told in `out.left_out`.
[[nodiscard]] std::optional<BuriedTank> buried_tank(const site::Site& site, const site::Tank& tank, TankFlotation& out,
                                                    std::vector<DefaultUsed>& defaults);

/// Every entry of the balance at a level of the water with a filling.
[[nodiscard]] std::vector<BodyTold> bodies_at(const BuriedTank& tank, double water_level, double filled,
                                              bool with_deadmen = true);

/// The same as the laws take it.
[[nodiscard]] std::vector<parts::Body> laws_of(const std::vector<BodyTold>& bodies);

/// Hold-down factor; empty where no water reaches what it could lift.
[[nodiscard]] std::optional<double> hold_down_factor(const BuriedTank& tank, double water_level, double filled,
                                                     bool with_deadmen = true);

}  // namespace forecourse::studies
