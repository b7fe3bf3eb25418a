#include "forecourse/solvers/statistics/level_fit.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "forecourse/solvers/statistics/distributions.h"

namespace forecourse::solvers::statistics {
namespace {

using Series = std::vector<double>;

/// The lower factor of the covariance, and division by it.
class Whitener {
 public:
  explicit Whitener(const LevelNoise& noise) : diagonal_(noise.between.size()), below_(noise.between.size()) {
    for (std::size_t i = 0; i < diagonal_.size(); ++i) {
      const double first = noise.reading[i] * noise.reading[i];
      const double last = noise.reading[i + 1] * noise.reading[i + 1];
      below_[i] = i == 0 ? 0.0 : -first / diagonal_[i - 1];
      diagonal_[i] = std::sqrt(first + last + noise.between[i] * noise.between[i] - below_[i] * below_[i]);
    }
  }

  [[nodiscard]] Series operator()(const Series& values) const {
    Series out(values.size());
    for (std::size_t i = 0; i < values.size(); ++i) {
      out[i] = (values[i] - (i == 0 ? 0.0 : below_[i] * out[i - 1])) / diagonal_[i];
    }
    return out;
  }

 private:
  Series diagonal_;
  Series below_;  ///< below_[i] stands left of diagonal_[i]
};

double dot(const Series& a, const Series& b) {
  double sum = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

/// Columns made square to one another, and what they leave of the differences. All whitened.
class Standing {
 public:
  explicit Standing(Series differences) : rest_(std::move(differences)) {}

  void add(const Series& whitened) {
    constexpr double vanished = 1e-9;
    Series column = free_of_these(whitened);
    const double left = std::sqrt(dot(column, column));
    if (!(left > vanished * std::sqrt(dot(whitened, whitened)))) return;
    for (double& value : column) value /= left;
    take_away(rest_, column);
    directions_.push_back(std::move(column));
  }
  [[nodiscard]] Series free_of_these(Series column) const {
    for (int pass = 0; pass < 2; ++pass) {
      for (const Series& direction : directions_) take_away(column, direction);
    }
    return column;
  }
  [[nodiscard]] const Series& rest() const { return rest_; }
  [[nodiscard]] double degrees() const { return static_cast<double>(rest_.size() - directions_.size()); }

 private:
  static void take_away(Series& from, const Series& direction) {
    const double part = dot(from, direction);
    for (std::size_t i = 0; i < from.size(); ++i) from[i] -= part * direction[i];
  }

  std::vector<Series> directions_;
  Series rest_;
};

std::string problem_of(const std::vector<Column>& columns, const Series& differences, const LevelNoise& noise) {
  const std::size_t n = differences.size();
  if (noise.between.size() != n || noise.reading.size() != n + 1) return "the scatter does not go with the differences";
  for (const double one : noise.between) {
    if (!(one > 0.0)) return "what goes astray between two readings has no scatter";
  }
  for (const double one : noise.reading) {
    if (!(one >= 0.0)) return "the scatter of a reading is not a number";
  }
  if (columns.empty()) return "there is nothing to fit";
  for (const Column& column : columns) {
    if (column.values.size() != n) return "column '" + column.name + "' does not go with the differences";
  }
  return n > columns.size() ? "" : "there are no more differences than columns";
}

/// A fault with its size over its standard error, what stands already taken off.
struct Candidate {
  LevelFault fault;
  double ratio = 0.0;
};

Candidate judged(LevelFault fault, const Whitener& whiten, const Standing& standing) {
  const Series column = standing.free_of_these(whiten(column_of(fault, standing.rest().size()).values));
  const double square = dot(column, column);
  if (!(square > 1e-12)) return {fault, 0.0};
  fault.size = dot(column, standing.rest()) / square;
  const double left = dot(standing.rest(), standing.rest()) - fault.size * fault.size * square;
  fault.standard_error = std::sqrt(std::max(left, 0.0) / (standing.degrees() - 1.0) / square);
  return {fault, std::abs(fault.size) / std::max(fault.standard_error, std::numeric_limits<double>::min())};
}

Candidate largest_fault(const Whitener& whiten, const Standing& standing) {
  Candidate out;
  const std::size_t n = standing.rest().size();
  const auto look = [&](LevelFault::Kind kind, std::size_t at) {
    const Candidate one = judged({kind, at}, whiten, standing);
    if (one.ratio > out.ratio) out = one;
  };
  for (std::size_t i = 0; i < n; ++i) look(LevelFault::Kind::step, i);
  for (std::size_t i = 1; i < n; ++i) look(LevelFault::Kind::reading, i);
  return out;
}

/// Sizes and standard errors of faults that stand together. True where each is out of what chance gives.
bool stand_out(std::vector<LevelFault>& faults, std::vector<Column> columns, const Series& differences,
               const LevelNoise& noise, double chance) {
  const std::size_t n = differences.size();
  const std::size_t before = columns.size();
  for (const LevelFault& fault : faults) columns.push_back(column_of(fault, n));
  const LinearFit fit = fit_level(columns, differences, noise);
  if (!fit.problem.empty()) return false;
  const double tests = 2.0 * static_cast<double>(n) - 1.0;
  const double quantile = student_quantile(1.0 - chance / (2.0 * tests), static_cast<double>(fit.degrees_of_freedom));
  for (std::size_t i = 0; i < faults.size(); ++i) {
    const Coefficient& one = fit.coefficients[before + i];
    if (!one.value || !one.standard_error) return false;
    faults[i].size = *one.value;
    faults[i].standard_error = *one.standard_error;
    if (!(std::abs(faults[i].size) > quantile * faults[i].standard_error)) return false;
  }
  return true;
}

}  // namespace

Series whitened(const Series& differences, const LevelNoise& noise) { return Whitener(noise)(differences); }

LinearFit fit_level(const std::vector<Column>& columns, const Series& differences, const LevelNoise& noise) {
  LinearFit out;
  out.problem = problem_of(columns, differences, noise);
  if (!out.problem.empty()) return out;
  const Whitener whiten(noise);
  std::vector<Column> white;
  white.reserve(columns.size());
  for (const Column& column : columns) white.push_back({column.name, whiten(column.values)});
  return least_squares(white, whiten(differences));
}

Column column_of(const LevelFault& fault, std::size_t differences) {
  const bool reading = fault.kind == LevelFault::Kind::reading;
  Column out{(reading ? "reading " : "step ") + std::to_string(fault.at), Series(differences, 0.0)};
  if (!reading) {
    out.values[fault.at] = 1.0;
    return out;
  }
  if (fault.at > 0) out.values[fault.at - 1] = 1.0;
  if (fault.at < differences) out.values[fault.at] = -1.0;
  return out;
}

std::vector<LevelFault> level_faults(const std::vector<Column>& columns, const Series& differences,
                                     const LevelNoise& noise, double chance, std::size_t most) {
  std::vector<LevelFault> kept;
  if (!problem_of(columns, differences, noise).empty()) return kept;
  constexpr double worth_a_look = 2.5;  ///< common practice, no source: below it nothing hides that would stand out
  const std::size_t n = differences.size();
  const Whitener whiten(noise);
  Standing standing(whiten(differences));
  for (const Column& column : columns) standing.add(whiten(column.values));
  std::vector<LevelFault> taken;
  while (taken.size() < most && standing.degrees() > 3.0) {
    const Candidate largest = largest_fault(whiten, standing);
    if (largest.ratio < worth_a_look) break;
    taken.push_back(largest.fault);
    standing.add(whiten(column_of(largest.fault, n).values));
    std::vector<LevelFault> together = taken;
    if (stand_out(together, columns, differences, noise, chance)) kept = std::move(together);
  }
  return kept;
}

}  // namespace forecourse::solvers::statistics
