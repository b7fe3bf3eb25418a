#pragma once

#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

#include "forecourse/solvers/sequence/random/draws.h"

namespace forecourse::lesson {

/// A course of chance that is the same on every machine: which part is asked about, and in which order answers stand.
class Chance {
 public:
  Chance(std::uint64_t seed, std::uint64_t run) : draws_(seed, run) {}

  /// \return inside (0, 1)
  [[nodiscard]] double uniform() { return draws_.uniform(next_++); }

  /// \pre count > 0
  /// \return 0 to count - 1, each as likely
  [[nodiscard]] std::size_t index(std::size_t count) {
    return static_cast<std::size_t>(uniform() * static_cast<double>(count));
  }

  /// Every order as likely.
  template <class T>
  void shuffle(std::vector<T>& items) {
    for (std::size_t left = items.size(); left > 1; --left) std::swap(items[left - 1], items[index(left)]);
  }

 private:
  solvers::sequence::Draws draws_;
  std::uint32_t next_ = 0;
};

}  // namespace forecourse::lesson
