#pragma once

#include <limits>
#include <optional>
#include <vector>

#include "forecourse/base/constants.h"
#include "forecourse/parts/path_flow.h"
#include "forecourse/parts/tank/level_curve.h"
#include "forecourse/studies/delivery/model/tank_body.h"

namespace forecourse::studies::delivering {

inline constexpr double never = std::numeric_limits<double>::infinity();

/// A tank that is filled. Levels as those of its body.
struct TankCase {
  TankBody body;
  parts::LevelCurve level;
  double volume = 0.0;         ///< [m3] when the delivery begins
  int space = -1;              ///< of vapor; -1: open to the air
  double tube_end = 0.0;       ///< [m] level of the end of the drop tube
  double covered = never;      ///< [m3] at which its end is covered by two of its diameters
  double restricts = never;    ///< [m3] at which the overfill valve begins to shut
  double closes = never;       ///< [m3] at which it is shut
  double restricted = never;   ///< [m3/s] it lets through between
  double closed = 0.0;         ///< [m3/s] it lets through when shut
  double alarm = never;        ///< [m3]
  bool hears_alarm = false;    ///< the driver, at the fill
  double ninety = never;       ///< [m3]
  double ninety_five = never;  ///< [m3]
  double capacity = 0.0;       ///< [m3]
};

/// One compartment of the truck into one tank.
struct DropCase {
  int tank = 0;
  double volume = 0.0;        ///< [m3] brought
  double density = 0.0;       ///< [kg/m3]
  double rate = 0.0;          ///< [m3/s] above 0: given, whatever the heights
  double fixed_head = 0.0;    ///< [m] above 0: between the surfaces, which do not move
  double truck_bottom = 0.0;  ///< [m] of the liquid in the truck, in levels of the tank
  double truck_area = 1.0;    ///< [m2] of its surface, seen from above
  double in_hose = 0.0;       ///< [m3] in truck pipe and hose when full
  double hose_height = 0.0;   ///< [m] of a full hose, in levels of the tank
  bool height_known = false;  ///< of the hose; else it drains evenly
  double drains_in = 0.0;     ///< [s] then
  parts::PathFlow way;        ///< from truck to tank
};

/// A way for vapor out of a space into the air, and of air into it.
struct VentCase {
  int space = 0;
  parts::PathFlow out, in;
};

/// A way for vapor from one space to another.
struct BranchCase {
  int from = 0, to = 0;
  parts::PathFlow way;
};

/// Vapor above one tank or several that are joined, or in the pipe where branches join.
struct SpaceCase {
  double other_room = 0.0;   ///< [m3] above liquid in tanks that are joined and not filled, or in that pipe
  parts::PathFlow to_truck;  ///< vapor hose; shut: none
};

/// A delivery as numbers.
struct Case {
  std::vector<TankCase> tanks;
  std::vector<DropCase> drops;
  std::vector<VentCase> vents;
  std::vector<BranchCase> branches;
  std::vector<SpaceCase> spaces;
  bool truck_closed = false;                 ///< to the ullage
  double truck_room = 0.0;                   ///< [m3] of vapor in the truck when the delivery begins
  double growth = 1.0;                       ///< volumes of vapor per volume of liquid
  double atmospheric = standard_atmosphere;  ///< [Pa] absolute
  int at_once = 1;
  double change_over = 0.0;       ///< [s]
  double driver_acts_in = never;  ///< [s]
  double stop_at = never;         ///< [s]
  double end = 86400.0;           ///< [s]
};

}  // namespace forecourse::studies::delivering
