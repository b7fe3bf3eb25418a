#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/base/default_used.h"
#include "forecourse/base/diagnostic.h"
#include "forecourse/site/site.h"

namespace forecourse::studies {

struct ContainmentOptions {
  std::vector<double> inflows;            ///< [m3/s]; empty: 0.1, 1 and 3 gal/h, 1 and 10 gal/min
  std::optional<double> sensor_dead_for;  ///< [s] from the first drop on
};

/// A point of a sump's volume against height.
struct SumpPoint {
  double height = 0.0;  ///< [m] above the floor
  double volume = 0.0;  ///< [m3]
};

/// How soon a sump fills at one inflow.
struct SumpFill {
  double inflow = 0.0;                     ///< [m3/s]
  std::optional<double> to_sensor;         ///< [s]
  std::optional<double> to_seal;           ///< [s] lowest entry seal
  double to_brim = 0.0;                    ///< [s]
  std::optional<double> seen_at;           ///< [s] sensor wet and not dead any more
  std::optional<double> volume_when_seen;  ///< [m3] run in by then
  bool over_before_seen = false;           ///< the brim is passed before the sensor can tell
};

/// Whether a sump can be counted on to hold.
enum class Holds { assured, not_assured, not_determined };
[[nodiscard]] const char* word(Holds holds);

/// One sump.
struct ContainedSump {
  std::string owner;  ///< id of the dispenser or tank
  bool of_tank = false;
  std::string problem;                  ///< why its volume is not determined, and what to enter; empty if it is
  std::optional<double> depth;          ///< [m]
  double brim = 0.0;                    ///< [m3] to the brim
  std::optional<double> at_sensor;      ///< [m3] when the sensor trips
  std::optional<double> sensor_height;  ///< [m]
  std::optional<double> at_seal;        ///< [m3] at the lowest entry seal
  std::optional<double> seal_height;    ///< [m]
  std::vector<SumpPoint> points;        ///< floor to brim; empty where the depth is not known
  std::vector<SumpFill> fills;          ///< one for each inflow
  Holds holds = Holds::not_determined;
  std::vector<std::string> reasons;  ///< why it is not assured
  SourceSpan where{};
};

/// A place where two parts meet and fuel can leak, and what holds it there.
struct Joint {
  std::string id;    ///< of the place
  std::string what;  ///< "line trunk at pump P1"
  std::string sump;  ///< id of what bears the sump under it; empty: none
  Holds holds = Holds::not_determined;
  std::string words;  ///< where fuel goes from it
};

/// A double-walled line and where what leaks between its walls runs.
struct DrainBack {
  std::string line;
  bool double_wall = false;
  std::optional<double> fall;  ///< [1] toward the sump named, entered or from elevations
  std::string to;              ///< id of the place it runs to; empty: not determined
  std::string sump;            ///< id of what bears the sump there; empty: none
  Holds holds = Holds::not_determined;
  std::string words;
};

struct ContainmentResult {
  ContainmentOptions options;  ///< as used
  std::string version;
  std::vector<ContainedSump> sumps;
  std::vector<Joint> joints;
  std::vector<DrainBack> lines;
  std::vector<DefaultUsed> defaults;
  std::vector<Diagnostic> warnings;
};

/// Every sump, joint and double-walled line of a station: what it holds, how soon it fills, and where fuel goes.
///
/// \error volumes are exact for the shapes entered; the share of parts is taken as even over the height.
/// \fails a sump whose sizes are not entered has a problem and no volume
[[nodiscard]] ContainmentResult study_containment(const site::Site& site, const ContainmentOptions& options,
                                                  const Context& context = {});

}  // namespace forecourse::studies
