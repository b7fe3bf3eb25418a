#include "forecourse/parts/path_flow.h"

#include <algorithm>
#include <cmath>

namespace forecourse::parts {

void PathFlow::add(double flow, Loss loss) {
  const double root = std::sqrt(std::max(0.0, loss.pressure_loss - opens_at_));
  if (!knots_.empty() && !(root > knots_.back().root)) return;
  knots_.push_back({root, flow, loss.slope > 0.0 ? 2.0 * root / loss.slope : 0.0});
}

/// A law without a linear part has no slope to tell at no flow: its root goes straight through zero.
void PathFlow::close() {
  if (knots_.size() < 2) {
    knots_.clear();
    return;
  }
  const Knot& second = knots_[1];
  const double chord = second.flow / second.root;
  const bool linear_start = second.slope > 1.5 * chord;
  knots_.front().slope = linear_start ? 0.0 : chord;
}

double PathFlow::flow(double pressure) const {
  if (knots_.empty() || !(pressure > opens_at_)) return 0.0;
  const double root = std::sqrt(pressure - opens_at_);
  const Knot& last = knots_.back();
  if (root >= last.root) return last.flow + last.slope * (root - last.root);
  const auto right = std::upper_bound(knots_.begin(), knots_.end(), root,
                                      [](double value, const Knot& knot) { return value < knot.root; });
  const Knot& b = *right;
  const Knot& a = *(right - 1);
  const double width = b.root - a.root, t = (root - a.root) / width;
  const double u = a.slope * width, w = b.slope * width;
  const double cubic = u + w - 2.0 * (b.flow - a.flow), square = 3.0 * (b.flow - a.flow) - 2.0 * u - w;
  return a.flow + t * (u + t * (square + t * cubic));
}

}  // namespace forecourse::parts
