#pragma once

#include <array>
#include <functional>
#include <vector>

#include "forecourse/parts/tank/panel_integral.h"

namespace forecourse::parts {

/// A rising function of level, kept as polynomials between its kinks: quick to ask, there and back.
class LevelTable {
 public:
  /// \param volume the function [m3], rising, 0 at the first kink; asked some hundreds of times
  /// \param kinks levels [m], rising, two at least: between them the function is smooth but for square roots at the
  /// ends \param close absolute error that is small enough [m3]
  LevelTable(const std::function<double(double)>& volume, const std::vector<double>& kinks, double close);

  /// \param level [m]; outside the kinks that of the nearest
  /// \return [m3]
  /// \error some times `close`
  /// \source closed form: interpolation in Chebyshev points
  [[nodiscard]] double volume(double level) const;

  /// The inverse.
  /// \param volume [m3]; outside the table that of its nearest end
  /// \return [m]
  /// \error rounding, against `volume`
  /// \source closed form: Newton's method, kept between bounds
  [[nodiscard]] double level(double volume) const;

  /// How many polynomials there are.
  /// \return [1]
  /// \error none
  /// \source closed form
  [[nodiscard]] std::size_t size() const { return panels_.size(); }

 private:
  static constexpr std::size_t terms = 17;
  struct Panel {
    SoftEnds ends;                        ///< between two kinks
    double t_from = 0.0, t_to = 1.0;      ///< part of it
    double level_to = 0.0;                ///< [m]
    double volume_from = 0.0;             ///< [m3]
    double volume_to = 0.0;               ///< [m3]
    std::array<double, terms> factors{};  ///< of Chebyshev polynomials over t
  };

  void add(const std::function<double(double)>& volume, const SoftEnds& ends, double t_from, double t_to, double close,
           int halvings);
  static double polynomial(const Panel& panel, double s, double& slope);

  std::vector<Panel> panels_;
};

}  // namespace forecourse::parts
