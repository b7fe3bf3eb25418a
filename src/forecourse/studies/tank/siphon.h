#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/default_used.h"
#include "forecourse/site/site.h"

namespace forecourse::studies {

/// A tank of a siphoned group.
struct SiphonedTank {
  std::string id;
  double surface = 0.0;       ///< [m] elevation now
  double volume = 0.0;        ///< [m3] now
  double equal_volume = 0.0;  ///< [m3] once all stand at one level
  bool has_pump = false;
  bool has_gauge = false;
  double stranded = 0.0;  ///< [m3] that stays in it when the siphon is lost; 0 in the pump's tank
};

/// A moment of levels that find each other.
struct SiphonMoment {
  double time = 0.0;             ///< [s]
  std::vector<double> surfaces;  ///< [m] elevation, in the order of the tanks
  std::vector<double> volumes;   ///< [m3]
};

/// What a pump does that draws from one of them.
struct SiphonDraw {
  double draw = 0.0;                  ///< [m3/s]
  double bar_flow = 0.0;              ///< [m3/s] through the bar to the pump's tank in the end
  double difference = 0.0;            ///< [m] by which the pump's tank then lies lower
  std::optional<double> gauge_error;  ///< [m3] by which one gauge for all then tells too little, or too much
  std::optional<double> recovers;     ///< [s] after the pump stops until they are close again; empty: not within a day
};

/// Tanks that are siphoned or joined by a manifold.
struct SiphonTold {
  std::string problem;  ///< why nothing is determined, and what to enter
  bool manifold = false;
  std::vector<std::string> ids;
  std::vector<SiphonedTank> tanks;
  double equal_surface = 0.0;         ///< [m] elevation of the one level
  std::vector<SiphonMoment> course;   ///< from the levels now; empty where they are one already
  std::optional<double> equal_after;  ///< [s] until they are close; empty: not within a day
  double draw_time = 0.0;             ///< [s] that the pump runs
  std::vector<SiphonDraw> draws;
  std::string gauge;                     ///< id of the tank whose gauge is read; empty: none has one
  std::optional<double> lost_at;         ///< [m] elevation of the surface at which air enters
  std::optional<double> lost_volume;     ///< [m3] in all of them then
  std::optional<double> crest_lift;      ///< [m] of the crest above the surface when the siphon is lost
  std::optional<double> crest_pressure;  ///< [Pa] absolute at the crest then, the liquid at rest
  std::optional<double> vapor_pressure;  ///< [Pa] absolute, as entered
  std::vector<std::string> remarks;
  std::vector<DefaultUsed> defaults;
};

/// How near two surfaces count as one [m]: an eighth of an inch, to which a stick is read.
[[nodiscard]] double close_levels();

/// Every group of tanks that are siphoned with each other.
///
/// \param draws [m3/s] of the pump; empty: 10, 20 and 40 gal/min
[[nodiscard]] std::vector<SiphonTold> siphons(const site::Site& site, const std::vector<double>& draws);

}  // namespace forecourse::studies
