#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/base/default_used.h"
#include "forecourse/base/diagnostic.h"
#include "forecourse/site/records/records.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/book_meters.h"
#include "forecourse/studies/day.h"
#include "forecourse/studies/ledger/gauging.h"
#include "forecourse/studies/ledger/loss.h"
#include "forecourse/studies/ledger/options.h"
#include "forecourse/studies/ledger/terms.h"

namespace forecourse::studies {

/// A calendar month of a book against the monthly rule.
struct LedgerMonth {
  Day first;                        ///< of the month
  int intervals = 0;                ///< between two readings that end in it
  int missing_days = 0;             ///< without a reading, from the first reading of the book to the last
  double sold = 0.0;                ///< [m3] its throughput
  double delivered = 0.0;           ///< [m3] as reconciled
  double over_short = 0.0;          ///< [m3] measured less book; negative: short
  double limit = 0.0;               ///< [m3]
  std::optional<double> deviation;  ///< [m3] of `over_short` by its two end readings alone
  bool exceeds = false;
  bool whole = false;                  ///< it was read at its beginning and on its last day
  bool follows_excess = false;         ///< the month before exceeds its limit
  bool follows_whole = false;          ///< the month before was read to its end
  bool confirmed = false;              ///< the month before exceeds as well
  std::vector<std::string> unsettled;  ///< why its number cannot be relied on; empty: it can
};

/// An interval of a book: from one reading to the next.
struct LedgerRow {
  Day day;  ///< of the reading that ends it
  double hours = 0.0;
  double opening = 0.0;               ///< [m3] fuel at the reading before
  double delivered = 0.0;             ///< [m3]
  double sold = 0.0;                  ///< [m3]
  double returned = 0.0;              ///< [m3]
  double book = 0.0;                  ///< [m3] what should be there
  double measured = 0.0;              ///< [m3] what is
  double over_short = 0.0;            ///< [m3]
  double running = 0.0;               ///< [m3] sum of `over_short` since the month began
  double limit = 0.0;                 ///< [m3] of the running sum: the rule with the throughput so far
  std::optional<double> depth;        ///< [m] as read; of several tanks empty
  std::optional<double> water;        ///< [m3]
  std::optional<double> temperature;  ///< [K]
  int deliveries = 0;
  bool outside = false;  ///< the running sum passes the limit
  SourceSpan where{};    ///< of the reading
};

/// What the book expects at the reading to come.
struct LedgerNext {
  Day day;                      ///< the one behind the last reading
  std::string time;             ///< of day, as of the last reading; empty: it has none
  Day business;                 ///< the day whose deliveries and sales, entered without a time, come before it
  double opening = 0.0;         ///< [m3] fuel at the last reading
  double delivered = 0.0;       ///< [m3] since
  double sold = 0.0;            ///< [m3]
  double returned = 0.0;        ///< [m3]
  int deliveries = 0;           ///< since
  int sales = 0;                ///< rows since
  double book = 0.0;            ///< [m3] what should be there
  std::optional<double> depth;  ///< [m] that a stick would show of it; of several tanks empty
};

/// A book: one tank, or several that sell as one.
struct LedgerBook {
  std::string name;  ///< id of the tank, or of the product where there are several
  std::string product;
  std::vector<std::string> tanks;  ///< ids of tanks or compartments
  bool buried = true;              ///< false: every tank of it is entered as above ground
  std::string joined;              ///< why several are one book; empty: one tank
  std::string problem;             ///< why nothing can be reconciled; empty: it can
  /// [m3] of a reading without a depth, by how the days scatter; empty: none is without
  std::optional<double> volume_deviation;
  std::vector<LedgerRow> rows;  ///< in the order of time, all that was read
  std::vector<LedgerMonth> months;
  std::size_t from = 0;              ///< first row of the period that is explained
  std::size_t to = 0;                ///< behind its last
  std::optional<LedgerTerms> terms;  ///< of the period
  std::vector<MeterSold> meters;     ///< likewise, by hose
  std::optional<LossFit> loss;       ///< likewise
  std::optional<LedgerNext> next;    ///< empty: no reading yet
};

struct LedgerResult {
  std::string version;
  LedgerOptions options;
  std::vector<LedgerBook> books;
  std::vector<ManualGauging> gauging;  ///< of tanks small enough for it
  std::optional<OwnTest> own_test;     ///< where its volume and drift were given
  std::vector<DefaultUsed> defaults;
  std::vector<Diagnostic> warnings;
};

/// Daily reconciliation of stock, the monthly rule, what explains the difference, and how sure that is.
///
/// \source [cfr_280, 43(a): 1.0 % of flow-through and 130 gal], docs/theory/ledger.md
[[nodiscard]] LedgerResult study_ledger(const site::Site& site, const site::records::Records& records,
                                        const LedgerOptions& options, const Context& context = {});

/// The meters of each book whose period was explained.
[[nodiscard]] std::vector<BookMeters> book_meters(const LedgerResult& result);
/// The same of the ledger that records make of a period; none without readings.
/// \param expansion of test measures that tell none of their own [1/K]
[[nodiscard]] std::vector<BookMeters> book_meters(const site::Site& site, const site::records::Records& records,
                                                  const std::optional<Day>& from, const std::optional<Day>& to,
                                                  const std::optional<double>& expansion, const Context& context = {});

/// What of the options the station has not: tanks, hoses, months without a reading.
[[nodiscard]] std::vector<Diagnostic> check_options(const site::Site& site, const LedgerOptions& options);

}  // namespace forecourse::studies
