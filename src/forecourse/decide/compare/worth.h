#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/site/site.h"
#include "forecourse/studies/flow/ladder/ladder.h"

namespace forecourse::decide {

/// What B does for the slowest hose.
enum class Verdict {
  gains,           ///< it gives more than the least gain more
  same,            ///< no more and no less than that
  loses,           ///< it gives less by more than that
  not_determined,  ///< the slowest flow of one of them is not
};

/// So many hoses open: the slowest hose of the worst set of this number in A and in B.
struct WorthStep {
  int open = 0;
  double slowest_a = 0.0;  ///< [m3/s]
  double slowest_b = 0.0;  ///< [m3/s]
  std::string hose_a;
  std::string hose_b;
  bool alike_a = false;  ///< no hose is the slowest in A: all of all sets of as many give the same
  bool alike_b = false;
  double gain = 0.0;  ///< (B - A) / A
  Verdict verdict = Verdict::not_determined;
  bool nothing = false;  ///< the two flows are the same within the solver's accuracy
  bool held = false;     ///< in the worst set of A and in that of B, limiters hold every open hose
  studies::Proof proof_a = studies::Proof::best_found;
  studies::Proof proof_b = studies::Proof::best_found;
};

/// From how many hoses open B is worth it at one piping, held against A.
struct Worth {
  std::string system;
  double least_gain = 0.0;        ///< share of A's flow
  std::vector<WorthStep> steps;   ///< as far as both have hoses
  std::optional<int> from;        ///< the first number from which B gains at this and at every larger number
  std::optional<int> loses_from;  ///< the same for losing
  std::optional<int>
      keeps_a;  ///< the most hoses open in A, up to which each keeps the flow asked for; empty: none asked
  std::optional<int> keeps_b;
  bool nothing_below = false;  ///< at every number below `from`, or at all where there is none, the flows are the same
  bool held_below = false;     ///< and limiters hold every open hose of A and of B there
};

/// Holds the ladders in the worst order of the pipings that both have against each other.
///
/// \param least_gain share of A's flow that B must give more of
[[nodiscard]] std::vector<Worth> worth_of(const site::Site& a, const std::vector<studies::Ladder>& ladders_a,
                                          const site::Site& b, const std::vector<studies::Ladder>& ladders_b,
                                          double least_gain);

/// The numbers of hoses open with this verdict.
[[nodiscard]] std::vector<int> numbers_with(const Worth& worth, Verdict verdict);

}  // namespace forecourse::decide
