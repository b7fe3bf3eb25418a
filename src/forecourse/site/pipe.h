#pragma once

#include "forecourse/site/entered.h"

namespace forecourse::site {

/// One point of a measured loss curve.
struct LossPoint {
  VolumeFlow flow;
  PressureDifference loss;
};

/// A pressure loss, entered at the level the user knows it. Exactly one way is used:
/// `k` (with `bore` where it is not the pipe's own), `cv`, `kv`, `points`, or `per_flow` and `per_flow_squared`.
/// A loss that is entered replaces every default loss it covers.
struct EnteredLoss {
  SourceSpan where{};
  Maybe<double> k;                     ///< loss coefficient [1], on the velocity in `bore`
  Maybe<Length> bore;                  ///< inside diameter that `k` refers to
  Maybe<double> cv;                    ///< flow coefficient, US gpm at 1 psi and specific gravity 1
  Maybe<double> kv;                    ///< flow coefficient, m3/h at 1 bar and 1000 kg/m3
  Maybe<LinearLoss> per_flow;          ///< a in a q + b q^2
  Maybe<SquareLoss> per_flow_squared;  ///< b in a q + b q^2
  std::vector<LossPoint> points;       ///< measured flow and loss, rising
};

/// A run of round conduit: a line, a riser, a pump's leg, a whip or curb hose.
struct Pipe {
  SourceSpan where{};
  Maybe<Length> length;
  Maybe<Length> bore;  ///< inside diameter
  Name nominal;        ///< nominal size and construction, an id on the shelf of pipes
  Maybe<Length> wall;
  Maybe<Modulus> modulus;
  Maybe<Length> roughness;
  Maybe<Velocity> wave_speed;
  Maybe<GaugePressure> rating;
  Maybe<Stiffness> stiffness;       ///< of a hose: pull per stretch
  Maybe<Force> strength;            ///< of a hose: pull at which it fails
  std::optional<EnteredLoss> loss;  ///< of fittings along it, on its own bore
  Name material;                    ///< one of `pipe_materials`
  std::vector<Name> listed_to;      ///< standards that a laboratory listed it to
};

/// A part in the path that only loses pressure: filter, meter, control valve, breakaway, swivel, nozzle.
struct Part {
  SourceSpan where{};
  Name shelf;                         ///< id of a generic part on the shelf; empty: entered here
  std::optional<EnteredLoss> loss;    ///< replaces the shelf's; of a filter, when it is clean
  std::optional<EnteredLoss> loaded;  ///< of a filter only: its loss when it is due for a change
  Maybe<GaugePressure> rating;        ///< rated working pressure
  Maybe<GaugePressure> burst;         ///< pressure at which it bursts, as tested
  Maybe<double> accuracy_class;       ///< of a meter only, as marked
  std::optional<Date> tested;         ///< last test; of a meter its last proving
  std::vector<Name> listed_to;        ///< standards that a laboratory listed it to
};

/// A position on plan, from the site's own origin.
struct Position {
  Length x;
  Length y;
  SourceSpan where{};
};

}  // namespace forecourse::site
