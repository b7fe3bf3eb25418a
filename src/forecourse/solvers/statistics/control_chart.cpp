#include "forecourse/solvers/statistics/control_chart.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "forecourse/solvers/sequence/stiff/dense_solve.h"
#include "forecourse/solvers/statistics/distributions.h"

namespace forecourse::solvers::statistics {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

double density(double z) { return std::exp(-0.5 * z * z) / std::sqrt(2.0 * std::numbers::pi); }

struct Node {
  double at = 0.0;
  double weight = 0.0;
};

/// Gauss-Legendre points between two ends. \source [abramowitz_stegun, 25.4.29]
std::vector<Node> nodes_between(double low, double high, int count) {
  std::vector<Node> nodes;
  for (int i = 0; i < count; ++i) {
    double x = std::cos(std::numbers::pi * (i + 0.75) / (count + 0.5));
    double slope = 1.0;
    for (int round = 0; round < 100; ++round) {
      double before = 1.0;
      double value = x;
      for (int k = 2; k <= count; ++k) {
        const double next = ((2.0 * k - 1.0) * x * value - (k - 1.0) * before) / k;
        before = value;
        value = next;
      }
      slope = count * (x * value - before) / (x * x - 1.0);
      const double step = value / slope;
      x -= step;
      if (std::abs(step) < 1e-15) break;
    }
    const double half = 0.5 * (high - low);
    nodes.push_back({low + half * (1.0 - x), half * 2.0 / ((1.0 - x * x) * slope * slope)});
  }
  return nodes;
}

/// Run length of the upper sum from a start.
double one_sided(double reference, double limit, double start, double shift) {
  const int count = 30 + static_cast<int>(8.0 * limit);
  const std::vector<Node> nodes = nodes_between(0.0, limit, count);
  const std::size_t size = nodes.size() + 1;  // the last unknown is the length from zero
  const auto at = [&](std::size_t i) { return i < nodes.size() ? nodes[i].at : 0.0; };
  std::vector<double> matrix(size * size, 0.0);
  for (std::size_t i = 0; i < size; ++i) {
    matrix[i * size + i] = 1.0;
    for (std::size_t j = 0; j < nodes.size(); ++j) {
      matrix[i * size + j] -= nodes[j].weight * density(nodes[j].at + reference - at(i) - shift);
    }
    matrix[i * size + nodes.size()] -= normal_probability(reference - at(i) - shift);
  }
  sequence::DenseSolve dense;
  if (!dense.factor(matrix, size)) return nan;
  std::vector<double> length(size, 1.0);
  dense.solve(length);
  double sum = 1.0 + length.back() * normal_probability(reference - start - shift);
  for (std::size_t j = 0; j < nodes.size(); ++j) {
    sum += length[j] * nodes[j].weight * density(nodes[j].at + reference - start - shift);
  }
  return sum;
}

bool makes_sense(const CusumChart& c) { return c.reference >= 0.0 && c.limit > 0.0 && c.head_start >= 0.0; }

}  // namespace

std::vector<CusumPoint> cusum(const std::vector<double>& standardized, const CusumChart& chart) {
  std::vector<CusumPoint> points;
  double upper = chart.head_start;
  double lower = chart.head_start;
  for (const double x : standardized) {
    upper = std::max(0.0, upper + x - chart.reference);
    lower = std::max(0.0, lower - x - chart.reference);
    points.push_back({upper, lower, upper > chart.limit, lower > chart.limit});
  }
  return points;
}

std::vector<EwmaPoint> ewma(const std::vector<double>& standardized, const EwmaChart& chart) {
  std::vector<EwmaPoint> points;
  double average = 0.0;
  double forgotten = 1.0;  // square of the share of the beginning
  for (const double x : standardized) {
    average = (1.0 - chart.weight) * average + chart.weight * x;
    forgotten *= (1.0 - chart.weight) * (1.0 - chart.weight);
    const double limit = chart.limit * std::sqrt(chart.weight / (2.0 - chart.weight) * (1.0 - forgotten));
    points.push_back({average, limit, std::abs(average) > limit});
  }
  return points;
}

double upper_cusum_run_length(const CusumChart& chart, double shift) {
  if (!makes_sense(chart)) return nan;
  return one_sided(chart.reference, chart.limit, chart.head_start, shift);
}

double cusum_run_length(const CusumChart& chart, double shift) {
  if (!makes_sense(chart)) return nan;
  const double up = one_sided(chart.reference, chart.limit, 0.0, shift);
  const double down = one_sided(chart.reference, chart.limit, 0.0, -shift);
  if (chart.head_start == 0.0) return 1.0 / (1.0 / up + 1.0 / down);
  const double up_ahead = one_sided(chart.reference, chart.limit, chart.head_start, shift);
  const double down_ahead = one_sided(chart.reference, chart.limit, chart.head_start, -shift);
  return (up_ahead * down + up * down_ahead - up * down) / (up + down);
}

double ewma_run_length(const EwmaChart& chart, double shift) {
  const double weight = chart.weight;
  if (!(weight > 0.0 && weight <= 1.0) || !(chart.limit > 0.0)) return nan;
  const double limit = chart.limit * std::sqrt(weight / (2.0 - weight));
  const int count = 40 + static_cast<int>(4.0 * limit / weight);
  const std::vector<Node> nodes = nodes_between(-limit, limit, count);
  const std::size_t size = nodes.size();
  std::vector<double> matrix(size * size, 0.0);
  const auto step = [&](double from, const Node& to) {
    return to.weight / weight * density((to.at - (1.0 - weight) * from) / weight - shift);
  };
  for (std::size_t i = 0; i < size; ++i) {
    for (std::size_t j = 0; j < size; ++j) matrix[i * size + j] = (i == j ? 1.0 : 0.0) - step(nodes[i].at, nodes[j]);
  }
  sequence::DenseSolve dense;
  if (!dense.factor(matrix, size)) return nan;
  std::vector<double> length(size, 1.0);
  dense.solve(length);
  double sum = 1.0;
  for (std::size_t j = 0; j < size; ++j) sum += length[j] * step(0.0, nodes[j]);
  return sum;
}

}  // namespace forecourse::solvers::statistics
