#pragma once

#include <vector>

#include "forecourse/solvers/statistics/least_squares.h"

namespace forecourse::solvers::statistics {

/// The scatter of a level that is read again and again. What a reading adds to the difference from the one before is
/// taken back by the next difference; what goes astray between two readings stays. How much of the one there is for
/// the other cannot be learned from a month of readings, so it is given; the size of both together is found.
struct LevelNoise {
  std::vector<double> reading;  ///< deviation of each reading, one more than there are differences, at least 0
  std::vector<double> between;  ///< deviation of what goes astray between two readings, above 0
};

/// Differences made independent and of deviation 1 where the scatter is as given, in their order.
/// \pre the noise goes with the differences
[[nodiscard]] std::vector<double> whitened(const std::vector<double>& differences, const LevelNoise& noise);

/// Generalized least squares of the differences of a level.
///
/// \param columns     what the differences may depend on
/// \param differences n numbers, more than there are columns
/// \param noise       n + 1 and n numbers
/// \return the fit of the whitened differences: its residual deviation is the scatter found over the scatter given, its
///         residuals are independent and of equal deviation where the given one holds, and its weights are 1
/// \source closed form (Aitken's generalized least squares with the Cholesky factor of a tridiagonal covariance)
/// \error as `least_squares`
[[nodiscard]] LinearFit fit_level(const std::vector<Column>& columns, const std::vector<double>& differences,
                                  const LevelNoise& noise);

/// A wild reading, or a step between two readings.
struct LevelFault {
  enum class Kind { reading, step } kind = Kind::reading;
  std::size_t at = 0;           ///< of a reading its number from 0; of a step that of the difference
  double size = 0.0;            ///< of the response
  double standard_error = 0.0;  ///< of it
};

/// Wild readings and steps: the largest of all candidates is taken, then the next beside it, and as many are kept as
/// stand out together. Two that hide one another are so found where one alone would not be.
///
/// \param chance that a series without a fault is said to have one, above 0; held by Bonferroni's bound
/// \param most   that are looked for
/// \return the largest first
/// \source closed form (Student's t of an added column); candidates one by one as [chen_liu_1993, outliers and level
///         shifts], from memory, not verified
[[nodiscard]] std::vector<LevelFault> level_faults(const std::vector<Column>& columns,
                                                   const std::vector<double>& differences, const LevelNoise& noise,
                                                   double chance, std::size_t most);

/// The column of a fault, for a fit that takes it into account.
[[nodiscard]] Column column_of(const LevelFault& fault, std::size_t differences);

}  // namespace forecourse::solvers::statistics
