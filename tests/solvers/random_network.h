#pragma once

#include <cstdint>
#include <vector>

#include "forecourse/parts/law.h"
#include "forecourse/solvers/steady.h"

namespace forecourse::test {

/// A seeded stream of numbers, equal on every machine (the standard distributions are not).
/// SOURCE: [steele_splitmix, splitmix64].
class Draws {
 public:
  explicit Draws(std::uint64_t seed) : state_(seed) {}
  std::uint64_t bits() {
    state_ += 0x9E3779B97F4A7C15ULL;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27U)) * 0x94D049BB133111EBULL;
    return z ^ (z >> 31U);
  }
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(bits() >> 11U) * 0x1.0p-53;
  }
  int below(int n) { return static_cast<int>(bits() % static_cast<std::uint64_t>(n)); }
  bool coin(double chance) { return between(0.0, 1.0) < chance; }

 private:
  std::uint64_t state_;
};

/// Each edge's law is a sum of part laws in series.
struct SeriesLaws {
  std::vector<std::vector<parts::Law>> terms;
  [[nodiscard]] solvers::EdgeLoss loss(int edge, double flow) const {
    parts::Loss sum;
    for (const parts::Law& law : terms[static_cast<std::size_t>(edge)]) sum = sum + parts::loss(law, flow);
    return {sum.pressure_loss, sum.slope};
  }
};

/// An invented network of the kinds stations have: pumps with check valves on a header, a trunk as a tree,
/// in series or as a ring, risers, and hoses with or without limiters.
struct RandomNetwork {
  int unknowns = 0;
  std::vector<double> fixed;
  std::vector<solvers::SteadyEdge> edges;
  SeriesLaws laws;
  std::vector<int> hoses;  ///< edges
  std::vector<int> pumps;  ///< edges
};

/// \param spread  0: figures of an ordinary station; 1: each figure off by up to a factor of ten either way
RandomNetwork random_network(Draws& draws, double spread);

/// Every edge open but the hoses outside `open_hoses` (bit i: hose i).
solvers::SteadyCase with_open(const RandomNetwork& network, std::uint64_t open_hoses);

}  // namespace forecourse::test
