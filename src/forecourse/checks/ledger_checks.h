#pragma once

#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/studies/ledger/ledger.h"

namespace forecourse::checks {

/// What the rules of inventory control and of manual tank gauging ask of the records: each month of each book, and each
/// small tank. A month of which something could not be counted is not determined.
[[nodiscard]] std::vector<Finding> check_ledger(const studies::LedgerResult& result);

}  // namespace forecourse::checks
