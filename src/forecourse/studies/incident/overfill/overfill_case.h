#pragma once

#include <limits>
#include <optional>

#include "forecourse/parts/tank/tank_volume.h"
#include "forecourse/studies/incident/release/balance.h"

namespace forecourse::studies::overfilling {

inline constexpr double never = std::numeric_limits<double>::infinity();

/// A drop into a tank that has too little room, as numbers. All SI; levels and heights above the lowest point of the
/// tank's inside.
struct Case {
  std::optional<parts::TankVolume> tank;  ///< always there in a case that is run
  double in_tank = 0.0;                   ///< [m3] when the drop begins
  double in_truck = 0.0;                  ///< [m3]
  double in_hose = 0.0;                   ///< [m3] when it is full
  double truck_area = 0.0;                ///< [m2] of its surface, seen from above
  double truck_bottom = 0.0;              ///< [m] of its compartment
  double rate = 0.0;                      ///< [m3/s] above 0: given, whatever the heights
  double fixed_head = 0.0;                ///< [m] above 0: between the surfaces, which do not move
  double outlet = 0.0;            ///< [m] where fuel comes out of the fill of a full tank; below the top: at the top
  release::Opening way;           ///< from truck to tank, by gravity
  double density = 0.0;           ///< [kg/m3]
  double restricts_at = never;    ///< [m] level
  double closes_at = never;       ///< [m] level
  double restricted = 0.0;        ///< [m3/s] between the two
  double closed = 0.0;            ///< [m3/s] when shut
  double valve_dead = 0.0;        ///< [s] until when the valve does nothing
  double alarm_at = never;        ///< [m] level
  double alarm_dead = 0.0;        ///< [s] until when the alarm does nothing
  bool hears_alarm = false;       ///< the driver, at the fill
  double driver_acts_in = never;  ///< [s] after the alarm, or after the valve restricts where there is none
  double driver_dead = 0.0;       ///< [s] until when the driver does nothing
  bool disconnects_full = false;  ///< the driver takes off a hose that is still full
  double container = 0.0;         ///< [m3] that the spill container holds
  double stop_at = never;         ///< [s] somebody stops it
  double drains_in = 0.0;         ///< [s] in which a hose drains into a tank that takes it, where heights are not known
  double end = 3600.0;            ///< [s]
};

}  // namespace forecourse::studies::overfilling
