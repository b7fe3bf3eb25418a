#pragma once

#include <cstddef>
#include <utility>
#include <vector>

namespace forecourse::solvers {

/// The order of operations that solves a symmetric positive definite system of fixed pattern.
/// Found once per graph by least-degree ordering and replayed for every set of values: on a tree it is
/// leaf elimination without fill, on rings it adds a few entries, so that trees need no code of their own.
/// \source [golub_vanloan, LDL^T factorization]; [george_liu, minimum degree ordering].
class Elimination {
 public:
  /// \param size   number of unknowns
  /// \param pairs  unordered pairs of unknowns that share an entry; doubles and i == j are allowed
  Elimination(std::size_t size, const std::vector<std::pair<int, int>>& pairs);

  [[nodiscard]] std::size_t size() const { return size_; }
  [[nodiscard]] std::size_t slots() const { return slots_; }

  /// Slot of the entry (i, j) among the values below the diagonal; -1 if i == j.
  /// \pre the pair was given to the constructor.
  [[nodiscard]] int slot(int i, int j) const;

  /// Solves in place. `T` is double, or a lane of several states.
  /// \param diagonal  size() values; overwritten by the pivots
  /// \param below     slots() values at the slots of `slot`; overwritten by the factor
  /// \param right     size() values; overwritten by the solution
  template <class T>
  void solve(T* diagonal, T* below, T* right) const {
    for (const Pivot& pivot : pivots_) eliminate(pivot, diagonal, below, right);
    for (auto pivot = pivots_.rbegin(); pivot != pivots_.rend(); ++pivot)
      back_substitute(*pivot, diagonal, below, right);
  }

  struct Update {  ///< below[target] -= below[a] * below[b] / pivot
    int target, a, b;
  };
  struct Pivot {
    int unknown = 0;
    std::vector<std::pair<int, int>> column;  ///< (later unknown, slot)
    std::vector<Update> updates;
  };
  /// The operations in their order, for code that replays them by itself.
  [[nodiscard]] const std::vector<Pivot>& pivots() const { return pivots_; }

 private:
  template <class T>
  static void eliminate(const Pivot& pivot, T* diagonal, T* below, T* right) {
    const T inverse = 1.0 / diagonal[pivot.unknown];
    diagonal[pivot.unknown] = inverse;
    for (const auto& [later, slot] : pivot.column) {
      const T factor = below[slot] * inverse;
      diagonal[later] -= factor * below[slot];
      right[later] -= factor * right[pivot.unknown];
    }
    for (const Update& u : pivot.updates) below[u.target] -= below[u.a] * below[u.b] * inverse;
  }

  template <class T>
  static void back_substitute(const Pivot& pivot, const T* diagonal, const T* below, T* right) {
    T sum = right[pivot.unknown];
    for (const auto& [later, slot] : pivot.column) sum -= below[slot] * right[later];
    right[pivot.unknown] = sum * diagonal[pivot.unknown];
  }

  std::size_t size_ = 0;
  std::size_t slots_ = 0;
  std::vector<Pivot> pivots_;
  std::vector<std::vector<std::pair<int, int>>> slot_of_;  ///< per unknown: (other unknown, slot)
};

}  // namespace forecourse::solvers
