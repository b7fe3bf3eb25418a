#pragma once

#include "forecourse/site/pipe.h"

namespace forecourse::site {

/// A switch that stops the flow of fuel. Facts have no default: what is unknown stays unknown.
struct EmergencyStop {
  Name id;
  SourceSpan where{};
  std::optional<Position> position;
  Maybe<Length> elevation;
  std::vector<Name> stops;  ///< pumps; none listed: not known which
  Maybe<Duration> acts_in;  ///< from the event until the pumps stop
  Name by_whom;             ///< "attendant", "customer", "fire-service" or "automatic"
  Name reset;               ///< who resets it, and how, in words
  Fact also_cuts_power;     ///< to the dispensers
  Maybe<Length> height;     ///< above the floor in front of it
  Fact sign;                ///< it is marked with what it does
  Fact manual_reset;        ///< only by hand can it be set back
  Fact keeps_monitoring;    ///< intrinsically safe monitoring of the tanks goes on
  std::optional<Date> tested;
};

/// A fire extinguisher that hangs ready.
struct Extinguisher {
  Name id;
  SourceSpan where{};
  std::optional<Position> position;
  Name rating;  ///< as on its label: "2-A:20-B:C"
};

enum class InterlockAction { stop, alarm, restrict };

/// When one thing trips, another acts.
struct Interlock {
  Name id;
  SourceSpan where{};
  Name when;  ///< a sump sensor, a leak detector, an emergency stop, or the pump or dispenser that bears it
  std::optional<Chosen<InterlockAction>> then;
  std::vector<Name> what;  ///< pumps and dispensers
  Maybe<Duration> acts_in;
  Fact fail_safe;  ///< a broken wire or lost power acts like a trip
  std::optional<Date> tested;
};

}  // namespace forecourse::site
