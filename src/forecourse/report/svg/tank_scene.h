#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/report/svg/shapes.h"
#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {

/// A stick in a tank as it is drawn.
struct TankStick {
  std::string name;
  Point foot;  ///< [m] along and above the lowest inside point
  Point head;
  std::string text;  ///< of the depth; empty: none
};

/// A level that is marked across a tank.
struct TankMark {
  double level = 0.0;  ///< [m]
  std::string name;    ///< "95 %"
};

/// A tank cut across at one place and along, to one scale.
struct TankScene {
  std::string id;  ///< unique in the page
  double width = wide;
  std::string title;
  std::string description;
  Shows shows;
  std::string tone;            ///< "regular", "premium" or "diesel"
  std::vector<Point> outline;  ///< [m] around the long section
  double section_width = 0.0;  ///< [m] of the section across; a circle unless `box`
  double section_height = 0.0;
  bool box = false;
  double section_foot = 0.0;              ///< [m] level of the section's lowest point
  std::optional<double> section_surface;  ///< [m] of the surface above that
  std::string section_name;
  std::optional<double> level;  ///< [m] of the liquid
  std::optional<double> water;  ///< [m] of the water bottom
  std::vector<TankMark> marks;
  std::vector<TankStick> sticks;
};

/// Both sections; empty where there is no outline.
[[nodiscard]] std::string draw(const TankScene& scene);

/// Volume against depth.
struct VolumeCurve {
  std::string id;  ///< unique in the page
  double width = wide;
  std::string title;
  std::string description;
  std::string depth_axis;
  std::string volume_axis;
  std::vector<Point> curve;  ///< depth and volume in the units of the axes
  std::vector<Point> level_chart;
  std::vector<Point> fitted;
  struct Mark {
    double depth = 0.0;
    double volume = 0.0;
    std::string name;
  };
  std::vector<Mark> marks;
};

/// The curve, a level chart dashed, marks with their names; empty without two points.
[[nodiscard]] std::string draw(const VolumeCurve& curve);

}  // namespace forecourse::report::svg
