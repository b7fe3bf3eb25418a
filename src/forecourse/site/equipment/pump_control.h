#pragma once

#include "forecourse/site/entered.h"

namespace forecourse::site {

enum class ControlKind {
  off,             ///< no pump runs
  all,             ///< every pump runs while a hose calls
  lead_lag,        ///< the next pump joins by line pressure or by hoses calling
  alternating,     ///< one pump at a time, in turn
  variable_speed,  ///< speed is set to hold a pressure
};

/// How the pumps of one product are run. Without it every pump runs while a hose calls.
struct PumpControl {
  Name id;
  SourceSpan where{};
  Name product;
  std::vector<Name> pumps;  ///< in the order they start; none: all pumps of the product
  std::optional<Chosen<ControlKind>> kind;
  Maybe<GaugePressure> starts_below;  ///< the next pump starts below this line pressure
  Maybe<GaugePressure> stops_above;   ///< the last pump stops above this line pressure
  Maybe<double> hoses_calling;        ///< the next pump starts when more hoses than this call
  Maybe<Duration> alternates_after;
  Maybe<GaugePressure> holds;  ///< line pressure held by a variable speed
  Maybe<Ratio> least_speed;
  Maybe<Ratio> most_speed;
};

}  // namespace forecourse::site
