#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace forecourse::solvers::statistics {

/// One thing a response may depend on: a name and its value at each observation.
struct Column {
  std::string name;
  std::vector<double> values;
};

/// What a fit says of one column. Units are those of the response per unit of the column.
struct Coefficient {
  std::string name;
  std::optional<double> value;           ///< empty: the data cannot tell it from other columns
  std::optional<double> standard_error;  ///< empty also where no observation is left over to tell the scatter
};

/// A sum of columns that is zero, or so near zero that the data cannot tell them apart.
struct Inseparable {
  struct Share {
    std::string name;
    double weight = 0.0;  ///< per unit of the column; the largest of weight times the column's length is 1
  };
  std::vector<Share> columns;  ///< those that take part
};

/// A linear fit and how sure it is.
struct LinearFit {
  std::string problem;                          ///< why nothing was fitted; empty: all is well
  std::vector<Coefficient> coefficients;        ///< in the order of the columns
  std::vector<std::vector<double>> covariance;  ///< NaN where a coefficient has no value
  std::vector<double> residuals;                ///< response less fit, per observation
  std::vector<double> weights;                  ///< per observation; 1 where none is downweighted
  double residual_deviation = 0.0;              ///< [response] standard deviation of the residuals; NaN: none left over
  double sum_of_squares = 0.0;                  ///< of the residuals, weighted
  double r_squared =
      0.0;  ///< about the mean where the columns hold a constant, else about zero; NaN: nothing to explain
  std::size_t rank = 0;
  std::size_t degrees_of_freedom = 0;
  double condition = 0.0;  ///< of the columns scaled to equal length; infinity where some cannot be separated
  std::vector<Inseparable> not_separable;

  [[nodiscard]] const Coefficient* find(const std::string& name) const;
};

/// What least squares may be told besides the data.
struct FitOptions {
  std::vector<double> weights;     ///< per observation, at least 0; empty: all 1
  double separable_above = 1e-12;  ///< least singular value of the scaled columns, of the largest, that is told apart
};

/// Ordinary or weighted least squares: the columns are scaled to equal length, split by Householder reflections, and
/// the triangle by one-sided Jacobi rotations into singular values; what belongs to a vanishing one is told by name and
/// gets no estimate. A coefficient outside every such sum keeps its value.
///
/// \param columns  at least one; a constant is a column of equal numbers like any other
/// \param response one number per observation; as many as each column has
/// \error 1e-9 of a coefficient at a condition of 1e6, a digit less per power of ten beyond
/// \source [golub_vanloan, Householder QR and the one-sided Jacobi method]
[[nodiscard]] LinearFit least_squares(const std::vector<Column>& columns, const std::vector<double>& response,
                                      const FitOptions& options = {});

}  // namespace forecourse::solvers::statistics
