#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/studies/day.h"

namespace forecourse::studies {

/// What one meter sold out of a book in a period, and what its error makes of that.
struct MeterSold {
  std::string hose;                      ///< empty: sales that name no hose
  double sold = 0.0;                     ///< [m3] out of this book; of a blended grade its share
  double known = 0.0;                    ///< [m3] of `sold` for which the error is known
  std::optional<double> volume;          ///< [m3] that its error adds to measured less book; empty: not known
  std::optional<double> standard_error;  ///< [m3] of `volume`
};

/// The meters of one book against its over or short in a period.
struct BookMeters {
  std::string book;
  std::string product;
  Day from;
  Day to;
  double over_short = 0.0;               ///< [m3] measured less book
  double unexplained = 0.0;              ///< [m3] what all terms of the ledger leave
  std::optional<double> standard_error;  ///< [m3] of `unexplained`
  std::vector<MeterSold> meters;
};

}  // namespace forecourse::studies
