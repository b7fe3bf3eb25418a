#pragma once

#include "forecourse/site/pipe.h"
#include "forecourse/site/sump.h"

namespace forecourse::site {

/// The room between the two walls of a tank or a line.
struct Interstice {
  SourceSpan where{};
  Name watch;  ///< "dry", "brine", "vacuum", "pressure" or "none"
  Maybe<Volume> volume;
  Name drains_to;                 ///< id of the sump's place (a pump or a dispenser) where it opens
  Fact alarm;                     ///< somebody is told
  std::optional<Date> monitored;  ///< it was last looked at or read
  std::optional<Date> tested;
};

/// The test of a new line before it is covered or used.
struct AcceptanceTest {
  SourceSpan where{};
  Name kind;                      ///< "hydrostatic" or "pneumatic"
  Maybe<GaugePressure> pressure;  ///< at the top
  Maybe<GaugePressure> greatest;  ///< that is to be expected in use
  Maybe<Duration> held;
  std::optional<Date> tested;
};

/// A run of product line between two places: a pump, a branch, or a dispenser inlet.
/// The places are ids: "P1", "B2", "D1.regular".
struct Line {
  Name id;
  SourceSpan where{};
  Name from;
  Name to;
  Pipe pipe;         ///< its keys (length, bore, roughness, loss ...) stand in the line's own table
  Fact check_valve;  ///< lets flow only from `from` to `to`
  Fact double_wall;
  std::optional<Interstice> interstice;  ///< of a double-walled line
  std::vector<EntrySeal> seals;          ///< where it enters the sumps at its ends
  Maybe<Length> burial;                  ///< cover above the line
  Maybe<Ratio> fall;                     ///< slope toward the tank sump
  Maybe<Length> in_sump;                 ///< longest stretch of it inside a sump, from the wall
  std::optional<Date> tested;            ///< last line tightness test
  std::optional<AcceptanceTest> acceptance;
  Fact flexible_joints;        ///< at tank, islands and where it can move
  Maybe<Length> straight_run;  ///< least straight run at a change of direction
  std::optional<Date> installed;
  std::optional<Date> replaced;  ///< last time that a part of the run was replaced
  Maybe<Ratio> replaced_share;   ///< of the run
  std::optional<Date> repaired;
};

/// A place where lines meet without a dispenser.
struct Branch {
  Name id;
  SourceSpan where{};
  std::optional<Position> position;
  Maybe<Length> elevation;
};

}  // namespace forecourse::site
