#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "forecourse/report/svg/shapes.h"

namespace forecourse::report::drawing {

/// One of the eleven stops of the course, as its cell in the band shows it.
struct Stop {
  std::string name;       ///< "Shear valve"
  std::string value;      ///< as printed: "15.5"; empty: `note` says in words what is missing
  std::string unit;       ///< "psi"
  std::string note;       ///< a few words: "at the groove"
  bool listed = true;     ///< false: the site does not list it; drawn dashed
  std::string part = {};  ///< path in the site file of what stands there; empty: nothing does
};

/// A place on the line, from the pump's discharge on.
struct LinePlace {
  std::string name;
  double along = 0.0;      ///< [m] from the pump
  double elevation = 0.0;  ///< [m]
  bool entered = true;     ///< false: its height was not entered; drawn dashed
};

/// What a stop of the section shows, counted from 0.
[[nodiscard]] inline svg::Shows shows(const std::array<Stop, 11>& stops, std::size_t stop) {
  return {static_cast<int>(stop) + 1, stops[stop].part};
}

/// The tank's shell in the section. Without a shape only the liquid's surface is known.
struct TankOutline {
  std::string name;
  double bottom = 0.0;       ///< [m] at the end with the fill
  double pump_bottom = 0.0;  ///< [m] at the end with the pump
  double height = 0.0;       ///< [m]
  double liquid = 0.0;       ///< [m] surface
  bool shape_known = true;
};

/// A mark of the scale of heights.
struct HeightMark {
  double elevation = 0.0;  ///< [m]
  std::string text;
};

/// What the developed section shows; heights in m above the site's datum.
struct Section {
  std::string id;  ///< unique in the page
  std::string title;
  std::string description;
  std::string tone = "regular";   ///< of the liquid: "regular", "premium" or "diesel"
  bool heights_known = true;      ///< false: drawn to no scale, heights count from the liquid
  std::string axis;               ///< "ft above the site's datum"
  std::vector<HeightMark> marks;  ///< none: heights are not known
  std::string lift;               ///< as printed, where only lifts were entered: "lift 12.0 ft"
  TankOutline tank;
  std::optional<double> fill_top;
  std::optional<double> drop_tube_end;
  bool tank_sump = false;
  std::string tank_sump_part = {};  ///< its path in the site file
  double pump_head = 0.0;
  std::optional<double> pump_inlet;
  std::vector<LinePlace> line;  ///< at least the pump and the place where the course leaves the line
  std::string line_length;      ///< as printed
  std::optional<double> sump_floor;
  std::optional<double> sensor;
  double island = 0.0;  ///< top of the island
  std::string dispenser;
  std::optional<double> groove;  ///< of the shear valve
  double outlet = 0.0;           ///< of the nozzle
  std::string hose;
  std::optional<double> vent_outlet;
  std::array<Stop, 11> stops;
};

/// The developed section of one course, from the tank to the vehicle, over its profile band: depths to one scale, the
/// line to length on a scale of its own, everything else wide enough to be seen. Empty if a height is not finite or
/// there is no line.
[[nodiscard]] std::string draw(const Section& section);

}  // namespace forecourse::report::drawing
