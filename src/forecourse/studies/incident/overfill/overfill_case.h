#pragma once

#include <limits>

#include "forecourse/parts/tank/level_volume.h"
#include "forecourse/studies/incident/release/balance.h"

namespace forecourse::studies::overfilling {

inline constexpr double never = std::numeric_limits<double>::infinity();

/// A drop into a tank that has too little room, as numbers. All SI.
struct Case {
  parts::TankShape tank;
  double in_tank = 0.0;           ///< [m3] when the drop begins
  double in_truck = 0.0;          ///< [m3]
  double in_hose = 0.0;           ///< [m3] when it is full
  double truck_area = 0.0;        ///< [m2] of its surface, seen from above
  double truck_bottom = 0.0;      ///< [m] of its compartment above the tank's bottom
  double rate = 0.0;              ///< [m3/s] above 0: given, whatever the heights
  release::Opening way;           ///< from truck to tank, by gravity
  double density = 0.0;           ///< [kg/m3]
  double restricts_at = never;    ///< [m] depth
  double closes_at = never;       ///< [m] depth
  double restricted = 0.0;        ///< [m3/s] between the two
  double closed = 0.0;            ///< [m3/s] when shut
  double alarm_at = never;        ///< [m] depth
  double driver_acts_in = never;  ///< [s] after the alarm, or after the valve restricts where there is none
  bool hears_alarm = false;
  bool disconnects_full = false;  ///< the driver takes off a hose that is still full
  double container = 0.0;         ///< [m3] that the spill container holds
  double stop_at = never;         ///< [s] somebody stops it
  double drains_in = 20.0;        ///< [s] in which a hose drains into a tank that takes it
  double end = 3600.0;            ///< [s]
};

}  // namespace forecourse::studies::overfilling
