#pragma once

#include <array>
#include <cmath>
#include <numbers>

namespace forecourse::parts {

/// Places and weights of a Gauss-Legendre rule on 0 to 1.
template <int N>
struct GaussRule {
  std::array<double, N> at{};
  std::array<double, N> weight{};
};

/// The rule of N places.
/// \return places and weights [1]
/// \error rounding: the roots of the Legendre polynomial by Newton's method
/// \source closed form
template <int N>
[[nodiscard]] const GaussRule<N>& gauss_rule() {
  static const GaussRule<N> rule = [] {
    GaussRule<N> out;
    for (int i = 0; i < N; ++i) {
      double z = std::cos(std::numbers::pi * (i + 0.75) / (N + 0.5)), slope = 1.0;
      for (int round = 0; round < 50; ++round) {
        double p = 1.0, before = 0.0;
        for (int k = 1; k <= N; ++k) {
          const double older = before;
          before = p;
          p = ((2.0 * k - 1.0) * z * before - (k - 1.0) * older) / k;
        }
        slope = N * (z * p - before) / (z * z - 1.0);
        const double step = p / slope;
        z -= step;
        if (std::abs(step) < 1e-16) break;
      }
      const auto place = static_cast<std::size_t>(N - 1 - i);
      out.at[place] = 0.5 * (1.0 + z);
      out.weight[place] = 1.0 / ((1.0 - z * z) * slope * slope);
    }
    return out;
  }();
  return rule;
}

/// A stretch from `from` to `to` as it is seen by t from 0 to 1: square roots at its ends become smooth.
struct SoftEnds {
  double from = 0.0;
  double to = 0.0;

  /// The place at t.
  /// \param t [1], 0 to 1
  /// \return the place [m]
  /// \error rounding
  /// \source closed form
  [[nodiscard]] double at(double t) const {
    return at(std::sin(0.5 * std::numbers::pi * t), std::cos(0.5 * std::numbers::pi * t));
  }
  /// The same from the sine and the cosine of t quarter turns; there the change with t is pi s c of the stretch.
  [[nodiscard]] double at(double s, double c) const {
    return s < c ? from + (to - from) * s * s : to - (to - from) * c * c;
  }
  /// \param t [1], 0 to 1
  /// \return change of the place with t [m]
  /// \error rounding
  /// \source closed form
  [[nodiscard]] double slope(double t) const {
    return (to - from) * 0.5 * std::numbers::pi * std::sin(std::numbers::pi * t);
  }
  /// \param place [m], between the ends
  /// \return t [1]
  /// \error rounding
  /// \source closed form
  [[nodiscard]] double t_of(double place) const {
    const double share = (place - from) / (to - from);
    if (share <= 0.0) return 0.0;
    if (share >= 1.0) return 1.0;
    return 2.0 / std::numbers::pi *
           (share < 0.5 ? std::asin(std::sqrt(share))
                        : 0.5 * std::numbers::pi - std::asin(std::sqrt((to - place) / (to - from))));
  }
};

/// The same rule for a whole stretch with soft ends: places as shares of it, and weights times the change of the place.
/// \return places and weights [1]
/// \error rounding
/// \source closed form
template <int N>
[[nodiscard]] const GaussRule<N>& soft_rule() {
  static const GaussRule<N> rule = [] {
    GaussRule<N> out;
    const SoftEnds whole{0.0, 1.0};
    for (std::size_t i = 0; i < static_cast<std::size_t>(N); ++i) {
      out.at[i] = whole.at(gauss_rule<N>().at[i]);
      out.weight[i] = whole.slope(gauss_rule<N>().at[i]) * gauss_rule<N>().weight[i];
    }
    return out;
  }();
  return rule;
}

/// Sum of a rule over part of a stretch with soft ends.
/// \param f the function, of a place [m]
/// \param ends the stretch [m]
/// \param t_from part of the stretch [1]
/// \param t_to part of the stretch [1]
/// \return the integral [m3], or what f times [m] is
/// \error that of a rule of N places
/// \source closed form: Gauss-Legendre quadrature
template <int N, class Function>
[[nodiscard]] double panel_sum(const Function& f, const SoftEnds& ends, double t_from, double t_to) {
  double total = 0.0;
  if (t_from == 0.0 && t_to == 1.0) {
    const auto& rule = soft_rule<N>();
    const double wide = ends.to - ends.from;
    for (std::size_t i = 0; i < static_cast<std::size_t>(N); ++i)
      total +=
          rule.weight[i] * f(rule.at[i] < 0.5 ? ends.from + wide * rule.at[i] : ends.to - wide * rule.at[N - 1 - i]);
    return total * wide;
  }
  const auto& rule = gauss_rule<N>();
  for (std::size_t i = 0; i < static_cast<std::size_t>(N); ++i) {
    const double t = t_from + (t_to - t_from) * rule.at[i];
    const double s = std::sin(0.5 * std::numbers::pi * t), c = std::cos(0.5 * std::numbers::pi * t);
    total += rule.weight[i] * f(ends.at(s, c)) * s * c;
  }
  return total * (t_to - t_from) * (ends.to - ends.from) * std::numbers::pi;
}

/// Integral of a function that is smooth between the ends but may begin and end there like a power of a square root.
/// \param f the function, of a place [m]
/// \param ends the stretch [m]
/// \param close absolute error that is small enough [m3], or what f times [m] is
/// \param t_from part of the stretch [1]
/// \param t_to part of the stretch [1]
/// \param halvings how often it may still be halved [1]
/// \return the integral [m3], or what f times [m] is
/// \error below `close`, by the difference of rules of 10 and 16 places
/// \source closed form: Gauss-Legendre quadrature
template <class Function>
[[nodiscard]] double panel_integral(const Function& f, const SoftEnds& ends, double close, double t_from = 0.0,
                                    double t_to = 1.0, int halvings = 24) {
  const double fine = panel_sum<16>(f, ends, t_from, t_to);
  if (halvings == 0 || std::abs(fine - panel_sum<10>(f, ends, t_from, t_to)) <= close) return fine;
  const double middle = 0.5 * (t_from + t_to);
  return panel_integral(f, ends, 0.5 * close, t_from, middle, halvings - 1) +
         panel_integral(f, ends, 0.5 * close, middle, t_to, halvings - 1);
}

}  // namespace forecourse::parts
