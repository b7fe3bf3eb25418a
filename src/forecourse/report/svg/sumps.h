#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/report/svg/shapes.h"
#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {

/// A pipe that enters a sump.
struct SumpPipe {
  double height = 0.0;  ///< [m] above the floor
  std::string tone;     ///< "regular", "premium" or "diesel"
  bool passes = false;  ///< leaves on the other side too
};

/// A sump as it is drawn; heights in m above its floor.
struct DrawnSump {
  std::string name;
  Shows shows;
  bool of_tank = false;         ///< with a pump in it; else with risers to a dispenser
  std::optional<double> depth;  ///< [m]; empty: drawn dashed, without heights
  double brim = 0.0;            ///< [m] of its brim above the ground
  std::optional<double> floor;  ///< [m] across; empty: not entered
  std::optional<double> top;    ///< [m] across
  std::optional<double> sensor;
  std::optional<double> lowest_seal;
  std::optional<double> pump_head;
  std::vector<SumpPipe> pipes;
};

/// A row of values under the sumps; a row without values is a heading.
struct SumpRow {
  std::string name;
  std::vector<std::string> values;  ///< one for each sump
};

struct SumpChart {
  std::string id;  ///< unique in the page
  double width = wide;
  std::string title;
  std::string description;
  double unit = 1.0;      ///< [m] of a unit of length
  std::string unit_name;  ///< "ft"
  std::vector<DrawnSump> sumps;
  std::vector<SumpRow> rows;
};

/// All sumps to one scale under one ground line, as many beside each other as there is room for: what collects up to
/// the sensor, the sensor, the pipes at their heights, a dashed line at the lowest seal, and under each sump its
/// values. Empty without a sump whose depth is known.
[[nodiscard]] std::string draw(const SumpChart& chart);

}  // namespace forecourse::report::svg
