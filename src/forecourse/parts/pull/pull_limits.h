#pragma once

#include <optional>
#include <span>
#include <vector>

#include "forecourse/parts/pull/pull_range.h"

namespace forecourse::parts {

/// What can give way when a vehicle pulls on the hose.
enum class PullLimit {
  nozzle_pull_out,  ///< the nozzle slips out of the filler neck
  breakaway,        ///< the breakaway separates, as it should
  hose,             ///< the hose tears or slips off its fitting
  swivel,           ///< a swivel or the outlet breaks
  anchorage,        ///< the dispenser is pulled over
  shear_valve,      ///< the valve below the dispenser shears
};

/// A limit that is there, with the pull along the hose at which it is reached. One that is not there is not listed.
struct GivenLimit {
  PullLimit limit = PullLimit::breakaway;
  std::optional<PullRange> pull;  ///< [N], none when not known
};

/// Which of the limits a growing pull reaches first, as far as the figures say.
struct FirstLimit {
  std::optional<PullLimit> first;          ///< none: not determined
  std::vector<PullLimit> could_be_first;   ///< of the known ones, in the order given
  std::vector<PullLimit> not_known;        ///< any of these could come first too
  std::optional<PullLimit> likely_first;   ///< of the known ones at their likely pulls; none on a tie or without any
  double reached_at_most = 0.0;            ///< [N] at which a known limit is surely reached, infinite when none is
  std::optional<double> reached_at_least;  ///< [N] below which none is reached; none while one is not known
};

/// Which limit comes first as the pull on the hose grows.
///
/// It is determined only when none is unknown and one limit's highest pull lies below the lowest of all others.
/// \param limits pulls [N], low <= likely <= high
/// \return order of the limits, pulls [N].
/// \error none of the ranking; the ranges are taken as sure and as independent of each other.
/// \source closed form of comparing ranges
FirstLimit first_limit(std::span<const GivenLimit> limits);

}  // namespace forecourse::parts
