#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/units.h"

namespace forecourse::report {

/// Findings as the array under `findings`; limit, value and margin are in the SI unit beside them.
///
/// \param texts the texts that the findings point into; without them a finding has no place
[[nodiscard]] Json findings_json(const std::vector<checks::Finding>& findings,
                                 const std::vector<SourceText>& texts = {});

/// Findings of one rule that share their state, limit, reason and remedy, for a sentence.
struct FindingGroup {
  std::vector<const checks::Finding*> findings;  ///< at least one
};

/// Grouped for a short list: what falls short first, then what is not determined, close, met, and does not apply.
[[nodiscard]] std::vector<FindingGroup> grouped(const std::vector<checks::Finding>& findings);

/// "D1.a, D1.b: a nozzle delivers no more than the cap; 12.25 to 12.28 gpm, limit 10.00 gpm; 40 CFR 1090.1550(b); fit
/// a limiter." The state stands before it and is not repeated.
[[nodiscard]] std::string in_words(const FindingGroup& group, site::Display display, Glyphs glyphs = Glyphs::unicode);

/// A value of a finding with its unit, as its own value is shown: "12.25 gpm".
[[nodiscard]] std::string value_in_words(double si, const checks::Finding& finding, site::Display display,
                                         Glyphs glyphs = Glyphs::unicode);

/// "6 fall short, 2 are close, 4 meet", or "none"
[[nodiscard]] std::string count_by_state(const std::vector<checks::Finding>& findings);

/// A table for each rule as HTML, with the heading and what a state means; empty without findings.
[[nodiscard]] std::string findings_html(const std::vector<checks::Finding>& findings, site::Display display);

/// One table for all findings of a set, what falls short first.
[[nodiscard]] std::string findings_table(const std::string& caption, const std::string& note,
                                         const std::vector<checks::Finding>& findings, site::Display display);

}  // namespace forecourse::report
