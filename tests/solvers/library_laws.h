#pragma once

#include <variant>

#include "forecourse/parts/law.h"
#include "forecourse/solvers/steady_graph.h"

namespace forecourse::test {

/// The constants with which a general network library computes, as a network file gives them.
struct LibraryConstants {
  double gravity = 0.0;            ///< [ft/s2]
  double minor_loss_factor = 0.0;  ///< loss in ft = factor K q2 / d4, q in ft3/s, d in ft
  double litre_per_cubic_foot = 0.0;
  double meter_per_foot = 0.0;
  double viscosity = 0.0;           ///< [ft2/s]
  double closed_conductance = 0.0;  ///< [ft3/s per ft] that it leaves in a closed link

  /// Its flow in m3/s for one ft3/s of its own.
  [[nodiscard]] double flow_unit() const { return litre_per_cubic_foot / 1000.0; }
  /// [m3/s per m]
  [[nodiscard]] double closed_conductance_si() const { return closed_conductance * flow_unit() / meter_per_foot; }
};

struct PipeData {
  double length = 0.0, bore = 0.0, roughness = 0.0;  ///< [m]
  double minor_loss = 0.0;                           ///< K [1]
};

/// A pipe as that library computes it: its constants, and friction after Swamee and Jain with its own transition.
/// SOURCE: [epanet_manual, appendix D, formulas for the Darcy-Weisbach friction factor]
struct LibraryPipe {
  double reynolds_per_flow = 0.0;   ///< [s/m3]
  double relative_roughness = 0.0;  ///< [1]
  double friction = 0.0;            ///< loss = factor * friction * q|q| [Pa s2/m6]
  double minor = 0.0;               ///< [Pa s2/m6]
};

/// A closed link, or any other with loss in proportion to flow.
struct LibraryClosed {
  double resistance = 0.0;  ///< [Pa s/m3]
};

/// Its flow control valve: nothing lost below the limit, the conductance of a closed link above it.
struct LibraryLimiter {
  double limit = 0.0;       ///< [m3/s]
  double resistance = 0.0;  ///< [Pa s/m3]
};

/// \param pascal_per_meter  pressure of a meter of head, in which the network is computed
LibraryPipe library_pipe(const PipeData& pipe, const LibraryConstants& constants, double pascal_per_meter);

parts::Loss loss(const LibraryPipe& pipe, double flow);
parts::Loss loss(const LibraryClosed& link, double flow);
parts::Loss loss(const LibraryLimiter& valve, double flow);

/// Darcy friction factor of the library and its derivative to the Reynolds number.
parts::Friction library_friction(double relative_roughness, double reynolds);

using ReferenceLaw =
    std::variant<parts::PipeLaw, parts::QuadraticLaw, parts::PumpLaw, LibraryPipe, LibraryClosed, LibraryLimiter>;

}  // namespace forecourse::test
