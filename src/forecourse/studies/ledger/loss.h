#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/solvers/statistics/control_chart.h"
#include "forecourse/studies/day.h"

namespace forecourse::studies {

/// What the records say of a steady loss.
enum class LossVerdict {
  none_found,     ///< they would have shown the least leak asked for, and show none
  loss,           ///< more than chance, and no other cause is left open
  loss_or_other,  ///< more than chance; a cause that is left open explains it as well
  inconclusive,   ///< they would not have shown it
};
/// "no loss found", "loss", "loss or another cause", "inconclusive"
[[nodiscard]] const char* word(LossVerdict verdict);

/// A reading that stands alone, or a step that stays.
struct LedgerFault {
  enum class Kind { reading, step } kind = Kind::step;
  Day day;
  double size = 0.0;  ///< [m3]
  double standard_error = 0.0;
  std::optional<double> depth;  ///< [m] of a reading: by how much it was read too high
  std::string words;            ///< what it looks like, and where to look
};

/// A term of the free regression.
struct FreeTerm {
  std::string cause;            ///< "steady loss", "meters", "deliveries", "zero of the stick", "blend ratio"
  std::string unit;             ///< SI
  std::optional<double> value;  ///< empty: cannot be told from others
  std::optional<double> standard_error;
  bool told_from_zero = false;  ///< beyond what chance gives once in twenty, on either side
};

/// Terms that the readings do not part.
struct NotParted {
  std::vector<std::string> causes;
  std::optional<double> correlation;  ///< of two estimates; empty: they are the same but for rounding
  std::string what_would;             ///< which reading would part them
};

/// A point of the charts: a whitened difference, and its sums.
struct ChartPoint {
  Day day;
  double value = 0.0;  ///< [standard deviations]
  solvers::statistics::CusumPoint cusum;
  solvers::statistics::EwmaPoint ewma;
};

/// Statistical reconciliation of a period.
struct LossFit {
  std::string problem;          ///< why there is none; empty: there is
  double rate = 0.0;            ///< [m3/s] of a steady loss; negative: a gain
  double standard_error = 0.0;  ///< [m3/s] with that of the meters where they were proved
  int degrees = 0;
  double threshold = 0.0;    ///< [m3/s] above which chance alone does not reach, but once in 20
  double detectable = 0.0;   ///< [m3/s] found 19 times in 20
  double asked = 0.0;        ///< [m3/s] least leak that must be found
  double found_with = 0.0;   ///< [1] probability that a leak of `asked` would have been called
  double scatter = 0.0;      ///< [1] found over taken
  double neighbors = 0.0;    ///< [1] correlation of a whitened difference with the next
  bool scatter_fits = true;  ///< the two kinds of scatter look as taken
  LossVerdict verdict = LossVerdict::inconclusive;
  std::string why;                       ///< of the verdict
  std::vector<std::string> open_causes;  ///< that are not known: meters, temperature of deliveries
  bool meters_proved = false;            ///< every meter that sold has an error with a standard error
  double meter_alike = 0.0;              ///< [1] error of all meters that would look like `rate`
  std::vector<LedgerFault> faults;
  std::vector<FreeTerm> free;
  std::vector<NotParted> not_parted;
  std::vector<ChartPoint> chart;
  solvers::statistics::CusumChart cusum;
  solvers::statistics::EwmaChart ewma;
  double cusum_run_length = 0.0;  ///< readings until it signals though nothing is wrong
  double ewma_run_length = 0.0;
};

}  // namespace forecourse::studies
