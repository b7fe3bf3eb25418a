#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/network/pump_control.h"
#include "forecourse/site/equipment/pump_control.h"

namespace forecourse::studies {

/// How fast the liquid in a pump warms while it runs and delivers nothing: an upper bound, with all of the motor's
/// power in the liquid and nothing lost to casing and tank.
struct PumpHeat {
  std::optional<double> rate;  ///< [K/s] with what is likely; empty: not determined
  double rate_low = 0.0;       ///< [K/s] over the spread of uncertain entries
  double rate_high = 0.0;
  double rise = 10.0;         ///< [K] for which the time is told
  double time_to_rise = 0.0;  ///< [s] at the likely rate
  std::string missing;        ///< what to enter; empty: determined
};

/// When the check valve of a weaker pump opens.
struct PumpOpening {
  double total_flow = 0.0;  ///< [m3/s] of the piping, with the other pumps as they run
  std::string drawn_at;     ///< place at which that flow is drawn
};

/// One way in which the pumps of a control can run.
struct ControlStepTold {
  std::vector<std::string> pumps;  ///< of the control, that run
  bool determined = false;
  double line_pressure_gauge = 0.0;  ///< [Pa] where the control reads it; NaN if nothing holds it
  double total_flow = 0.0;           ///< [m3/s] from the tanks
  bool rests = false;                ///< the control leaves it as it is
};

/// Flow of an open hose over the ways in which the pumps may run.
struct HoseRange {
  std::string id;
  double least = 0.0;  ///< [m3/s] of the hose, by this product
  double most = 0.0;
};

/// What a control makes of its pumps in one state.
struct ControlTold {
  std::string id;
  site::ControlKind kind = site::ControlKind::all;
  std::vector<std::string> order;  ///< its pumps, in the order they start
  int hoses_open = 0;
  std::optional<double> starts_below;      ///< [Pa] gauge
  std::optional<double> stops_above;       ///< [Pa] gauge
  std::optional<double> hoses_calling;     ///< the next pump starts when more than this call
  std::optional<double> alternates_after;  ///< [s]
  std::optional<double> holds;             ///< [Pa] gauge
  double least_speed = 0.0;                ///< of full speed [1]
  double most_speed = 1.0;
  double speed = 1.0;  ///< found, of full speed [1]
  network::PressureHeld held = network::PressureHeld::not_asked;
  std::vector<ControlStepTold> steps;
  std::size_t taken = 0;                  ///< the step that the state tells
  std::optional<std::size_t> hunts_with;  ///< the lag pump starts and stops in turn between `taken` and this step
  std::vector<HoseRange> hoses;           ///< over the steps at which the pumps may be found; empty: one only
};

}  // namespace forecourse::studies
