// Closed form: the answer of dense elimination with pivoting.
#include "forecourse/solvers/elimination.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <iostream>

#include "solvers/random_network.h"

namespace forecourse::test {
namespace {

using Pairs = std::vector<std::pair<int, int>>;
using Matrix = std::vector<std::vector<double>>;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// Gaussian elimination with the largest pivot of each column.
std::vector<double> dense_solve(Matrix a, std::vector<double> b) {
  const std::size_t n = b.size();
  for (std::size_t k = 0; k < n; ++k) {
    std::size_t best = k;
    for (std::size_t i = k + 1; i < n; ++i) best = std::abs(a[i][k]) > std::abs(a[best][k]) ? i : best;
    std::swap(a[k], a[best]);
    std::swap(b[k], b[best]);
    for (std::size_t i = k + 1; i < n; ++i) {
      const double factor = a[i][k] / a[k][k];
      for (std::size_t j = k; j < n; ++j) a[i][j] -= factor * a[k][j];
      b[i] -= factor * b[k];
    }
  }
  for (std::size_t k = n; k-- > 0;) {
    for (std::size_t j = k + 1; j < n; ++j) b[k] -= a[k][j] * b[j];
    b[k] /= a[k][k];
  }
  return b;
}

/// A symmetric matrix of a pattern with every diagonal above the sum of its row, so positive definite.
struct System {
  solvers::Elimination elimination;
  std::vector<double> diagonal, below, right;
  Matrix dense;

  System(int size, const Pairs& pairs, Draws& draws)
      : elimination(at(size), pairs),
        diagonal(at(size)),
        below(elimination.slots(), 0.0),
        right(at(size)),
        dense(at(size), std::vector<double>(at(size), 0.0)) {
    for (const auto& [i, j] : pairs) {
      if (i != j) add(i, j, draws.between(-1.0, 1.0));
    }
    for (int i = 0; i < size; ++i) close_row(i, draws);
  }

 private:
  void add(int i, int j, double value) {
    below[at(elimination.slot(i, j))] += value;
    dense[at(i)][at(j)] += value;
    dense[at(j)][at(i)] += value;
  }
  void close_row(int i, Draws& draws) {
    double sum = 0.0;
    for (const double value : dense[at(i)]) sum += std::abs(value);
    diagonal[at(i)] = dense[at(i)][at(i)] = sum + draws.between(0.1, 1.0);
    right[at(i)] = draws.between(-1.0, 1.0);
  }
};

double worst_difference(System& system) {
  const std::vector<double> expected = dense_solve(system.dense, system.right);
  system.elimination.solve(system.diagonal.data(), system.below.data(), system.right.data());
  double worst = 0.0;
  for (std::size_t i = 0; i < expected.size(); ++i) worst = std::max(worst, std::abs(system.right[i] - expected[i]));
  return worst;
}

Pairs random_tree(int size, Draws& draws) {
  Pairs pairs;
  for (int i = 1; i < size; ++i) pairs.emplace_back(draws.below(i), i);
  return pairs;
}

TEST(Elimination, AgreesWithDenseElimination) {
  Draws draws(1);
  double worst = 0.0;
  for (int round = 0; round < 500; ++round) {
    const int size = 1 + draws.below(30);
    Pairs pairs;
    for (int k = draws.below(3 * size + 1); k > 0; --k) pairs.emplace_back(draws.below(size), draws.below(size));
    System system(size, pairs, draws);  // doubles and entries on the diagonal are among the pairs
    worst = std::max(worst, worst_difference(system));
  }
  std::cout << "elimination: worst difference " << worst << '\n';
  EXPECT_LT(worst, 1e-12);  // answers of size 10 at most, rounded to 1e-15 some hundred times
}

TEST(Elimination, FillsNothingOnTrees) {
  Draws draws(2);
  for (int round = 0; round < 200; ++round) {
    const int size = 1 + draws.below(200);
    const Pairs tree = random_tree(size, draws);
    System system(size, tree, draws);
    EXPECT_EQ(system.elimination.slots(), tree.size());
    if (size <= 60) {  // larger ones cost the dense solve too much
      EXPECT_LT(worst_difference(system), 1e-12);
    }
  }
}

TEST(Elimination, FillsLittleOnARing) {
  for (const int size : {3, 4, 10, 100}) {
    Pairs ring;
    for (int i = 0; i < size; ++i) ring.emplace_back(i, (i + 1) % size);
    const solvers::Elimination elimination(at(size), ring);
    EXPECT_EQ(elimination.slots(), ring.size() + at(size - 3));  // one entry for each node taken out down to three
  }
}

TEST(Elimination, KnowsTheSlotOfEachPair) {
  const solvers::Elimination elimination(4, {{0, 1}, {1, 0}, {2, 2}, {1, 3}});
  EXPECT_EQ(elimination.size(), 4U);
  EXPECT_EQ(elimination.slots(), 2U);
  EXPECT_EQ(elimination.slot(0, 1), elimination.slot(1, 0));
  EXPECT_NE(elimination.slot(0, 1), elimination.slot(1, 3));
  EXPECT_EQ(elimination.slot(2, 2), -1);
}

TEST(Elimination, SolvesNothing) {
  const solvers::Elimination elimination(0, {});
  elimination.solve<double>(nullptr, nullptr, nullptr);
  EXPECT_EQ(elimination.slots(), 0U);
}

}  // namespace
}  // namespace forecourse::test
