#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/network/control_point.h"
#include "forecourse/network/escape/flow_table.h"
#include "forecourse/network/piping_system.h"

namespace forecourse::network {

/// What a place of the piping gives when fuel is drawn there: its pressure, and what flows at the hoses open elsewhere,
/// against the flow drawn. A negative flow is put in: the line then feeds the hoses.
///
/// Made of solved states of the whole network, so it holds for loops, several pumps and any set of open hoses.
struct Feed {
  FlowTable pressure;             ///< [Pa] piezometric at the place against flow drawn [m3/s]; falls
  FlowTable hoses;                ///< [m3/s] of all hoses open elsewhere
  std::vector<FlowTable> hose;    ///< [m3/s] of each open hose, in the order of `open`
  std::vector<std::string> open;  ///< ids of the hoses open elsewhere
  bool supplied = false;          ///< a pump runs, or the tank stands high enough, so that fuel reaches the place
  bool unsolved = false;          ///< the piping could not be solved for all flows: nothing of it can be used

  /// True if nothing can flow: no pump runs and no hose is open.
  [[nodiscard]] bool shut() const { return pressure.empty(); }

  /// Flow drawn at which the place stands at a pressure [Pa] piezometric; at the ends of the table beyond them [m3/s].
  [[nodiscard]] double flow_at(double pressure_wanted) const;
};

/// What is asked of a feed.
struct FeedQuestion {
  std::size_t place = 0;         ///< of `PipingSystem::places`
  std::vector<char> open_hoses;  ///< per hose of the system
  PumpSetting pumps;             ///< which run, and how fast
  double lowest = 0.0;           ///< [Pa] piezometric: no lower pressure is asked of the place
  double highest = 0.0;          ///< [Pa] piezometric: no higher one; see `highest_pressure`
};

/// The highest pressure that is asked of a place: half more than any pump of the system can hold [Pa].
[[nodiscard]] double highest_pressure(const PipingSystem& system);

/// \pre the system has a graph
/// \error 1e-4 of the flow between samples for the curves of pumps and pipes; wider at the kink of a limiter
[[nodiscard]] Feed make_feed(const PipingSystem& system, const FeedQuestion& asked);

/// Inertance of the shortest way by length from a running pump to a place: the sum of density x length / area [Pa
/// s2/m3]. \source law of motion of a rigid column
[[nodiscard]] double column_inertance(const PipingSystem& system, std::size_t place);

}  // namespace forecourse::network
