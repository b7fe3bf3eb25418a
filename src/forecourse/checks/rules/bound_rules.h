#pragma once

#include <span>
#include <vector>

#include "forecourse/checks/figures/figure.h"
#include "forecourse/checks/rules/period.h"
#include "forecourse/site/rules/rule_set.h"

namespace forecourse::checks {

/// A condition with its figure and its limits in SI.
struct BoundCondition {
  const Figure* figure = nullptr;
  std::optional<bool> is;
  std::optional<double> above;  ///< [SI]
  std::optional<double> up_to;
  std::optional<site::Date> after;
  std::optional<site::Date> by;
};

/// A requirement with its figure and its limits in SI.
struct BoundRequirement {
  const site::Requirement* entered = nullptr;
  const site::RuleSet* set = nullptr;
  const Figure* figure = nullptr;
  std::optional<double> at_least;  ///< [SI]; neither limit: the figure's own
  std::optional<double> at_most;
  bool is_above = false;  ///< `at_least` itself does not meet
  bool is_below = false;  ///< `at_most` itself does not meet
  std::optional<Period> every;
  std::vector<BoundCondition> when;
};

/// Finds the figures of a rule set, and reads its limits in their units. What does not fit is told with its place: a
/// figure that is not known, a limit of a wrong kind, a requirement without a limit.
///
/// \param set must outlive the result
[[nodiscard]] Parsed<std::vector<BoundRequirement>> bind(const site::RuleSet& set);

/// Tells of the rule sets that a site names and that are neither compiled in nor among the user's own, with their
/// place.
[[nodiscard]] std::vector<Diagnostic> check_rule_names(const site::Site& site, std::span<const site::RuleSet> own = {});

/// The requirements of the rule sets that are compiled in, bound once.
[[nodiscard]] const std::vector<std::vector<BoundRequirement>>& built_in_rules();

}  // namespace forecourse::checks
