#include "forecourse/studies/flow/rest/fill_time.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace forecourse::studies {
namespace {

constexpr int panels = 1;  // between two marks, of five nodes each: enough for how a station's flows change

/// Nodes and weights of the Gauss-Legendre rule with five points on (0, 1).
struct Node {
  double place, weight;
};
const std::array<Node, 5>& nodes() {
  static const std::array<Node, 5> five = [] {
    const double inner = std::sqrt(5.0 - 2.0 * std::sqrt(10.0 / 7.0)) / 3.0;
    const double outer = std::sqrt(5.0 + 2.0 * std::sqrt(10.0 / 7.0)) / 3.0;
    const double heavy = (322.0 + 13.0 * std::sqrt(70.0)) / 1800.0;
    const double light = (322.0 - 13.0 * std::sqrt(70.0)) / 1800.0;
    return std::array<Node, 5>{{{0.5 - 0.5 * outer, light},
                                {0.5 - 0.5 * inner, heavy},
                                {0.5, 64.0 / 225.0},
                                {0.5 + 0.5 * inner, heavy},
                                {0.5 + 0.5 * outer, light}}};
  }();
  return five;
}

using Flow = std::function<double(double)>;

/// Time from one volume to another; empty where nothing flows at one of the nodes.
std::optional<double> time_between(double from, double to, const Flow& flow, double largest) {
  double time = 0.0;
  for (const Node& node : nodes()) {
    const double q = std::min(flow(from + (to - from) * node.place), largest);
    if (!(q > 0.0)) return std::nullopt;
    time += node.weight * (to - from) / q;
  }
  return time;
}

/// Volume between `from` and `to` that is reached in a time which does not suffice for `to`: false position, with the
/// end that stays weighed down (Illinois).
double volume_at(double from, double to, const Flow& flow, double largest, double time) {
  const auto late = [&](double volume) { return time_between(from, volume, flow, largest).value_or(INFINITY) - time; };
  double low = from, early_by = -time;
  double high = to, late_by = late(to);
  for (int i = 0; i < 60 && high - low > 1e-9 * (to - from); ++i) {
    const double next =
        std::isfinite(late_by) ? low - early_by * (high - low) / (late_by - early_by) : 0.5 * (low + high);
    const double miss = late(next);
    if (std::abs(miss) <= 1e-9 * time) return next;
    if (miss < 0.0) {
      low = next;
      early_by = miss;
      late_by *= 0.5;
    } else {
      high = next;
      late_by = miss;
      early_by *= 0.5;
    }
  }
  return 0.5 * (low + high);
}

class Pumping {
 public:
  Pumping(const Flow& flow, const std::optional<Detector>& detector) : flow_(flow), detector_(detector) {
    if (detector_ && detector_->restricted <= 0.0) {  // nothing passes until it has opened
      time_ = detector_->opening_time;
      detector_.reset();
    }
  }

  /// Pumps from one volume to another. False where the flow ends.
  bool pump(double from, double to) {
    if (detector_ && time_ < detector_->opening_time) {
      const auto slow = time_between(from, to, flow_, detector_->restricted);
      if (!slow) return false;
      const double left = detector_->opening_time - time_;
      if (*slow <= left) {
        time_ += *slow;
        return true;
      }
      from = volume_at(from, to, flow_, detector_->restricted, left);
      time_ = detector_->opening_time;
    }
    const auto fast = time_between(from, to, flow_, INFINITY);
    time_ += fast.value_or(0.0);
    return fast.has_value();
  }

  [[nodiscard]] double time() const { return time_; }

 private:
  const Flow& flow_;
  std::optional<Detector> detector_;
  double time_ = 0.0;
};

}  // namespace

std::optional<double> time_to_pump(const std::vector<double>& marks, const Flow& flow,
                                   const std::optional<Detector>& detector) {
  if (marks.size() < 2 || !(marks.back() > marks.front())) return 0.0;
  Pumping pumping(flow, detector);
  for (std::size_t i = 1; i < marks.size(); ++i) {
    const double step = (marks[i] - marks[i - 1]) / panels;
    if (!(step > 0.0)) continue;
    for (int p = 0; p < panels; ++p) {
      if (!pumping.pump(marks[i - 1] + step * p, p + 1 == panels ? marks[i] : marks[i - 1] + step * (p + 1))) {
        return std::nullopt;
      }
    }
  }
  return pumping.time();
}

}  // namespace forecourse::studies
