#pragma once

#include <span>
#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/checks/rules/bound_rules.h"

namespace forecourse::checks {

/// Holds a station against requirements: a finding for each part that a requirement is on, in their order.
///
/// What is not known is never met: a value that is missing, one that rests on an unpublished default, and a condition
/// that cannot be told, give *not determined*. Of alternatives (one route) the best counts for each part. An amount
/// that meets its limit by less than its deviation, or where none is known by less than 2 % of the limit, is *close*;
/// so is a test that falls due within 2 % of its interval.
[[nodiscard]] std::vector<Finding> check_rules(const Facts& facts, std::span<const BoundRequirement> rules);

}  // namespace forecourse::checks
