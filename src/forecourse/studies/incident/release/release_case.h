#pragma once

#include <limits>
#include <optional>
#include <vector>

#include "forecourse/network/escape/feed.h"
#include "forecourse/parts/escape/closing_law.h"

namespace forecourse::studies::release {

inline constexpr double never = std::numeric_limits<double>::infinity();

/// How one broken end lets fuel out. All SI.
struct Opening {
  double weight = 0.0;            ///< [Pa] piezometric pressure at which nothing flows out: weight of its height
  network::FlowTable path;        ///< [Pa] lost from the line's place to the opening, valve open, against flow [m3/s]
  double discharge = 0.0;         ///< [Pa s2/m6] of the opening itself: loss = this q^2
  double valve = 0.0;             ///< [Pa s2/m6] of the open shear valve: what its throttling multiplies
  double inertance = 0.0;         ///< [Pa s2/m3] of the column from place to opening; 0: it follows at once
  double leak_coefficient = 0.0;  ///< [m3/(s Pa^n)] above 0: a crack, q = this (p - weight)^n, and no path
  double leak_exponent = 0.5;     ///< [1]
  double seat_leak = 0.0;         ///< [m3/(s Pa^0.5)] past the shut poppet
  double limit = never;           ///< [m3/s] that a limiter on the way lets through
};

/// What shuts it.
struct Shutting {
  double triggers_at = never;  ///< [s] struck, parted
  parts::ClosingLaw law;       ///< from the trigger on
  double trip_volume = never;  ///< [m3] that must have leaked until a crack trip acts
  double trip_pressure = 0.0;  ///< [Pa] piezometric that the line must have for it
  bool by_link = false;        ///< the fusible link triggers it
};

/// Liquid above the groove, or in a parted hose, that runs out by itself.
struct Above {
  double volume = 0.0;      ///< [m3] that will run out
  double drains_in = 10.0;  ///< [s] until it is empty
  double rest = 1e-8;       ///< [m3] at which it counts as drained
};

/// One piping that lets fuel out.
struct Broken {
  network::Feed running;  ///< pumps on
  network::Feed stopped;  ///< pumps off: the tank feeds by gravity where it stands higher, else the line the hoses
  Opening opening;
  Shutting shutting;
  Above above;
  double compliance = 0.0;      ///< [m3/Pa] of the line; 0: rigid
  double inertance = 0.0;       ///< [Pa s2/m3] of the column from pump to place; 0: it follows at once
  double rest_pressure = 0.0;   ///< [Pa] piezometric of a line at rest: the excess is counted from it
  double relief = never;        ///< [Pa] piezometric at which the pump's relief opens
  bool checked = true;          ///< a check valve keeps the line from running back
  bool starts_running = true;   ///< the pump runs when it begins
  std::vector<double> pump_on;  ///< [s] times at which it starts; a cycle where `cycle` is above 0
  double runs_for = never;      ///< [s] of a cycle
  double rests_for = 0.0;       ///< [s]
  bool detector_sees = false;   ///< the leak detector must see this leak
  double stock = never;         ///< [m3] in the tank above the pump's inlet when it begins; never: not known
  network::FlowTable fall;   ///< [Pa] by which the falling level lowers the feed, against [m3] gone; empty: not known
  double starts_at = never;  ///< [Pa] piezometric in the line when it begins; never: as the feed says
  double runs_at = never;    ///< [Pa] piezometric in the line while a crack's pump runs; never: as the feed says
  double holds_at = never;   ///< [Pa] piezometric to which the line falls when the pump stops; never: it keeps all
};

/// A dispenser or tank sump under the opening.
struct Catch {
  bool exists = false;
  double share = 0.0;            ///< of what escapes that falls into it [1]
  double sensor_volume = never;  ///< [m3] at which the sensor trips
  double seal_volume = never;    ///< [m3] at the lowest entry seal
  double brim_volume = never;    ///< [m3]
  double seal_leak = 0.0;        ///< [m3/s per m3 above the seal] through seals that leak; 0: not determined
};

/// What stops the pumps.
struct Stops {
  double emergency_stop = never;   ///< [s]
  double sensor_acts_in = never;   ///< [s] after it is wet; never: it stops nothing
  double sensor_dead_until = 0.0;  ///< [s] before that it sees nothing
  double detector_at = never;      ///< [s] by which a leak that must be seen has been acted on
};

/// The forecourt.
struct Slab {
  double film = 1e-3;            ///< [m] of a pool
  double reaches_drain = never;  ///< [m3] on the slab at which it reaches a drain
  double interceptor = never;    ///< [m3] that the interceptor holds
  double evaporation = 0.0;      ///< [m/s] volume per area and time
};

/// A fire around the link.
struct Fire {
  bool burns = false;
  double burning = 0.0;          ///< [m/s] volume per area and time
  double sump_area = 0.0;        ///< [m2]
  double gas_temperature = 0.0;  ///< [K]
  double gas_speed = 0.0;        ///< [m/s]
  double response_index = 0.0;   ///< [(m s)^0.5]; 0: no link
  double conduction = 0.0;       ///< [(m/s)^0.5]
  double rated = 0.0;            ///< [K]
  double start = 293.15;         ///< [K]
};

/// An incident as numbers, one run of it.
struct Case {
  std::vector<Broken> broken;  ///< 1 to 6
  Catch catches;
  Stops stops;
  Slab slab;
  Fire fire;
  double reportable = never;  ///< [m3] outside the containment
  double end = 600.0;         ///< [s] until when it is counted
};

}  // namespace forecourse::studies::release
