#pragma once

#include <cmath>

namespace forecourse::solvers::sequence {

/// sign(x) sqrt|x|, made smooth about zero: x / (x^2 + eps^2)^(1/4).
/// The square root has no slope at zero, where an explicit step would creep. Rising, odd, slope 1 / sqrt(eps) at zero.
/// \param x pressure difference, head or depth
/// \param eps what counts as small, same unit as x, > 0
/// \source common practice, no source
/// \error against the root, relative: -eps^2 / (4 x^2) far from zero; -16 % at x = eps, -1.4e-3 at 13 eps.
inline double regularized_root(double x, double eps) { return x / std::sqrt(std::sqrt(x * x + eps * eps)); }

/// The same for a passage that lets nothing back: zero where x is not above zero.
inline double one_way_root(double x, double eps) { return x > 0.0 ? regularized_root(x, eps) : 0.0; }

/// A flow that parts in two.
struct Split {
  double first = 0.0;
  double rest = 0.0;
};

/// \return share of the flow, and what is left of it: q and q - q1, never two shares, so that nothing is lost
inline Split split(double flow, double share) {
  const double first = share * flow;
  return {first, flow - first};
}

}  // namespace forecourse::solvers::sequence
