#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/default_used.h"
#include "forecourse/network/control_point.h"
#include "forecourse/network/element.h"
#include "forecourse/network/fluid.h"
#include "forecourse/solvers/steady_graph.h"

namespace forecourse::network {

/// A point of the piping whose pressure is found: where a pump's leg ends, a branch, a dispenser inlet.
struct Place {
  std::string id;
  double elevation = 0.0;  ///< [m] above the site datum
  bool elevation_entered = false;
};

/// A point whose pressure is given: a tank's liquid surface or a nozzle's outlet, both at the atmosphere.
struct Opening {
  std::string id;
  double elevation = 0.0;  ///< [m]
};

enum class RunKind { pump, line, riser, hose };

/// Parts in series between two points, as one edge of the network.
struct Run {
  RunKind kind = RunKind::line;
  std::string id;  ///< of the pump, line, inlet or hose
  int from = 0;    ///< node
  int to = 0;
  std::vector<Element> elements;
  parts::FlowBounds bounds;
};

/// A hose as the network sees it. A blended hose has one of these in the system of each of its products.
struct HosePoint {
  std::string id;
  std::string dispenser;
  int run = 0;
  double share = 1.0;  ///< of the hose's flow that this system gives
  double limit = 0.0;  ///< [m3/s] of the hose's limiter, infinity if none
};

struct PumpPoint {
  std::string id;
  std::string tank;
  int run = 0;
  bool running = true;
  double discharge_elevation = 0.0;  ///< [m]
  std::vector<Element> standing;     ///< in its place while it stands; empty: that loss is not entered
};

/// All piping of one product that hangs together, ready to be solved. Nodes are the places, then the
/// openings. Never changed once built.
struct PipingSystem {
  std::string id;  ///< the product's id; with a number where one product has several systems
  std::string product;
  Fluid fluid;
  std::vector<Place> places;
  std::vector<Opening> openings;
  std::vector<Run> runs;
  std::vector<HosePoint> hoses;
  std::vector<PumpPoint> pumps;
  std::optional<ControlPoint> control;  ///< that starts, stops or turns pumps by itself
  std::vector<Diagnostic> problems;     ///< why it cannot be computed; empty if it can
  bool elevations_known = true;         ///< false: only lifts were entered, so gauge pressures are not determined
  std::shared_ptr<const solvers::SteadyGraph> graph;  ///< null if there are problems

  /// True if which pumps run, or how fast, depends on the state: lead and lag, alternating, variable speed.
  [[nodiscard]] bool has_moving_control() const { return control.has_value(); }
  [[nodiscard]] int node_of_opening(std::size_t i) const { return static_cast<int>(places.size() + i); }
  /// Piezometric pressure less this is gauge pressure.
  [[nodiscard]] double weight_of(double elevation) const;
};

/// The piping of a whole station.
struct StationNetwork {
  std::vector<PipingSystem> systems;
  std::vector<DefaultUsed> defaults;
  std::vector<Diagnostic> warnings;
};

}  // namespace forecourse::network
