#pragma once

#include <cstddef>
#include <vector>

#include "forecourse/lesson/questions/question.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::lesson {

// Lines of law: words, a colon, and behind it sides that are equal, with the station's numbers in them.

/// What the pump adds against what the way to a hose takes; without places where the hose is shut.
[[nodiscard]] Phrase balance_at(const studies::HoseFlow& hose);

/// Which of a list an item of it is.
///
/// \pre it is one of the list
template <class Item>
[[nodiscard]] std::size_t index_of(const std::vector<Item>& list, const Item* item) {
  return static_cast<std::size_t>(item - list.data());
}

}  // namespace forecourse::lesson
