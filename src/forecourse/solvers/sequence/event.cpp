#include "forecourse/solvers/sequence/event.h"

#include <algorithm>
#include <tuple>

namespace forecourse::solvers::sequence {

bool comes_before(const Event& a, const Event& b) {
  return std::tie(a.time, a.kind, a.id, a.source) < std::tie(b.time, b.kind, b.id, b.source);
}

void EventQueue::add(const TimedEvent& event) {
  const auto is_later = [](const TimedEvent& waiting, const TimedEvent& added) {
    return std::tie(waiting.time, waiting.kind, waiting.id) > std::tie(added.time, added.kind, added.id);
  };
  waiting_.insert(std::lower_bound(waiting_.begin(), waiting_.end(), event, is_later), event);
}

std::size_t EventQueue::cancel(int kind, int id) {
  return std::erase_if(waiting_, [&](const TimedEvent& e) { return e.kind == kind && e.id == id; });
}

}  // namespace forecourse::solvers::sequence
