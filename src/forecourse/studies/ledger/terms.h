#pragma once

#include <optional>
#include <string>
#include <vector>

namespace forecourse::studies {

/// One cause of an overage or shortage, corrected for by what is known of it.
struct LedgerTerm {
  std::string cause;                     ///< "meters", "warm deliveries"
  std::optional<double> volume;          ///< [m3] that it adds to measured less book; empty: not known
  std::optional<double> standard_error;  ///< [m3]; empty: none was given
  std::string words;                     ///< by what it is known, or what to enter
};

/// What explains the difference of a period.
struct LedgerTerms {
  double over_short = 0.0;  ///< [m3]
  std::vector<LedgerTerm> terms;
  double unexplained = 0.0;               ///< [m3] what the terms leave
  std::optional<double> standard_error;   ///< [m3] of it: readings, deliveries, sales and terms; see the theory page
  double net_less_gross = 0.0;            ///< [m3] of the deliveries that tell both
  double returned = 0.0;                  ///< [m3] test fuel that went back, in the book already
  std::optional<double> water_rise = {};  ///< [m3] counted as water, not fuel, already
};

}  // namespace forecourse::studies
