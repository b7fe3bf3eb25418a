#include "forecourse/solvers/statistics/least_squares.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace forecourse::solvers::statistics {
namespace {

using Real = long double;  // the fit of a power series loses as many digits as its condition has
using Vector = std::vector<Real>;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

Real dot(const Vector& a, const Vector& b, std::size_t from = 0) {
  return std::inner_product(a.begin() + static_cast<std::ptrdiff_t>(from), a.end(),
                            b.begin() + static_cast<std::ptrdiff_t>(from), Real{0});
}

/// Columns of a matrix that is split into an orthogonal part, which is put to the response at once, and a triangle.
void reflect(std::vector<Vector>& columns, Vector& response) {
  for (std::size_t k = 0; k < columns.size() && k < response.size(); ++k) {
    Vector& pivot = columns[k];
    const Real length = std::sqrt(dot(pivot, pivot, k));
    if (length == 0) continue;
    const Real head = pivot[k] > 0 ? -length : length;
    Vector mirror(pivot.size());
    std::copy(pivot.begin() + static_cast<std::ptrdiff_t>(k), pivot.end(),
              mirror.begin() + static_cast<std::ptrdiff_t>(k));
    mirror[k] -= head;
    const Real square = dot(mirror, mirror, k);
    const auto put = [&](Vector& v) {
      const Real factor = 2 * dot(mirror, v, k) / square;
      for (std::size_t i = k; i < v.size(); ++i) v[i] -= factor * mirror[i];
    };
    for (std::size_t j = k; j < columns.size(); ++j) put(columns[j]);
    put(response);
  }
}

/// A square matrix as lengths times orthonormal columns times a rotation.
struct Singular {
  std::vector<Vector> columns;    ///< orthogonal, of length `lengths`
  std::vector<Vector> rotations;  ///< columns of the rotation
  Vector lengths;
};

Singular rotate(std::vector<Vector> columns) {
  constexpr int most_sweeps = 60;
  const Real small = 4 * std::numeric_limits<Real>::epsilon();
  const std::size_t size = columns.size();
  Singular out{std::move(columns), std::vector<Vector>(size, Vector(size, 0)), {}};
  for (std::size_t j = 0; j < size; ++j) out.rotations[j][j] = 1;
  bool turned = true;
  for (int sweep = 0; turned && sweep < most_sweeps; ++sweep) {
    turned = false;
    for (std::size_t p = 0; p + 1 < size; ++p) {
      for (std::size_t q = p + 1; q < size; ++q) {
        const Real pp = dot(out.columns[p], out.columns[p]);
        const Real qq = dot(out.columns[q], out.columns[q]);
        const Real pq = dot(out.columns[p], out.columns[q]);
        if (std::abs(pq) <= small * std::sqrt(pp * qq)) continue;
        turned = true;
        const Real zeta = (qq - pp) / (2 * pq);
        const Real t = (zeta >= 0 ? 1 : -1) / (std::abs(zeta) + std::hypot(Real{1}, zeta));
        const Real c = 1 / std::hypot(Real{1}, t);
        const auto turn = [c, s = c * t](Vector& a, Vector& b) {
          for (std::size_t i = 0; i < a.size(); ++i) {
            const Real old = a[i];
            a[i] = c * old - s * b[i];
            b[i] = s * old + c * b[i];
          }
        };
        turn(out.columns[p], out.columns[q]);
        turn(out.rotations[p], out.rotations[q]);
      }
    }
  }
  for (const Vector& column : out.columns) out.lengths.push_back(std::sqrt(dot(column, column)));
  return out;
}

std::string fault_of(const std::vector<Column>& columns, const std::vector<double>& response,
                     const std::vector<double>& weights) {
  if (columns.empty()) return "there is no column to fit";
  if (response.empty()) return "there is no observation";
  for (const Column& column : columns) {
    if (column.values.size() != response.size()) return "column " + column.name + " has not one value per observation";
  }
  if (!weights.empty() && weights.size() != response.size()) return "there is not one weight per observation";
  const auto bad = [](double x) { return !std::isfinite(x); };
  const auto holds_bad = [&](const std::vector<double>& v) { return std::any_of(v.begin(), v.end(), bad); };
  for (const Column& column : columns) {
    if (holds_bad(column.values)) return "column " + column.name + " holds a value that is no number";
  }
  if (holds_bad(response)) return "the response holds a value that is no number";
  if (holds_bad(weights) || std::any_of(weights.begin(), weights.end(), [](double w) { return w < 0.0; })) {
    return "a weight is below zero or no number";
  }
  return {};
}

bool is_constant(const Column& column) {
  const auto& v = column.values;
  return v.front() != 0.0 && std::all_of(v.begin(), v.end(), [&](double x) { return x == v.front(); });
}

class Fit {
 public:
  Fit(const std::vector<Column>& columns, const std::vector<double>& response, const FitOptions& options)
      : columns_(columns), response_(response), options_(options) {}

  LinearFit tell() {
    weigh();
    triangle_ = scaled_;
    Vector turned = weighted_;
    reflect(triangle_, turned);
    const std::size_t size = columns_.size();
    for (std::size_t j = 0; j < size; ++j) {
      triangle_[j].resize(size, 0);
      for (std::size_t i = j + 1; i < size; ++i) triangle_[j][i] = 0;
    }
    turned.resize(size, 0);
    singular_ = rotate(std::move(triangle_));
    tell_rank();
    solve(turned);
    tell_scatter();
    return std::move(out_);
  }

 private:
  [[nodiscard]] Real weight(std::size_t i) const {
    return options_.weights.empty() ? Real{1} : static_cast<Real>(options_.weights[i]);
  }

  void weigh() {
    for (std::size_t i = 0; i < response_.size(); ++i) {
      out_.weights.push_back(static_cast<double>(weight(i)));
      weighted_.push_back(std::sqrt(weight(i)) * response_[i]);
      if (weight(i) > 0) ++counted_;
    }
    for (const Column& column : columns_) {
      Vector values;
      for (std::size_t i = 0; i < response_.size(); ++i) values.push_back(std::sqrt(weight(i)) * column.values[i]);
      const Real length = std::sqrt(dot(values, values));
      for (Real& value : values) value = length > 0 ? value / length : 0;
      scaled_.push_back(std::move(values));
      scale_.push_back(length > 0 ? length : 1);
    }
  }

  void tell_rank() {
    const Real largest = *std::max_element(singular_.lengths.begin(), singular_.lengths.end());
    const Real smallest = *std::min_element(singular_.lengths.begin(), singular_.lengths.end());
    for (const Real length : singular_.lengths) {
      kept_.push_back(length > 0 && length > static_cast<Real>(options_.separable_above) * largest);
    }
    out_.rank = static_cast<std::size_t>(std::count(kept_.begin(), kept_.end(), true));
    out_.condition = out_.rank == columns_.size() ? static_cast<double>(largest / smallest)
                                                  : std::numeric_limits<double>::infinity();
    out_.degrees_of_freedom = counted_ > out_.rank ? counted_ - out_.rank : 0;
    taken_.assign(columns_.size(), false);
    for (std::size_t k = 0; k < kept_.size(); ++k) {
      if (!kept_[k]) tell_inseparable(singular_.rotations[k]);
    }
  }

  /// A share below this of the largest is rounding and takes no part.
  void tell_inseparable(const Vector& direction) {
    constexpr Real least_share = 1e-6L;
    Real most = 0;
    for (const Real share : direction) most = std::max(most, std::abs(share));
    Inseparable sum;
    for (std::size_t j = 0; j < direction.size(); ++j) {
      const Real share = direction[j] / most;
      if (std::abs(share) < least_share) continue;
      taken_[j] = true;
      sum.columns.push_back({columns_[j].name, static_cast<double>(share / scale_[j])});
    }
    out_.not_separable.push_back(std::move(sum));
  }

  void solve(const Vector& turned) {
    const std::size_t size = columns_.size();
    Vector x(size, 0);
    for (std::size_t k = 0; k < size; ++k) {
      if (!kept_[k]) continue;
      const Real along = dot(singular_.columns[k], turned) / (singular_.lengths[k] * singular_.lengths[k]);
      for (std::size_t j = 0; j < size; ++j) x[j] += along * singular_.rotations[k][j];
    }
    Real sum = 0;
    for (std::size_t i = 0; i < response_.size(); ++i) {
      Real fitted = 0;
      for (std::size_t j = 0; j < size; ++j) fitted += columns_[j].values[i] * (x[j] / scale_[j]);
      const Real off = response_[i] - fitted;
      out_.residuals.push_back(static_cast<double>(off));
      sum += weight(i) * off * off;
    }
    out_.sum_of_squares = static_cast<double>(sum);
    const bool left_over = out_.degrees_of_freedom > 0;
    const Real variance = left_over ? sum / static_cast<Real>(out_.degrees_of_freedom) : nan;
    out_.residual_deviation = static_cast<double>(std::sqrt(variance));
    tell_coefficients(x, variance);
  }

  void tell_coefficients(const Vector& x, Real variance) {
    const std::size_t size = columns_.size();
    out_.covariance.assign(size, std::vector<double>(size, nan));
    for (std::size_t a = 0; a < size; ++a) {
      for (std::size_t b = 0; b < size; ++b) {
        if (taken_[a] || taken_[b]) continue;
        Real sum = 0;
        for (std::size_t k = 0; k < size; ++k) {
          if (!kept_[k]) continue;
          const Real inverse = 1 / singular_.lengths[k];
          sum += (singular_.rotations[k][a] * inverse) * (singular_.rotations[k][b] * inverse);
        }
        out_.covariance[a][b] = static_cast<double>(variance * sum / (scale_[a] * scale_[b]));
      }
      Coefficient coefficient{columns_[a].name, std::nullopt, std::nullopt};
      if (!taken_[a]) {
        coefficient.value = static_cast<double>(x[a] / scale_[a]);
        if (out_.degrees_of_freedom > 0) coefficient.standard_error = std::sqrt(out_.covariance[a][a]);
      }
      out_.coefficients.push_back(std::move(coefficient));
    }
  }

  void tell_scatter() {
    Real mean = 0;
    if (std::any_of(columns_.begin(), columns_.end(), is_constant)) {
      Real total = 0;
      for (std::size_t i = 0; i < response_.size(); ++i) {
        mean += weight(i) * response_[i];
        total += weight(i);
      }
      mean /= total;
    }
    Real whole = 0;
    for (std::size_t i = 0; i < response_.size(); ++i)
      whole += weight(i) * (response_[i] - mean) * (response_[i] - mean);
    out_.r_squared = whole > 0 ? static_cast<double>(1 - out_.sum_of_squares / whole) : nan;
  }

  const std::vector<Column>& columns_;
  const std::vector<double>& response_;
  const FitOptions& options_;
  std::vector<Vector> scaled_;  ///< columns of unit length, weighted
  std::vector<Vector> triangle_;
  Vector weighted_;  ///< response
  Vector scale_;     ///< length of each column
  Singular singular_;
  std::vector<bool> kept_;   ///< per singular value
  std::vector<bool> taken_;  ///< per column: part of a sum that cannot be told apart
  std::size_t counted_ = 0;  ///< observations of some weight
  LinearFit out_;
};

}  // namespace

const Coefficient* LinearFit::find(const std::string& name) const {
  const auto found =
      std::find_if(coefficients.begin(), coefficients.end(), [&](const Coefficient& c) { return c.name == name; });
  return found == coefficients.end() ? nullptr : &*found;
}

LinearFit least_squares(const std::vector<Column>& columns, const std::vector<double>& response,
                        const FitOptions& options) {
  if (std::string fault = fault_of(columns, response, options.weights); !fault.empty()) {
    LinearFit out;
    out.problem = std::move(fault);
    return out;
  }
  return Fit(columns, response, options).tell();
}

}  // namespace forecourse::solvers::statistics
