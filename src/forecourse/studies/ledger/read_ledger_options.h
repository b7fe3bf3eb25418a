#pragma once

#include <string>
#include <vector>

#include "forecourse/studies/ledger/options.h"
#include "forecourse/studies/read_options.h"

namespace forecourse::studies {

/// The options of the ledger as they are written; empty: not asked.
struct LedgerAsked {
  std::string tank;
  std::string month;  ///< "2026-11"
  std::string from;   ///< "2026-11-05"
  std::string to;
  std::string delivered_as;               ///< "gross" or "net"
  std::vector<std::string> meter_errors;  ///< "0.3 %", "D1.a=0.3 %", "D1.a=0.3 % +- 0.1 %"
  std::string evaporation;
  std::string reading_deviation;
  std::string delivery_deviation;
  std::string sales_deviation;
  std::string smallest_leak;
  std::string own_volume;
  std::string own_drift;  ///< of temperature an hour: "-0.02 degF"
  std::string own_expansion;
};

/// The options, or what is wrong with what was written.
[[nodiscard]] Parsed<LedgerOptions> read_ledger_options(const LedgerAsked& asked, Asker asker);

}  // namespace forecourse::studies
