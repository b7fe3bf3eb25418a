#pragma once

#include <limits>
#include <string>
#include <vector>

#include "forecourse/studies/flow/worst/proof.h"

namespace forecourse::studies {

/// The worst of one quantity over all sets of open hoses of a piping.
struct Extreme {
  double value = std::numeric_limits<double>::quiet_NaN();  ///< NaN where not determined
  std::vector<std::string> open;                            ///< the open hoses; of sets that are as bad, one
  Proof proof = Proof::best_found;
};

struct HoseExtremes {
  std::string hose;
  Extreme least;     ///< [m3/s] while it is open
  Extreme greatest;  ///< [m3/s]
};

struct RunExtreme {
  std::string id;  ///< of the line or pump
  bool is_pump = false;
  Extreme flow;           ///< [m3/s] greatest, in either direction
  double velocity = 0.0;  ///< [m/s] at it; 0 where it has no bore of its own
};

struct PressureExtreme {
  std::string place;  ///< where it is highest; empty: there is none
  Extreme gauge;      ///< [Pa]
};

/// What the parts of one piping must bear, and what its hoses can count on.
struct WorstStates {
  std::string system;                 ///< ids of the systems that depend on each other: "regular + premium"
  int hose_count = 0;                 ///< so 2^n sets of open hoses
  bool opening_never_raises = false;  ///< opening a hose can never raise the flow of another
  std::size_t sets_solved = 0;
  std::size_t sets_failed = 0;  ///< of these, for which no solution was found
  std::vector<HoseExtremes> hoses;
  std::string slowest_hose;
  Extreme slowest;               ///< [m3/s] the slowest of all hoses
  PressureExtreme inlet;         ///< highest at a dispenser inlet
  PressureExtreme pump;          ///< highest at a pump, on the line's side
  std::vector<RunExtreme> runs;  ///< lines, then pumps
};

}  // namespace forecourse::studies
