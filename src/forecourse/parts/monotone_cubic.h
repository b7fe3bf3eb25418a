#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace forecourse::parts {

/// One measured point of a curve: flow [m3/s] and what was read there, in the unit of the curve.
struct CurvePoint {
  double flow = 0.0;
  double value = 0.0;
};

/// Value of a curve and its derivative to flow.
struct CurveValue {
  double value = 0.0;
  double slope = 0.0;
};

/// Why points make no curve, and which point is to blame.
struct CurveFault {
  enum class Kind {
    too_few_points,
    not_finite,
    negative_flow,
    flow_not_rising,
    first_flow_not_zero,  ///< a pump's points begin at no flow
    loss_at_no_flow,      ///< a loss curve goes through (0, 0)
    loss_falls,
    rise_not_falling,
    exponent_below_one,
  };
  Kind kind = Kind::too_few_points;
  std::size_t point = 0;  ///< index of the later point of the pair at fault

  friend bool operator==(const CurveFault&, const CurveFault&) = default;
};

/// The fault in words, for a message: "flow does not rise".
std::string_view text(CurveFault::Kind kind);

/// A cubic between points that rises where they rise and falls where they fall; C1, straight beyond both ends.
///
/// See docs/theory/curves-from-points.md.
class MonotoneCubic {
 public:
  MonotoneCubic() = default;

  /// \pre at least two finite points, strictly rising in flow (check with `fault_of_flows`).
  /// \source [fritsch_carlson_1980, the monotone region] [fritsch_butland_1984, the slope formula]
  explicit MonotoneCubic(std::span<const CurvePoint> points);

  /// Value and slope at any flow [m3/s]; beyond the ends the end slope goes on.
  [[nodiscard]] CurveValue at(double flow) const;

  [[nodiscard]] double first_flow() const { return knots_.front().flow; }
  [[nodiscard]] double last_flow() const { return knots_.back().flow; }

  friend bool operator==(const MonotoneCubic&, const MonotoneCubic&) = default;

 private:
  struct Knot {
    double flow, value, slope;

    friend bool operator==(const Knot&, const Knot&) = default;
  };
  std::vector<Knot> knots_;
};

/// The first fault of points as a table of flows: too few, not finite, flow not strictly rising.
std::optional<CurveFault> fault_of_flows(std::span<const CurvePoint> points);

}  // namespace forecourse::parts
