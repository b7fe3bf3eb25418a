#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/base/default_used.h"
#include "forecourse/base/diagnostic.h"
#include "forecourse/site/site.h"

namespace forecourse::studies {

struct FlotationOptions {
  std::string tank;                   ///< id; empty: every tank of which something is entered under `flotation`
  std::optional<double> water_level;  ///< depth of the ground water below grade [m], >= 0; wins over the site file
  std::optional<double> filled;       ///< in the tank [m3], >= 0; empty: only the empty tank
  std::optional<double> factor;       ///< wanted [1], > 0; wins over the site file
};

/// One entry of the balance of forces at one level of the water.
struct BodyTold {
  std::string name;               ///< "tank", "slab", "backfill"
  double volume = 0.0;            ///< outside [m3]
  double submerged = 0.0;         ///< of it below the water [m3]
  double weight = 0.0;            ///< in air, soil below water saturated [N]
  double submerged_weight = 0.0;  ///< weight less that of the water displaced [N]
  double room = 0.0;              ///< empty room in it below the water [m3]
  bool lifted = false;            ///< the water lifts it; else it holds down
};

/// The safety factor by three definitions (parts/ground/flotation.h); empty where one has nothing to divide by.
struct FactorsTold {
  std::optional<double> hold_down;
  std::optional<double> total;
  std::optional<double> submerged;
};

/// A tank with one filling at one level of the water.
struct FlotationState {
  double water_level = 0.0;  ///< below grade [m]
  double filled = 0.0;       ///< [m3]
  std::vector<BodyTold> bodies;
  double buoyant_force = 0.0;    ///< [N]
  double hold_down_force = 0.0;  ///< [N]
  FactorsTold factors;
  std::optional<double> without_deadmen;   ///< hold-down factor; empty: there are none, or no water at the tank
  std::optional<double> missing_weight;    ///< [N] to the factor wanted; negative: more than enough
  std::optional<double> missing_contents;  ///< [m3] of ballast in the tank that weighs it; 0: none is missing
  std::optional<bool> contents_fit;        ///< the tank holds that much more
  std::optional<double> deadman_pull;      ///< [N] that the deadmen must take to the factor wanted, else to 1
  std::optional<double> strap_pull;        ///< [N] on one strap
};

/// Hold-down factor at one level of the water; empty where no water reaches the tank.
struct FactorAtLevel {
  double water_level = 0.0;  ///< below grade [m]
  std::optional<double> empty;
  std::optional<double> filled;
};

/// Hold-down factor with one filling.
struct FactorAtFill {
  double filled = 0.0;  ///< [m3]
  double factor = 0.0;
};

/// The tank alone in the open hole, before slab and backfill.
struct OpenHole {
  std::optional<double> lifts_at;   ///< water above the tank's underside at which the empty tank lifts [m]
  double ballast_weight = 0.0;      ///< [N] in the tank so that water over its crown does not lift it; 0: none
  std::optional<double> ballast;    ///< [m3] of it; empty: what it is filled with is not known
  std::optional<bool> ballast_fit;  ///< the tank holds it
};

/// A rectangle of the section across the tank, for a drawing: distances from the axis and depths below grade [m].
struct SectionPiece {
  std::string name;
  double left = 0.0, right = 0.0;
  double top = 0.0, bottom = 0.0;
};

/// What the section across the tank is drawn from [m].
struct FlotationSection {
  double crown = 0.0;     ///< depth below grade
  double diameter = 0.0;  ///< outside
  double prism_base = 0.0;
  double prism_half_width = 0.0;  ///< at its base
  double prism_half_top = 0.0;    ///< at grade
  bool soil_counts = false;
  std::vector<SectionPiece> pieces;  ///< slab, sumps, deadmen
};

struct TankFlotation {
  std::string tank;
  SourceSpan where{};
  std::vector<std::string> problems;    ///< why nothing is computed, and what to enter; empty: it is
  std::vector<std::string> left_out;    ///< what is not counted, and what to enter
  std::vector<std::string> assumed;     ///< what is taken for granted with this tank
  std::optional<double> water_level;    ///< asked for or entered [m]
  std::optional<double> factor_wanted;  ///< [1]
  std::optional<SourceSpan> factor_where;
  double water = 0.0;                      ///< unit weight of the ground water [N/m3]
  double outside_volume = 0.0;             ///< heads included [m3]
  double capacity = 0.0;                   ///< [m3]
  std::optional<double> contents_density;  ///< [kg/m3]
  FlotationSection section;
  std::optional<FlotationState> empty;   ///< at that level
  std::optional<FlotationState> filled;  ///< at that level, where a filling was asked for
  std::optional<FlotationState> worst;   ///< empty, water at grade
  std::vector<FactorAtLevel> by_level;
  std::vector<FactorAtFill> by_fill;  ///< at that level, else with water at grade
  double by_fill_level = 0.0;         ///< [m]
  std::optional<double> lifts_at;     ///< level of the water at which the empty tank lifts [m]; empty: at none
  std::optional<double> keeps_to;     ///< highest level of the water with the factor wanted [m]; empty: at none
  OpenHole open_hole;
  std::optional<double> strap_load;  ///< working load of one strap [N]
  std::optional<int> straps;
  bool has_deadmen = false;
  bool has_strap = false;
};

struct FlotationResult {
  FlotationOptions options;  ///< as used
  std::string version;
  std::vector<TankFlotation> tanks;
  std::vector<DefaultUsed> defaults;
  std::vector<Diagnostic> warnings;
  std::vector<Diagnostic> errors;  ///< of the options: nothing was computed
};

/// What holds buried tanks down against the ground water, and when it does not.
///
/// Of a spread of the water's level the highest level counts; other spreads are taken at their likely value.
/// \error hydrostatics is exact; friction, cohesion and flow of water are left out.
/// \fails a tank of which something needed is not entered has problems and no states; a wrong option is an error
[[nodiscard]] FlotationResult study_flotation(const site::Site& site, const FlotationOptions& options,
                                              const Context& context = {});

}  // namespace forecourse::studies
