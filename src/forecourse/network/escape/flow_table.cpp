#include "forecourse/network/escape/flow_table.h"

#include <utility>

namespace forecourse::network {
namespace {

/// Slope between two secants so that the cubic does not overshoot: their harmonic mean, zero where they disagree.
double slope_between(double left, double right) {
  return left * right > 0.0 ? 2.0 * left * right / (left + right) : 0.0;
}

}  // namespace

FlowTable::FlowTable(double first, double step, std::vector<double> values)
    : first_(first), step_(step), values_(std::move(values)), slopes_(values_.size()) {
  const std::size_t n = values_.size();
  const auto secant = [&](std::size_t i) { return (values_[i + 1] - values_[i]) / step_; };
  for (std::size_t i = 1; i + 1 < n; ++i) slopes_[i] = slope_between(secant(i - 1), secant(i));
  slopes_.front() = n > 2 ? 1.5 * secant(0) - 0.5 * slopes_[1] : secant(0);
  if (slopes_.front() * secant(0) < 0.0) slopes_.front() = 0.0;
  slopes_.back() = n > 2 ? 1.5 * secant(n - 2) - 0.5 * slopes_[n - 2] : secant(0);
  if (slopes_.back() * secant(n - 2) < 0.0) slopes_.back() = 0.0;
}

}  // namespace forecourse::network
