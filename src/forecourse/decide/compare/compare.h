#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/checks/finding.h"
#include "forecourse/decide/compare/parts.h"
#include "forecourse/decide/compare/rows.h"
#include "forecourse/decide/compare/worth.h"
#include "forecourse/site/editing/differences.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::decide {

struct CompareOptions {
  studies::FlowOptions flow;  ///< a hose that a station does not have is left out of its open sets
  double least_gain = 0.01;   ///< share of A's flow that B must give more of to be worth it; common practice, no source
};

/// One of the two stations.
struct Alternative {
  std::string name;
  studies::FlowResult flow;
  std::vector<checks::Finding> findings;
  int hoses = 0;    ///< whose flow with all open is determined
  int keeping = 0;  ///< of these, that keep the flow asked for
};

/// Hoses that depend on each other and are fed in one of the two only, so that there is nothing to hold against them.
struct FedOnce {
  std::string system;
  bool in_a = false;   ///< else in B
  std::string reason;  ///< of the other: "no pump of 'premium' runs: off is P2"
};

/// A pump that delivers nothing in one state of A or of B.
struct DeadHead {
  std::string state;
  std::string pump;
  bool a = false;
  bool b = false;
};

/// A requirement to which A and B do not stand in the same way; empty: it is not asked of this one.
struct FindingChange {
  std::optional<checks::Finding> a;
  std::optional<checks::Finding> b;
};

/// Two stations, A and B, held against each other: by id, in SI, B minus A.
struct Comparison {
  CompareOptions options;  ///< as used
  Alternative a;
  Alternative b;
  std::vector<site::ValueDifference> changed;  ///< what the files have differently, where their texts were at hand
  std::vector<OnePart> only_a;
  std::vector<OnePart> only_b;
  std::vector<Worth> worth;          ///< one for each piping that both have
  std::vector<FedOnce> fed_once;     ///< for which there is no answer
  std::vector<DifferenceRow> rows;   ///< all of them
  std::vector<Unchanged> unchanged;  ///< in which of them nothing differs
  std::vector<DeadHead> dead_heads;
  std::vector<FindingChange> findings;
  int findings_alike = 0;  ///< requirements with the same state in both
};

/// Compares the flow studies, the piping and the requirements of two stations.
///
/// \error the flows are as good as those of the flow study; two values that differ by less than the solver's accuracy
///        (see `same_value`) are the same.
/// \fails what only one of them has, or what is not determined in one, is told with one value missing.
[[nodiscard]] Comparison compare(const site::Site& a, const site::Site& b, const CompareOptions& options,
                                 const Context& context = {});

/// Ids in the options that are a hose of neither, as errors with the nearest hose; and what is wrong with the order of
/// opening that one of the files asks for.
[[nodiscard]] std::vector<Diagnostic> check_options(const site::Site& a, const site::Site& b,
                                                    const CompareOptions& options);

}  // namespace forecourse::decide
