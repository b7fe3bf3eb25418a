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

/// A point of a closing curve.
struct ClosingPoint {
  Duration time;  ///< after the delay
  Ratio open;     ///< share of the full opening
};

/// How a valve shuts once it is tripped. Exactly one way is used: `equivalent_time` alone, or `delay` with
/// `stroke_time` or `points`.
struct ValveClosing {
  SourceSpan where{};
  Maybe<Duration> equivalent_time;  ///< full flow passes for this long
  Maybe<Duration> delay;            ///< from the trip until the valve begins to move
  Maybe<Duration> stroke_time;      ///< from full open to shut
  std::vector<ClosingPoint> points;
};

/// A leak as it was measured: how much, at which pressure.
struct LeakReading {
  SourceSpan where{};
  Maybe<VolumeFlow> rate;
  Maybe<GaugePressure> at;
};

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
  Fact clear;                       ///< room around its body and its moving parts
  std::optional<EnteredLoss> loss;  ///< open
  Maybe<Length> groove_lift;        ///< shear groove above the liquid in the tank, instead of its elevation
  std::optional<ValveClosing> closing;
  std::optional<LeakReading> seat_leak;  ///< past the shut valve
  Maybe<Volume> trip_volume;             ///< that must leak from the groove until a crack trip acts
  Maybe<GaugePressure> trip_pressure;    ///< line pressure that a crack trip needs
  Maybe<double> response_index;          ///< of the fusible link, in (m s)^0.5
  Maybe<double> conduction;              ///< of the fusible link, in (m/s)^0.5
  Maybe<Length> link_height;             ///< of the fusible link above the sump's floor
  Maybe<GaugePressure> rating;           ///< rated working pressure
  std::vector<Name> listed_to;           ///< standards that a laboratory listed it to
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
  std::optional<Part> filter;                 ///< shared by the hoses of this inlet
  std::optional<Part> meter;                  ///< shared by the hoses of this inlet
  Maybe<Length> elevation;                    ///< of the dispenser's inlet, above the riser
  Maybe<Length> line_elevation;               ///< of the line in the sump
  std::optional<EnteredLoss> loss_to_groove;  ///< fittings from the line to the shear groove
  std::optional<EnteredLoss> discharge_loss;  ///< of the broken end into the open air
  Maybe<Volume> liquid_above;                 ///< liquid in the dispenser above the shear groove
  Maybe<Ratio> drains;                        ///< share of it that runs out when the dispenser is down
};

/// One share of a blended hose.
struct BlendShare {
  SourceSpan where{};
  Name product;
  Entered<Ratio> share;
};

/// What was done when a breakaway that had parted was joined again.
struct Rejoining {
  SourceSpan where{};
  Maybe<Volume> purged;     ///< drawn through the hose
  Maybe<Duration> watched;  ///< the display did not move, while the hose was pulled and twisted
  std::optional<Date> on;
};

/// How a breakaway parts. Facts and figures have no default.
struct Parting {
  SourceSpan where{};
  Maybe<Force> pull;                     ///< along its axis at which it parts
  std::optional<Chosen<Poppet>> poppet;  ///< one end shuts, or both
  Fact reconnectable;
  Maybe<double> friction;  ///< of its sliding parts under a side pull [1]
  std::optional<Date> tested;
  std::optional<Date> installed;
  std::optional<Rejoining> rejoined;  ///< the last time
};

/// The spout of a nozzle, measured from its tip.
struct Spout {
  SourceSpan where{};
  Maybe<Length> diameter;  ///< outside, at the tip
  Maybe<Length> straight;  ///< length of the straight part
  Maybe<Length> spring;    ///< from the tip to where the retaining spring ends
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
  std::optional<Parting> parting;  ///< how the breakaway parts
  std::optional<Pipe> curb;
  std::optional<Part> swivel;
  std::optional<Part> nozzle;
  std::optional<Spout> spout;  ///< of the nozzle
  Maybe<VolumeFlow> limiter;   ///< no more than this flows
  Fact high_flow;
  Maybe<Force> nozzle_pull_out;  ///< pull at which the nozzle comes out of the vehicle
  Fact racked;                   ///< it hangs on a reel or a rack
  Fact retriever;                ///< a cord draws it back
  Maybe<Length> retriever_at;    ///< where that cord holds it, from the nozzle
  Fact self_closing;             ///< the nozzle shuts by itself
  Fact closes_without_pressure;  ///< the nozzle shuts when the pressure in the hose is gone
  Fact controlled_elsewhere;     ///< something besides the nozzle starts and stops the flow
};

/// The vapor line inside a dispenser, of vapor recovery at the vehicle.
struct VaporLine {
  SourceSpan where{};
  Fact breaks;         ///< a shear section or a flexible connector lets the valve of the liquid act
  Fact shear_mounted;  ///< its shear joint is rigidly mounted, and flush with the mounting surface
  Fact drains;         ///< it drains to the tank without a trap
  Fact closes;         ///< it is shut while nothing is dispensed
};

/// Where somebody in a wheelchair fuels.
struct AccessPlace {
  SourceSpan where{};
  Maybe<Length> highest;       ///< operable part, above the way of the vehicles
  Maybe<Length> lowest;        ///< operable part, above the way of the vehicles
  Maybe<Length> reach_over;    ///< depth of the curb or other obstruction that is reached over
  Fact existing_curb;          ///< the dispenser stands on a curb that was there before
  Maybe<Length> floor_length;  ///< clear floor beside it
  Maybe<Length> floor_width;
  Maybe<Ratio> slope;  ///< of that floor
};

/// What draws the vapor of the vehicle's tank back while it is filled (stage II).
struct VaporRecovery {
  SourceSpan where{};
  Maybe<Ratio> capture;   ///< share of the vapor that it takes, as certified
  Maybe<Ratio> per_fuel;  ///< volume of vapor for a volume of fuel, as measured
  Fact monitored;         ///< it is watched by itself while it works
  std::optional<Date> tested;
  std::vector<Name> listed_to;  ///< standards that it was tested to
};

struct Dispenser {
  Name id;
  SourceSpan where{};
  std::optional<Position> position;
  Maybe<Length> elevation;  ///< of the island's top
  std::optional<Sump> sump;
  Fact stabilizer_bar;  ///< the valves are held by a bar that is anchored to the island
  Fact satellite;       ///< follows another dispenser
  std::optional<Date> installed;
  std::optional<Date> connectors_installed;  ///< risers, connectors and valves beneath it
  Maybe<Mass> mass;
  Maybe<Length> base_width;     ///< of its foot, along the pull
  Maybe<Moment> anchorage;      ///< moment that its anchorage bears
  Maybe<Length> outlet_height;  ///< where the hose leaves it, above the island
  Maybe<Length> island_height;  ///< of the island above the drive
  Fact guarded;                 ///< guarded against vehicles by something else than its island
  Fact fastened;                ///< bolted to its mounting
  Fact vehicle_inside;          ///< a vehicle that fuels stands wholly on the premises
  Fact nozzle_switch;           ///< the pump runs only with a nozzle off its bracket and the switch there on
  std::optional<VaporLine> vapor_line;
  std::optional<AccessPlace> access;
  std::optional<Date> last_hit;  ///< the last day on which a vehicle struck it or drove off with a hose
  std::optional<VaporRecovery> vapor_recovery;
  std::vector<Name> listed_to;  ///< standards that a laboratory listed it to
  std::vector<Inlet> inlets;
  std::vector<Hose> hoses;
};

}  // namespace forecourse::site
