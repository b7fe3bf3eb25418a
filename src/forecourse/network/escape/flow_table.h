#pragma once

#include <cstddef>
#include <vector>

namespace forecourse::network {

/// A value and its derivative to the flow.
struct TableValue {
  double value = 0.0;
  double slope = 0.0;
};

/// A smooth curve over evenly spaced flows, read in constant time: cubic between samples, straight beyond both ends.
/// It rises where its samples rise and falls where they fall.
/// \source [fritsch_butland_1984, the slope formula]
class FlowTable {
 public:
  FlowTable() = default;

  /// \param first, step  first flow and spacing [m3/s], step > 0
  /// \param values       at each flow, at least two
  FlowTable(double first, double step, std::vector<double> values);

  [[nodiscard]] bool empty() const { return values_.empty(); }
  [[nodiscard]] double first() const { return first_; }
  [[nodiscard]] double last() const { return first_ + step_ * static_cast<double>(values_.size() - 1); }
  [[nodiscard]] const std::vector<double>& values() const { return values_; }

  [[nodiscard]] TableValue at(double flow) const {
    const double place = (flow - first_) / step_;
    if (!(place > 0.0)) return {values_.front() + slopes_.front() * (flow - first_), slopes_.front()};
    if (place >= static_cast<double>(values_.size() - 1)) {
      return {values_.back() + slopes_.back() * (flow - last()), slopes_.back()};
    }
    const auto i = static_cast<std::size_t>(place);
    const double t = place - static_cast<double>(i);
    const double a = values_[i], b = values_[i + 1];
    const double u = slopes_[i] * step_, w = slopes_[i + 1] * step_;
    const double cubic = u + w - 2.0 * (b - a), square = 3.0 * (b - a) - 2.0 * u - w;
    return {a + t * (u + t * (square + t * cubic)), (u + t * (2.0 * square + 3.0 * t * cubic)) / step_};
  }

 private:
  double first_ = 0.0;
  double step_ = 1.0;
  std::vector<double> values_;
  std::vector<double> slopes_;
};

}  // namespace forecourse::network
