#pragma once

#include <string>

#include "forecourse/report/compare/compare_view.h"

namespace forecourse::report {

/// A comparison as one self-contained HTML page: the answer in sentences, the ladder of both drawn, and the table of A,
/// B and their difference, first what differs, then everything.
[[nodiscard]] std::string compare_report(const decide::Comparison& comparison, site::Display display,
                                         const CompareFacts& facts = {});

}  // namespace forecourse::report
