#pragma once

#include "forecourse/report/compare/compare_view.h"
#include "forecourse/report/json_document.h"

namespace forecourse::report {

/// The whole document of a comparison. `defaults` and `findings` at its root are those of B; those of A stand in
/// `result.a`. Figures are SI; `words` are in the units of `display`. A row has its figures under keys with their unit:
/// `a_m3_per_s`, `b_m3_per_s`, `difference_m3_per_s`.
[[nodiscard]] Json compare_document(const decide::Comparison& comparison, site::Display display,
                                    const CompareFacts& facts = {});

}  // namespace forecourse::report
