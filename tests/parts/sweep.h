#pragma once

#include <cmath>
#include <random>
#include <vector>

namespace forecourse::test {

/// Flows spread evenly in the logarithm, both signs, in a fixed random order.
inline std::vector<double> spread(double lowest, double highest, int count, unsigned seed = 1) {
  std::mt19937 generator(seed);
  std::uniform_real_distribution<double> share(0.0, 1.0);
  std::vector<double> all;
  for (int i = 0; i < count; ++i) {
    const double size = lowest * std::pow(highest / lowest, share(generator));
    all.push_back(share(generator) < 0.5 ? -size : size);
  }
  return all;
}

/// Central difference of the loss at a flow, over a step of 1e-5 of it.
template <class LossAt>
double central_slope(const LossAt& loss_at, double flow) {
  const double step = 1e-5 * std::abs(flow);
  return (loss_at(flow + step).pressure_loss - loss_at(flow - step).pressure_loss) / (2.0 * step);
}

}  // namespace forecourse::test
