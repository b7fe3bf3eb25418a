#pragma once

#include <span>

#include "forecourse/studies/ledger/months.h"

namespace forecourse::studies {

/// The rows of a book that are explained together.
struct Period {
  const site::Site& site;
  const BookPlan& plan;
  const LedgerOptions& options;
  std::span<const StockReading> readings;  ///< one more than there are rows
  std::span<const LedgerRow> rows;
  std::span<const RowAmounts> amounts;
  const std::vector<MeterError>& meters;
};

/// The terms of a period, and what they take off each row.
struct Explained {
  LedgerTerms terms;
  std::vector<double> corrections;        ///< [m3] of each row, of all terms but the meters
  std::vector<double> meter_corrections;  ///< [m3] of each row
  double meter_square = 0.0;              ///< [m6] square of the standard error of the meters' term
  bool meters_proved = false;
  std::vector<MeterSold> meters;  ///< by hose
  bool deliveries_known = false;  ///< the temperature of every delivery, or there was none
};

/// The errors of the meters: as an option tells them, else each proving with the days that it can stand for.
[[nodiscard]] std::vector<MeterError> meter_errors(const site::Site& site, const site::records::Records& records,
                                                   const LedgerOptions& options);

/// \source [api_11_1_2004, 11.1.6.1] for what temperature does; the rest is closed form
[[nodiscard]] Explained explain(const Period& period);

/// Statistical reconciliation of what the terms leave; see docs/theory/ledger.md.
/// \source [cfr_280, 43(h)] for what is asked of it
[[nodiscard]] LossFit fit_loss(const Period& period, const Explained& explained);

/// [m3] Standard deviation of what goes astray in a row.
[[nodiscard]] double between_deviation(const RowAmounts& row, const LedgerOptions& options);

}  // namespace forecourse::studies
