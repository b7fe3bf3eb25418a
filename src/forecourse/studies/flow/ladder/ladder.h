#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/studies/flow/worst/proof.h"

namespace forecourse::studies {

/// In which order the hoses of a ladder open.
enum class LadderOrder {
  worst,   ///< for each number the set whose slowest hose is slowest; the sets need not contain each other
  spread,  ///< first hose of each dispenser in the order of the file, then the second of each, and so on
  given,   ///< the user's order
};

/// So many hoses open.
struct LadderStep {
  std::vector<std::string> hoses;      ///< the open ones, in the order in which they open
  std::vector<double> flow;            ///< [m3/s] of each of `hoses`
  double slowest = 0.0;                ///< [m3/s]; NaN where not determined
  std::string slowest_hose;            ///< of those that are alike, the first
  int tied = 1;                        ///< open hoses that give as little, to a millionth
  double total = 0.0;                  ///< [m3/s]
  Proof proof = Proof::enumeration;    ///< that no set of this number is worse; only of the worst order
  std::optional<double> mean_slowest;  ///< [m3/s] of the slowest over all sets of this number; empty: not all solved
};

/// Flow against the number of hoses open at one piping.
struct Ladder {
  std::string system;  ///< ids of the systems that depend on each other: "regular + premium"
  LadderOrder order = LadderOrder::worst;
  std::vector<LadderStep> steps;  ///< the first has one hose open
  std::optional<int> keeps;  ///< the most hoses open, up to which every one keeps the flow asked for; empty: none asked
  std::optional<double> rule_cap;  ///< [m3/s] the least that a rule allows at one of its hoses
  std::string rule_clause;
};

/// True if every hose of every set of as many gives the same to a millionth, so that none is the slowest; where not all
/// sets were solved, if every hose of this one does.
[[nodiscard]] bool all_alike(const LadderStep& step);

}  // namespace forecourse::studies
