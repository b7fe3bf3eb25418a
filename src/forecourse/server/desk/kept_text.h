#pragma once

#include <cstddef>
#include <deque>
#include <optional>
#include <string>

#include "forecourse/server/desk/change.h"

namespace forecourse::server {

constexpr std::size_t most_steps = 200;                          ///< that can be undone
constexpr std::size_t largest_history = std::size_t{16} << 20U;  ///< bytes of all their changes

/// A change with what the user calls it.
struct Step {
  std::string label;
  Change change;
};

/// A text with the way it came about.
struct KeptText {
  std::string text;
  int revision = 1;        ///< grows by one with each move
  std::deque<Step> steps;  ///< the oldest first
  std::size_t done = 0;    ///< steps that are in the text; those behind them can be redone
};

/// What can happen to a kept text.
struct Move {
  enum class Kind { step, undo, redo };
  Kind kind = Kind::step;
  Step step;  ///< of a move of kind `step`
};

/// The step that an undo takes back, and the one that a redo makes again; null: there is none.
[[nodiscard]] const Step* undoable(const KeptText& kept);
[[nodiscard]] const Step* redoable(const KeptText& kept);

/// Makes a move. What could be redone before a step is gone after it; the oldest steps go when there are too many.
///
/// \return false, with nothing done, where the move does not fit
bool make(KeptText& kept, const Move& move);

}  // namespace forecourse::server
