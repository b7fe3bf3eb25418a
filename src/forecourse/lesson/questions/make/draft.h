#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "forecourse/lesson/questions/chance.h"
#include "forecourse/lesson/questions/question.h"

namespace forecourse::lesson {

/// How questions are finished: answers that can be told apart, or the reason why there are none.

/// A value that a rule of thumb or a slip of the trade leads to.
struct Slip {
  double value = 0.0;  ///< [SI]
  std::string why;
};

/// Something to be put in order.
struct Ranked {
  Phrase words;
  double key = 0.0;                  ///< by which it is ordered, rising
  std::optional<Amount> shown = {};  ///< what it is ordered by, as it is told
};

/// Wrong answers lie further from the right one, and from each other, than this share of it.
inline constexpr double usual_gap = 0.06;
/// An answer more than this often away from the right one gives it away.
inline constexpr double widest_ratio = 60.0;

[[nodiscard]] inline Asked left_out(std::string reason) { return LeftOut{{}, std::move(reason)}; }

/// Of one right value and up to three wrong ones. Slips that are no value, or too near to the answer or to a slip
/// before, are passed over; with fewer than two the question is left out.
[[nodiscard]] Asked choose_value(Question draft, const Amount& answer, const std::vector<Slip>& slips, Chance& chance,
                                 double gap = usual_gap);

/// A number to be estimated; left out where it is nothing.
[[nodiscard]] Asked estimate(Question draft, const Amount& answer, double tolerance);

/// Of one right and some wrong answers in words; those that say the same as one before are passed over.
[[nodiscard]] Asked choose_words(Question draft, const Phrase& right, const std::vector<Option>& wrong, Chance& chance);

/// Items in the order of their keys, which the question then follows from where all of them are shown. Of two that are
/// nearer than the gap, one is passed over; left out with fewer than `least`.
/// \param gap [unit of the keys]
[[nodiscard]] Asked in_order(Question draft, std::vector<Ranked> items, double gap, std::size_t least = 3,
                             std::size_t most = 5);

}  // namespace forecourse::lesson
