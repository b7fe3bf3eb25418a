#pragma once

#include <vector>

#include "forecourse/studies/ledger/ledger.h"
#include "forecourse/studies/ledger/readings.h"

namespace forecourse::studies {

/// The rule of a month: 1.0 % of what flowed through and 130 gal [m3].
/// \param sold [m3]
/// \source [cfr_280, 43(a)]
[[nodiscard]] double monthly_limit(double sold);

/// The rows of a book between its readings, and the amounts of each of them.
struct RowAmounts {
  std::vector<const Amount*> delivered;
  std::vector<const Amount*> sold;
  double returned = 0.0;  ///< [m3]
};
struct BookRows {
  std::vector<LedgerRow> rows;
  std::vector<RowAmounts> amounts;  ///< one for each row
};
[[nodiscard]] BookRows rows_of(const std::vector<StockReading>& readings, const Amounts& amounts);

/// What the amounts behind the last reading make of it.
/// \pre there is a reading
[[nodiscard]] LedgerNext next_of(const BookPlan& plan, const std::vector<StockReading>& readings,
                                 const Amounts& amounts);

/// The months of a book, each against the rule. A row belongs to the month in which it ends.
[[nodiscard]] std::vector<LedgerMonth> months_of(const std::vector<LedgerRow>& rows,
                                                 const std::vector<StockReading>& readings, std::size_t book,
                                                 const std::vector<Unsettled>& unsettled);

}  // namespace forecourse::studies
