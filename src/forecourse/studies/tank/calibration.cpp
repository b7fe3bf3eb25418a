#include "forecourse/studies/tank/calibration.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

#include "forecourse/parts/tank/round_body.h"
#include "forecourse/studies/tank/area_fit.h"

namespace forecourse::studies {
namespace {

constexpr std::size_t sizes = 5;
enum Size : std::size_t { diameter, length, pitch, zero, start };
using Sizes = std::array<double, sizes>;

constexpr std::array<const char*, sizes> names{"inside diameter", "length", "pitch", "zero of the stick",
                                               "volume at the start"};
constexpr std::array<const char*, sizes> units{"m", "m", "", "m", "m3"};
/// How far each may plausibly be off, of the size entered or absolute; what readings tell less of is held.
/// Common practice, no source.
constexpr double plausible_share = 0.03;
constexpr double plausible_pitch = 0.02;
constexpr double plausible_zero = 0.05;  // [m]
constexpr double same_tale = 0.98;       // correlation at which two sizes count as not told apart

/// Symmetric positive matrices of a few rows.
using Matrix = std::vector<std::vector<double>>;

/// The inverse by Gauss-Jordan with pivots; empty if there is none.
std::optional<Matrix> inverse(Matrix a) {
  const std::size_t n = a.size();
  Matrix out(n, std::vector<double>(n, 0.0));
  double largest = 0.0;
  for (std::size_t i = 0; i < n; ++i) {
    out[i][i] = 1.0;
    largest = std::max(largest, std::abs(a[i][i]));
  }
  for (std::size_t column = 0; column < n; ++column) {
    std::size_t pivot = column;
    for (std::size_t row = column; row < n; ++row) {
      if (std::abs(a[row][column]) > std::abs(a[pivot][column])) pivot = row;
    }
    constexpr double least = 1e-11;  // of the largest: below it the rest is rounding
    if (!(std::abs(a[pivot][column]) > least * largest)) return std::nullopt;
    std::swap(a[pivot], a[column]);
    std::swap(out[pivot], out[column]);
    const double by = a[column][column];
    for (std::size_t k = 0; k < n; ++k) {
      a[column][k] /= by;
      out[column][k] /= by;
    }
    for (std::size_t row = 0; row < n; ++row) {
      const double times = row == column ? 0.0 : a[row][column];
      for (std::size_t k = 0; k < n && times != 0.0; ++k) {
        a[row][k] -= times * a[column][k];
        out[row][k] -= times * out[column][k];
      }
    }
  }
  return out;
}

/// A tank of trial: asked a few times, so that no table is worth making.
struct Trial {
  parts::RoundBody body;
  double cosine;  ///< of its incline
  const std::vector<parts::Displacement>& fittings;

  [[nodiscard]] double level(const parts::DipPlace& place, double depth) const {
    return body.level_at(place.along, (depth - body.radius(place.along)) * std::cos(place.roll));
  }
  [[nodiscard]] double volume(const parts::DipPlace& place, double depth) const {
    const double h = std::clamp(level(place, depth), 0.0, body.full_level());
    double out = body.volume(h);
    for (const parts::Displacement& d : fittings)
      out -= d.volume * std::clamp((h - d.from) / (d.to - d.from), 0.0, 1.0);
    return out;
  }
  [[nodiscard]] double capacity() const {
    double out = body.capacity();
    for (const parts::Displacement& d : fittings) out -= d.volume;
    return out;
  }
  /// Change of volume with depth.
  [[nodiscard]] double surface(const parts::DipPlace& place, double depth) const {
    return body.surface_area(level(place, depth)) * cosine * std::cos(place.roll);
  }
};

/// One tank and its readings.
class Fit {
 public:
  Fit(const site::Calibration& calibration, const network::TankInside& inside)
      : calibration_(calibration),
        shape_(std::get<parts::RoundTank>(inside.volume.shape())),
        fittings_(inside.volume.fittings()) {
    place_ = inside.place(calibration.at ? std::optional(calibration.at->likely.si()) : std::nullopt);
    capacity_ = inside.volume.capacity();
    entered_ = {shape_.diameter, shape_.length, std::tan(shape_.incline), 0.0, start_volume(inside.volume)};
    range_ = {plausible_share * shape_.diameter, plausible_share * shape_.length, plausible_pitch, plausible_zero,
              plausible_share * capacity_};
    set_surfaces();
    out_.along = calibration.at ? calibration.at->likely.si() : 0.0;
    if (calibration.uncertainty) out_.uncertainty = calibration.uncertainty->likely.si();
  }

  CalibrationTold tell() && {
    choose();
    fill();
    return std::move(out_);
  }

 private:
  /// Surface at each reading as entered; near the top and the bottom, where it goes to nothing, a part of the largest.
  void set_surfaces() {
    constexpr double least = 0.2;
    const Trial tank = trial_of(entered_);
    for (const site::CalibrationPoint& p : calibration_.points) surfaces_.push_back(tank.surface(place_, p.depth.si()));
    const double largest = *std::max_element(surfaces_.begin(), surfaces_.end());
    for (double& surface : surfaces_) surface = std::max(surface, least * largest);
  }

  [[nodiscard]] double start_volume(const parts::TankVolume& tank) const {
    const auto& first = calibration_.points.front();
    return tank.volume(tank.level_at(place_, first.depth.si())) - first.added.si();
  }

  [[nodiscard]] Trial trial_of(const Sizes& s) const {
    parts::RoundTank shape = shape_;
    const double scale = s[diameter] / shape_.diameter;
    shape.diameter = s[diameter];
    shape.length = s[length];
    shape.incline = std::atan(std::max(0.0, s[pitch]));
    for (parts::Head* head : {&shape.low, &shape.high}) {
      head->depth *= scale;
      head->dish_radius *= scale;
      head->knuckle_radius *= scale;
    }
    return {parts::RoundBody(shape), std::cos(shape.incline), fittings_};
  }

  /// Depth read less depth computed: the volume that is off over the surface there.
  [[nodiscard]] std::vector<double> residuals(const Sizes& s) const {
    const Trial tank = trial_of(s);
    std::vector<double> out;
    for (std::size_t i = 0; i < calibration_.points.size(); ++i) {
      const auto& p = calibration_.points[i];
      out.push_back((tank.volume(place_, p.depth.si() + s[zero]) - s[start] - p.added.si()) / surfaces_[i]);
    }
    return out;
  }

  static double squares(const std::vector<double>& all) {
    double sum = 0.0;
    for (const double r : all) sum += r * r;
    return sum;
  }

  /// Change of every depth with a size, over its plausible range.
  [[nodiscard]] std::vector<double> slope(const Sizes& at, Size size) const {
    const double step = 1e-3 * range_[size];
    Sizes up = at, down = at;
    up[size] += step;
    down[size] = size == pitch ? std::max(0.0, at[size] - step) : at[size] - step;
    std::vector<double> high = residuals(up);
    const std::vector<double> low = residuals(down);
    for (std::size_t i = 0; i < high.size(); ++i) high[i] = (low[i] - high[i]) * range_[size] / (up[size] - down[size]);
    return high;
  }

  /// Information of the readings about the free sizes, each in its plausible range.
  [[nodiscard]] Matrix information(const std::vector<std::vector<double>>& slopes) const {
    Matrix out(slopes.size(), std::vector<double>(slopes.size(), 0.0));
    for (std::size_t i = 0; i < slopes.size(); ++i) {
      for (std::size_t k = 0; k < slopes.size(); ++k) {
        for (std::size_t r = 0; r < slopes[i].size(); ++r) out[i][k] += slopes[i][r] * slopes[k][r];
      }
    }
    return out;
  }

  struct Fitted {
    Sizes at{};
    Matrix covariance;  ///< of the free sizes in their ranges, for a deviation of 1 m of a depth
    double deviation = 0.0;
  };

  /// The step of Gauss and Newton, with the covariance of the free sizes there; nothing where they cannot be told
  /// apart.
  [[nodiscard]] std::optional<Sizes> newton_step(const Sizes& at, const std::vector<Size>& free,
                                                 Matrix& covariance) const {
    std::vector<std::vector<double>> slopes;
    slopes.reserve(free.size());
    for (const Size size : free) slopes.push_back(slope(at, size));
    auto inverted = inverse(information(slopes));
    if (!inverted) return std::nullopt;
    covariance = std::move(*inverted);
    const std::vector<double> rest = residuals(at);
    Sizes step{};
    for (std::size_t i = 0; i < free.size(); ++i) {
      for (std::size_t k = 0; k < free.size(); ++k) {
        for (std::size_t r = 0; r < rest.size(); ++r)
          step[free[i]] += covariance[i][k] * slopes[k][r] * rest[r] * range_[free[i]];
      }
    }
    return step;
  }

  /// As much of a step as brings the squares down: the sizes then; nothing where none of it does.
  [[nodiscard]] std::optional<Sizes> shortened(const Sizes& at, const Sizes& step, const std::vector<Size>& free,
                                               double before) const {
    double share = 1.0;
    for (int halving = 0; halving < 12; ++halving, share *= 0.5) {
      Sizes next = at;
      for (const Size size : free) next[size] = at[size] + share * step[size];
      next[pitch] = std::max(0.0, next[pitch]);
      next[diameter] = std::max(0.5 * entered_[diameter], next[diameter]);
      next[length] = std::max(0.5 * entered_[length], next[length]);
      if (squares(residuals(next)) <= before) return next;
    }
    return std::nullopt;
  }

  [[nodiscard]] std::optional<Fitted> fit(const std::vector<Size>& free) const {
    Fitted out;
    out.at = entered_;
    double before = squares(residuals(out.at));
    for (int round = 0; round < 40; ++round) {
      const auto step = newton_step(out.at, free, out.covariance);
      if (!step) return std::nullopt;
      const auto next = shortened(out.at, *step, free, before);
      if (!next) break;
      double largest = 0.0;
      for (const Size size : free) largest = std::max(largest, std::abs((*next)[size] - out.at[size]) / range_[size]);
      out.at = *next;
      before = squares(residuals(out.at));
      constexpr double close = 1e-8;
      if (largest < close) break;
    }
    const double spare = static_cast<double>(calibration_.points.size()) - static_cast<double>(free.size());
    out.deviation = spare > 0.0 ? std::sqrt(before / spare) : 0.0;
    return out;
  }

  /// One standard deviation of a depth: the larger of what was entered and what is seen.
  [[nodiscard]] double noise(const Fitted& fitted) const {
    constexpr double finest = 1e-6;  // [m] so that exact readings have errors above zero
    return std::max({fitted.deviation, out_.uncertainty.value_or(0.0), finest});
  }

  /// Leaves out, one by one, the size that the readings tell least of, until each is told within half its range.
  void choose() {
    std::vector<Size> free{start, diameter, length, pitch, zero};
    while (free.size() >= calibration_.points.size()) hold(free, free.back(), "there are too few readings");
    for (;;) {
      auto fitted = fit(free);
      std::size_t worst = 1;
      double largest = 0.0;
      if (fitted) {
        const double sigma = noise(*fitted);
        for (std::size_t i = 1; i < free.size(); ++i) {
          const double error = sigma * std::sqrt(std::max(0.0, fitted->covariance[i][i]));
          if (error > largest) {
            largest = error;
            worst = i;
          }
        }
        constexpr double half = 0.5;
        if (largest <= half || free.size() == 1) {
          fitted_ = std::move(*fitted);
          free_ = free;
          return;
        }
        note_pairs(free, *fitted, worst);
      } else {
        worst = free.size() - 1;
      }
      if (free.size() == 1) return;
      hold(free, free[worst], "the readings do not tell it from the others within its plausible range");
    }
  }

  /// What goes with the size that is left out.
  void note_pairs(const std::vector<Size>& free, const Fitted& fitted, std::size_t worst) {
    const Matrix& c = fitted.covariance;
    for (std::size_t i = 0; i < free.size(); ++i) {
      if (i == worst) continue;
      const double correlation = c[i][worst] / std::sqrt(c[i][i] * c[worst][worst]);
      if (std::abs(correlation) > same_tale)
        out_.not_apart.push_back(std::string(names[free[worst]]) + " and " + names[free[i]] +
                                 " cannot be told apart by these readings");
    }
  }

  void hold(std::vector<Size>& free, Size size, const char* why) {
    free.erase(std::find(free.begin(), free.end(), size));
    held_[size] = why;
  }

  [[nodiscard]] double error_of(Size size) const {
    const auto found = std::find(free_.begin(), free_.end(), size);
    if (found == free_.end()) return 0.0;
    const auto i = static_cast<std::size_t>(found - free_.begin());
    return noise(fitted_) * range_[size] * std::sqrt(std::max(0.0, fitted_.covariance[i][i]));
  }

  /// Standard error of a figure of the fitted tank, from its slopes over the ranges.
  template <class Figure>
  [[nodiscard]] double error_of(const Figure& figure) const {
    std::vector<double> slopes;
    for (const Size size : free_) {
      Sizes up = fitted_.at;
      up[size] += 1e-3 * range_[size];
      slopes.push_back((figure(up) - figure(fitted_.at)) * 1e3);
    }
    double sum = 0.0;
    for (std::size_t i = 0; i < slopes.size(); ++i) {
      for (std::size_t k = 0; k < slopes.size(); ++k) sum += slopes[i] * slopes[k] * fitted_.covariance[i][k];
    }
    return noise(fitted_) * std::sqrt(std::max(0.0, sum));
  }

  void fill() {
    if (free_.empty()) {
      out_.problem = "the readings do not fit the shape that was entered";
      return;
    }
    for (std::size_t i = 0; i < sizes; ++i) {
      const auto size = static_cast<Size>(i);
      FittedSize told{names[i], units[i], entered_[i], fitted_.at[i], std::nullopt, held_[i]};
      if (held_[i].empty()) told.standard_error = error_of(size);
      out_.sizes.push_back(std::move(told));
    }
    const std::vector<double> rest = residuals(fitted_.at);
    for (std::size_t i = 0; i < rest.size(); ++i)
      out_.readings.push_back({calibration_.points[i].added.si(), calibration_.points[i].depth.si(), rest[i]});
    out_.residual = fitted_.deviation;
    if (const auto alone = fit({start})) out_.residual_entered = alone->deviation;
    add_chart();
  }

  void add_chart() {
    constexpr int rows = 20;
    const Trial before = trial_of(entered_), after = trial_of(fitted_.at);
    out_.capacity = after.capacity();
    out_.capacity_error = error_of([&](const Sizes& s) { return trial_of(s).capacity(); });
    // One tank for each free size, asked for every line.
    std::vector<std::pair<Size, Trial>> moved;
    for (const Size size : free_) {
      Sizes up = fitted_.at;
      up[size] += 1e-3 * range_[size];
      moved.emplace_back(size, trial_of(up));
    }
    const double stick = 2.0 * after.body.radius(place_.along);
    for (int i = 0; i <= rows; ++i) {
      const double depth = stick * i / rows;
      const auto read = [&](const Trial& tank, double off) { return tank.volume(place_, depth + off); };
      FittedChartRow row{depth, read(before, 0.0), read(after, fitted_.at[zero]), 0.0};
      std::vector<double> slopes;
      for (const auto& [size, tank] : moved) {
        const double off = fitted_.at[zero] + (size == zero ? 1e-3 * range_[zero] : 0.0);
        slopes.push_back((read(tank, off) - row.fitted) * 1e3);
      }
      double sum = 0.0;
      for (std::size_t a = 0; a < slopes.size(); ++a) {
        for (std::size_t b = 0; b < slopes.size(); ++b) sum += slopes[a] * slopes[b] * fitted_.covariance[a][b];
      }
      row.standard_error = noise(fitted_) * std::sqrt(std::max(0.0, sum));
      out_.chart.push_back(row);
    }
  }

  const site::Calibration& calibration_;
  parts::RoundTank shape_;
  std::vector<parts::Displacement> fittings_;
  parts::DipPlace place_;
  double capacity_ = 0.0;
  std::vector<double> surfaces_;  ///< [m2] at each reading
  Sizes entered_{}, range_{};
  std::array<std::string, sizes> held_;
  std::vector<Size> free_;
  Fitted fitted_;
  CalibrationTold out_;
};

}  // namespace

CalibrationTold fit_calibration(const site::Calibration& calibration, const network::TankInside& inside) {
  CalibrationTold out;
  constexpr std::size_t fewest = 3;
  if (calibration.points.size() < fewest) {
    out.problem = "a fit needs three readings at least: points = [[\"0 gal\", \"4 in\"], ...]";
    return out;
  }
  if (std::holds_alternative<parts::DipChart>(inside.volume.shape())) {
    out.problem = "a dip chart has no sizes to fit: enter the shape of the tank";
    return out;
  }
  const auto* round = std::get_if<parts::RoundTank>(&inside.volume.shape());
  if (round == nullptr || round->incline > 0.25 * std::numbers::pi) return fit_area(calibration, inside);
  return Fit(calibration, inside).tell();
}

}  // namespace forecourse::studies
