#include "forecourse/studies/tank/area_fit.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace forecourse::studies {
namespace {

/// A reading as a linear equation: added = scale * volume as entered - start, each depth as uncertain as another.
struct Reading {
  double added, volume;  ///< [m3]
  double depth;          ///< [m]
  double surface;        ///< [m2]: change of volume with depth
};

/// One tank and its readings.
class AreaFit {
 public:
  AreaFit(const site::Calibration& calibration, const network::TankInside& inside)
      : tank_(inside.volume),
        place_(inside.place(calibration.at ? std::optional(calibration.at->likely.si()) : std::nullopt)),
        is_box_(std::holds_alternative<parts::BoxTank>(inside.volume.shape())) {
    out_.along = calibration.at ? calibration.at->likely.si() : 0.0;
    if (calibration.uncertainty) out_.uncertainty = calibration.uncertainty->likely.si();
    for (const site::CalibrationPoint& p : calibration.points) add(p);
  }

  CalibrationTold tell() && {
    if (!solve()) {
      out_.problem = "the readings lie at one depth: their volumes tell no area";
      return std::move(out_);
    }
    tell_sizes();
    tell_readings();
    tell_chart();
    return std::move(out_);
  }

 private:
  void add(const site::CalibrationPoint& p) {
    constexpr double step = 1e-4;  // [m]
    const double depth = p.depth.si();
    const double surface = (volume(depth + step) - volume(depth - step)) / (2.0 * step);
    readings_.push_back({p.added.si(), volume(depth), depth, surface});
    largest_ = std::max(largest_, surface);
  }

  [[nodiscard]] double volume(double depth) const { return tank_.volume(tank_.level_at(place_, depth)); }

  /// Of a reading's depth; near an end, where the surface goes to nothing, that of a part of the largest.
  [[nodiscard]] double surface(const Reading& r) const {
    constexpr double least = 0.2;
    return std::max(r.surface, least * largest_);
  }

  /// Normal equations of two unknowns, about the weighted mean.
  /// \source closed form: linear least squares
  bool solve() {
    double weights = 0.0, mean_added = 0.0;
    for (const Reading& r : readings_) {
      const double weight = 1.0 / (surface(r) * surface(r));
      weights += weight;
      mean_ += weight * r.volume;
      mean_added += weight * r.added;
    }
    mean_ /= weights;
    mean_added /= weights;
    double together = 0.0, spread = 0.0;
    for (const Reading& r : readings_) {
      const double weight = 1.0 / (surface(r) * surface(r));
      spread += weight * (r.volume - mean_) * (r.volume - mean_);
      together += weight * (r.volume - mean_) * (r.added - mean_added);
    }
    constexpr double least = 1e-8;  // [m2] of depths about their mean, a tenth of a millimeter
    if (!(spread > least)) return false;
    scale_ = together / spread;
    start_ = scale_ * mean_ - mean_added;
    of_scale_ = 1.0 / spread;
    of_mean_ = 1.0 / weights;
    deviation_ = deviation(scale_, start_, 2.0);
    constexpr double finest = 1e-6;  // [m] so that exact readings have errors above zero
    noise_ = std::max({deviation_, out_.uncertainty.value_or(0.0), finest});
    entered_start_ = mean_ - mean_added;
    return true;
  }

  /// Depth read less depth computed.
  [[nodiscard]] double residual(const Reading& r, double scale, double start) const {
    return (scale * r.volume - start - r.added) / surface(r);
  }

  [[nodiscard]] double deviation(double scale, double start, double unknowns) const {
    double squares = 0.0;
    for (const Reading& r : readings_) squares += std::pow(residual(r, scale, start), 2);
    return std::sqrt(squares / (static_cast<double>(readings_.size()) - unknowns));
  }

  void tell_sizes() {
    const double area = largest_;
    FittedSize told{"cross-section area", "m2", area, scale_ * area, noise_ * std::sqrt(of_scale_) * area, {}};
    out_.sizes.push_back(std::move(told));
    const double start_error = noise_ * std::sqrt(of_mean_ + mean_ * mean_ * of_scale_);
    const double first = readings_.front().volume - readings_.front().added;
    out_.sizes.push_back(
        {"zero of the stick", "m", 0.0, 0.0, std::nullopt, "the volume at the start makes up for it at every depth"});
    out_.sizes.push_back({"volume at the start", "m3", first, start_, start_error, {}});
    out_.not_apart.emplace_back("zero of the stick and volume at the start cannot be told apart by these readings");
    if (is_box_)
      out_.not_apart.emplace_back("length and width cannot be told apart by these readings: their product is fitted");
  }

  void tell_readings() {
    for (const Reading& r : readings_) out_.readings.push_back({r.added, r.depth, residual(r, scale_, start_)});
    out_.residual = deviation_;
    out_.residual_entered = deviation(1.0, entered_start_, 1.0);
  }

  /// With the zero as entered a volume follows from the area alone.
  void tell_chart() {
    constexpr int rows = 20;
    const double error = noise_ * std::sqrt(of_scale_);
    const double top = tank_.depth_at(place_, tank_.full_level());
    for (int i = 0; i <= rows; ++i) {
      const double depth = top * i / rows, before = volume(depth);
      out_.chart.push_back({depth, before, scale_ * before, error * before});
    }
    out_.capacity = scale_ * tank_.capacity();
    out_.capacity_error = error * tank_.capacity();
  }

  const parts::TankVolume& tank_;
  parts::DipPlace place_;
  bool is_box_;
  std::vector<Reading> readings_;
  double largest_ = 0.0;              ///< [m2] surface at a reading
  double scale_ = 1.0, start_ = 0.0;  ///< [1], [m3]
  double entered_start_ = 0.0;        ///< [m3] fitted alone
  double mean_ = 0.0;                 ///< [m3] volume as entered about which both are independent
  double of_scale_ = 0.0;             ///< variance of the scale for a deviation of 1 m of a depth
  double of_mean_ = 0.0;              ///< the same of the volume there
  double deviation_ = 0.0, noise_ = 0.0;
  CalibrationTold out_;
};

}  // namespace

CalibrationTold fit_area(const site::Calibration& calibration, const network::TankInside& inside) {
  return AreaFit(calibration, inside).tell();
}

}  // namespace forecourse::studies
