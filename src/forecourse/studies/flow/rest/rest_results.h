#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/network/pack/stretches.h"

namespace forecourse::studies {

/// Static pressure of one place with every hose shut.
struct RestPlace {
  std::string id;
  std::optional<double> elevation;      ///< [m]; empty: not entered, so its pressures are not determined
  std::optional<double> held_gauge;     ///< [Pa] just after the pump stopped; empty: nothing holds the line
  std::optional<double> decayed_gauge;  ///< [Pa] once the line has fallen to the liquid in the tank
  bool below_atmosphere = false;        ///< when decayed: vapor may form, and air may come in where it is not tight
  std::optional<double> shutoff_gauge;  ///< [Pa] while the pumps run against shut hoses; empty: no pump runs
};

/// A stretch of conduit that holds fuel.
using RestStretch = network::Stretch;

/// Time from the call of a hose to first flow at its nozzle.
struct FirstFlow {
  std::optional<double> time;              ///< [s]
  std::optional<double> without_detector;  ///< [s] the same as if the leak detector were open at once
  double volume = 0.0;                     ///< [m3] pumped until then
  std::string reason;                      ///< why it is not determined, and what to enter
};

struct RestHose {
  std::string id;
  FirstFlow held;
  FirstFlow decayed;
  FirstFlow empty;
};

/// The piping of one system with every hose shut.
struct LineAtRest {
  std::string system;
  std::string product;
  std::string reason;                   ///< why nothing of it is determined; empty when something is
  std::optional<double> held_pressure;  ///< [Pa] gauge at the height of the liquid in the tank
  std::string held_by;                  ///< "check valve of pump P1", or why nothing holds it
  std::vector<RestPlace> places;
  std::vector<RestStretch> stretches;
  double line_volume = 0.0;               ///< [m3] to the dispensers
  std::optional<double> line_compliance;  ///< [m3/Pa] of the line to the dispensers
  std::string compliance_reason;          ///< why it is not determined
  std::optional<double> opening_time;     ///< [s] of the slowest leak detector; empty: none, or not entered
  std::optional<double> restricted;       ///< [m3/s] that the leak detectors let through until then
  std::string detector_note;              ///< what of the leak detector is not entered; empty: all is, or none is there
  std::vector<RestHose> hoses;
};

}  // namespace forecourse::studies
