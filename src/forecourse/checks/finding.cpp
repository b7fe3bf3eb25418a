#include "forecourse/checks/finding.h"

#include <cmath>

namespace forecourse::checks {

const char* word(FindingState state) {
  switch (state) {
    case FindingState::meets:
      return "meets";
    case FindingState::close:
      return "close";
    case FindingState::falls_short:
      return "falls short";
    case FindingState::not_determined:
      return "not determined";
    case FindingState::does_not_apply:
      return "does not apply";
  }
  return "not determined";
}

FindingState state_of(double margin, double limit) {
  constexpr double close_share = 0.02;
  constexpr double rounding = 1e-9;  // a limiter holds its limit to the solver's rounding
  if (margin < -rounding * std::abs(limit)) return FindingState::falls_short;
  return margin < close_share * std::abs(limit) ? FindingState::close : FindingState::meets;
}

const char* word(Measured of) {
  switch (of) {
    case Measured::fuel:
      return "fuel";
    case Measured::vapor:
      return "vapor";
    case Measured::leak:
      return "leak";
    case Measured::age:
      return "age";
    case Measured::draw:
      return "draw";
  }
  return "fuel";
}

}  // namespace forecourse::checks
