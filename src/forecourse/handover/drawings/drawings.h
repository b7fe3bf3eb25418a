#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/handover/drawings/drawing.h"
#include "forecourse/site/site.h"

namespace forecourse::handover {

struct DrawingOptions {
  std::string which;  ///< "plan", "section" with its details, "tank" or "dispenser"; empty: all
  std::string paper;  ///< "a4", "a3", "letter" or "tabloid"; empty: tabloid with US units, A3 with SI
  std::string scale;  ///< "1:100" or "1 in = 10 ft"; empty: the largest that fits
  std::string hose;   ///< whose course the sections follow; empty: that of the longest lines
  std::string date;   ///< for the title cells
  std::string drawn_by;
  std::string checked_by;  ///< empty: the cell says "not checked"
};

struct DrawingSet {
  DrawingOptions options;  ///< as used
  std::string version;
  std::vector<std::string> cautions;
  std::vector<Drawing> drawings;
  std::vector<Diagnostic> warnings;
};

/// What is wrong with the options, as errors: no such paper, scale or hose, or a scale at which a drawing does not fit.
[[nodiscard]] std::vector<Diagnostic> check_drawing_options(const site::Site& site, const DrawingOptions& options);

/// The plan, the developed section of one course, and its tank and its dispenser at larger scales, each on a sheet to
/// scale. What has no place is not drawn but listed. \pre `check_drawing_options` found no error
[[nodiscard]] DrawingSet draw_station(const site::Site& site, const DrawingOptions& options);

}  // namespace forecourse::handover
