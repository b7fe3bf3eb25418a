#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/studies/ledger/options.h"
#include "forecourse/studies/ledger/stocks.h"
#include "forecourse/studies/ledger/told.h"

namespace forecourse::studies {

/// What went into or out of a book at a moment.
struct Amount {
  double hours = 0.0;   ///< since 1970-01-01, local
  double volume = 0.0;  ///< [m3] in the book
  std::string hose;     ///< of a sale; may be empty
  bool blended = false;
  std::optional<double> until;           ///< [h] a delivery's end, where its duration is told
  std::optional<double> temperature;     ///< [K] of a delivery as loaded
  std::optional<double> net_less_gross;  ///< [m3] of a delivery that tells both
  std::optional<double> factor_net;      ///< net over gross of it [1]
  std::string tank;
};

/// Everything that moved the stock of one book, in the order of time.
struct Amounts {
  std::vector<Amount> delivered;
  std::vector<Amount> sold;
  std::vector<Amount> returned;
};

/// The amounts of each book. A row that has no time of day stands for noon, so that a reading in the morning comes
/// before the business of its day, and one in the evening, or without a time, behind it.
[[nodiscard]] std::vector<Amounts> amounts_of(const site::records::Records& records, const LedgerOptions& options,
                                              const Charging& charging, std::size_t books, Told& told);

}  // namespace forecourse::studies
