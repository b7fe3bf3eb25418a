#pragma once

#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

namespace forecourse::solvers::sequence {

/// A small full matrix split into triangles, with the row of the largest number first.
/// \source closed form
class DenseSolve {
 public:
  /// \param matrix row by row, size * size numbers
  /// \return false if a pivot is zero or no number; then it is not to be asked
  bool factor(const std::vector<double>& matrix, std::size_t size) {
    size_ = size;
    a_ = matrix;
    rows_.resize(size);
    for (std::size_t k = 0; k < size; ++k) {
      std::size_t best = k;
      for (std::size_t i = k + 1; i < size; ++i) {
        if (std::abs(at(i, k)) > std::abs(at(best, k))) best = i;
      }
      rows_[k] = best;
      if (!(std::abs(at(best, k)) > 0.0) || !std::isfinite(at(best, k))) return false;
      if (best != k) swap_rows(best, k);
      eliminate(k);
    }
    return true;
  }

  /// Puts the answer in the place of the right side.
  void solve(std::vector<double>& x) const {
    for (std::size_t k = 0; k < size_; ++k) {
      std::swap(x[k], x[rows_[k]]);
      for (std::size_t i = k + 1; i < size_; ++i) x[i] -= at(i, k) * x[k];
    }
    for (std::size_t k = size_; k-- > 0;) {
      for (std::size_t j = k + 1; j < size_; ++j) x[k] -= at(k, j) * x[j];
      x[k] /= at(k, k);
    }
  }

 private:
  [[nodiscard]] double at(std::size_t i, std::size_t j) const { return a_[i * size_ + j]; }
  double& at(std::size_t i, std::size_t j) { return a_[i * size_ + j]; }
  void swap_rows(std::size_t i, std::size_t k) {
    for (std::size_t j = 0; j < size_; ++j) std::swap(at(i, j), at(k, j));
  }
  void eliminate(std::size_t k) {
    for (std::size_t i = k + 1; i < size_; ++i) {
      const double factor = at(i, k) / at(k, k);
      at(i, k) = factor;
      if (factor == 0.0) continue;
      for (std::size_t j = k + 1; j < size_; ++j) at(i, j) -= factor * at(k, j);
    }
  }

  std::size_t size_ = 0;
  std::vector<double> a_;
  std::vector<std::size_t> rows_;
};

}  // namespace forecourse::solvers::sequence
