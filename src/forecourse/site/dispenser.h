#pragma once

#include "forecourse/site/pipe.h"
#include "forecourse/site/sump.h"

namespace forecourse::site {

/// How a dispenser's inlet is joined to the line in its sump.
enum class Connection {
  tee,      ///< riser from the branch of a tee; the line's flow goes through the run
  through,  ///< the line enters and leaves at the shear valve's base
};

enum class Poppet { single_poppet, double_poppet };

/// The shear valve under a dispenser. Facts have no default: what is unknown stays unknown.
struct ShearValve {
  SourceSpan where{};
  std::optional<Chosen<Poppet>> poppet;
  Fact anchored;
  Fact crack_trip;
  Maybe<Length> groove_elevation;  ///< above the site datum
  Maybe<Temperature> fusible_link;
  std::optional<Date> tested;
  std::optional<Date> installed;
  Fact listed;                      ///< by a testing laboratory, for this fuel
  std::optional<EnteredLoss> loss;  ///< open
};

/// Where a product enters a dispenser. As a place it is called "<dispenser>.<product>", or its own `id`.
struct Inlet {
  Name id;
  SourceSpan where{};
  Name product;
  std::optional<Chosen<Connection>> connection;
  std::optional<EnteredLoss> connection_loss;  ///< from the line into the riser
  std::optional<Pipe> riser;                   ///< absent: none
  std::optional<ShearValve> shear_valve;
  std::optional<Part> filter;    ///< shared by the hoses of this inlet
  std::optional<Part> meter;     ///< shared by the hoses of this inlet
  Maybe<Length> elevation;       ///< of the dispenser's inlet, above the riser
  Maybe<Length> line_elevation;  ///< of the line in the sump
};

/// One share of a blended hose.
struct BlendShare {
  SourceSpan where{};
  Name product;
  Entered<Ratio> share;
};

/// A hose point: what hangs between the dispenser's inlet and the vehicle.
struct Hose {
  Name id;
  SourceSpan where{};
  Name product;                     ///< empty for a blended hose
  std::vector<BlendShare> blend;    ///< products and their shares, adding up to 1
  Maybe<Length> lift;               ///< nozzle outlet above the liquid surface in the tank
  Maybe<Length> outlet_elevation;   ///< nozzle outlet above the site datum
  std::optional<EnteredLoss> loss;  ///< lumped, dispenser inlet to nozzle outlet: replaces all parts below
  std::optional<Part> filter;
  std::optional<Part> meter;
  std::optional<Part> control_valve;
  std::optional<Pipe> whip;
  std::optional<Part> breakaway;
  std::optional<Pipe> curb;
  std::optional<Part> swivel;
  std::optional<Part> nozzle;
  Maybe<VolumeFlow> limiter;  ///< no more than this flows
  Fact high_flow;
};

struct Dispenser {
  Name id;
  SourceSpan where{};
  std::optional<Position> position;
  Maybe<Length> elevation;  ///< of the island's top
  std::optional<Sump> sump;
  Fact stabilizer_bar;  ///< the valves are held by a bar that is anchored to the island
  Fact satellite;       ///< follows another dispenser
  std::vector<Inlet> inlets;
  std::vector<Hose> hoses;
};

}  // namespace forecourse::site
