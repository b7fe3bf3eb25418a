#pragma once

#include <optional>
#include <vector>

#include "forecourse/base/default_used.h"
#include "forecourse/studies/ledger/gauging.h"
#include "forecourse/studies/ledger/readings.h"

namespace forecourse::studies {

/// The tests that the readings of a tank hold; nothing for a tank that the method is not for.
/// \source [cfr_280, 43(b)]
[[nodiscard]] std::optional<ManualGauging> manual_gauging(const Stock& stock, const Amounts& amounts,
                                                          const site::records::Records& records);

/// What a tank's own test shows when its temperature drifts; nothing where volume, drift or expansion are not known; of
/// an expansion that is missing it is told what to enter.
/// \source closed form; [cfr_280, 43(d)] for the rate it must find
[[nodiscard]] std::optional<OwnTest> own_test(const site::Site& site, const LedgerOptions& options, Told& told,
                                              std::vector<DefaultUsed>& defaults);

}  // namespace forecourse::studies
