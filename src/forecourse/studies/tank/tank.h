#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/base/default_used.h"
#include "forecourse/base/diagnostic.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/tank/calibration.h"
#include "forecourse/studies/tank/overfill_routes.h"
#include "forecourse/studies/tank/siphon.h"

namespace forecourse::studies {

/// Where a stick is put, or a chart is made for.
struct DipAt {
  enum class Kind { fill, gauge, pump, place } kind = Kind::place;
  double along = 0.0;  ///< of `place` [m] from the low end
};

struct TankOptions {
  std::string tank;             ///< id of a tank or compartment; empty: all
  std::optional<double> depth;  ///< [m] in place of the reading of the site file
  std::optional<DipAt> at;      ///< of `depth`, and of the chart
  std::optional<double> step;   ///< [m] of the chart; empty: 1 in or 2 cm, as the site shows its lengths
  std::optional<double> rate;   ///< [m3/s] of the delivery; empty: the site's
  std::optional<double> share;  ///< [1] of the capacity, told besides 90 % and 95 %
  std::vector<double> draws;    ///< [m3/s] of a pump, from siphoned tanks; empty: 10, 20 and 40 gal/min
};

/// A place of a tank where its depth is read or something acts.
struct TankPlace {
  std::string what;             ///< "fill F1", "gauge", "pump P1", "reading", "asked"
  double along = 0.0;           ///< [m] from the low end
  double stick = 0.0;           ///< [m] how high the inside is there
  double dry_below = 0.0;       ///< [m3] at which the surface leaves the foot of the stick
  double covered_above = 0.0;   ///< [m3] at which it passes its head
  std::optional<double> depth;  ///< [m] now
  TankPoint foot;               ///< where the stick stands
  TankPoint head;
};

/// What is in a tank.
struct TankNow {
  double level = 0.0;                    ///< [m] above the lowest inside point
  double depth = 0.0;                    ///< [m] as read, at `along`
  std::optional<double> along;           ///< [m]; empty: not entered
  double volume = 0.0;                   ///< [m3] fuel and water
  double share = 0.0;                    ///< [1] of the capacity
  double ullage = 0.0;                   ///< [m3]
  std::optional<double> water;           ///< [m3]
  std::optional<double> water_level;     ///< [m]
  std::optional<double> least;           ///< [m3] of `volume`, where the depth was entered as low, likely and high
  std::optional<double> most;            ///< [m3]
  std::optional<double> standard_error;  ///< [m3] of `volume`, from the gauge's uncertainty
  bool by_option = false;                ///< the depth was asked for, not read
};

/// Room up to a share of the capacity.
struct TankRoom {
  double share = 0.0;                         ///< [1]
  double volume = 0.0;                        ///< [m3] at which it is reached
  double level = 0.0;                         ///< [m]
  std::optional<double> room;                 ///< [m3] from what is in it now; below 0: passed
  std::vector<std::optional<double>> depths;  ///< [m] at each place; empty where the stick does not reach it
};

/// A line of a chart.
struct TankChartRow {
  double depth = 0.0;                  ///< [m] at the chart's place
  double level = 0.0;                  ///< [m]
  double volume = 0.0;                 ///< [m3]
  double share = 0.0;                  ///< [1]
  std::optional<double> level_volume;  ///< [m3] that a level chart tells at this depth
};

/// Volume against depth at one place.
struct TankChart {
  std::string what;           ///< of the place
  double along = 0.0;         ///< [m]
  double dry_below = 0.0;     ///< [m3] that is in the tank while the stick stands dry
  double unseen_above = 0.0;  ///< [m3] of room left when the stick is covered
  std::vector<TankChartRow> rows;
};

/// A tank or a compartment.
struct TankTold {
  std::string id;
  std::string tank;  ///< the same, or that of which it is a compartment
  std::string product;
  std::string problem;  ///< why nothing is determined, and what to enter; empty if it is
  std::string shape;    ///< in words
  bool charted = false;
  bool pitched = false;
  double pitch = 0.0;              ///< [1] rise along the length
  std::optional<double> diameter;  ///< [m]
  double capacity = 0.0;           ///< [m3] to the very top
  std::optional<double> nominal;   ///< [m3] as entered
  double full_level = 0.0;         ///< [m]
  std::optional<TankNow> now;
  std::string not_read;  ///< why `now` is not known
  std::vector<TankPlace> places;
  std::vector<TankRoom> rooms;  ///< 90 %, 95 %, and what was asked
  TankChart chart;
  std::optional<double> rate;           ///< [m3/s]
  std::optional<double> from_90_to_95;  ///< [s]
  OverfillRoutes overfill;
  std::optional<CalibrationTold> calibration;
  std::vector<TankPoint> outline;       ///< long section, around: along [m] from the low end, level [m]
  std::optional<double> section_width;  ///< [m] of a rectangular tank; empty: a circle
  std::vector<DefaultUsed> defaults;
  SourceSpan where{};
};

struct TankResult {
  TankOptions options;  ///< as used
  std::string version;
  std::vector<TankTold> tanks;
  std::vector<SiphonTold> siphons;
  std::vector<DefaultUsed> defaults;
  std::vector<Diagnostic> warnings;
};

/// What is wrong with the options: a tank that is not there, a place that it has not, a share above 1.
[[nodiscard]] std::vector<Diagnostic> check_options(const site::Site& site, const TankOptions& options);

/// Every tank and compartment: what it holds at any depth, the room in it, and where overfill devices belong.
///
/// \error volumes: 1e-11 of the capacity for the shape entered
/// \fails a tank whose sizes are not entered has a problem and no figures
[[nodiscard]] TankResult study_tank(const site::Site& site, const TankOptions& options, const Context& context = {});

}  // namespace forecourse::studies
