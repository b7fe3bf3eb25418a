#include "forecourse/solvers/elimination.h"

#include <algorithm>
#include <set>

namespace forecourse::solvers {
namespace {

using Neighbors = std::vector<std::set<int>>;

/// The unknowns still to be eliminated, by degree: the first is the next pivot.
class Queue {
 public:
  explicit Queue(const Neighbors& neighbors) {
    for (int i = 0; i < static_cast<int>(neighbors.size()); ++i) insert(i, neighbors);
  }
  void insert(int i, const Neighbors& n) { by_degree_.emplace(n[static_cast<std::size_t>(i)].size(), i); }
  void erase(int i, const Neighbors& n) { by_degree_.erase({n[static_cast<std::size_t>(i)].size(), i}); }
  [[nodiscard]] bool empty() const { return by_degree_.empty(); }
  [[nodiscard]] int first() const { return by_degree_.begin()->second; }

 private:
  std::set<std::pair<std::size_t, int>> by_degree_;
};

}  // namespace

Elimination::Elimination(std::size_t size, const std::vector<std::pair<int, int>>& pairs)
    : size_(size), slot_of_(size) {
  Neighbors neighbors(size);
  const auto give_slot = [&](int i, int j) {
    if (!neighbors[static_cast<std::size_t>(i)].insert(j).second) return;
    neighbors[static_cast<std::size_t>(j)].insert(i);
    const int slot = static_cast<int>(slots_++);
    slot_of_[static_cast<std::size_t>(i)].emplace_back(j, slot);
    slot_of_[static_cast<std::size_t>(j)].emplace_back(i, slot);
  };
  for (const auto& [i, j] : pairs) {
    if (i != j) give_slot(i, j);
  }
  Queue queue(neighbors);
  pivots_.reserve(size);
  while (!queue.empty()) {
    Pivot pivot;
    pivot.unknown = queue.first();
    queue.erase(pivot.unknown, neighbors);
    const std::set<int> others = neighbors[static_cast<std::size_t>(pivot.unknown)];
    for (const int other : others) queue.erase(other, neighbors);
    for (const int other : others) neighbors[static_cast<std::size_t>(other)].erase(pivot.unknown);
    for (const int a : others) {
      pivot.column.emplace_back(a, slot(pivot.unknown, a));
      for (const int b : others) {
        if (b <= a) continue;
        give_slot(a, b);
        pivot.updates.push_back({slot(a, b), slot(pivot.unknown, a), slot(pivot.unknown, b)});
      }
    }
    for (const int other : others) queue.insert(other, neighbors);
    pivots_.push_back(std::move(pivot));
  }
}

int Elimination::slot(int i, int j) const {
  for (const auto& [other, slot] : slot_of_[static_cast<std::size_t>(i)]) {
    if (other == j) return slot;
  }
  return -1;
}

}  // namespace forecourse::solvers
