#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/report/svg/shapes.h"
#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {

/// A rectangle of the section: distances from the tank's axis, depths below grade [m].
struct BuriedPiece {
  enum class Kind { concrete, sump };
  Kind kind = Kind::concrete;
  double left = 0.0, right = 0.0;
  double top = 0.0, bottom = 0.0;
};

/// A section across a buried tank, to scale.
struct BuriedTankDrawing {
  std::string id;  ///< unique in the page
  double width = wide;
  std::string title;
  std::string description;
  Shows shows;
  double crown = 0.0;           ///< depth below grade [m]
  double diameter = 0.0;        ///< outside [m]
  std::optional<double> water;  ///< depth of the ground water [m]
  bool soil_counts = false;
  double prism_base = 0.0;        ///< depth from which the counted soil reaches up [m]
  double prism_half_width = 0.0;  ///< at its base [m]
  double prism_half_top = 0.0;    ///< at grade [m]
  std::vector<BuriedPiece> pieces;
  std::string water_name;               ///< "water at 2.0 ft"
  std::vector<std::string> tank_names;  ///< lines in the tank
  std::string depth_name;               ///< of the underside, "14.2 ft"
};

/// The tank in the ground with its slab, sumps and deadmen, the soil that counts hatched, and the water.
[[nodiscard]] std::string draw(const BuriedTankDrawing& drawing);

}  // namespace forecourse::report::svg
