#pragma once

#include <vector>

#include "forecourse/site/pipe.h"

namespace forecourse::site {

/// A door, window or other opening of a building.
struct Opening {
  Name id;
  SourceSpan where{};
  std::optional<Position> position;
};

/// A building near the station; on plan a rectangle along the axes.
struct Building {
  Name id;
  SourceSpan where{};
  std::optional<Position> corner;
  std::optional<Position> opposite;
  Fact combustible;             ///< its walls toward the station burn
  Maybe<Duration> fire_rating;  ///< of these walls
  Fact basement;                ///< it has a basement, a cellar or a pit
  std::vector<Opening> openings;
};

/// A straight part of the lot's border.
struct LotLine {
  Name id;
  SourceSpan where{};
  std::optional<Position> from;
  std::optional<Position> to;
  Fact buildable;  ///< there may be built beyond it
};

/// Something fixed that can ignite vapor, such as a switch that is not made for it.
struct IgnitionSource {
  Name id;
  SourceSpan where{};
  std::optional<Position> position;
  Maybe<Length> elevation;
};

/// What treats recovered vapor.
struct VaporProcessor {
  Name id;
  SourceSpan where{};
  std::optional<Position> position;
};

/// What stands around the equipment.
struct Surroundings {
  SourceSpan where{};
  Fact complete;  ///< all that is near is listed
  std::vector<Building> buildings;
  std::vector<LotLine> lot_lines;
  std::vector<IgnitionSource> ignitions;
  std::vector<VaporProcessor> vapor_processors;
  Maybe<Length> flood_elevation;  ///< greatest stage of a flood
};

}  // namespace forecourse::site
