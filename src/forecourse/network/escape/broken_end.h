#pragma once

#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/default_used.h"
#include "forecourse/network/escape/flow_table.h"
#include "forecourse/network/piping_system.h"
#include "forecourse/site/site.h"

namespace forecourse::network {

inline constexpr double unlimited = std::numeric_limits<double>::infinity();

/// Where and how a piping is broken open: what leads from a place of the network to the opening.
struct BrokenEnd {
  std::size_t place = 0;       ///< of `PipingSystem::places`, from which the opening is fed
  std::vector<Element> path;   ///< in series from there to the opening
  double elevation = 0.0;      ///< [m] of the opening; above the liquid where only lifts are known
  double height = 0.0;         ///< [m] of the opening above the liquid in the tank
  bool height_entered = true;  ///< false: taken from the nearest height that is known
  double bore = 0.0;           ///< [m] of the broken end; 0: not known
  double discharge = 0.0;      ///< [Pa s2/m6] of the full opening into the open air
  double valve = 0.0;          ///< [Pa s2/m6] of the open shear valve; 0: none, or it is part of a lumped loss
  double inertance = 0.0;      ///< [Pa s2/m3] of the column in the path
  double limit = unlimited;    ///< [m3/s] that a limiter in the path lets through
  std::vector<Diagnostic> problems;
};

/// The riser of an inlet broken at its shear groove.
/// \param torn_in_sump the valve is not held, so that the riser itself is torn off at the line
[[nodiscard]] BrokenEnd broken_riser(const site::Site& site, const PipingSystem& system,
                                     const site::Dispenser& dispenser, const site::Inlet& inlet, bool torn_in_sump,
                                     std::vector<DefaultUsed>& defaults);

/// A hose of a system open to the air: at its nozzle, or where its breakaway parts. Its limiter, wherever it sits, is
/// counted on where the whole hose is open; where the breakaway parts it may be on the other side.
[[nodiscard]] BrokenEnd open_hose(const site::Site& site, const PipingSystem& system, std::size_t hose,
                                  bool at_breakaway, std::vector<DefaultUsed>& defaults);

/// Which ends of a cut line fuel still reaches from a tank.
struct LineFed {
  bool from = false;
  bool to = false;
};

/// A line cut through, as it is fed from one of its ends.
/// \param along share of its length from its `from` [1]
/// \param fed   exactly one of both
[[nodiscard]] BrokenEnd cut_line(const PipingSystem& system, std::size_t run, double along, LineFed fed);

/// A line of a loop cut through: both of its ends feed the cut. The place is the last of `split_system`, and both open
/// bores are counted as one opening at it.
[[nodiscard]] BrokenEnd cut_loop(const PipingSystem& split, std::size_t run);

/// Loss of a path against its flow, up to a flow [m3/s] -> [Pa].
[[nodiscard]] FlowTable path_table(const BrokenEnd& end, double last);

/// Loss coefficient of an opening of another area [Pa s2/m6]: density / (2 Cd^2 A^2).
/// \source [tp410, flow through orifices]
[[nodiscard]] double opening_loss(double density, double area, double discharge_coefficient);

/// What the pipes of a system hold above an elevation, by their bores: at most what may run out of an opening there
/// once nothing feeds it and air comes in [m3]. Hoses are not counted.
/// \return empty if a height or a bore is not known
[[nodiscard]] std::optional<double> volume_above(const PipingSystem& system, double elevation);

/// What fuel reaches from a tank without passing a run.
struct Reached {
  std::vector<char> hoses;  ///< 1: reached
  LineFed line;             ///< the ends of the run
};
[[nodiscard]] Reached reached_without(const PipingSystem& system, std::size_t run);

}  // namespace forecourse::network
