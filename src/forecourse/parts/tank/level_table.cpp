#include "forecourse/parts/tank/level_table.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace forecourse::parts {
namespace {

constexpr int most_halvings = 14;

/// cos(pi k / (n - 1)): the extrema of the last polynomial, the ends of a panel among them.
double cosine(std::size_t k, std::size_t n) {
  return std::cos(std::numbers::pi * static_cast<double>(k) / static_cast<double>(n - 1));
}

/// Coefficients of the polynomial through values at the extrema.
template <std::size_t N>
std::array<double, N> chebyshev(const std::array<double, N>& values) {
  static const auto cosines = [] {
    std::array<double, 2 * (N - 1)> all{};
    for (std::size_t k = 0; k < all.size(); ++k) all[k] = cosine(k, N);
    return all;
  }();
  std::array<double, N> out{};
  for (std::size_t j = 0; j < N; ++j) {
    double sum = 0.0;
    for (std::size_t k = 0; k < N; ++k) {
      const double half = k == 0 || k == N - 1 ? 0.5 : 1.0;
      sum += half * values[k] * cosines[j * k % cosines.size()];
    }
    const double half = j == 0 || j == N - 1 ? 0.5 : 1.0;
    out[j] = half * 2.0 * sum / static_cast<double>(N - 1);
  }
  return out;
}

}  // namespace

LevelTable::LevelTable(const std::function<double(double)>& volume, const std::vector<double>& kinks, double close) {
  for (std::size_t i = 0; i + 1 < kinks.size(); ++i)
    add(volume, {kinks[i], kinks[i + 1]}, 0.0, 1.0, close, most_halvings);
}

void LevelTable::add(const std::function<double(double)>& volume, const SoftEnds& ends, double t_from, double t_to,
                     double close, int halvings) {
  Panel panel{.ends = ends, .t_from = t_from, .t_to = t_to, .level_to = ends.at(t_to)};
  std::array<double, terms> values{};
  for (std::size_t k = 0; k < terms; ++k) {
    const double share = 0.5 * (1.0 + cosine(k, terms));
    values[k] = volume(ends.at(t_from + (t_to - t_from) * share));
  }
  panel.volume_from = panels_.empty() ? values.back() : panels_.back().volume_to;
  panel.volume_to = std::max(values.front(), panel.volume_from);
  panel.factors = chebyshev(values);
  const double rest =
      std::abs(panel.factors[terms - 1]) + std::abs(panel.factors[terms - 2]) + std::abs(panel.factors[terms - 3]);
  if (rest <= close || halvings == 0) {
    panels_.push_back(panel);
    return;
  }
  const double middle = 0.5 * (t_from + t_to);
  add(volume, ends, t_from, middle, close, halvings - 1);
  add(volume, ends, middle, t_to, close, halvings - 1);
}

double LevelTable::polynomial(const Panel& panel, double s, double& slope) {
  double a = 0.0, a_next = 0.0, b = 0.0, b_next = 0.0;
  for (std::size_t j = terms - 1; j > 0; --j) {
    const double db = 2.0 * a + 2.0 * s * b - b_next;
    b_next = b;
    b = db;
    const double da = panel.factors[j] + 2.0 * s * a - a_next;
    a_next = a;
    a = da;
  }
  slope = a + s * b - b_next;
  return panel.factors[0] + s * a - a_next;
}

double LevelTable::volume(double level) const {
  const auto found = std::lower_bound(panels_.begin(), panels_.end(), level,
                                      [](const Panel& panel, double value) { return panel.level_to < value; });
  if (found == panels_.end()) return panels_.back().volume_to;
  const double t = found->ends.t_of(level);
  const double s = std::clamp(2.0 * (t - found->t_from) / (found->t_to - found->t_from) - 1.0, -1.0, 1.0);
  double a = 0.0, a_next = 0.0;
  for (std::size_t j = terms - 1; j > 0; --j) {
    const double da = found->factors[j] + 2.0 * s * a - a_next;
    a_next = a;
    a = da;
  }
  return std::clamp(found->factors[0] + s * a - a_next, found->volume_from, found->volume_to);
}

double LevelTable::level(double volume) const {
  if (volume <= panels_.front().volume_from) return panels_.front().ends.from;
  if (volume >= panels_.back().volume_to) return panels_.back().level_to;
  const auto found = std::lower_bound(panels_.begin(), panels_.end(), volume,
                                      [](const Panel& panel, double value) { return panel.volume_to < value; });
  double low = -1.0, high = 1.0, s = 0.0;
  for (int round = 0; round < 100; ++round) {
    double slope = 0.0;
    const double over = polynomial(*found, s, slope) - volume;
    (over > 0.0 ? high : low) = s;
    double next = slope > 0.0 ? s - over / slope : 2.0;
    if (!(next > low && next < high)) next = 0.5 * (low + high);
    const double step = next - s;
    s = next;
    if (std::abs(step) < 1e-15 || high - low < 1e-15) break;
  }
  return found->ends.at(found->t_from + (found->t_to - found->t_from) * 0.5 * (1.0 + s));
}

}  // namespace forecourse::parts
