#pragma once

#include "forecourse/site/site.h"

namespace forecourse::test {

/// A lying cylinder with flat heads, summed slice by slice: another way than the closed forms of the tank study.
class OwnTank {
 public:
  /// \pre shape entered as a lying cylinder with inside_diameter and length
  explicit OwnTank(const site::Tank& tank);

  /// \return [m3] at a depth that a stick shows so far from the low end
  [[nodiscard]] double volume(double depth, double along) const;
  /// The inverse, by halving.
  [[nodiscard]] double depth(double volume, double along) const;
  [[nodiscard]] double capacity() const;
  [[nodiscard]] double diameter() const { return diameter_; }
  /// [m] of the surface over the site datum; by the reading
  [[nodiscard]] double surface() const;
  /// [m3] by the reading
  [[nodiscard]] double now() const;
  [[nodiscard]] double reading() const { return reading_; }
  [[nodiscard]] double reading_at() const { return reading_at_; }

 private:
  double diameter_ = 0.0;
  double length_ = 0.0;
  double pitch_ = 0.0;
  double bottom_ = 0.0;
  double reading_ = 0.0;
  double reading_at_ = 0.0;
};

}  // namespace forecourse::test
