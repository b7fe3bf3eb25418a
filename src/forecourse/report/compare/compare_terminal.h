#pragma once

#include <string>

#include "forecourse/report/compare/compare_view.h"
#include "forecourse/report/terminal/text.h"

namespace forecourse::report {

/// A comparison as a practitioner acts on it: from how many hoses open B is worth it, what it does not change, what is
/// not determined, then the values changed, the ladder of both, requirements that stand otherwise, and the one table
/// of A, B and their difference: of what differs, or of everything where the style is verbose.
[[nodiscard]] std::string compare_summary(const decide::Comparison& comparison, site::Display display,
                                          const terminal::Style& style, const CompareFacts& facts = {});

}  // namespace forecourse::report
