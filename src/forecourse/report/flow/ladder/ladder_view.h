#pragma once

#include <string>
#include <vector>

#include "forecourse/report/units.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::report {

/// The ladders and worst states of one group of hoses that depend on each other, picked out.
struct LadderGroup {
  std::string system;
  const studies::Ladder* worst = nullptr;
  const studies::Ladder* spread = nullptr;
  const studies::Ladder* given = nullptr;  ///< null: no order was asked for
  const studies::WorstStates* states = nullptr;

  [[nodiscard]] std::size_t hoses() const { return worst == nullptr ? 0 : worst->steps.size(); }
};

[[nodiscard]] std::vector<LadderGroup> ladder_groups(const studies::FlowResult& result);

/// "worst", "typical", "asked for".
[[nodiscard]] const char* word(studies::LadderOrder order);

/// "by argument", "every set solved", "best found".
[[nodiscard]] const char* word(studies::Proof proof);

/// The slowest hose of a step; "all alike", or "D1.a and 2 alike" where none is the slowest.
[[nodiscard]] std::string slowest_in_words(const studies::LadderStep& step);

/// What the ladders of a group say, in sentences: up to how many hoses every open one keeps the flow asked for, what
/// the slowest gives with all open, and how it is known.
[[nodiscard]] std::vector<std::string> ladder_in_words(const LadderGroup& group, std::optional<double> keep_flow,
                                                       site::Display display, Glyphs glyphs = Glyphs::unicode);

/// What "worst" and "typical" mean, once for all groups.
[[nodiscard]] std::string ladder_terms();

/// One line of the table of worst states.
struct WorstRow {
  std::string what;   ///< "greatest flow through line trunk"
  std::string value;  ///< with its unit
  std::string open;   ///< which hoses
  std::string proof;
};

/// The worst states of a group; `whole`: of every line and pump, and of every hose where no argument tells them, else
/// of the worst of each.
[[nodiscard]] std::vector<WorstRow> worst_rows(const LadderGroup& group, bool whole, site::Display display,
                                               Glyphs glyphs = Glyphs::unicode);

/// How the worst states of a group are known, in one sentence.
[[nodiscard]] std::string search_in_words(const studies::WorstStates& states);

}  // namespace forecourse::report
