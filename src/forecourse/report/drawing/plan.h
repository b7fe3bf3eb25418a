#pragma once

#include <string>
#include <vector>

#include "forecourse/report/svg/shapes.h"
#include "forecourse/report/svg/text.h"

namespace forecourse::report::drawing {

enum class MarkKind { tank, pump, branch, dispenser };

/// A thing with a position.
struct PlanMark {
  MarkKind kind = MarkKind::tank;
  std::string name;
  double x = 0.0;           ///< [m] from the site's origin, to the right
  double y = 0.0;           ///< [m] upward
  std::vector<bool> hoses;  ///< of a dispenser: whether each is open
  svg::Shows shows = {};
};

/// A line between two places, straight: its way is not entered.
struct PlanRun {
  double from_x = 0.0;
  double from_y = 0.0;
  double to_x = 0.0;
  double to_y = 0.0;
  double flow = 0.0;  ///< share of the largest flow, 0 to 1
  std::string tone;
  int lane = 0;  ///< side by side with lines of other products: ..., -1, 0, 1, ...
  svg::Shows shows = {};
};

/// A product in the key below the plan.
struct PlanProduct {
  std::string name;
  std::string tone;
  std::string flow;  ///< as printed: "62.15 gpm"
};

struct Plan {
  std::string id;  ///< unique in the page
  std::string title;
  std::string description;
  std::vector<PlanMark> marks;
  std::vector<PlanRun> runs;
  std::vector<PlanProduct> products;
  std::string widest;     ///< what the widest line carries: "62.15 gpm"
  double unit = 1.0;      ///< [m] of a unit of length
  std::string unit_name;  ///< "ft"
};

/// The station on plan, to one scale in both directions, with a scale bar and no north. Lines are as wide as their
/// flow; a hose is a disc where it is open, a ring where it is shut. Empty with fewer than two places apart.
///
/// For pages on which things are moved: each mark is a `<g>` with `data-part` and its place `data-x`, `data-y` [m]; the
/// root says how meters become pixels: x_px = data-x0 + x data-px-per-m, y_px = data-y0 - y data-px-per-m.
[[nodiscard]] std::string draw(const Plan& plan);

}  // namespace forecourse::report::drawing
