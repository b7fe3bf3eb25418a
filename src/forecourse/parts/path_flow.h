#pragma once

#include <cstddef>
#include <vector>

#include "forecourse/parts/loss.h"

namespace forecourse::parts {

/// Flow against pressure of parts passed one after the other, read in constant time: what `flow_at` is to one law.
///
/// The course is held at flows that lie closer near zero, as a cubic in the root of the pressure, whose slopes are
/// those of the laws. Beyond the last flow it goes on as a root.
class PathFlow {
 public:
  /// A path that nothing passes.
  PathFlow() = default;

  /// \param loss_at a rising law: flow [m3/s], >= 0 -> Loss [Pa], [Pa s/m3]; what it takes at no flow opens the path
  /// \param most    largest flow held [m3/s], > 0
  /// \pre `loss_at` grows without end
  template <class LossAt>
  PathFlow(const LossAt& loss_at, double most) {
    opens_at_ = loss_at(0.0).pressure_loss;
    for (std::size_t k = 0; k <= steps; ++k) {
      const double share = static_cast<double>(k) / static_cast<double>(steps);
      const double flow = most * share * share;
      add(flow, loss_at(flow));
    }
    close();
  }

  /// Flow under a pressure.
  /// \param pressure [Pa]
  /// \return [m3/s]; 0 at or below that which opens the path
  /// \error against the laws 1e-6 of the flow, 1e-3 at Reynolds numbers of 2000 to 4000
  /// \source common practice, no source: a cubic through values and slopes
  [[nodiscard]] double flow(double pressure) const;

  [[nodiscard]] bool shut() const { return knots_.empty(); }
  [[nodiscard]] double opens_at() const { return opens_at_; }  ///< [Pa]

 private:
  struct Knot {
    double root, flow, slope;
  };
  static constexpr std::size_t steps = 256;

  void add(double flow, Loss loss);
  void close();

  double opens_at_ = 0.0;
  std::vector<Knot> knots_;
};

}  // namespace forecourse::parts
